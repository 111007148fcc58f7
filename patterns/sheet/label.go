package sheet

import (
	"fmt"
	"math"

	"understructure/assets/fonts"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
)

// Label is all that is written on a piece, in the piece's own coordinates.
type Label struct {
	Words  []drawing.Word
	Leader []plane.Point // from words that stand beside the piece to its edge; nil where they stand inside
}

// The letter sizes that are tried for a piece's name and for its marks, largest first, in
// millimetres. Below 2 mm print is no longer read at arm's length.
var (
	nameSizes = []float64{5, 4.2, 3.5, 3, 2.5, 2.1}
	markSizes = []float64{3.2, 2.6, 2.1}
)

// besideSize is the letter size of words beside a piece, leading the distance of lines in letter sizes.
const (
	besideSize = 2.6
	leading    = 1.35
)

// LabelOf finds a place for every word on a piece: inside where it fits, otherwise below it
// with a leader.
func LabelOf(pc piece.Piece) Label {
	if l, ok := written(pc, extent(pc)); ok {
		return l
	}
	l, _ := written(piece.Piece{Outline: pc.Outline, Holes: pc.Holes, Marks: pc.Marks}, extent(pc))
	return beside(pc, l)
}

// labelWithin finds places for words on the part of a piece that one tile shows. Words that do
// not fit are left to the other tiles and to the title block.
func labelWithin(pc piece.Piece, box drawing.Box) Label {
	l, _ := written(pc, box)
	return l
}

// written places the words of the marks and then the piece's own; false where there is no room for those.
func written(pc piece.Piece, box drawing.Box) (Label, bool) {
	f := newFree(pc, box)
	var l Label
	for _, m := range pc.Marks {
		if w, ok := f.onMark(m); ok {
			l.Words = append(l.Words, w)
		}
	}
	words, ok := f.block(lines(pc))
	l.Words = append(l.Words, words...)
	return l, ok
}

// lines is what a piece says of itself; the first is the heading.
func lines(pc piece.Piece) []string {
	all := []string{pc.ID, pc.Name, material(pc)}
	if s := pc.Strain * 100; s >= 0.05 {
		all = append(all, fmt.Sprintf("laid flat with %.1f %% strain", s))
	}
	var kept []string
	for _, s := range all {
		if s = fonts.Readable(s); s != "" {
			kept = append(kept, fonts.Regular.Shorten(s, 1, longestLine))
		}
	}
	return kept
}

// longestLine of a label, in letter sizes: some 70 letters.
const longestLine = 36

// block sets lines one under the other, as large as there is room, as near the middle as possible.
func (f *free) block(lines []string) ([]drawing.Word, bool) {
	if len(lines) == 0 {
		return nil, true
	}
	places := f.places(f.box.Centre())
	for _, may := range []use{empty, crossed} {
		for _, size := range nameSizes {
			w, h := 0.0, float64(len(lines))*leading*size
			for i, s := range lines {
				w = math.Max(w, fonts.Of(i == 0).Width(s, size))
			}
			for _, turn := range []float64{0, math.Pi / 2} {
				for _, p := range places {
					if f.holds(p, w+size, h+size, turn, may) {
						f.take(p, w+size, h+size, turn)
						return stacked(lines, p, w, h, size, turn), true
					}
				}
			}
		}
	}
	return nil, false
}

// stacked sets lines flush left in a block of w × h about p.
func stacked(lines []string, p plane.Point, w, h, size, turn float64) []drawing.Word {
	along := plane.Point{X: math.Cos(turn), Y: math.Sin(turn)}
	up := plane.Point{X: -along.Y, Y: along.X}
	top := p.Sub(along.Mul(w / 2)).Add(up.Mul(h / 2))
	words := make([]drawing.Word, len(lines))
	for i, s := range lines {
		down := (float64(i) + 0.5) * leading * size
		words[i] = drawing.Word{Text: s, At: top.Sub(up.Mul(down + fonts.CapHeight*size/2)), Size: size, Bold: i == 0, Turn: turn}
	}
	return words
}

// beside adds the piece's own words below it, with a leader to its edge.
func beside(pc piece.Piece, l Label) Label {
	b := extent(pc)
	own := lines(pc)
	at := plane.Point{X: b.Lo.X + edge, Y: b.Lo.Y - 2.5}
	h := float64(len(own)) * leading * besideSize
	w := 0.0
	for i, s := range own {
		w = math.Max(w, fonts.Of(i == 0).Width(s, besideSize))
	}
	l.Words = append(l.Words, stacked(own, at.Add(plane.Point{X: w / 2, Y: -h / 2}), w, h, besideSize, 0)...)
	nearest := pc.Outline[0]
	for _, q := range pc.Outline {
		if q.Dist(at) < nearest.Dist(at) {
			nearest = q
		}
	}
	l.Leader = []plane.Point{at, nearest}
	return l
}

// wording is what is written on marks that bring no words of their own.
var wording = map[piece.Kind]string{
	piece.CentreFront: "centre front",
	piece.CentreBack:  "centre back",
	piece.Side:        "side",
	piece.Feather:     "thin this edge",
	piece.Up:          "up",
}

// onMark sets the words of a mark along it, at the first place from its left end that is free.
func (f *free) onMark(m piece.Mark) (drawing.Word, bool) {
	text := m.Label
	if text == "" {
		text = wording[m.Kind]
	}
	if text = fonts.Readable(text); text == "" || len(m.Points) < 2 {
		return drawing.Word{}, false
	}
	for _, size := range markSizes {
		for _, run := range f.box.Cut(m.Points, m.Kind == piece.InnerOutline) {
			if w, ok := f.along(run, text, size, clearOf[m.Kind]); ok {
				return w, true
			}
		}
	}
	return drawing.Word{}, false
}

// clearOf is how far words keep from the middle of a mark that is broader than a line.
var clearOf = map[piece.Kind]float64{piece.Feather: featherDepth + featherWave, piece.Up: arrowHalf}

// along tries both sides of every stretch of a line.
func (f *free) along(run []plane.Point, text string, size, clear float64) (drawing.Word, bool) {
	w := fonts.Regular.Width(text, size)
	for _, p := range ticks(run, 4) {
		turn := upright(p.along)
		up := plane.Point{X: -math.Sin(turn), Y: math.Cos(turn)}
		for _, s := range []float64{1, -1} {
			centre := p.at.Add(up.Mul(s * (0.5*size + 1.4*f.cell + clear)))
			if f.holds(centre, w+2, size*0.8, turn, empty) {
				f.take(centre, w+2, size*0.8, turn)
				back := plane.Point{X: math.Cos(turn), Y: math.Sin(turn)}.Mul(w / 2)
				return drawing.Word{Text: text, At: centre.Sub(back).Sub(up.Mul(fonts.CapHeight * size / 2)), Size: size, Turn: turn}, true
			}
		}
	}
	return drawing.Word{}, false
}

// upright is the direction of a line in which words on it do not stand on their heads.
func upright(d plane.Point) float64 {
	if drawing.OnItsHead(d) {
		d = d.Mul(-1)
	}
	return math.Atan2(d.Y, d.X)
}

// tick is a place on a line and the line's direction there.
type tick struct{ at, along plane.Point }

// ticks are places on a line at equal steps, the first half a step from its beginning.
func ticks(line []plane.Point, every float64) []tick {
	var all []tick
	next := every / 2
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		l := a.Dist(b)
		for ; next <= l; next += every {
			all = append(all, tick{a.Lerp(b, next/l), b.Sub(a).Mul(1 / l)})
		}
		next -= l
	}
	return all
}
