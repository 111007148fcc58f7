package nest_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/unit"
	"understructure/patterns/nest"
)

// a4 has the margins of the program's pages: room for rules and title at the left and below.
var a4 = nest.Paper{Width: 210, Height: 297, Left: 21, Right: 10, Top: 10, Bottom: 37}

// field is what the margins of a paper leave.
func field(p nest.Paper, height float64) plane.Ring {
	return ring(p.Left, p.Bottom, p.Width-p.Right, p.Bottom, p.Width-p.Right, height-p.Top, p.Left, height-p.Top)
}

func pages(t *testing.T, pieces []nest.Piece, paper nest.Paper, o nest.Options) []nest.Page {
	t.Helper()
	o.Effort = quick
	got, err := nest.Pages(t.Context(), pieces, paper, o)
	if err != nil {
		t.Fatal(err)
	}
	l := nest.Layout{Left: make([]int, len(pieces))}
	for k, p := range got {
		l.Placements = append(l.Placements, p.Placements...)
		area := 0.0
		for _, q := range p.Placements {
			if q.Bin != k {
				t.Errorf("a piece of page %d says %d", k, q.Bin)
			}
			if a := pieces[q.Piece].Outline.Area(); a > 0 {
				area += a
			} else {
				area -= a
			}
		}
		whole := field(paper, p.Height).Area()
		l.Bins = append(l.Bins, nest.Bin{Area: whole, Waste: whole - area, Utilisation: area / whole})
	}
	judge(t, l, pieces, func(k int) plane.Ring { return field(paper, got[k].Height) }, o.Gap)
	return got
}

// Two triangles of 169 × 240 mm fill what the margins of a page leave; their boxes would take two pages.
func TestOutlinesShareAPage(t *testing.T) {
	tri := nest.Piece{ID: "tri", Outline: ring(0, 0, 169, 0, 0, 240), Count: 2, Turns: []unit.Angle{0, 180 * unit.Degree}}
	if got := pages(t, []nest.Piece{tri}, a4, nest.Options{Gap: 5}); len(got) != 1 || got[0].Height != a4.Height {
		t.Errorf("%d pages, want 1", len(got))
	}
}

func TestPagesKeepGapAndMargins(t *testing.T) {
	rnd := rand.New(rand.NewPCG(5, 5))
	for _, roll := range []bool{false, true} {
		paper := a4
		if paper.Roll = roll; roll {
			paper.Width, paper.Height = 610, 5000
		}
		var pieces []nest.Piece
		for range 12 {
			p := of("star", 1+rnd.IntN(3), scribble(rnd))
			p.Turns = p.Turns[:1+rnd.IntN(4)]
			pieces = append(pieces, p)
		}
		got := pages(t, pieces, paper, nest.Options{Gap: 6})
		if roll && (len(got) != 1 || got[0].Height > 700) {
			t.Errorf("%d pages of a roll, the first %g mm high", len(got), got[0].Height)
		}
	}
}

func TestPagesAreFilledFromTheBottom(t *testing.T) {
	p := nest.Piece{ID: "p", Outline: box(150, 30), Count: 2}
	got := pages(t, []nest.Piece{p}, a4, nest.Options{})
	for _, q := range got[0].Placements {
		if _, hi := q.Ring(p.Outline).Bounds(); hi.Y > a4.Bottom+60.1 || q.Turn != 0 {
			t.Errorf("%+v, want the lower 60 mm", q)
		}
	}
}

func TestPagesRefuse(t *testing.T) {
	large := nest.Piece{ID: "large", Outline: box(180, 30), Count: 1}
	if _, err := nest.Pages(t.Context(), []nest.Piece{large}, a4, nest.Options{}); err == nil || !strings.Contains(err.Error(), `"large"`) {
		t.Errorf("a piece larger than the page: %v", err)
	}
	if _, err := nest.Pages(t.Context(), []nest.Piece{large}, nest.Paper{Width: 30, Height: 300, Left: 21, Right: 10}, nest.Options{}); err == nil || !strings.Contains(err.Error(), "between its margins") {
		t.Errorf("a page without room: %v", err)
	}
}
