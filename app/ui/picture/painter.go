package picture

import (
	"image"
	"image/color"
	"math"

	"understructure/geometry/fit"
	"understructure/geometry/plane"
	"understructure/geometry/space"
	"understructure/geometry/view"
)

// Scene is how a body is shown.
type Scene struct {
	Camera  view.Camera
	Frame   Frame
	Palette Palette
	Mode    Mode
	Tapes   []Tape // lines round the mount
	Lines   bool   // only lines: what lies behind stays to be seen
}

// Tape is a line round the mount, drawn as far as it lies before the figure.
type Tape struct {
	Height float64 // mm
	Colour color.NRGBA
	Width  float64 // pixels
}

// Painter draws bodies, and keeps what it needs from one picture to the next: once it has drawn
// one picture it allocates nothing for another of that size; who shows two pictures keeps two
// painters. The zero Painter is ready. It is not for two goroutines at once.
type Painter struct {
	sheets [2]*image.RGBA
	turn   int

	grid  grid
	seen  []corner
	front []bool // of two triangles a cell, whether they are turned to the viewer
	mends []mend

	ramp    ramp
	rampFor rampKey

	hatching [fit.Bands]pattern

	pen         pen
	masks       [2]mask
	left, right []space.Point
	line, back  []plane.Point
}

type rampKey struct {
	palette Palette
	mode    Mode
	staged  bool
	made    bool
}

// Sheet returns an empty image of a size. It is one of two, so that the picture handed out last
// may still be on show while the next is drawn; the one before that is drawn over.
func (p *Painter) Sheet(w, h int) *image.RGBA {
	p.turn = 1 - p.turn
	s := &p.sheets[p.turn]
	if size := image.Rect(0, 0, w, h); *s == nil || (*s).Rect != size {
		*s = image.NewRGBA(size)
	} else {
		clear((*s).Pix)
	}
	return *s
}

// Figure draws the shaded mount, then the outlines of foam, form and garment, and the tapes.
func (p *Painter) Figure(img *image.RGBA, b *Body, s Scene) {
	if b.Empty() || img.Rect.Empty() {
		return
	}
	if !s.Lines {
		p.shade(img, b, s)
	}
	p.pen.on(img)
	width := s.Frame.lineWidth()
	if s.Lines {
		width = min(width, fineLine)
		p.contours(b, Built, s, s.Palette.Wanted, width, 0)
	}
	if b.layers == nil { // at a stage, its colours tell
		p.contours(b, Core, s, s.Palette.Form, width, 4)
		p.contours(b, Form, s, s.Palette.Form, width, 4)
	}
	p.contours(b, Garment, s, s.Palette.Ink, 1.3*width, 0)
	for _, t := range s.Tapes {
		p.round(b.tape(t.Height), t.Height, s, t.Colour, t.Width, 0)
	}
}

// A line is a little wider than a millimetre, and never too fine to see. In a large picture, where a millimetre
// is more than boldLine pixels, it grows only with the root of the scale: it is to be looked at, not read from afar.
const boldLine = 1.4

// fineLine is as wide as a line becomes over something else, such as a photograph, that is looked at from very near.
const fineLine = 2

// lineWidth is how wide a line is, in pixels.
func (f Frame) lineWidth() float64 {
	w := max(1, 1.1*f.Scale)
	if w > boldLine {
		w = math.Sqrt(w * boldLine)
	}
	return w
}

// contours draws both sides of the contour of one kind of outline and, where one looks from above or below, the
// near side of its ends; a dash of 0 is a full line.
func (p *Painter) contours(b *Body, kind Kind, s Scene, c color.NRGBA, width, dash float64) {
	for _, k := range b.skins[kind]() {
		p.left, p.right = s.Camera.AppendContour(p.left[:0], p.right[:0], k.Surface, k.normals())
		for _, side := range [2][]space.Point{p.left, p.right} {
			p.line = p.line[:0]
			for _, q := range side {
				p.line = append(p.line, s.Frame.at(q.X, q.Z))
			}
			p.pen.line(p.line, c, width, dash)
		}
		if !s.Camera.Level() {
			p.round(k.ends()[0], k.Bottom(), s, c, width, dash)
			p.round(k.ends()[1], k.Top(), s, c, width, dash)
		}
	}
}

// round draws the near side of a level line round the figure.
func (p *Painter) round(ring plane.Ring, z float64, s Scene, c color.NRGBA, width, dash float64) {
	p.line, p.back = s.Camera.AppendRound(p.line[:0], p.back[:0], ring, z)
	for i, q := range p.line {
		p.line[i] = s.Frame.at(q.X, q.Y)
	}
	p.pen.line(p.line, c, width, dash)
}

// shade draws the mount itself.
func (p *Painter) shade(img *image.RGBA, b *Body, s Scene) {
	p.colours(rampKey{s.Palette, s.Mode, b.layers != nil, true})
	if s.Mode == Clearance {
		p.hatch(b, s, img.Rect)
	}
	p.project(b, s, img.Rect)
	p.grid.begin(img.Rect, p.seen)
	p.fillNets(b.mesh)
	p.lay(img)
	p.smooth(img, b.mesh, s.Frame)
}

// colours makes the colours ready.
func (p *Painter) colours(key rampKey) {
	if key == p.rampFor {
		return
	}
	p.rampFor = key
	switch {
	case key.mode == Clearance:
		p.ramp = clearanceRamp(key.palette)
	case key.staged:
		p.ramp = stageRamp(key.palette)
	default:
		p.ramp = plainRamp(key.palette)
	}
}

// corner is a point of the mesh as seen: where on the image, how near, how light and in which colour.
type corner struct {
	x, y        float32 // pixels from the image's corner
	near        float32 // mm toward the viewer
	light, code float32
}

func (p *Painter) project(b *Body, s Scene, r image.Rectangle) {
	rightward, toward, up := s.Camera.Axes()
	right, near, high := small(rightward), small(toward), small(up)
	scale := float32(s.Frame.Scale)
	x0, y0 := float32(s.Frame.X-float64(r.Min.X)), float32(s.Frame.Y-float64(r.Min.Y))
	lit := lamps(s.Mode, right, near, high)
	codes := b.codes[s.Mode]()
	if n := len(b.mesh.points); cap(p.seen) < n {
		p.seen, p.front = make([]corner, n), make([]bool, 2*n)
	} else {
		p.seen, p.front = p.seen[:n], p.front[:2*n]
	}
	for i, q := range b.mesh.points {
		p.seen[i] = corner{
			x: x0 + scale*right.dot(q), y: y0 - scale*high.dot(q), near: near.dot(q),
			light: lit.on(b.mesh.normals[i]), code: codes[i],
		}
	}
}

var nothing = float32(math.Inf(-1))
