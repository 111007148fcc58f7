package picture

import (
	"image"
	"image/color"
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/space"
)

// lamp is where the light comes from, in the viewer's axes: right, toward the viewer, up.
var lamp = space.Point{X: -0.45, Y: 0.72, Z: 0.53}

// shadow is how dark the side turned away from the lamp is.
const shadow = 0.42

// Elevation draws the shaded mount, then the outlines of form and garment.
func (b *Body) Elevation(img *image.RGBA, v View, f Frame, p Palette) {
	if b.Empty() {
		return
	}
	b.shade(img, v, f, p)
	pen := newPen(img)
	width := max(1, 1.1*f.Scale)
	b.trace(pen, b.edges[Core][v], f, p.Form, width, 4)
	b.trace(pen, b.edges[Form][v], f, p.Form, width, 4)
	b.trace(pen, b.edges[Garment][v], f, p.Ink, 1.3*width, 0)
}

// trace draws both sides of a silhouette; the gap of its dashes is in line widths, 0 for a full line.
func (b *Body) trace(pen *pen, edge []span, f Frame, c color.NRGBA, width, dash float64) {
	var left, right []plane.Point
	for _, s := range edge {
		left = append(left, f.at(s.left, s.height))
		right = append(right, f.at(s.right, s.height))
	}
	pen.line(left, c, width, dash)
	pen.line(right, c, width, dash)
}

// shade goes through the rows of pixels; each is one slice of the skin, lit.
func (b *Body) shade(img *image.RGBA, v View, f Frame, p Palette) {
	lowest, highest := b.skin[0].height, b.skin[len(b.skin)-1].height
	first := max(img.Rect.Min.Y, int(math.Floor(f.Y-highest*f.Scale)))
	last := min(img.Rect.Max.Y-1, int(math.Ceil(f.Y-lowest*f.Scale)))
	row := newRow(img.Rect.Dx())
	i := len(b.skin) - 2
	for y := first; y <= last; y++ {
		z := (f.Y - float64(y) - 0.5) / f.Scale
		if z > highest || z < lowest {
			continue
		}
		for i > 0 && b.skin[i].height > z {
			i--
		}
		t := (z - b.skin[i].height) / (b.skin[i+1].height - b.skin[i].height)
		row.clear()
		row.slice(&b.skin[i], &b.skin[i+1], t, v, f)
		row.paint(img, y, p.Tint(between(b.clearances[i], b.clearances[i+1], t)))
	}
}

// between fades from one clearance to the next; where one of them has no garment the nearer counts.
func between(a, b, t float64) float64 {
	if math.IsNaN(a) || math.IsNaN(b) {
		if t < 0.5 {
			return a
		}
		return b
	}
	return a + t*(b-a)
}

// row is one line of pixels: how near what is seen there is, how light, and how far the slice
// reaches in fractions of pixels.
type row struct {
	near, light []float64
	left, right float64
}

func newRow(width int) *row {
	return &row{near: make([]float64, width), light: make([]float64, width), right: float64(width)}
}

// reach is the range of pixels that the slice touches.
func (r *row) reach() (first, last int) {
	return int(math.Floor(max(r.left, 0))), min(len(r.near), int(math.Floor(max(r.right, -1)))+1)
}

func (r *row) clear() {
	first, last := r.reach()
	for x := first; x < last; x++ {
		r.near[x] = math.Inf(-1)
	}
	r.left, r.right = math.Inf(1), math.Inf(-1)
}

func (r *row) slice(lower, upper *outline, t float64, v View, f Frame) {
	point := func(j int) (x, near, light float64) {
		p := lower.points[j].Lerp(upper.points[j], t)
		n := lower.normals[j].Lerp(upper.normals[j], t)
		flat := plane.Point{X: n.X, Y: n.Y}
		lit := v.across(flat)*lamp.X + v.toward(flat)*lamp.Y + n.Z*lamp.Z
		return f.X + v.across(p)*f.Scale, v.toward(p), lit
	}
	x0, near0, light0 := point(columns - 1)
	for j := range columns {
		x1, near1, light1 := point(j)
		r.left, r.right = min(r.left, x1), max(r.right, x1)
		if x1 > x0 { // faces the viewer: outlines run counter-clockwise
			r.fill(x0, x1, near0, near1, light0, light1)
		}
		x0, near0, light0 = x1, near1, light1
	}
}

func (r *row) fill(x0, x1, near0, near1, light0, light1 float64) {
	first, last := max(0, int(math.Floor(x0))), min(len(r.near)-1, int(math.Floor(x1)))
	for x := first; x <= last; x++ {
		t := min(max((float64(x)+0.5-x0)/(x1-x0), 0), 1)
		if near := near0 + t*(near1-near0); near > r.near[x] {
			r.near[x], r.light[x] = near, light0+t*(light1-light0)
		}
	}
}

// paint lays the row on the image; pixels that the slice only partly covers are partly painted.
func (r *row) paint(img *image.RGBA, y int, c color.NRGBA) {
	first, last := r.reach()
	for x := first; x < last; x++ {
		cover := min(float64(x+1), r.right) - max(float64(x), r.left)
		if math.IsInf(r.near[x], -1) || cover <= 0 {
			continue
		}
		dim := 1 - shadow*(1-math.Max(0, r.light[x]))
		c := color.NRGBA{uint8(float64(c.R) * dim), uint8(float64(c.G) * dim), uint8(float64(c.B) * dim), c.A}
		blend(img, img.Rect.Min.X+x, y, c, min(cover, 1))
	}
}
