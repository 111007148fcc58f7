package pipeline

import (
	"maps"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/surface"
	"understructure/patterns/plan"
)

// outlineGap is the greatest distance between two outlines in a plan, mm.
const outlineGap = 10.0

// plan writes the mount down, heights from the floor.
func (j *job) plan() plan.Plan {
	r := j.record
	p := plan.Plan{
		Understructure: plan.Version,
		Object:         plan.Object{Number: r.Object.Number, Title: r.Object.Title, Year: r.Object.Year, Wearer: string(r.Object.Wearer), Notice: r.Object.Notice, Strength: r.Garment.Strength, MassKg: r.Garment.MassKg},
		Measured:       plan.Measured{By: r.Taken.By, On: r.Taken.On, Side: r.Taken.Side},
		Build:          "padded",
		StandHeight:    j.waist,
		Skirt:          j.skirtPlan(),
		Sleeves:        j.sleevesPlan(),
		Pieces:         append(raised(j.pieces, j.waist), j.supports...),
		Cuts:           j.cuts,
		Cautions:       j.cautions,
		Stock:          j.filled,
		Paper:          j.stock.Paper,
	}
	if j.slices != nil {
		p.Build = "slices"
	}
	p.Levels = j.levels()
	p.Doubt = j.doubt(p.Levels)
	p.Surface = j.outlines()
	p.AsBuilt = j.remade
	p.Taken, p.Drawn = j.values()
	p.Layers = j.layers()
	if j.pieces != nil {
		p.Stages = j.stages(p.Surface)
	}
	for _, l := range j.garment.Lengths {
		p.Lengths = append(p.Lengths, plan.Length{Key: "garment.bodice." + string(l.Key), Taken: l.Taken, Built: l.Built})
	}
	p.Standing = j.standing()
	p.Materials = j.materials()
	p.Volumes = j.volumes()
	p.Warnings = j.warnings(p)
	return whole(p)
}

// whole gives every list that a reader may walk a length, be it none.
func whole(p plan.Plan) plan.Plan {
	for i := range p.Pieces {
		q := &p.Pieces[i]
		q.Holes, q.Marks, q.Seams = orEmpty(q.Holes), orEmpty(q.Marks), orEmpty(q.Seams)
	}
	p.Pieces, p.Warnings, p.Layers, p.Lengths, p.Materials = orEmpty(p.Pieces), orEmpty(p.Warnings), orEmpty(p.Layers), orEmpty(p.Lengths), orEmpty(p.Materials)
	p.Doubt.Remeasure = orEmpty(p.Doubt.Remeasure)
	p.Stages, p.Cuts, p.Cautions = orEmpty(p.Stages), orEmpty(p.Cuts), orEmpty(p.Cautions)
	return p
}

func orEmpty[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}

// levels is the fit table, from the neck down.
func (j *job) levels() []plan.Level {
	var out []plan.Level
	for _, l := range j.garment.Levels {
		wanted, built := j.mount.Wanted.At(l.Height), j.mount.Built.At(l.Height)
		row := plan.Level{
			Name: string(l.Name), Height: l.Height + j.waist, Taken: l.Taken, Ease: j.ease.At(l.Height),
			GarmentGirth: number(l.Girth), TargetGirth: number(wanted.Tape()), BuiltGirth: number(built.Tape()),
			Section: wanted.Ring(),
		}
		clearance := l.Girth - built.Tape()
		row.Clearance = number(clearance)
		if j.form != nil && reaches(j.bare, l.Height) {
			form := j.bare.At(l.Height)
			row.FormGirth = number(form.Tape())
		}
		out = append(out, row)
	}
	return out
}

func number(x float64) *float64 { return &x }

// reaches reports whether a skin has a slice at a height.
func reaches(s surface.Surface, z float64) bool { return z >= s.Bottom()-1e-6 && z <= s.Top()+1e-6 }

// outlines writes every skin down from the hip to the neck base.
func (j *job) outlines() plan.Surface {
	b := j.bands()
	var fixed []float64
	for _, l := range j.garment.Levels {
		fixed = append(fixed, l.Height)
	}
	for _, s := range j.slices {
		fixed = append(fixed, s.Bottom, s.Top)
	}
	var out plan.Surface
	for _, z := range surface.Rows(b.Hip, b.Neck, outlineGap, fixed...) {
		out.Heights = append(out.Heights, z+j.waist)
		out.Garment = append(out.Garment, outline(j.garment.Skin, z))
		out.Target = append(out.Target, outline(j.mount.Wanted, z))
		out.Built = append(out.Built, outline(j.mount.Built, z))
		if j.form != nil {
			out.Form = append(out.Form, outline(j.bare, z))
		} else {
			out.Core = append(out.Core, outline(j.bare, z))
		}
	}
	return out
}

// outline is the slice at a height, nil where the skin has none.
func outline(s surface.Surface, z float64) plane.Ring {
	if !reaches(s, z) {
		return nil
	}
	at := s.At(z)
	return at.Ring()
}

// values lists what came from the record and what from statistics, by key path.
func (j *job) values() (taken, drawn map[string]plan.Value) {
	taken, drawn = map[string]plan.Value{}, maps.Clone(j.drawn)
	note := func(path string, s measure.Sheet) {
		for k, v := range s {
			taken[path+string(k)] = plan.Value{Value: v, Source: "tape"}
		}
	}
	g := j.record.Garment
	note("garment.bodice.", g.Bodice)
	note("garment.skirt.", g.Skirt)
	note("garment.sleeve.", g.Sleeve)
	for k, d := range j.garment.Drawn {
		drawn["garment.bodice."+string(k)] = plan.Value{Value: d.Value, Source: d.Source}
	}
	if j.form != nil {
		note("form.bodice.", j.record.Form.Bodice)
		for k, d := range j.form.Drawn {
			drawn["form.bodice."+string(k)] = plan.Value{Value: d.Value, Source: d.Source}
		}
	}
	for path, s := range j.spreads {
		if v, ok := drawn[path]; ok {
			v.Spread, v.Source = s.Spread, v.Source+s.Source
			drawn[path] = v
		}
	}
	return taken, drawn
}
