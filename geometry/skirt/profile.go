package skirt

import "math"

// Profile is how a skirt falls from waist to hem, as shares of four shapes that sum to 1:
//
//	cone   straight from waist to hem
//	dome   out at once, then rounder and rounder to upright at the hem
//	bell   upright over the hips, flaring towards the hem
//	shelf  level at the top, then straight down, as over a bustle
//
// A shape says how steeply the cloth leans out along its own length: the sine of its angle
// from the upright is in proportion to 1, cos(πv/2), v, and 1 then 0, with v the part of the
// length from the waist. A dome that leans level at the waist is a quarter of a circle.
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

// out is how far out the cloth has come at the part v of its length, as a part of the
// length, when it leans level where it leans most.
func (p Profile) out(v float64) float64 {
	o := p.Cone*v + p.Bell*v*v/2
	if p.Dome != 0 {
		o += p.Dome * 2 / math.Pi * math.Sin(math.Pi/2*v)
	}
	if p.Shelf != 0 {
		o += p.Shelf * shelfOut(v)
	}
	return o
}

func shelfOut(v float64) float64 {
	const turn = shelfTurned - shelfLevel
	switch {
	case v <= shelfLevel:
		return v
	case v >= shelfTurned:
		return shelfLevel + turn/2
	}
	w := v - shelfLevel
	return shelfLevel + w/2 + turn/(2*math.Pi)*math.Sin(math.Pi*w/turn)
}
