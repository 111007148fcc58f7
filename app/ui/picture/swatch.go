package picture

import (
	"image"

	"understructure/patterns/swatch"
)

// Swatch fills an area with a colour of the legend and its hatching, with lines of a width in
// pixels: as a figure in the Clearance mode has them where it is fully lit.
func (p *Painter) Swatch(img *image.RGBA, area image.Rectangle, s swatch.Swatch, line float64) {
	area = area.Intersect(img.Rect)
	if area.Empty() {
		return
	}
	lines := &p.hatching[s.Band]
	if s.Hatch.Slope != 0 {
		lines.make(s.Hatch, line, area.Dx(), area.Dy(), 0, 0)
	}
	for y := range area.Dy() {
		for x := range area.Dx() {
			c := s.Colour
			if s.Hatch.Slope != 0 {
				c = mix(c, s.Hatch.Colour, float64(lines.at(x, y))/255)
			}
			img.Set(area.Min.X+x, area.Min.Y+y, c)
		}
	}
}
