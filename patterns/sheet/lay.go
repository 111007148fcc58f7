package sheet

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"understructure/geometry/parallel"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/nest"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// gap is the paper left between two pieces, enough for a hand with scissors
// (common practice, no published source).
const gap = 6.0

// edge is kept free round every piece, so that the whole width of its line is printed.
const edge = 1.0

// Options say how pages are laid.
type Options struct {
	Progress func(done float64) // told now and then which part of the work is done, 0 to 1; may be nil
}

// effort bounds the time that pieces are moved about to save a page: about a second.
const effort = 1_000_000

// Lay puts every piece of the plan on its paper, once; a piece that is another turned over shares its template. Pages that
// show how large pieces go together come first, the others in the order of their first pieces. The same plan gives the same
// pages. It stops with the context's error when ctx ends.
func Lay(ctx context.Context, p plan.Plan, o Options) ([]Page, error) {
	if err := Check(p.Paper); err != nil {
		return nil, err
	}
	scale := plane.Point{X: p.Paper.ScaleX, Y: p.Paper.ScaleY}
	p.Paper = trueSize(p.Paper)
	parts, err := divide(ctx, p)
	if err != nil || len(parts) == 0 {
		return nil, err
	}
	pages, err := spread(ctx, p.Paper, parts, o)
	if err != nil {
		return nil, err
	}
	inSequence(p, pages)
	for i := range pages {
		pages[i].Scale = scale
		pages[i].Title.Object = object(p.Object)
		pages[i].Title.Page = fmt.Sprintf("page %d of %d", i+1, len(pages))
	}
	return pages, nil
}

// divide makes the parts of all pieces.
func divide(ctx context.Context, p plan.Plan) ([]part, error) {
	for _, pc := range p.Pieces {
		if err := drawable(pc); err != nil {
			return nil, err
		}
	}
	f := field(p.Paper.Width, p.Paper.Height)
	second, served := twins(p.Pieces)
	parts := make([][]part, len(p.Pieces))
	parallel.Each(len(p.Pieces), func(i int) {
		if served[i] || ctx.Err() != nil {
			return
		}
		twin := ""
		if second[i] >= 0 {
			twin = p.Pieces[second[i]].ID
		}
		if pc := p.Pieces[i]; fits(pc, false, f) || fits(pc, true, f) {
			parts[i] = []part{wholePart(pc, twin, f)}
		} else {
			parts[i] = tileParts(pc, twin, f)
		}
	})
	all := slices.Concat(parts...)
	return append(assembly(all, f), all...), ctx.Err()
}

// together is how many parts are nested at once: time grows with their square, and beyond some hundreds nothing is saved.
const together = 400

// spread nests the parts on pages.
func spread(ctx context.Context, paper plan.Paper, parts []part, o Options) ([]Page, error) {
	var pages []Page
	batches := (len(parts) + together - 1) / together
	for k := range batches {
		batch := Options{}
		if o.Progress != nil {
			batch.Progress = func(done float64) { o.Progress((float64(k) + done) / float64(batches)) }
		}
		laid, err := nested(ctx, paper, parts[k*together:min(len(parts), (k+1)*together)], batch)
		if err != nil {
			return nil, err
		}
		pages = append(pages, laid...)
	}
	return pages, nil
}

// nested nests a batch of parts.
func nested(ctx context.Context, paper plan.Paper, parts []part, o Options) ([]Page, error) {
	pieces := make([]nest.Piece, len(parts))
	for i, p := range parts {
		pieces[i] = p.keeps
	}
	f := field(paper.Width, paper.Height)
	laid, err := nest.Pages(ctx, pieces, nest.Paper{
		Width: paper.Width, Height: paper.Height, Roll: paper.Roll,
		Left: f.Lo.X, Right: paper.Width - f.Hi.X, Bottom: f.Lo.Y, Top: paper.Height - f.Hi.Y,
	}, nest.Options{Gap: gap, Slack: nest.MostSlack, Effort: effort, Progress: o.Progress})
	if err == nil {
		err = ctx.Err() // a layout that is not as good as it could be would not be the same every time
	}
	if err != nil {
		return nil, err
	}
	pages := make([]Page, len(laid))
	for k, l := range laid {
		pages[k] = Page{Width: paper.Width, Height: pageHeight(paper, l.Height)}
		f := field(pages[k].Width, pages[k].Height)
		for _, at := range l.Placements {
			if p := parts[at.Piece]; p.panel != nil {
				pages[k].Panels = append(pages[k].Panels, Panel{p.panel.Box.Move(at.Move), p.panel.Maps})
			} else {
				pages[k].Items = append(pages[k].Items, p.placed(at, f))
			}
		}
		pages[k] = pages[k].raised()
	}
	return pages, nil
}

// inSequence orders the pages and what lies on them, those that show how tiles go together before the others, and tells
// every tile where its like are.
func inSequence(p plan.Plan, pages []Page) {
	numbers := map[string]int{}
	for i, pc := range p.Pieces {
		numbers[pc.ID] = i
	}
	for k := range pages {
		slices.SortStableFunc(pages[k].Items, inOrder(numbers))
	}
	slices.SortStableFunc(pages, func(a, b Page) int {
		if a, b := len(a.Panels) > 0, len(b.Panels) > 0; a || b {
			return cmp.Compare(rank(a), rank(b))
		}
		return inOrder(numbers)(a.Items[0], b.Items[0])
	})
	for k, pg := range pages {
		for _, it := range pg.Items {
			if it.Tile != nil {
				it.Tile.Grid.Pages[it.Tile.Row][it.Tile.Column] = k + 1
			}
		}
	}
	for k, pg := range pages {
		pages[k].Title.Piece, pages[k].Title.Material = contents(p, numbers, pg)
	}
}

// rank is 0 for a page that shows how tiles go together, 1 for any other.
func rank(shows bool) int {
	if shows {
		return 0
	}
	return 1
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

// pageHeight is that of the paper; of a roll, no more than the pieces need.
func pageHeight(p plan.Paper, needed float64) float64 {
	if !p.Roll {
		return p.Height
	}
	return math.Min(p.Height, math.Max(LeastHeight, math.Ceil(needed)))
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

// contents names what lies on a page, and what it is cut from.
func contents(p plan.Plan, numbers map[string]int, pg Page) (names, materials string) {
	if len(pg.Items) == 1 && len(pg.Panels) == 0 {
		it := pg.Items[0]
		names = named(it.Piece, numbers[it.Piece.ID], len(p.Pieces))
		if it.Twin != "" {
			names += " – " + it.turnedOver()
		}
		if it.Tile != nil {
			names += fmt.Sprintf(" – tile %s of %d", TileName(it.Tile.Row, it.Tile.Column), it.Tile.Grid.Count())
		}
		return names, it.material()
	}
	var each, of []string
	if len(pg.Panels) > 0 {
		each = append(each, "how large pieces go together")
	}
	for _, it := range pg.Items {
		name := it.Name()
		if it.Twin != "" {
			name += " = " + it.Twin
		}
		each = append(each, name)
		if m := material(piece.Piece{Material: it.Piece.Material, Thickness: it.Piece.Thickness}); !slices.Contains(of, m) {
			of = append(of, m)
		}
	}
	return strings.Join(each, ", "), strings.Join(of, "; ")
}

func named(pc piece.Piece, number, of int) string {
	return fmt.Sprintf("%s – %s – piece %d of %d", pc.ID, pc.Name, number+1, of)
}

// material says what is cut with the template, and how many, for both pieces that it serves.
func (it Item) material() string {
	pc := it.Piece
	if it.Twin != "" {
		pc.Count *= 2
	}
	return material(pc)
}

// turnedOver says which of the pieces cut with a template is its twin.
func (it Item) turnedOver() string {
	if it.Piece.Count > 1 {
		return "half of them turned over: " + it.Twin
	}
	return "one turned over: " + it.Twin
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
