package report

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"understructure/patterns/drawing"
	"understructure/patterns/plantest"
)

// numbered are strips that each write their number at their lower left corner.
func numbered(heights ...float64) []strip {
	var all []strip
	for i, h := range heights {
		all = append(all, strip{height: h, draw: func(c drawing.Canvas, b drawing.Box) {
			c.Word(drawing.Word{Text: fmt.Sprint(i), Size: 1, At: b.Lo})
		}})
	}
	return all
}

func recorded(page []func(drawing.Canvas)) []drawing.Word {
	r := &plantest.Recorder{}
	for _, f := range page {
		f(r)
	}
	return r.Words
}

// Whatever is flowed stands on the pages once, in order, and within the frame.
func TestFlowLosesNothing(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 5))
	for range 300 {
		heights := make([]float64, 1+rnd.IntN(90))
		for i := range heights {
			heights[i] = 2 + 40*rnd.Float64()*rnd.Float64()
		}
		strips := numbered(heights...)
		for i := range strips {
			strips[i].keep = rnd.IntN(4) == 0
		}
		s := newSetterIn(recordFrame)
		s.gap(rnd.Float64() * 250)
		s.flow(strips, 1+rnd.IntN(3))
		n := 0
		for _, page := range s.pages {
			for _, w := range recorded(page) {
				if w.Text != fmt.Sprint(n) {
					t.Fatalf("strip %s stands where %d should", w.Text, n)
				}
				if !recordFrame.Grow(0.01).Contains(w.At) {
					t.Fatalf("strip %d leaves the frame at %v", n, w.At)
				}
				n++
			}
		}
		if n != len(strips) {
			t.Fatalf("%d of %d strips are set", n, len(strips))
		}
	}
}

// Two columns that end on a page are as level as their strips allow.
func TestColumnsAreLevel(t *testing.T) {
	s := newSetterIn(recordFrame)
	s.flow(numbered(10, 10, 10, 10, 10, 10), 2)
	if used := recordFrame.Hi.Y - s.y; used < 29.9 || used > 30.2 {
		t.Errorf("six strips of 10 mm in two columns take %g mm, want 30", used)
	}
}

// A heading stays with what it heads, and the head of a table is set again where the table goes on.
func TestHeadsGoWithTheirTables(t *testing.T) {
	g := newGalley(1)
	var rows [][]cell
	for i := range 200 {
		rows = append(rows, []cell{{text: fmt.Sprint("row ", i)}})
	}
	g.heading("Name")
	g.table([]column{{"head", 10, false}}, rows)
	s := newSetterIn(recordFrame)
	s.gap(recordFrame.Height() - 14) // room for the heading, not for the head and two rows
	s.flow(g.strips, 1)
	if len(s.pages) < 4 || len(s.pages[0]) != 0 {
		t.Fatalf("%d pages, %d strips on the first", len(s.pages), len(s.pages[0]))
	}
	for i, page := range s.pages[1:] {
		words := recorded(page)
		if want := []string{"Name", "head"}[min(i, 1)]; words[0].Text != want {
			t.Errorf("page %d begins with %q, want %q", i+2, words[0].Text, want)
		}
	}
}

func TestAStripTallerThanAPageIsSet(t *testing.T) {
	s := newSetterIn(recordFrame)
	s.flow(numbered(5, 400, 5), 1)
	n := 0
	for _, page := range s.pages {
		n += len(recorded(page))
	}
	if n != 3 {
		t.Errorf("%d of 3 strips are set", n)
	}
}
