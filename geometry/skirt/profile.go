package skirt

import "math"

// Profile is how a skirt falls from waist to hem, as shares of four shapes that sum to 1:
//
//	cone   straight from waist to hem
//	dome   out at once, then rounder and rounder to upright at the hem
//	bell   upright over the hips, flaring towards the hem
//	shelf  level at the top, then straight down, as over a bustle
//
// A shape says how far out the cloth has come at the part v of its length, as a part of how far
// out the hem is: v, sin(πv/2), v², and a rise at an even slope up to 15 % that has turned upright
// at 35 %. A dome that leans level at the waist is a quarter of a circle.
type Profile struct{ Cone, Dome, Bell, Shelf float64 }

// The four shapes by the words that tables use.
const (
	cone  = "cone"
	dome  = "dome"
	bell  = "bell"
	shelf = "shelf"
)

// ProfileNamed returns the shape of that word ("cone", "dome", "bell", "shelf"), and false for any other.
func ProfileNamed(word string) (Profile, bool) {
	switch word {
	case cone:
		return Profile{Cone: 1}, true
	case dome:
		return Profile{Dome: 1}, true
	case bell:
		return Profile{Bell: 1}, true
	case shelf:
		return Profile{Shelf: 1}, true
	}
	return Profile{}, false
}

// Name is the word of the shape with the greatest share.
func (p Profile) Name() string {
	name, most := cone, p.Cone
	for _, s := range []struct {
		name  string
		share float64
	}{{dome, p.Dome}, {bell, p.Bell}, {shelf, p.Shelf}} {
		if s.share > most {
			name, most = s.name, s.share
		}
	}
	return name
}

// blend is the profile a part t of the way to q.
func (p Profile) blend(q Profile, t float64) Profile {
	mix := func(a, b float64) float64 { return a + (b-a)*t }
	return Profile{mix(p.Cone, q.Cone), mix(p.Dome, q.Dome), mix(p.Bell, q.Bell), mix(p.Shelf, q.Shelf)}
}

// A shelf lies level for the first 15 % of the length and has turned down at 35 %. From memory.
const shelfLevel, shelfTurned = 0.15, 0.35

// shelfReach is how far a shelf of slope 1 comes out.
const shelfReach = (shelfLevel + shelfTurned) / 2

// out is how far out the cloth has come at the part v of its length; 0 at the waist and 1 at the hem.
func (p Profile) out(v float64) float64 {
	o := p.Cone*v + p.Bell*v*v
	if p.Dome != 0 {
		o += p.Dome * math.Sin(math.Pi/2*v)
	}
	if p.Shelf != 0 {
		o += p.Shelf * shelfOut(v)
	}
	return o
}

// slope is how fast it comes out there.
func (p Profile) slope(v float64) float64 {
	s := p.Cone + 2*p.Bell*v
	if p.Dome != 0 {
		s += p.Dome * math.Pi / 2 * math.Cos(math.Pi/2*v)
	}
	if p.Shelf != 0 {
		s += p.Shelf * shelfSlope(v)
	}
	return s
}

func shelfOut(v float64) float64 {
	const turn = shelfTurned - shelfLevel
	switch {
	case v <= shelfLevel:
		return v / shelfReach
	case v >= shelfTurned:
		return 1
	}
	w := v - shelfLevel
	return (shelfLevel + w/2 + turn/(2*math.Pi)*math.Sin(math.Pi*w/turn)) / shelfReach
}

func shelfSlope(v float64) float64 {
	switch {
	case v <= shelfLevel:
		return 1 / shelfReach
	case v >= shelfTurned:
		return 0
	}
	return (1 + math.Cos(math.Pi*(v-shelfLevel)/(shelfTurned-shelfLevel))) / 2 / shelfReach
}
