package trace

import (
	"maps"
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/torso"
)

// What is what a view shows of a figure's levels.
type What string

// Breadths are seen from the front or the back, depths from a side.
const (
	Breadth What = "breadth"
	Depth   What = "depth"
)

// Figure is what a silhouette is compared with.
type Figure struct {
	Torso torso.Torso   // as it is now
	Waist float64       // height of its waist above the floor, mm
	Hand  measure.Shape // what shaped it by hand
	Taken measure.Sheet // what callipers say is not changed
}

// Proposal is what a silhouette asks for at one level. Lengths are millimetres.
type Proposal struct {
	Level  measure.Level
	What   What
	Height float64 // of the level above the floor
	Left   float64 // where the silhouette crosses the level, in the view
	Right  float64
	From   float64 // as the figure is
	Traced float64 // as the silhouette is, less the cloth outside
	To     float64 // as near to that as the tape round the level allows; From where it was taken
	Taken  bool    // callipers took it: it stays
}

// slightest is the least change that a traced line can tell of, mm: a hand trembles by as much.
const slightest = 1.0

// Changes reports whether the figure would change.
func (p Proposal) Changes() bool { return math.Abs(p.To-p.From) >= slightest }

// Held reports whether the girth, which stays, keeps the figure from what was traced.
func (p Proposal) Held() bool { return !p.Taken && math.Abs(p.To-p.Traced) >= slightest }

// Propose compares a silhouette with a figure, from the neck down, at every level that the silhouette crosses. The
// line is in millimetres of the view, across and up from the floor; outside is how thick whatever lies over
// the figure is on each side, from 0.
func (f Figure) Propose(line []plane.Point, what What, outside float64) []Proposal {
	var all []Proposal
	for _, l := range f.Torso.Levels {
		height := f.Waist + l.Height
		left, right, ok := Extent(line, height)
		traced := right - left - 2*outside
		if !ok || !(traced > 0) {
			continue
		}
		from, room := f.now(l, what)
		p := Proposal{Level: l.Name, What: what, Height: height, Left: left, Right: right, From: from, Traced: traced, To: room.Clamp(traced)}
		if _, p.Taken = f.Taken[keys[l.Name][what]]; p.Taken {
			p.To = from
		}
		all = append(all, p)
	}
	return all
}

// now is a level's breadth or depth, and what its girth leaves room for.
func (f Figure) now(l torso.Level, what What) (float64, section.Span) {
	limits := f.Torso.Limits(l.Name, f.Hand[l.Name])
	if what == Depth {
		return l.Reading.Depth, limits.Depth
	}
	return l.Reading.Breadth, limits.Breadth
}

// Apply is a shape with what is proposed: breadths or depths alone, so that every girth stays. The shape given is
// left as it is.
func Apply(hand measure.Shape, proposals []Proposal) measure.Shape {
	out := maps.Clone(hand)
	if out == nil {
		out = measure.Shape{}
	}
	for _, p := range proposals {
		a, to := out[p.Level], p.To
		if p.What == Depth {
			a.Depth = &to
		} else {
			a.Breadth = &to
		}
		out[p.Level] = a
	}
	return out
}

// keys are the measurements that callipers take; at other levels there is none.
var keys = map[measure.Level]map[What]measure.Key{
	measure.Bust:      {Breadth: measure.BustBreadth, Depth: measure.BustDepth},
	measure.Underbust: {Breadth: measure.UnderbustBreadth, Depth: measure.UnderbustDepth},
	measure.Waist:     {Breadth: measure.WaistBreadth, Depth: measure.WaistDepth},
	measure.HighHip:   {Breadth: measure.HighHipBreadth, Depth: measure.HighHipDepth},
	measure.Hip:       {Breadth: measure.HipBreadth, Depth: measure.HipDepth},
}
