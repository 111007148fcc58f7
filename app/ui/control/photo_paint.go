package control

import (
	"encoding/binary"
	"image"
	"math"

	"fyne.io/fyne/v2"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/plane"
)

// photoGround is the photograph as it was painted last, for as long as nothing but lines over it change.
type photoGround struct {
	of  groundOf
	img *image.RGBA
}

// groundOf is all that the painted photograph depends on.
type groundOf struct {
	first             *image.RGBA
	origin, side, end plane.Point // where in its first size the picture's upper corners and its lower right corner lie
	size              fyne.Size
	fade              float64
}

// groundNow is what would be painted in a view of a size.
func (s *PhotoStage) groundNow(size fyne.Size) groundOf {
	if s.laid.Placing == nil || len(s.laid.Sizes) == 0 {
		return groundOf{size: size}
	}
	f := s.frame()
	at := func(x, y float32) plane.Point {
		return s.laid.Placing.Pixel(inView(f, float64(x), float64(y)).Sub(s.hand.shift)).Mul(1 / s.laid.Shrunk)
	}
	return groundOf{s.laid.Sizes[0], at(0, 0), at(size.Width, 0), at(size.Width, size.Height), size, s.laid.Fade}
}

// paint draws the photograph and the outlines over it.
func (s *PhotoStage) paint(w, h int) image.Image {
	img := s.painter.Sheet(w, h)
	if s.Size().Width == 0 || w == 0 || h == 0 {
		return img
	}
	now := s.groundNow(s.Size())
	if now != s.ground.of || s.ground.img == nil || s.ground.img.Rect != img.Rect {
		s.ground = photoGround{now, image.NewRGBA(img.Rect)}
		layPhoto(s.ground.img, s.laid.Sizes, now)
	}
	copy(img.Pix, s.ground.img.Pix)
	f, pixels := s.frame(), float64(w)/float64(s.Size().Width)
	f = picture.Frame{Scale: f.Scale * pixels, X: f.X * pixels, Y: f.Y * pixels}
	s.painter.Figure(img, s.body, picture.Scene{Camera: s.camera, Frame: f, Palette: look.Palette(), Lines: true})
	return img
}

// layPhoto paints a photograph, faded: it is only turned, scaled and moved, so that three corners tell where
// all the rest lies. It is taken from the size that has about as many pixels as are seen.
func layPhoto(img *image.RGBA, sizes []*image.RGBA, g groundOf) {
	if len(sizes) == 0 {
		return
	}
	w, h := float64(img.Rect.Dx()), float64(img.Rect.Dy())
	right, down := g.side.Sub(g.origin).Mul(1/w), g.end.Sub(g.side).Mul(1/h)
	k := int(max(0, min(math.Round(math.Log2(max(right.Norm(), 1))), float64(len(sizes)-1))))
	from, times := sizes[k], 1/float64(int(1)<<k)
	right, down = right.Mul(times), down.Mul(times)
	first := g.origin.Mul(times).Add(right.Add(down).Mul(0.5)).Sub(plane.Point{X: 0.5, Y: 0.5}) // middles of pixels
	seen := uint32(math.Round(256 * (1 - g.fade)))
	for y := range img.Rect.Dy() {
		at := first.Add(down.Mul(float64(y)))
		lo, hi := within(at.X, right.X, from.Rect.Dx(), 0, img.Rect.Dx())
		lo, hi = within(at.Y, right.Y, from.Rect.Dy(), lo, hi)
		if lo < hi {
			layRow(img.Pix[img.PixOffset(lo, y):][:4*(hi-lo)], from, at.Add(right.Mul(float64(lo))), right, seen)
		}
	}
}

// within narrows a range of steps to those at which a coordinate has a neighbour on either side to be mixed with.
func within(from, step float64, size, lo, hi int) (int, int) {
	a, b := (0-from)/step, (float64(size-1)-from)/step
	if math.Abs(step) < 1e-12 {
		if from < 0 || from >= float64(size-1) {
			return 0, 0
		}
		return lo, hi
	}
	if a > b {
		a, b = b, a
	}
	// A thousandth of a step inwards: the row adds its steps up, and must not end beyond.
	return max(lo, int(math.Ceil(max(a+1e-3, -1)))), min(hi, int(math.Ceil(min(b-1e-3, 1e9))))
}

// layRow paints one row, each pixel mixed from the four nearest, in 16 bits of fraction.
func layRow(row []uint8, from *image.RGBA, at, step plane.Point, seen uint32) {
	u, v := int64(at.X*65536), int64(at.Y*65536)
	du, dv := int64(step.X*65536), int64(step.Y*65536)
	word := binary.LittleEndian
	for ; len(row) >= 4; row = row[4:] {
		above := from.Pix[int(v>>16)*from.Stride+4*int(u>>16):]
		below := above[from.Stride:]
		x, y := uint32(u>>8)&0xff, uint32(v>>8)&0xff
		upper := mixed(word.Uint32(above), word.Uint32(above[4:]), x)
		lower := mixed(word.Uint32(below), word.Uint32(below[4:]), x)
		word.PutUint32(row, mixed(0, mixed(upper, lower, y), seen))
		u, v = u+du, v+dv
	}
}

// mixed is part, of 256, of the second colour and the rest of the first: two channels at a time.
func mixed(a, b, part uint32) uint32 {
	const two = 0x00ff00ff
	even := (a&two*(256-part) + b&two*part) >> 8 & two
	odd := (a>>8&two*(256-part) + b>>8&two*part) &^ two
	return even | odd
}
