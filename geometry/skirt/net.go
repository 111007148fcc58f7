package skirt

import "math"

// Tier is a length of net gathered to a line.
type Tier struct {
	Name     string
	Finished float64 // the line that it is gathered to, mm
	Flat     float64 // its own width, selvedge to selvedge of all widths together, mm
	Depth    float64 // from the gathers down, mm
	Layers   int     // how many lie over each other
	Widths   int     // how many widths of net are joined for one layer
}

// Ratio is how many times as wide the net is as the line that it is gathered to.
func (t Tier) Ratio() float64 { return t.Flat / t.Finished }

// Area is that of all layers, mm².
func (t Tier) Area() float64 { return t.Flat * t.Depth * float64(t.Layers) }

// The rules of net tiers (Interpret and Display Historic Dress, chapter 8): for a dome two
// layers, each of two to three widths gathered tight to the waist; a deep frill of two widths
// gathered to one.
const (
	fewestWidths, mostWidths = 2, 3
	domeLayers               = 2
	frillRatio               = 2.0
	frillPart                = 1.0 / 3 // of the petticoat's length; from memory
)

// Net plans the tiers of net over a petticoat from a net of the given width, mm: over a dome
// whole layers from the waist, and always a deep frill round the lower part. waist is the line that
// the upper tier is gathered to.
func (p Petticoat) Net(waist, width float64, domed bool) []Tier {
	front, _, _, _ := p.along()
	var out []Tier
	if domed {
		n := int(math.Ceil(p.Hem().Oval.Girth() / width))
		n = max(fewestWidths, min(mostWidths, n))
		out = append(out, Tier{"layer from the waist", waist, float64(n) * width, front, domeLayers, n})
	}
	line := p.girthAt(front * (1 - frillPart))
	flat := frillRatio * line
	return append(out, Tier{"deep frill", line, flat, front * frillPart, 1, int(math.Ceil(flat/width - 1e-9))})
}

// along is the cloth from the waist to the hem in front, at the sides and behind.
func (p Petticoat) along() (front, right, left, back float64) {
	for i := 1; i < len(p); i++ {
		f, r, l, b := p.Tape(i)
		front, right, left, back = front+f, right+r, left+l, back+b
	}
	return front, right, left, back
}

// girthAt is the girth of the cloth at a length down the front.
func (p Petticoat) girthAt(down float64) float64 {
	for i := 1; i < len(p); i++ {
		f, _, _, _ := p.Tape(i)
		if down <= f || i == len(p)-1 {
			t := math.Min(1, down/f)
			return p[i-1].Oval.Girth()*(1-t) + p[i].Oval.Girth()*t
		}
		down -= f
	}
	return p[0].Oval.Girth()
}
