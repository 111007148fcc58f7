package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// gap is the paper left between two pieces, enough for a hand with scissors
// (common practice, no published source).
const gap = 6.0

// edge is kept free round every piece, so that the whole width of its line is printed.
const edge = 1.0

// laid is one page with what is needed to put it in order.
type laid struct {
	first int // the number of its first piece
	page  Page
}

// Lay puts every piece of the plan on its paper. Pages come in the order of their first pieces.
func Lay(p plan.Plan) ([]Page, error) {
	if err := Check(p.Paper); err != nil {
		return nil, err
	}
	scale := plane.Point{X: p.Paper.ScaleX, Y: p.Paper.ScaleY}
	p.Paper = trueSize(p.Paper)
	f := field(p.Paper.Width, p.Paper.Height)
	var pages []laid
	var small []int
	for i, pc := range p.Pieces {
		if err := drawable(pc); err != nil {
			return nil, err
		}
		if cut := division(pc, f); cut.count() > 1 {
			pages = append(pages, tiles(p, i, cut)...)
		} else {
			small = append(small, i)
		}
	}
	pages = append(pages, shared(p, small, f)...)
	slices.SortStableFunc(pages, func(a, b laid) int { return cmp.Compare(a.first, b.first) })
	all := make([]Page, len(pages))
	for i, l := range pages {
		all[i] = l.page
		all[i].Scale = scale
		all[i].Title.Object = object(p.Object)
		all[i].Title.Page = fmt.Sprintf("page %d of %d", i+1, len(pages))
	}
	return all, nil
}

// drawable refuses a piece without an outline, or with a point that is nowhere.
func drawable(pc piece.Piece) error {
	if len(pc.Outline) < 3 {
		return fmt.Errorf("sheet: piece %q: outline of %d points, want at least 3", pc.ID, len(pc.Outline))
	}
	lines := [][]plane.Point{pc.Outline}
	for _, h := range pc.Holes {
		lines = append(lines, h)
	}
	for _, m := range pc.Marks {
		lines = append(lines, m.Points)
	}
	for _, l := range lines {
		for _, q := range l {
			if d := math.Abs(q.X) + math.Abs(q.Y); !(d < longest) {
				return fmt.Errorf("sheet: piece %q: point (%g, %g), want at most %g mm from the origin", pc.ID, q.X, q.Y, longest)
			}
		}
	}
	return nil
}

// longest is farther than anything worn reaches: 100 m.
const longest = 1e5

// shared packs the pieces that fit on one page with others, the tallest first.
func shared(p plan.Plan, small []int, f drawing.Box) []laid {
	type ready struct {
		number int
		item   Item
		box    drawing.Box // on paper, before it is moved to its place
	}
	all := make([]ready, len(small))
	for k, i := range small {
		it := whole(p.Pieces[i], f)
		all[k] = ready{i, it, footprint(it)}
	}
	slices.SortStableFunc(all, func(a, b ready) int { return cmp.Compare(b.box.Height(), a.box.Height()) })
	var bins []*skyline
	var on [][]ready
	for _, r := range all {
		w, h := r.box.Width()+gap, r.box.Height()+gap
		k, at := firstPlace(bins, w, h)
		if k == len(bins) {
			bins = append(bins, newSkyline(f.Width()+gap, f.Height()+gap))
			on = append(on, nil)
			at, _ = bins[k].place(w, h)
		}
		r.item.Offset = f.Lo.Add(at).Sub(r.box.Lo)
		on[k] = append(on[k], r)
	}
	pages := make([]laid, len(on))
	for k, rs := range on {
		slices.SortFunc(rs, func(a, b ready) int { return a.number - b.number })
		pg := Page{Width: p.Paper.Width, Height: pageHeight(p.Paper, bins[k].height()-gap)}
		var numbers []int
		for _, r := range rs {
			r.item.Clip = field(pg.Width, pg.Height)
			pg.Items = append(pg.Items, r.item)
			numbers = append(numbers, r.number)
		}
		pg.Title = titleOf(p, numbers)
		pages[k] = laid{numbers[0], pg}
	}
	return pages
}

// whole is a piece that fits on the field, turned where it must be, with its words.
func whole(pc piece.Piece, f drawing.Box) Item {
	it := Item{Piece: pc, Turned: !fits(pc, f) && fitsTurned(pc, f)}
	it.Label = LabelOf(pc, it.Turned)
	if b := footprint(it); b.Width() > f.Width() || b.Height() > f.Height() {
		it.Label = labelWithin(pc, extent(pc), it.Turned) // no room below
	}
	return it
}

func firstPlace(bins []*skyline, w, h float64) (int, plane.Point) {
	for k, b := range bins {
		if at, ok := b.place(w, h); ok {
			return k, at
		}
	}
	return len(bins), plane.Point{}
}

// pageHeight is that of the paper; of a roll, no more than the pieces need.
func pageHeight(p plan.Paper, used float64) float64 {
	if !p.Roll {
		return p.Height
	}
	return math.Min(p.Height, math.Max(LeastHeight, math.Ceil(used+2*margin+foot)))
}

// footprint is the box round a piece, its marks and its words.
func footprint(it Item) drawing.Box {
	b := drawing.Empty()
	for _, q := range extent(it.Piece).Corners() {
		b = b.Round(turned(q, it.Turned))
	}
	for _, w := range it.Label.Words {
		for _, q := range w.Corners() {
			b = b.Round(turned(q, it.Turned))
		}
	}
	return b
}

// extent is the box round a piece and its marks.
func extent(pc piece.Piece) drawing.Box {
	b := drawing.Empty().Round(pc.Outline...)
	for _, m := range pc.Marks {
		b = b.Round(m.Points...)
	}
	return b.Grow(edge)
}

func object(o plan.Object) string {
	parts := []string{o.Number, o.Title}
	if o.Notice != "" {
		parts = append(parts, "("+o.Notice+")")
	}
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), "  ")
}

// titleOf names the pieces on a page of whole pieces; numbers count from 0 and rise.
func titleOf(p plan.Plan, numbers []int) Title {
	if len(numbers) == 1 {
		pc := p.Pieces[numbers[0]]
		return Title{Piece: named(pc, numbers[0], len(p.Pieces)), Material: material(pc)}
	}
	var names, materials []string
	for _, i := range numbers {
		pc := p.Pieces[i]
		names = append(names, fmt.Sprintf("%s (%d)", pc.ID, i+1))
		if m := material(piece.Piece{Material: pc.Material, Thickness: pc.Thickness}); !slices.Contains(materials, m) {
			materials = append(materials, m)
		}
	}
	return Title{
		Piece:    fmt.Sprintf("%d of %d pieces: %s", len(numbers), len(p.Pieces), strings.Join(names, ", ")),
		Material: strings.Join(materials, "; "),
	}
}

func named(pc piece.Piece, number, of int) string {
	return fmt.Sprintf("%s – %s – piece %d of %d", pc.ID, pc.Name, number+1, of)
}

// material says what the piece is cut from and, when it is known, how thick that is and how many to cut.
func material(pc piece.Piece) string {
	s := pc.Material
	if t := fmt.Sprintf("%.3g mm", pc.Thickness); pc.Thickness > 0 && !strings.Contains(s, t) {
		s += fmt.Sprintf(", %.3g mm thick", pc.Thickness)
	}
	if pc.Count > 0 {
		s += fmt.Sprintf(", cut %d", pc.Count)
	}
	return s
}

// Alone is a piece by itself, with its lower left corner at the origin, and the size of the box
// round it and its words.
func Alone(pc piece.Piece) (it Item, width, height float64, err error) {
	if err := drawable(pc); err != nil {
		return Item{}, 0, 0, err
	}
	it = Item{Piece: pc, Label: LabelOf(pc, false)}
	b := footprint(it)
	it.Offset = plane.Point{}.Sub(b.Lo)
	it.Clip = b.Move(it.Offset)
	return it, b.Width(), b.Height(), nil
}
