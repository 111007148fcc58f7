package fit

import "math"

// Band sorts the clearance at one point of a mount, for the eye.
type Band int

// The bands, from too little room to too much.
const (
	Straining Band = iota
	Touching
	AsWanted
	Slack
	VerySlack
	Bands // how many there are
)

// The limits between the bands, mm at the point. Multiplied by 2π they are millimetres of girth,
// where the room is the same all round: half a millimetre is 3 mm of girth, about what two tape
// readings are apart; 1 mm is 6, less than the least ease in use; 8 and 16 mm are 50 and 100 mm of
// girth, which one can gather in a fold. Our choice, no published figure.
var limits = [Bands - 1]float64{-0.5, 1, 8, 16}

// Limits returns between which clearances at a point a band lies, mm; the outer bands are open, ±Inf.
func (b Band) Limits() (from, to float64) {
	from, to = math.Inf(-1), math.Inf(1)
	if b > Straining {
		from = limits[b-1]
	}
	if b < VerySlack {
		to = limits[b]
	}
	return from, to
}

// String is the band's name.
func (b Band) String() string {
	return [Bands]string{"strain", "touching", "as wanted", "slack", "very slack"}[b]
}

// BandOf is the band of a clearance at a point, as Felt returns it.
func BandOf(felt float64) Band {
	for b, limit := range limits {
		if felt < limit {
			return Band(b)
		}
	}
	return VerySlack
}

// Felt is the clearance at a point as the cloth there feels it, mm: the clearance itself; but where
// the tape strains, cloth that touches is stretched, however its outline was drawn: there it is that of a
// strain, and rises to the clearance itself over the millimetre above touching.
func (r *Round) Felt(j int) float64 {
	d, touching := r.Point[j], limits[Touching]
	if !Strain(r.Tape) || d >= touching+1 {
		return d
	}
	strained := min(d, limits[Straining]+r.Tape/(2*math.Pi))
	return strained + max(0, d-touching)*(touching+1-strained)
}
