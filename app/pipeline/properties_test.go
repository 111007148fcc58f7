package pipeline_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// finding is a place where a plan does not keep a promise, and by how much.
type finding struct {
	promise, where string
	amount         float64
}

// judge gathers findings on one plan.
type judge struct {
	r     record.Record
	p     plan.Plan
	found []finding
}

func (j *judge) find(promise string, amount float64, where string, args ...any) {
	j.found = append(j.found, finding{promise, fmt.Sprintf(where, args...), amount})
}

// judged holds a plan against everything that is promised of every plan.
func judged(r record.Record, p plan.Plan, cut bool) []finding {
	j := &judge{r: r, p: p}
	j.levels()
	j.outlines()
	j.tapes()
	j.skirt()
	j.sleeves()
	if cut {
		j.pieces()
		j.volumes()
	}
	if p.Build == "slices" && cut {
		j.slices()
	}
	return j.found
}

// said reports whether there is a warning of a code at a level, "" for none.
func (j *judge) said(code, level string) bool {
	return slices.ContainsFunc(j.p.Warnings, func(w plan.Warning) bool { return w.Code == code && w.Level == level })
}

// girths are the keys of the levels where a tape is taken.
var girths = map[string]measure.Key{
	"neck base": measure.NeckBaseGirth, "bust": measure.BustGirth, "underbust": measure.UnderbustGirth,
	"waist": measure.WaistGirth, "high hip": measure.HighHipGirth, "hip": measure.HipGirth,
}

// levels: the fit table agrees with itself, with the record and with the outlines.
func (j *judge) levels() {
	bodice, _ := measure.TrustedSkirt(measure.Trusted(j.r.Garment.Bodice), j.r.Garment.Skirt)
	for i, l := range j.p.Levels {
		if d := math.Abs(l.Section.Tape() - *l.TargetGirth); !(d <= 0.1) {
			j.find("section tape is the target girth", d, "%s", l.Name)
		}
		if d := math.Abs(*l.TargetGirth - (*l.GarmentGirth - l.Ease)); l.Taken && !(d <= 0.1) {
			j.find("target is garment less ease", d, "%s", l.Name)
		}
		v, taken := bodice[girths[l.Name]]
		if skirt, ok := j.r.Garment.Skirt[measure.HipGirth]; l.Name == "hip" && !taken && j.said("skirt-hip-governs", l.Name) {
			v, taken = skirt, ok
		}
		if taken != l.Taken {
			j.find("what was taken is marked", 0, "%s", l.Name)
		}
		if d := math.Abs(*l.GarmentGirth - v); taken && !(d <= 0.1) {
			j.find("garment girth is as taken", d, "%s", l.Name)
		}
		if d := math.Abs(*l.Clearance - (*l.GarmentGirth - *l.BuiltGirth)); !(d <= 1e-6) {
			j.find("clearance is garment less built", d, "%s", l.Name)
		}
		if i > 0 && !(l.Height < j.p.Levels[i-1].Height) {
			j.find("levels fall", l.Height-j.p.Levels[i-1].Height, "%s", l.Name)
		}
		if k := slices.IndexFunc(j.p.Surface.Heights, func(h float64) bool { return math.Abs(h-l.Height) < 1e-6 }); k < 0 {
			j.find("every level has its outline", 0, "%s", l.Name)
		} else if d := math.Abs(j.p.Surface.Target[k].Tape() - *l.TargetGirth); !(d <= 0.1) {
			j.find("outlines have the levels' tapes", d, "%s", l.Name)
		}
	}
}

// outlines are simple, counter-clockwise and close enough together.
func (j *judge) outlines() {
	s := j.p.Surface
	for i, h := range s.Heights {
		if i > 0 && (h-s.Heights[i-1] > 10+1e-9 || !(h > s.Heights[i-1])) {
			j.find("outlines at most 10 mm apart", h-s.Heights[i-1], "%.1f", h)
		}
		for name, rings := range map[string][]plane.Ring{"form": s.Form, "core": s.Core, "garment": s.Garment, "target": s.Target, "built": s.Built} {
			if len(rings) != 0 && len(rings) != len(s.Heights) {
				j.find("an outline for every height", 0, "%s", name)
			} else if len(rings) != 0 && rings[i] != nil {
				j.ring(name, rings[i], h)
			}
		}
	}
}

func (j *judge) ring(name string, r plane.Ring, h float64) {
	if a := r.Area(); !(a > 0) {
		j.find("outlines run counter-clockwise", a, "%s %.1f", name, h)
	}
	if at, ok := r.Crossing(); ok {
		j.find("outlines are simple", 0, "%s %.1f at %v", name, h, at)
	}
}

// justBelow is the promise that a mount is not slack.
const justBelow = "at most 5 mm below the wanted tape"

// short and long are how far the built tape may lie above and below the wanted one, mm.
const short, long = 0.05, 5.0

// tapes: the mount is never above the wanted tape, unless said, and just below it.
func (j *judge) tapes() {
	s := j.p.Surface
	for i, h := range s.Heights {
		if s.Built[i] == nil || s.Target[i] == nil {
			continue
		}
		d := s.Built[i].Tape() - s.Target[i].Tape()
		if !(d <= short) && !j.warned(h) {
			j.find("never above the wanted tape", d, "%.1f %s", h, j.near(h))
		}
		if d < -long {
			j.find(justBelow, -d, "%.1f %s", h, j.near(h))
		}
	}
}

// warned reports whether a warning of a form too big or of strain speaks for a height.
func (j *judge) warned(h float64) bool {
	for _, w := range j.p.Warnings {
		if (w.Code == "form-too-big" || w.Code == "strain") && w.Level == j.near(h) {
			return true
		}
	}
	return false
}

// near is the level nearest to a height.
func (j *judge) near(h float64) string {
	best := j.p.Levels[0]
	for _, l := range j.p.Levels {
		if math.Abs(l.Height-h) < math.Abs(best.Height-h) {
			best = l
		}
	}
	return best.Name
}

// safe is what every file system takes for a name.
var safe = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9_-]{0,60}$`)

func (j *judge) pieces() {
	seen := map[string]bool{}
	for _, p := range j.p.Pieces {
		if !safe.MatchString(p.ID) || seen[strings.ToLower(p.ID)] {
			j.find("names are safe and differ", 0, "%q", p.ID)
		}
		seen[strings.ToLower(p.ID)] = true
		if a := p.Area(); !(a > 0) || !(p.Outline.Area() > 0) {
			j.find("pieces have an area", a, "%s", p.ID)
		}
		if at, ok := p.Outline.Crossing(); ok {
			j.find("pieces are simple", 0, "%s at %v", p.ID, at)
		}
		if math.IsNaN(p.Strain) || math.IsInf(p.Strain, 0) || p.Strain < 0 || p.Count < 1 || !(p.Thickness > 0) {
			j.find("numbers of a piece are finite", p.Strain, "%s", p.ID)
		}
		for _, h := range p.Holes {
			j.hole(p, h)
		}
	}
	j.seams()
}

// seams: what is sewn together is equally long, to 0.05 %.
func (j *judge) seams() {
	length := map[[2]string]float64{}
	for _, p := range j.p.Pieces {
		for _, s := range p.Seams {
			if s.Kind == "sewn" {
				length[[2]string{p.ID, s.To}] += s.Length
			}
		}
	}
	for ends, l := range length {
		if back := length[[2]string{ends[1], ends[0]}]; !(math.Abs(l/back-1) <= 0.0005) {
			j.find("sewn edges are equally long", l-back, "%s to %s", ends[0], ends[1])
		}
	}
}

func (j *judge) hole(p piece.Piece, h plane.Ring) {
	if !(h.Area() < 0) {
		j.find("holes run clockwise", h.Area(), "%s", p.ID)
	}
	for _, q := range h {
		if !p.Outline.Contains(q) {
			j.find("holes lie inside", 0, "%s %v", p.ID, q)
			return
		}
	}
}

// volumes: the pieces fill the space that they are meant to fill.
func (j *judge) volumes() {
	for _, name := range []string{"wadding", "slices", "cover"} {
		v, ok := j.p.Volumes[name]
		if !ok {
			continue
		}
		// Less than a tenth of a litre is a few small scraps, of which nothing is promised.
		if off := v.Pieces/v.Space - 1; v.Space > 1e5 && !(math.Abs(off) <= 0.02) {
			j.find("pieces fill their space: "+name, off, "%.0f of %.0f cm³", v.Pieces/1e3, v.Space/1e3)
		}
	}
}

// stub is how far a core goes on above the neck base and below the hip, mm.
const stub = 25.0

// slices add up to the core and stay inside the figure, their pins inside both neighbours.
func (j *judge) slices() {
	var ps []piece.Piece
	for _, p := range j.p.Pieces {
		if strings.HasPrefix(p.ID, "S") {
			ps = append(ps, p)
		}
	}
	hip, neck := j.p.Levels[len(j.p.Levels)-1].Height-stub, j.p.Levels[0].Height+stub
	z := hip
	for k, p := range ps {
		if p.Layer != k+1 {
			j.find("slices are numbered from the bottom", 0, "%s", p.ID)
		}
		if step := j.r.Mount.Step; step == "" || step == "inside" {
			j.inside(p, z, z+p.Thickness)
		}
		z += p.Thickness
		j.pins(ps, k)
	}
	if d := math.Abs(z - neck); !(d < 1e-6) {
		j.find("slices add up to the height", d, "%d slices", len(ps))
	}
}

// inside holds a slice against every wanted outline that it passes.
func (j *judge) inside(p piece.Piece, lo, hi float64) {
	for i, h := range j.p.Surface.Heights {
		if h < lo || h > hi || j.p.Surface.Target[i] == nil {
			continue
		}
		for _, q := range p.Outline {
			if !j.p.Surface.Target[i].Contains(q) {
				j.find("slices stay inside the figure", q.Norm(), "%s at %.1f", p.ID, h)
				return
			}
		}
	}
}

func (j *judge) pins(ps []piece.Piece, k int) {
	for _, m := range ps[k].Marks {
		if m.Kind != piece.Pin {
			continue
		}
		var to int
		if _, err := fmt.Sscanf(m.Label, "to %d", &to); err != nil || to < 1 || to > len(ps) {
			j.find("pins name their neighbour", 0, "%s %q", ps[k].ID, m.Label)
			continue
		}
		for _, p := range []piece.Piece{ps[k], ps[to-1]} {
			if !p.Outline.Contains(m.Points[0]) {
				j.find("pins lie inside both slices", 0, "%s to %s %v", ps[k].ID, p.ID, m.Points[0])
			}
		}
	}
}
