package nest_test

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/unit"
	"understructure/patterns/nest"
)

const quick = 200_000 // effort

var quarters = []unit.Angle{0, 90 * unit.Degree, 180 * unit.Degree, 270 * unit.Degree}

func of(id string, count int, r plane.Ring) nest.Piece {
	return nest.Piece{ID: id, Outline: r, Count: count, Turns: quarters}
}

func ring(xy ...float64) plane.Ring {
	var r plane.Ring
	for i := 0; i < len(xy); i += 2 {
		r = append(r, plane.Point{X: xy[i], Y: xy[i+1]})
	}
	return r
}

func strip(t *testing.T, pieces []nest.Piece, width float64, o nest.Options) nest.Layout {
	t.Helper()
	if o.Effort == 0 {
		o.Effort = quick
	}
	l, err := nest.Strip(t.Context(), pieces, width, o)
	if err != nil {
		t.Fatal(err)
	}
	judge(t, l, pieces, func(k int) plane.Ring { return box(l.Bins[k].Length+1e-6, width) }, o.Gap)
	return l
}

func bins(t *testing.T, pieces []nest.Piece, stock []nest.Stock, o nest.Options) nest.Layout {
	t.Helper()
	if o.Effort == 0 {
		o.Effort = quick
	}
	l, err := nest.Bins(t.Context(), pieces, stock, o)
	if err != nil {
		t.Fatal(err)
	}
	judge(t, l, pieces, func(k int) plane.Ring { return stock[l.Bins[k].Stock].Outline }, o.Gap)
	return l
}

// What can be told by hand.
func TestStripOfKnownLength(t *testing.T) {
	l := ring(0, 0, 20, 0, 20, 10, 10, 10, 10, 20, 0, 20)
	for _, c := range []struct {
		name   string
		pieces []nest.Piece
		width  float64
		gap    float64
		want   float64
	}{
		{"one square", []nest.Piece{of("s", 1, box(50, 50))}, 50, 0, 50},
		{"six squares in two rows", []nest.Piece{of("s", 6, box(50, 50))}, 100, 0, 150},
		{"three squares with a gap", []nest.Piece{of("s", 3, box(50, 50))}, 60, 4, 158},
		{"a stick that has to stand", []nest.Piece{of("s", 4, box(100, 10))}, 100, 0, 40},
		{"two Ls make 20 × 30", []nest.Piece{of("L", 2, l)}, 20, 0, 30},
		{"a peg in its hole", []nest.Piece{of("U", 1, ring(0, 0, 30, 0, 30, 30, 20, 30, 20, 10, 9.9, 10, 9.9, 30, 0, 30)), of("peg", 1, box(10, 20))}, 30, 0, 30},
	} {
		lay := strip(t, c.pieces, c.width, nest.Options{Gap: c.gap})
		if got := lay.Bins[0].Length; got < c.want-1e-6 || got > c.want*1.005 {
			t.Errorf("%s: %.4f mm, want %g", c.name, got, c.want)
		}
	}
}

func TestGapIsKept(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 4))
	for _, gap := range []float64{0.5, 3, 12} {
		var pieces []nest.Piece
		for range 8 {
			pieces = append(pieces, of("star", 2, scribble(rnd)))
		}
		strip(t, pieces, 300, nest.Options{Gap: gap, Slack: nest.MostSlack})
		bins(t, pieces, []nest.Stock{nest.Sheet("sheet", 300, 250, 0)}, nest.Options{Gap: gap, Slack: nest.MostSlack})
	}
}

func scribble(rnd *rand.Rand) plane.Ring {
	var r plane.Ring
	n := 4 + rnd.IntN(30)
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		d := 20 + 50*rnd.Float64()
		r = append(r, plane.Point{X: d * c, Y: d * s})
	}
	if rnd.IntN(2) == 0 {
		return r.Reverse() // either way round will do
	}
	return r
}

// A triangle fits into an offcut hardly larger than itself only as that is cut: here, turned over.
func TestTurnedOver(t *testing.T) {
	tri := of("tri", 1, ring(0, 0, 90, 0, 20, 40))
	tri.Turns = nil
	offcut := nest.Stock{ID: "offcut", Outline: ring(303, 4, 206, 4, 281, 47), Count: 1, Offcut: true}
	if l := bins(t, []nest.Piece{tri}, []nest.Stock{offcut}, nest.Options{}); l.Left[0] != 1 {
		t.Errorf("laid as it is: %+v", l.Placements)
	}
	tri.Over = true
	if l := bins(t, []nest.Piece{tri}, []nest.Stock{offcut}, nest.Options{}); l.Left[0] != 0 || !l.Placements[0].Over {
		t.Errorf("not laid turned over: %+v", l)
	}
}

// Without leave to turn, every piece lies as drawn.
func TestGrainIsKept(t *testing.T) {
	p := nest.Piece{ID: "p", Outline: box(70, 20), Count: 5}
	for _, one := range strip(t, []nest.Piece{p}, 75, nest.Options{}).Placements {
		if one.Turn != 0 || one.Over {
			t.Errorf("turned: %+v", one)
		}
	}
}

// An offcut is used before a plank, whatever its shape, and pieces lie within it.
func TestOffcutsFirst(t *testing.T) {
	l := ring(0, 0, 400, 0, 400, 150, 150, 150, 150, 300, 0, 300)
	stock := []nest.Stock{
		nest.Sheet("plank", 1200, 600, 0),
		{ID: "L", Outline: l.Move(plane.Point{X: 37, Y: -12}), Count: 1, Offcut: true},
		{ID: "strip", Outline: box(300, 60), Count: 2, Offcut: true},
	}
	lay := bins(t, []nest.Piece{of("a", 3, box(140, 140)), of("b", 2, box(250, 50))}, stock, nest.Options{})
	for _, b := range lay.Bins {
		if !stock[b.Stock].Offcut {
			t.Errorf("a plank is cut although the offcuts hold everything: %+v", lay.Bins)
		}
	}
	more := bins(t, []nest.Piece{of("a", 9, box(140, 140))}, stock, nest.Options{})
	if n := len(more.Bins); n != 2 || more.Bins[0].Waste > 24000 || more.Bins[1].Stock != 0 {
		t.Errorf("nine squares lie on %+v, want three on the L and six on one plank", more.Bins)
	}
}

// What is left over is one piece: the last plank is filled from the left.
func TestLastPlankIsFilledFromTheLeft(t *testing.T) {
	lay := bins(t, []nest.Piece{of("a", 9, box(299, 299))}, []nest.Stock{nest.Sheet("plank", 1200, 600, 0)}, nest.Options{})
	if len(lay.Bins) != 2 || math.Abs(lay.Bins[1].Length-299) > 0.01 {
		t.Errorf("%+v, want 8 squares on one plank and 299 mm of another", lay.Bins)
	}
}

// Of several sizes the last is the smallest that will do.
func TestSmallestSheetThatWillDo(t *testing.T) {
	stock := []nest.Stock{nest.Sheet("large", 400, 300, 0), nest.Sheet("small", 200, 150, 1), nest.Sheet("middle", 300, 200, 0)}
	lay := bins(t, []nest.Piece{of("a", 1, box(180, 140))}, stock, nest.Options{})
	if len(lay.Bins) != 1 || lay.Bins[0].Stock != 1 {
		t.Errorf("laid on %+v, want the small sheet", lay.Bins)
	}
}

func TestWhatFindsNoRoomIsCounted(t *testing.T) {
	lay := bins(t, []nest.Piece{of("a", 7, box(60, 60)), of("b", 1, box(20, 20))}, []nest.Stock{nest.Sheet("sheet", 130, 130, 1)}, nest.Options{})
	if lay.Left[0] != 3 || lay.Left[1] != 1 {
		t.Errorf("left %v, want 3 and 1", lay.Left)
	}
}

// Words beside a piece are kept free like the piece.
func TestWhatLiesBesideIsKeptFree(t *testing.T) {
	p := of("p", 4, box(20, 20))
	p.Turns = nil
	p.Beside = []plane.Ring{ring(0, -12, 30, -12, 30, -2, 0, -2)}
	l := strip(t, []nest.Piece{p}, 35, nest.Options{})
	if got := l.Bins[0].Length; got < 4*30-1e-6 {
		t.Errorf("%.2f mm, but words of 30 mm stand under each of four", got)
	}
}

// The same job gives the same layout, and another seed another.
func TestSameJobSameLayout(t *testing.T) {
	in := read(t, "marques")
	a := strip(t, in.pieces(), in.Width, nest.Options{})
	if b := strip(t, in.pieces(), in.Width, nest.Options{}); !reflect.DeepEqual(a, b) {
		t.Error("the same job gave two layouts")
	}
	if b := strip(t, in.pieces(), in.Width, nest.Options{Seed: 1}); reflect.DeepEqual(a, b) {
		t.Error("another seed gave the same layout")
	}
}

// More effort never makes a strip longer than the first layout, and rather shorter.
func TestEffortPays(t *testing.T) {
	in := read(t, "swim")
	little := strip(t, in.pieces(), in.Width, nest.Options{Effort: 1}).Bins[0].Length
	much := strip(t, in.pieces(), in.Width, nest.Options{Effort: 2_000_000}).Bins[0].Length
	if much > 0.97*little {
		t.Errorf("%.0f with much effort, %.0f with little", much, little)
	}
}

// ending is a context that ends after it was asked so many times.
type ending struct {
	context.Context
	left int
}

func (e *ending) Err() error {
	if e.left--; e.left < 0 {
		return context.DeadlineExceeded
	}
	return nil
}

func TestContextEnds(t *testing.T) {
	in := read(t, "marques")
	_, err := nest.Strip(&ending{t.Context(), 10}, in.pieces(), in.Width, nest.Options{})
	if !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("ended before there was a layout: %v", err)
	}
	l, err := nest.Strip(&ending{t.Context(), 100}, in.pieces(), in.Width, nest.Options{})
	if err != nil || !l.Stopped {
		t.Errorf("ended on the way: stopped %v, %v", l.Stopped, err)
	}
	judge(t, l, in.pieces(), func(k int) plane.Ring { return box(l.Bins[k].Length+1e-6, in.Width) }, 0)
}

func TestProgressRises(t *testing.T) {
	in := read(t, "marques")
	var told []float64
	strip(t, in.pieces(), in.Width, nest.Options{Effort: 1_000_000, Progress: func(done float64) { told = append(told, done) }})
	if len(told) < 20 || told[len(told)-1] > 1 {
		t.Errorf("told %v", told)
	}
	for i := 1; i < len(told); i++ {
		if told[i] <= told[i-1] {
			t.Fatalf("told %v", told)
		}
	}
}

func TestCheckFindsFaults(t *testing.T) {
	pieces := []nest.Piece{of("a", 2, box(10, 10))}
	stock := []nest.Stock{nest.Sheet("sheet", 40, 10, 1), {ID: "cut", Outline: ring(0, 0, 40, 0, 0, 40), Count: 1}}
	two := func(bin int, x, y float64) nest.Layout {
		return nest.Layout{Bins: []nest.Bin{{Stock: bin}}, Placements: []nest.Placement{{}, {Copy: 1, Move: plane.Point{X: x, Y: y}}}}
	}
	for _, c := range []struct {
		name string
		l    nest.Layout
		gap  float64
		want string
	}{
		{"side by side", two(0, 10, 0), 0, ""},
		{"with room for the knife", two(0, 12, 0), 2, ""},
		{"too near", two(0, 11, 0), 2, "1 mm apart, want 2"},
		{"along each other", two(0, 4, 0), 0, "copy 2 and piece 1"},
		{"on top of each other", two(0, 0, 0), 0, "copy 2 and piece 1"},
		{"off the end", two(0, 31, 0), 0, "within its stock"},
		{"under the edge", two(0, 12, -0.01), 0, "within its stock"},
		{"up to the slanting edge", two(1, 15, 5), 0, ""},
		{"over the slanting edge", two(1, 15, 5.1), 0, "within its stock"},
	} {
		err := c.l.Check(pieces, stock, c.gap)
		if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}

func TestRefusals(t *testing.T) {
	good := of("good", 1, box(10, 10))
	with := func(change func(*nest.Piece)) []nest.Piece {
		p := good
		change(&p)
		return []nest.Piece{p}
	}
	for _, c := range []struct {
		pieces []nest.Piece
		width  float64
		o      nest.Options
		want   string
	}{
		{nil, 100, nest.Options{}, "no pieces"},
		{[]nest.Piece{good}, 0, nest.Options{}, "width 0"},
		{[]nest.Piece{good}, math.NaN(), nest.Options{}, "width NaN"},
		{[]nest.Piece{good}, 9, nest.Options{}, `"good" is 10 mm wide`},
		{[]nest.Piece{good}, 100, nest.Options{Gap: -1}, "gap -1"},
		{[]nest.Piece{good}, 100, nest.Options{Slack: 2}, "slack 2 mm, want 0 to 0.5"},
		{[]nest.Piece{good}, 100, nest.Options{Effort: -1}, "effort -1"},
		{with(func(p *nest.Piece) { p.Count = 0 }), 100, nest.Options{}, "count 0"},
		{with(func(p *nest.Piece) { p.Outline = p.Outline[:2] }), 100, nest.Options{}, "2 points"},
		{with(func(p *nest.Piece) { p.Outline = ring(0, 0, math.Inf(1), 0, 5, 5) }), 100, nest.Options{}, "point (+Inf, 0)"},
		{with(func(p *nest.Piece) { p.Outline = ring(0, 0, 10, 10, 10, 0, 0, 9) }), 100, nest.Options{}, "meets itself"},
		{with(func(p *nest.Piece) { p.Outline = ring(0, 0, 10, 0, 20, 0) }), 100, nest.Options{}, "want at least 0.001"},
		{with(func(p *nest.Piece) { p.Beside = []plane.Ring{{}} }), 100, nest.Options{}, "beside it 1: outline of 0 points"},
		{with(func(p *nest.Piece) { p.Turns = []unit.Angle{unit.Angle(math.NaN())} }), 100, nest.Options{}, "turn NaN"},
		{with(func(p *nest.Piece) { p.Turns = make([]unit.Angle, 2000); p.Over = true }), 100, nest.Options{}, "4000 ways"},
	} {
		if _, err := nest.Strip(t.Context(), c.pieces, c.width, c.o); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
	for _, c := range []struct {
		stock []nest.Stock
		want  string
	}{
		{nil, "no stock"},
		{[]nest.Stock{{Outline: ring(0, 0, 1, 1)}}, "stock 1"},
		{[]nest.Stock{{Outline: box(20, 20), Offcut: true}}, "offcut"},
		{[]nest.Stock{{Outline: box(20, 20), Count: -1}}, "count -1"},
		{[]nest.Stock{{Outline: box(20, 9)}}, "fits no stock"},
	} {
		if _, err := nest.Bins(t.Context(), []nest.Piece{good}, c.stock, nest.Options{}); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
}

// Whatever is drawn is laid without overlap or refused.
func FuzzStrip(f *testing.F) {
	f.Add([]byte{0, 0, 40, 0, 40, 40, 0, 40}, uint16(60), uint8(0))
	f.Add([]byte{0, 0, 40, 0, 40, 40, 20, 10, 0, 40}, uint16(200), uint8(3))
	f.Add([]byte{0, 0, 255, 1, 255, 2}, uint16(90), uint8(1))
	f.Add([]byte{0, 0, 20, 0, 20, 20, 20, 0, 40, 0, 40, 40, 0, 40}, uint16(80), uint8(0))
	f.Fuzz(func(t *testing.T, b []byte, width uint16, gap uint8) {
		var r plane.Ring
		for i := 0; i+1 < len(b) && i < 60; i += 2 {
			r = append(r, plane.Point{X: float64(b[i]), Y: float64(b[i+1])})
		}
		p := of("p", 3, r)
		l, err := nest.Strip(t.Context(), []nest.Piece{p}, float64(width), nest.Options{Effort: 20_000, Gap: float64(gap) / 10, Slack: 0.5})
		if err != nil {
			if s := err.Error(); strings.Contains(s, "apart") || strings.Contains(s, "within") {
				t.Fatal(err) // it was laid, but not well
			}
			return
		}
		if l.Left[0] != 0 || len(l.Placements) != 3 {
			t.Fatalf("%+v, want all three", l)
		}
	})
}

// Free turning is a list of many turns; two sticks at odd angles lie along each other when they may.
func TestManyTurns(t *testing.T) {
	var free []unit.Angle
	for k := range 72 {
		free = append(free, unit.Angle(k)*5*unit.Degree)
	}
	s, c := math.Sincos(35 * math.Pi / 180)
	slant := box(100, 10).Map(func(p plane.Point) plane.Point { return plane.Point{X: c*p.X - s*p.Y, Y: s*p.X + c*p.Y} })
	pieces := []nest.Piece{{ID: "slant", Outline: slant, Count: 4, Turns: free, Over: true}, {ID: "straight", Outline: box(100, 10), Count: 4, Turns: free}}
	if got := strip(t, pieces, 101, nest.Options{Effort: 2_000_000}).Bins[0].Length; got > 82 {
		t.Errorf("eight sticks of 10 × 100 mm take %.2f mm of a strip of 101", got)
	}
}
