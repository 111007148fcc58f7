package picture

import (
	"image"
	"math"

	"understructure/patterns/swatch"
)

// pattern is hatching ready to be laid: how much of each pixel a line covers, along a row.
type pattern struct {
	cover []uint8
	slope int
	shift int // what brings the lowest index to 0
}

// at is how much of a pixel is covered, 0 to 255.
func (p *pattern) at(x, y int) int32 { return int32(p.cover[x+p.slope*y+p.shift]) }

// make lays the lines of a hatching w × h pixels large, one of them through the point given.
func (p *pattern) make(h swatch.Hatch, width float64, w, tall int, x, y float64) {
	p.slope, p.shift = h.Slope, 0
	if h.Slope < 0 {
		p.shift = tall
	}
	if n := w + tall + 1; cap(p.cover) < n {
		p.cover = make([]uint8, n)
	} else {
		p.cover = p.cover[:n]
	}
	period := h.Gap * width * math.Sqrt2
	origin := x + float64(h.Slope)*y + float64(p.shift)
	for i := range p.cover {
		off := math.Remainder(float64(i)+0.5*float64(1+h.Slope)-origin, period) / math.Sqrt2
		p.cover[i] = uint8(255 * max(0, min(1, width/2+0.5-math.Abs(off))))
	}
}

// hatch makes the hatchings ready: fixed to the picture, so that they are even everywhere, but
// moved along with the front of the figure as it turns.
func (p *Painter) hatch(b *Body, s Scene, img image.Rectangle) {
	x, y := s.Frame.X-float64(img.Min.X), s.Frame.Y-float64(img.Min.Y)
	width := 0.9 * s.Frame.lineWidth()
	for band, look := range s.Palette.Legend() {
		if look.Hatch.Slope == 0 {
			continue
		}
		period := look.Hatch.Gap * width * math.Sqrt2
		round := math.Round(b.round()*s.Frame.Scale/period) * period // whole lines once round
		p.hatching[band].make(look.Hatch, width, img.Dx(), img.Dy(), x-round*s.Camera.Yaw()/(2*math.Pi), y)
	}
}

// round is about how far it is round the figure, mm.
func (b *Body) round() float64 {
	return math.Pi * (b.High.X - b.Low.X + b.High.Y - b.Low.Y) / 2
}
