package pipeline

import (
	"fmt"
	"math"
	"strings"

	"understructure/geometry/fit"
	"understructure/geometry/measure"
	"understructure/geometry/padding"
	"understructure/patterns/plan"
)

// warnings gathers everything that the maker should know, the gravest first.
func (j *job) warnings(p plan.Plan) []plan.Warning {
	out := j.tooBig()
	out = append(out, j.short(p)...)
	out = append(out, j.standsOut()...)
	out = append(out, j.formShort()...)
	out = append(out, j.placed()...)
	for _, n := range j.notices {
		out = append(out, plan.Warning{Code: n.Code, Level: string(n.Level), Key: string(n.Key), Amount: n.Amount, Message: n.Message})
	}
	return out
}

// tooBig says where the form cannot be padded because it is too big already, by how much
// on each side, and what would do.
func (j *job) tooBig() []plan.Warning {
	var out []plan.Warning
	for _, l := range j.garment.Levels {
		lo, hi := j.reachOf(l.Name)
		x, ok := worst(j.excess, lo, hi)
		if !ok {
			continue
		}
		out = append(out, plan.Warning{
			Code: "form-too-big", Level: string(l.Name), Amount: x.Tape,
			Message: fmt.Sprintf("At the %s the covered form is %.0f mm too big round (%.0f mm in radius all round): it stands out of the wanted shape by %s. Squeeze or cut the form there, take a smaller form, or build one of slices.",
				l.Name, x.Tape, x.Tape/(2*math.Pi), sides(x)),
		})
	}
	return out
}

// reachOf is the stretch of height that a level speaks for: halfway to its neighbours.
func (j *job) reachOf(name measure.Level) (lo, hi float64) {
	ls := j.garment.Levels
	for i, l := range ls {
		if l.Name != name {
			continue
		}
		lo, hi = l.Height, l.Height
		if i > 0 {
			hi = (l.Height + ls[i-1].Height) / 2
		}
		if i+1 < len(ls) {
			lo = (l.Height + ls[i+1].Height) / 2
		}
	}
	return lo, hi
}

// worst is the greatest excess between two heights.
func worst(xs []padding.Excess, lo, hi float64) (padding.Excess, bool) {
	var best padding.Excess
	for _, x := range xs {
		if x.Height >= lo && x.Height <= hi && x.Tape > best.Tape {
			best = x
		}
	}
	return best, best.Tape > 0.05
}

func sides(x padding.Excess) string {
	var parts []string
	for _, s := range []struct {
		where string
		by    float64
	}{{"at the right side", x.Right}, {"at the left side", x.Left}, {"in front", x.Front}, {"at the back", x.Back}} {
		if s.by > 0.5 {
			parts = append(parts, fmt.Sprintf("%.0f mm %s", s.by, s.where))
		}
	}
	if len(parts) == 0 {
		return "less than 1 mm on each side, more between them"
	}
	return strings.Join(parts, ", ")
}

// short says where the mount would strain the garment, or leave less or much more ease than
// wanted: at the levels, and at the worst height that each level speaks for.
func (j *job) short(p plan.Plan) []plan.Warning {
	var out []plan.Warning
	for _, l := range p.Levels {
		c, ease := *l.Clearance, l.Ease
		if over, at := j.worstOver(p.Surface, measure.Level(l.Name)); over > math.Max(ease-c, easeShort) {
			ease = j.ease.At(at)
			c = ease - over
		}
		switch {
		case fit.Strain(c):
			out = append(out, plan.Warning{Code: "strain", Level: l.Name, Amount: -c,
				Message: fmt.Sprintf("At or near the %s the mount is %.0f mm larger than the inside of the garment: it would strain. Do not dress it.", l.Name, -c)})
		case c < ease-easeShort:
			out = append(out, plan.Warning{Code: "ease-short", Level: l.Name, Amount: ease - c,
				Message: fmt.Sprintf("At or near the %s there are %.0f mm of ease where %.0f mm were asked for.", l.Name, math.Max(c, 0), ease)})
		case l.Taken && c > ease+easeLong:
			out = append(out, plan.Warning{Code: "slack", Level: l.Name, Amount: c - ease,
				Message: fmt.Sprintf("At the %s the garment has %.0f mm more room than was asked for.", l.Name, c-ease)})
		}
	}
	return out
}

// worstOver is by how much the built tape rises above the wanted one at the worst of the
// heights that a level speaks for, and that height above the waist; both 0 where it does not.
func (j *job) worstOver(s plan.Surface, name measure.Level) (over, at float64) {
	lo, hi := j.reachOf(name)
	for i, h := range s.Heights {
		z := h - j.waist
		if z < lo-1e-6 || z > hi+1e-6 || s.Built[i] == nil || s.Target[i] == nil {
			continue
		}
		if d := s.Built[i].Tape() - s.Target[i].Tape(); d > over {
			over, at = d, z
		}
	}
	return over, at
}

// formShort says where the form ends before the garment does: there is no mount there.
func (j *job) formShort() []plan.Warning {
	if j.form == nil {
		return nil
	}
	var out []plan.Warning
	b := j.bands()
	if gap := b.Neck - j.bare.Top(); gap > 1 {
		out = append(out, plan.Warning{Code: "form-short", Level: string(measure.NeckBase), Amount: gap,
			Message: fmt.Sprintf("The form ends %.0f mm below the garment's neck base; what is shown above it is not there. Build the neck up, or raise the form.", gap)})
	}
	if gap := j.bare.Bottom() - b.Hip; gap > 1 {
		out = append(out, plan.Warning{Code: "form-short", Level: string(measure.Hip), Amount: gap,
			Message: fmt.Sprintf("The form ends %.0f mm above the garment's hip; what is shown below it is not there. Build the hips out on a longer base.", gap)})
	}
	return out
}

// easeShort and easeLong are how far, in mm, a built tape may lie above or below the wanted
// one without a word: what can be read off a tape, and what whole sheets may leave.
const easeShort, easeLong = 0.1, 5.0

// placed says where the form must stand when it is not waist to waist.
func (j *job) placed() []plan.Warning {
	if j.form == nil || math.Abs(j.raised) < 1 {
		return nil
	}
	way := "higher"
	if j.raised < 0 {
		way = "lower"
	}
	return []plan.Warning{{Code: "form-moved", Level: string(measure.Waist), Amount: math.Abs(j.raised),
		Message: fmt.Sprintf("Set the form so that its waist stands %.0f mm %s than the garment's waist, %.0f mm above the floor: it stands out least there. Set the height before the last fitting; a padded form is heavy.", math.Abs(j.raised), way, j.waist+j.raised)}}
}
