package skirt

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
)

// Silhouette is the outline of a year, as far as it can be said without a garment. Reach,
// Spread and Hem are of the hem where the skirt stands, a train left out.
type Silhouette struct {
	Front, Side, Back Profile
	Reach             Reach   // of the hem from the axis; only its proportions matter
	Spread            float64 // the part of the hem girth that the support stretches out, above 0, at most 1
	Hem               float64 // usual hem girth, mm; 0 where it is not known
}

// Reach is a distance from the mount's axis in front, at the sides and behind.
type Reach struct{ Front, Side, Back float64 }

// Plain is a cone, alike all round, that takes up the whole hem: what geometry alone would say.
var Plain = Silhouette{Front: Profile{Cone: 1}, Side: Profile{Cone: 1}, Back: Profile{Cone: 1}, Reach: Reach{1, 1, 1}, Spread: 1}

func (s Silhouette) orPlain() Silhouette {
	if s == (Silhouette{}) {
		return Plain
	}
	return s
}

// The ranges of a silhouette. Reaches are proportions; a hem is bounded as measure bounds it.
const leastReach, mostReach, leastSpread, leastHem, mostHem = 0.05, 20.0, 0.05, 300.0, 12000.0

func (s Silhouette) check(path string) error {
	if s == (Silhouette{}) {
		return nil
	}
	for _, p := range []struct {
		name string
		p    Profile
	}{{"front", s.Front}, {"side", s.Side}, {"back", s.Back}} {
		if sum := p.p.Cone + p.p.Dome + p.p.Bell + p.p.Shelf; !(math.Abs(sum-1) < 1e-9) || min(p.p.Cone, p.p.Dome, p.p.Bell, p.p.Shelf) < 0 {
			return fmt.Errorf("skirt: %s.%s has the shares %v, want shares of 0 or more that sum to 1", path, p.name, p.p)
		}
	}
	for _, v := range []struct {
		name               string
		value, least, most float64
	}{
		{"reach.front", s.Reach.Front, leastReach, mostReach}, {"reach.side", s.Reach.Side, leastReach, mostReach}, {"reach.back", s.Reach.Back, leastReach, mostReach},
		{"spread", s.Spread, leastSpread, 1},
	} {
		if !(v.value >= v.least && v.value <= v.most) {
			return fmt.Errorf("skirt: %s.%s is %.6g, want %g to %g", path, v.name, v.value, v.least, v.most)
		}
	}
	if s.Hem != 0 && !(s.Hem >= leastHem && s.Hem <= mostHem) {
		return fmt.Errorf("skirt: %s.hem is %.6g mm, want 0 for not known, or %g to %g", path, s.Hem, leastHem, mostHem)
	}
	return nil
}

// toward is the profile in the direction of the unit vector d: those of front, side and back
// where they are meant, and smoothly from one to the next between them.
func (s Silhouette) toward(d plane.Point) Profile {
	end := s.Front
	if d.Y < 0 {
		end = s.Back
	}
	return s.Side.blend(end, d.Y*d.Y)
}

// oval is the outline of the hem with the girth wanted.
func (s Silhouette) oval(girth float64) Oval {
	return Oval{s.Reach.Side, s.Reach.Side, s.Reach.Front, s.Reach.Back}.Grown(girth)
}

// blend is the silhouette a part t of the way to o. A hem that only one of them knows is that one's.
func (s Silhouette) blend(o Silhouette, t float64) Silhouette {
	mix := func(a, b float64) float64 { return a + (b-a)*t }
	out := Silhouette{
		Front: s.Front.blend(o.Front, t), Side: s.Side.blend(o.Side, t), Back: s.Back.blend(o.Back, t),
		Reach:  Reach{mix(s.Reach.Front, o.Reach.Front), mix(s.Reach.Side, o.Reach.Side), mix(s.Reach.Back, o.Reach.Back)},
		Spread: mix(s.Spread, o.Spread), Hem: mix(s.Hem, o.Hem),
	}
	if s.Hem == 0 || o.Hem == 0 {
		out.Hem = s.Hem + o.Hem
	}
	return out
}
