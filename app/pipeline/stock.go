package pipeline

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"understructure/app/record"
	"understructure/patterns/cutting"
	"understructure/patterns/plan"
)

// Whole is Run with the pieces laid on what they are cut from, and the materials counted from there: all that
// is written for a mount.
func Whole(ctx context.Context, r record.Record, progress func(stage string, done float64)) (plan.Plan, error) {
	const computing = 0.8
	tell := func(stage string, done float64) {
		if progress != nil {
			progress(stage, done)
		}
	}
	p, err := Run(ctx, r, func(stage string, done float64) {
		if stage != "done" {
			tell(stage, computing*done)
		}
	})
	if err != nil {
		return plan.Plan{}, err
	}
	p, err = Lay(ctx, r, p, func(done float64) { tell("cutting", computing+(1-computing)*done) })
	if err == nil {
		tell("done", 1)
	}
	return p, err
}

// Lay lays the pieces of a record's plan on its planks and rolls and counts the materials from there. The plan given stays as it
// was. progress is told the share that is done, and may be nil. It fails when ctx ends.
func Lay(ctx context.Context, r record.Record, p plan.Plan, progress func(done float64)) (out plan.Plan, err error) {
	defer confess(&err)
	stock, _ := r.Mount.Stocked(r.Garment.Strength)
	layouts, unlaid, err := cutting.Lay(ctx, p, cutting.Stock{Planks: planks(r.Mount, stock), Rolls: rolls(p, r, stock)}, progress)
	if err != nil {
		return plan.Plan{}, fmt.Errorf("pipeline: %w", err)
	}
	p.Layouts = layouts
	p.Materials = priced(counted(p.Materials, layouts), r.Mount, stock)
	p.Warnings = slices.Clone(p.Warnings)
	for _, u := range unlaid {
		p.Warnings = append(p.Warnings, larger(u))
	}
	return p, nil
}

// planks are what slices may be cut from: offcuts, then the other sizes that can be had, then the usual plank unless it is a
// default beside a size of its thickness that never runs out.
func planks(m record.Mount, s record.Stock) []cutting.Plank {
	var out []cutting.Plank
	for _, o := range m.Offcuts {
		out = append(out, cutting.Plank{Stock: "offcut of " + plankName(o.Thickness, o.Length, o.Width), Thickness: o.Thickness, Length: o.Length, Width: o.Width, Count: 1, Offcut: true})
	}
	endless := false
	for _, k := range m.Planks {
		p := cutting.Plank{Stock: plankName(k.Thickness, k.Length, k.Width), Thickness: k.Thickness, Length: k.Length, Width: k.Width}
		if k.Count != nil {
			p.Count = int(*k.Count)
		}
		endless = endless || k.Count == nil && k.Thickness == s.Plank.Thickness
		out = append(out, p)
	}
	chosen := m.Plank != nil && (m.Plank.Length != nil || m.Plank.Width != nil)
	if b := s.Plank; chosen || !endless {
		out = append(out, cutting.Plank{Stock: plankName(b.Thickness, b.Length, b.Width), Thickness: b.Thickness, Length: b.Length, Width: b.Width})
	}
	return out
}

// calicoWidth is that of a roll of calico, mm; from memory.
const calicoWidth = 1500.0

// rolls are what else is cut. Wadding and net may be turned by quarters, woven and knitted cloth lies along its grain.
func rolls(p plan.Plan, r record.Record, s record.Stock) []cutting.Roll {
	skirt, _ := r.Mount.Skirt.Stocked(nil)
	var out []cutting.Roll
	add := func(material string) {
		roll := cutting.Roll{Stock: soldAs(material), Material: material}
		switch matterOf(roll.Stock).word {
		case "wadding":
			roll.Width = waddingWidth(material, s)
		case "smooth cover":
			roll.Width, roll.Lie = s.CoverWidth, cutting.AlongGrain
			if r.Mount.CoverNap {
				roll.Lie = cutting.WithNap
			}
		case "calico":
			roll.Width, roll.Lie = calicoWidth, cutting.AlongGrain
		case "net":
			roll.Width = skirt.NetWidth
		}
		known := slices.ContainsFunc(out, func(o cutting.Roll) bool { return o.Material == material })
		if roll.Width > 0 && !known {
			out = append(out, roll)
		}
	}
	for _, pc := range p.Pieces {
		add(pc.Material)
	}
	for _, c := range p.Cuts {
		if area(c) > 0 {
			add(c.Material)
		}
	}
	return out
}

// waddingWidth is the width of the roll of the thickness that a material names; of the first where there is none such.
func waddingWidth(material string, s record.Stock) float64 {
	for _, w := range s.Wadding {
		if strings.HasSuffix(material, fmt.Sprintf("wadding %g mm", w.Thickness)) {
			return w.Width
		}
	}
	return s.Wadding[0].Width
}

// larger warns of a piece that goes on none of the stock.
func larger(u cutting.Unlaid) plan.Warning {
	return plan.Warning{Code: "no-room", Key: "mount.planks", Message: fmt.Sprintf("%s finds no room on any %s in stock: join two side by side before it is cut, or get a larger one.", u.Piece, u.Material)}
}
