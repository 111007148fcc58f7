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
// The words are set so that they are read from the foot or the right of a page on which the piece is turned or not.
func LabelOf(pc piece.Piece, quarter bool) Label {
	it := Item{Piece: pc, Turned: quarter}
	if l, ok := it.written(extent(pc)); ok {
		return l
	}
	return it.beside()
}

// within finds places for words on the part of a piece that one tile shows. Words that do
// not fit are left to the other tiles and to the title block.
func (it Item) within(box drawing.Box) Label {
	l, _ := it.written(box)
	return l
}

// written places the words of the marks and seams and then the piece's own; false where there is no room for
// more of those than the heading.
func (it Item) written(box drawing.Box) (Label, bool) {
	f, l := it.marked(box)
	own := it.lines()
	words, ok := f.block(own)
	if !ok && len(own) > 1 {
		words, _ = f.block(own[:1])
	}
	l.Words = append(l.Words, words...)
	return l, ok
}

// marked places the words of the marks and seams, and returns what is free then.
func (it Item) marked(box drawing.Box) (*free, Label) {
	f := newFree(it.Piece, box, turnOf(it.Turned))
	var l Label
	for _, m := range it.Piece.Marks {
		if w, ok := f.onMark(m); ok {
			l.Words = append(l.Words, w)
		}
	}
	for _, s := range it.Piece.Seams {
		if w, ok := f.onSeam(s); ok {
			l.Words = append(l.Words, w)
		}
	}
	return f, l
}

// lines is what a template says of itself; the first is the heading.
func (it Item) lines() []string {
	pc := it.Piece
	all := []string{it.Name(), pc.Name, it.material()}
	if it.Twin != "" {
		all = append(all, it.turnedOver())
	}
	if s := pc.Strain * 100; s >= 0.05 {
		all = append(all, fmt.Sprintf("laid flat with %.1f %% strain", s))
	}
	if pc.Sewn() {
		all = append(all, "cut the outer line, sew the broken one")
	}
	var kept []string
	for i, s := range all {
		broken := fonts.Regular.Wrap(fonts.Readable(s), 1, longestLine)
		if i == 0 {
			broken = broken[:min(1, len(broken))]
		}
		kept = append(kept, broken[:min(mostLines, len(broken))]...)
	}
	return kept
}

// longestLine of a label, in letter sizes, some 40 letters; a longer text goes on in a second line.
const (
	longestLine = 20
	mostLines   = 2
)

// block sets lines one under the other, as large as there is room, as near the middle as possible.
func (f *free) block(lines []string) ([]drawing.Word, bool) {
	if len(lines) == 0 {
		return nil, true
	}
	places, taken := f.places(f.box.Centre()), f.tally()
	for _, size := range nameSizes {
		w, h := blockSize(lines, size)
		for _, turn := range []float64{-f.base, math.Pi/2 - f.base} {
			wide, high := w+size, h+size/2
			if math.Abs(math.Sin(turn)) > 0.5 { // a piece lies on its page at quarter turns alone
				wide, high = high, wide
			}
			for _, p := range places {
				if taken.empty(p, wide, high) {
					f.take(p, w+size, h+size/2, turn)
					return stacked(lines, p, w, h, size, turn), true
				}
			}
		}
	}
	return nil, false
}

// blockSize is the size of a block of lines; the first is bold.
func blockSize(lines []string, size float64) (w, h float64) {
	for i, s := range lines {
		w = math.Max(w, fonts.Of(i == 0).Width(s, size))
	}
	return w, float64(len(lines)) * leading * size
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

// beside sets the words of marks and seams inside, and the piece's own below it, as it lies on the page, with a leader to
// its edge.
func (it Item) beside() Label {
	pc, quarter := it.Piece, it.Turned
	_, l := it.marked(extent(pc))
	b := extent(pc)
	along, up := plane.Point{X: 1}, plane.Point{Y: 1}
	at := plane.Point{X: b.Lo.X + edge, Y: b.Lo.Y - 2.5}
	if quarter {
		along, up = plane.Point{Y: -1}, plane.Point{X: 1}
		at = plane.Point{X: b.Lo.X - 2.5, Y: b.Hi.Y - edge}
	}
	own := it.lines()
	w, h := blockSize(own, besideSize)
	middle := at.Add(along.Mul(w / 2)).Sub(up.Mul(h / 2))
	l.Words = append(l.Words, stacked(own, middle, w, h, besideSize, -turnOf(quarter))...)
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
	piece.Step:        "cut square, against the step",
	piece.Up:          "up",
}

// onMark sets the words of a mark along it, at the first place from its left end that is free.
func (f *free) onMark(m piece.Mark) (drawing.Word, bool) {
	text := m.Label
	if text == "" {
		text = wording[m.Kind]
	}
	if text = fonts.Readable(text); text == "" || len(m.Points) == 0 {
		return drawing.Word{}, false
	}
	for _, size := range markSizes {
		if m.Kind == piece.Pin {
			if w, ok := f.byPin(m.Points[0], text, size); ok {
				return w, true
			}
		}
		for _, run := range f.box.Cut(m.Points, m.Kind.Closed()) {
			if w, ok := f.along(run, text, size, clearOf[m.Kind]); ok {
				return w, true
			}
		}
	}
	return drawing.Word{}, false
}

// onSeam says along a sewn seam what it is sewn to.
func (f *free) onSeam(s piece.Seam) (drawing.Word, bool) {
	if s.Kind != "sewn" {
		return drawing.Word{}, false
	}
	for _, size := range markSizes {
		for _, run := range f.box.Cut(s.Points, false) {
			if w, ok := f.along(run, fonts.Readable("to "+s.To), size, 0); ok {
				return w, true
			}
		}
	}
	return drawing.Word{}, false
}

// clearOf is how far words keep from the middle of a mark that is broader than a line.
var clearOf = map[piece.Kind]float64{piece.Feather: featherDepth + featherWave, piece.Up: arrowHalf + 0.75}

// along tries both sides of every stretch of a line.
func (f *free) along(run []plane.Point, text string, size, clear float64) (drawing.Word, bool) {
	w := fonts.Regular.Width(text, size)
	for _, p := range ticks(run, 4) {
		turn := f.upright(p.along)
		up := plane.Point{X: -math.Sin(turn), Y: math.Cos(turn)}
		for _, s := range []float64{1, -1} {
			centre := p.at.Add(up.Mul(s * (0.5*size + 1.4*f.cell + clear)))
			if word, ok := f.set(text, size, centre, w, turn); ok {
				return word, true
			}
		}
	}
	return drawing.Word{}, false
}

// byPin tries the four sides of a pin.
func (f *free) byPin(p plane.Point, text string, size float64) (drawing.Word, bool) {
	w := fonts.Regular.Width(text, size)
	along := plane.Point{X: math.Cos(f.base), Y: -math.Sin(f.base)}
	reach := 1.5*pinRadius + 1.4*f.cell
	for _, d := range []plane.Point{along.Mul(reach + w/2 + 1), along.Mul(-reach - w/2 - 1), left(along).Mul(reach + size/2), left(along).Mul(-reach - size/2)} {
		if word, ok := f.set(text, size, p.Add(d), w, -f.base); ok {
			return word, true
		}
	}
	return drawing.Word{}, false
}

// set sets a line of text of width w about a place, where that is free.
func (f *free) set(text string, size float64, centre plane.Point, w, turn float64) (drawing.Word, bool) {
	if !f.holds(centre, w+2, size*0.8, turn) {
		return drawing.Word{}, false
	}
	f.take(centre, w+2, size*0.8, turn)
	along := plane.Point{X: math.Cos(turn), Y: math.Sin(turn)}
	return drawing.Word{Text: text, At: centre.Sub(along.Mul(w / 2)).Sub(left(along).Mul(fonts.CapHeight * size / 2)), Size: size, Turn: turn}, true
}

// upright is the direction of a line in which words on it do not stand on their heads on the page.
func (f *free) upright(d plane.Point) float64 {
	turn := math.Atan2(d.Y, d.X)
	onPage := turn + f.base
	if drawing.OnItsHead(plane.Point{X: math.Cos(onPage), Y: math.Sin(onPage)}) {
		turn += math.Pi
	}
	return turn
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
