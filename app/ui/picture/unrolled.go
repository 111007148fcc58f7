package picture

import (
	"image"
	"image/color"
	"math"

	"understructure/geometry/fit"
	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// Unrolled is the mount's skin laid out flat as a map: height upward, and across it the way
// round the figure as seen from outside, from centre back over its right side, centre front and
// its left side to centre back again, so that it lies like the front view.
type Unrolled struct {
	body *Body
	area image.Rectangle
}

// Unroll lays the map of a body into an area of an image.
func (b *Body) Unroll(area image.Rectangle) Unrolled { return Unrolled{b, area} }

// Balance is one of the upright lines of the map.
type Balance struct {
	Name string // "back", "right", "front", "left"
	X    float64
}

// Balances are the balance lines, from left to right; the back is at both ends.
func (u Unrolled) Balances() []Balance {
	var out []Balance
	for q := range 5 {
		turn := section.Back + q*section.Directions/4
		out = append(out, Balance{fit.Side(turn % section.Directions), float64(u.area.Min.X) + float64(q*u.area.Dx())/4})
	}
	return out
}

// Place returns the height of a pixel, in millimetres, and its direction as package section counts
// them, from 0 to section.Directions; false outside the map.
func (u Unrolled) Place(x, y float64) (z, turn float64, ok bool) {
	if u.body.Empty() || u.area.Empty() {
		return 0, 0, false
	}
	across := (x - float64(u.area.Min.X)) / float64(u.area.Dx())
	up := (float64(u.area.Max.Y) - y) / float64(u.area.Dy())
	if across < 0 || across > 1 || up < 0 || up > 1 {
		return 0, 0, false
	}
	turn = math.Mod(section.Back+across*section.Directions, section.Directions)
	return u.body.Low.Z + up*(u.body.High.Z-u.body.Low.Z), turn, true
}

// Spot returns the pixel of a height and a direction: the other way round than Place.
func (u Unrolled) Spot(z, turn float64) (x, y float64) {
	across := math.Mod(turn+section.Directions-section.Back, section.Directions) / section.Directions
	up := (z - u.body.Low.Z) / (u.body.High.Z - u.body.Low.Z)
	return float64(u.area.Min.X) + across*float64(u.area.Dx()), float64(u.area.Max.Y) - up*float64(u.area.Dy())
}

// ClearanceAt returns the clearance at a point, in millimetres, and that of the tape at its height, in
// millimetres of girth; false where there is nothing to compare.
func (b *Body) ClearanceAt(z, turn float64) (point, tape float64, ok bool) {
	rounds := b.Clearance()
	i, t, ok := between(rounds, z)
	if !ok {
		return 0, 0, false
	}
	a, c := &rounds[i], &rounds[i+1]
	j, u := math.Modf(turn)
	along := func(r *fit.Round) float64 {
		k := int(j) & (columns - 1)
		return r.Point[k] + u*(r.Point[(k+1)&(columns-1)]-r.Point[k])
	}
	return along(a) + t*(along(c)-along(a)), a.Tape + t*(c.Tape-a.Tape), true
}

// farRounds is how far apart two heights may be and still have something between them, mm.
const farRounds = 30.0

// between finds the heights around z.
func between(rounds []fit.Round, z float64) (i int, t float64, ok bool) {
	for i := 1; i < len(rounds); i++ {
		lo, hi := rounds[i-1].Height, rounds[i].Height
		if z >= lo && z <= hi {
			return i - 1, (z - lo) / (hi - lo), hi-lo <= farRounds
		}
	}
	return 0, 0, false
}

// MapScene is how a map is shown.
type MapScene struct {
	Palette Palette
	Levels  []float64 // heights at which a line is drawn across, mm
	Line    float64   // width of a line, pixels
}

// Map draws the clearance all over the mount, in the colours and the hatching of the Clearance mode,
// without light and shade.
func (p *Painter) Map(img *image.RGBA, u Unrolled, s MapScene) {
	b := u.body
	area := u.area.Intersect(img.Rect)
	if b.Empty() || area.Empty() || len(b.Clearance()) < 2 {
		return
	}
	p.colours(rampKey{s.Palette, Clearance, false, true})
	for band, look := range s.Palette.Legend() {
		p.hatching[band].make(look.Hatch, s.Line, area.Dx(), area.Dy(), 0, 0)
	}
	for y := area.Min.Y; y < area.Max.Y; y++ {
		z, _, _ := u.Place(float64(area.Min.X), float64(y)+0.5)
		i, t, ok := between(b.Clearance(), z)
		if !ok {
			continue
		}
		p.mapRow(img.Pix[img.PixOffset(area.Min.X, y):], u, area, y, &b.felt()[i], &b.felt()[i+1], float32(t))
	}
	p.mapLines(img, u, s)
}

// mapRow draws the row of pixels a part t of the way from one height to the next.
func (p *Painter) mapRow(pix []uint8, u Unrolled, area image.Rectangle, y int, lower, upper *[columns]float32, t float32) {
	step := float32(columns) / float32(u.area.Dx())
	turn := section.Back + (float32(area.Min.X-u.area.Min.X)+0.5)*step
	for x := range area.Dx() {
		j := int(turn)
		k, l, f := j&(columns-1), (j+1)&(columns-1), turn-float32(j)
		lo := lower[k] + f*(lower[l]-lower[k])
		hi := upper[k] + f*(upper[l]-upper[k])
		c := p.hatched(int(lo+t*(hi-lo)), x, y-area.Min.Y)
		q := pix[4*x : 4*x+4 : 4*x+4]
		q[0], q[1], q[2], q[3] = uint8(c.r), uint8(c.g), uint8(c.b), 255
		turn += step
	}
}

func (p *Painter) mapLines(img *image.RGBA, u Unrolled, s MapScene) {
	p.pen.on(img)
	line := func(x0, y0, x1, y1 float64, c color.NRGBA, width, dash float64) {
		p.line = append(p.line[:0], plane.Point{X: x0, Y: y0}, plane.Point{X: x1, Y: y1})
		p.pen.line(p.line, c, width, dash)
	}
	left, right := float64(u.area.Min.X)+s.Line/2, float64(u.area.Max.X)-s.Line/2
	ink := s.Palette.Ink
	ink.A = 0x70
	for _, z := range s.Levels {
		if z > u.body.Low.Z && z < u.body.High.Z {
			_, y := u.Spot(z, 0)
			line(left, math.Round(y)+0.5, right, math.Round(y)+0.5, ink, s.Line, 0)
		}
	}
	for q := 1; q < 4; q++ {
		x := math.Round(left+float64(q)*(right-left)/4) + 0.5
		line(x, float64(u.area.Min.Y)+s.Line/2, x, float64(u.area.Max.Y)-s.Line/2, ink, s.Line, 4)
	}
}
