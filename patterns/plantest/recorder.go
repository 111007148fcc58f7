package plantest

import (
	"fmt"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
)

// Stroke is a line that was drawn.
type Stroke struct {
	Layer  drawing.Layer
	Points []plane.Point
	Closed bool
	Pen    drawing.Pen
}

// Recorder is a canvas that remembers what was drawn.
type Recorder struct {
	Lines []Stroke
	Words []drawing.Word
	Fills [][]plane.Point
	layer drawing.Layer
}

// On is part of drawing.Canvas.
func (r *Recorder) On(l drawing.Layer) { r.layer = l }

// Line is part of drawing.Canvas.
func (r *Recorder) Line(p []plane.Point, closed bool, pen drawing.Pen) {
	r.Lines = append(r.Lines, Stroke{r.layer, p, closed, pen})
}

// Fill is part of drawing.Canvas.
func (r *Recorder) Fill(p []plane.Point, _ drawing.Colour) { r.Fills = append(r.Fills, p) }

// Word is part of drawing.Canvas.
func (r *Recorder) Word(w drawing.Word) { r.Words = append(r.Words, w) }

// Faults lists words that stand on each other, and words that leave a page.
func (r *Recorder) Faults(page drawing.Box) []string {
	var all []string
	for i, w := range r.Words {
		for _, c := range w.Corners() {
			if !page.Contains(c) {
				all = append(all, fmt.Sprintf("%q leaves the page at (%.1f, %.1f)", w.Text, c.X, c.Y))
				break
			}
		}
		for _, v := range r.Words[:i] {
			if Apart(ink(w), ink(v)) {
				continue
			}
			all = append(all, fmt.Sprintf("%q stands on %q", w.Text, v.Text))
		}
	}
	return all
}

// Beyond are the corners of lines that lie outside a box.
func (r *Recorder) Beyond(box drawing.Box) []plane.Point {
	var out []plane.Point
	for _, l := range r.Lines {
		for _, q := range l.Points {
			if !box.Contains(q) {
				out = append(out, q)
			}
		}
	}
	return out
}

// ink is the box of a word without the room for accents: base line to capitals' height.
func ink(w drawing.Word) []plane.Point {
	c := w.Corners()
	from, to := 0.212/1.117, (0.212+0.688)/1.117 // Descent and CapHeight in the box from tails to accents
	return []plane.Point{c[0].Lerp(c[3], from), c[1].Lerp(c[2], from), c[1].Lerp(c[2], to), c[0].Lerp(c[3], to)}
}

// Apart reports whether two convex outlines have a line between them (the separating axis theorem).
func Apart(a, b []plane.Point) bool {
	for _, pair := range [][2][]plane.Point{{a, b}, {b, a}} {
		for i, p := range pair[0] {
			d := pair[0][(i+1)%len(pair[0])].Sub(p)
			beyond := true
			for _, q := range pair[1] {
				beyond = beyond && d.Cross(q.Sub(p)) <= 0
			}
			if beyond {
				return true
			}
		}
	}
	return false
}
