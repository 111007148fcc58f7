package fitting_test

import (
	"context"
	"math"
	"math/rand"
	"reflect"
	"strings"
	"testing"

	"understructure/app/fitting"
	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/space"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// panel is a piece w broad and from height lo to hi, on a flat wall 100 mm in front of the axis, its
// corners 10 mm apart, one side on centre front.
func panel(id string, layer int, w, lo, hi float64) piece.Piece {
	p := piece.Piece{ID: id, Name: "layer 3 of 5: bust, left", Material: "wadding 6 mm", Count: 1, Layer: layer, Thickness: 6}
	side := func(a, b plane.Point) {
		n := int(math.Ceil(a.Dist(b) / 10))
		for k := range n {
			q := a.Lerp(b, float64(k)/float64(n))
			p.Outline = append(p.Outline, plane.Point{X: q.X, Y: q.Y - lo})
			p.Position = append(p.Position, space.Point{X: q.X, Y: 100, Z: q.Y})
		}
	}
	corners := []plane.Point{{X: 0, Y: lo}, {X: w, Y: lo}, {X: w, Y: hi}, {X: 0, Y: hi}}
	for i := range corners {
		side(corners[i], corners[(i+1)%4])
	}
	p.Marks = []piece.Mark{{Kind: piece.CentreFront, Points: []plane.Point{{X: 0, Y: 0}, {X: 0, Y: hi - lo}}}}
	return p
}

// nowhere is the piece as it is when nobody knows where it lies.
func nowhere(p piece.Piece) piece.Piece { p.Position = nil; return p }

// laid is the piece drawn elsewhere and turned a little.
func laid(p piece.Piece, by plane.Point, turn float64) piece.Piece {
	s, c := math.Sincos(turn)
	p.Outline = p.Outline.Map(func(q plane.Point) plane.Point {
		return plane.Point{X: c*q.X - s*q.Y, Y: s*q.X + c*q.Y}.Add(by)
	})
	return p
}

func board(id string, layer int, r float64) piece.Piece {
	p := piece.Piece{ID: id, Name: "slice 2 of 9", Material: "plank 50 mm", Layer: layer, Thickness: 50}
	for k := range 180 {
		s, c := math.Sincos(2 * math.Pi * float64(k) / 180)
		p.Outline = append(p.Outline, plane.Point{X: r * c, Y: r * s})
		p.Position = append(p.Position, space.Point{X: r * c, Y: r * s, Z: 1000})
	}
	return p
}

func made(ps ...piece.Piece) plan.Plan {
	return plan.Plan{Pieces: ps, Levels: []plan.Level{{Name: "bust", Height: 1150}, {Name: "underbust", Height: 1080}, {Name: "waist", Height: 1000}}}
}

// The amounts are those by which the panels were drawn differently (derived).
func TestCompareSaysWhatToDo(t *testing.T) {
	was := panel("L03-bust-left", 3, 80, 1000, 1160)
	shorter := panel("L02-bust-left", 2, 80, 1000, 1148)
	for name, c := range map[string]struct {
		was, is []piece.Piece
		want    string
	}{
		"as it was":                   {[]piece.Piece{was}, []piece.Piece{was}, ""},
		"drawn elsewhere":             {[]piece.Piece{was}, []piece.Piece{laid(was, plane.Point{X: 30, Y: -7}, 0.02)}, ""},
		"drawn elsewhere, place lost": {[]piece.Piece{nowhere(was)}, []piece.Piece{nowhere(laid(was, plane.Point{X: 30, Y: -7}, 0.02))}, ""},
		"less than a knife keeps to":  {[]piece.Piece{was}, []piece.Piece{panel("L03-bust-left", 3, 80, 1000, 1159.6)}, ""},
		"a little too small":          {[]piece.Piece{was}, []piece.Piece{panel("L03-bust-left", 3, 80, 1000, 1161.8)}, ""},
		"lower at the top":            {[]piece.Piece{was}, []piece.Piece{shorter}, "Layer 3 of 5, bust, left: trim up to 12 mm along the upper edge, at the bust; template L02-bust-left."},
		"lower, place lost":           {[]piece.Piece{nowhere(was)}, []piece.Piece{nowhere(shorter)}, "Layer 3 of 5, bust, left: trim up to 12 mm along the lower edge; template L02-bust-left."},
		"narrower": {[]piece.Piece{was}, []piece.Piece{panel("L03-bust-left", 3, 70, 1000, 1160)},
			"Layer 3 of 5, bust, left: trim up to 10 mm along the right edge, between waist and bust; template L03-bust-left."},
		"taller": {[]piece.Piece{was}, []piece.Piece{panel("L03-bust-left", 3, 80, 985, 1160)},
			"Layer 3 of 5, bust, left: replace, up to 15 mm larger along the lower edge, at the waist; template L03-bust-left."},
		"gone":           {[]piece.Piece{panel("L03-bust-left", 3, 80, 1000, 1010)}, nil, "Layer 3 of 5, bust, left: take off, at the waist."},
		"new":            {nil, []piece.Piece{was}, "Layer 3 of 5, bust, left: add, between waist and bust; template L03-bust-left."},
		"of other stuff": {[]piece.Piece{was}, []piece.Piece{thin(was)}, "Layer 3 of 5, bust, left: take off, between waist and bust.|Layer 3 of 5, bust, left: add, between waist and bust; template L03-bust-left."},
		"the inner of two alike": {[]piece.Piece{panel("L01-bust-left", 1, 80, 1080, 1100), was}, []piece.Piece{panel("L01-bust-left", 1, 80, 1000, 1160)},
			"Layer 3 of 5, bust, left: take off, between underbust and bust."},
		"on both sides": {[]piece.Piece{panel("L03-bust-right", 3, 80, 1000, 1160), was}, []piece.Piece{panel("L03-bust-right", 3, 80, 1000, 1140), panel("L03-bust-left", 3, 80, 1000, 1140)},
			"Layer 3 of 5, bust, left: trim up to 20 mm along the upper edge, at the bust; template L03-bust-right. The same on the other side."},
		"by very little":     {[]piece.Piece{was}, []piece.Piece{panel("L03-bust-left", 3, 80, 1000, 1159)}, "Trim by less than 2 mm where that is easily done: L03-bust-left."},
		"a smaller slice":    {[]piece.Piece{board("S02", 2, 100)}, []piece.Piece{board("S02", 2, 97)}, "Slice 2 of 9: carve up to 3 mm nearly all round; template S02."},
		"a larger slice":     {[]piece.Piece{board("S02", 2, 100)}, []piece.Piece{board("S02", 2, 104)}, "Slice 2 of 9: replace, up to 4 mm larger nearly all round; template S02."},
		"a slice off centre": {[]piece.Piece{board("S02", 2, 100)}, []piece.Piece{laid(board("S02", 2, 97), plane.Point{Y: 3}, 0)}, "Slice 2 of 9: carve up to 6 mm nearly all round; template S02."},
	} {
		before, after := made(c.was...), made(c.is...)
		changes := fitting.Compare(before, after)
		var got []string
		for _, l := range changes.Lines() {
			got = append(got, l.Text)
		}
		if text := strings.Join(got, "|"); text != c.want {
			t.Errorf("%s:\n got %s\nwant %s", name, text, c.want)
		}
	}
}

func thin(p piece.Piece) piece.Piece { p.Material, p.Thickness = "wadding 3 mm", 3; return p }

func TestOnlyTheTemplatesThatChange(t *testing.T) {
	kept, cut := panel("L01-bust-left", 1, 80, 1000, 1160), panel("L02-bust-left", 2, 90, 1000, 1160)
	before := made(kept, cut, panel("L03-back-left", 3, 50, 1000, 1100))
	after := made(kept, panel("L02-bust-left", 2, 90, 1000, 1120), panel("L03-hip-front-left", 3, 60, 900, 1000))
	after.Layers = []plan.Layer{{Number: 1, Material: "wadding 6 mm"}, {Number: 2, Material: "wadding 6 mm"}, {Number: 3, Material: "wadding 6 mm"}}
	after.Warnings = []plan.Warning{{Code: "slack", Message: "Slack."}}
	changes := fitting.Compare(before, after)
	only := changes.Only(after)
	var ids, codes []string
	for _, p := range only.Pieces {
		ids = append(ids, p.ID)
	}
	for _, w := range only.Warnings {
		codes = append(codes, w.Code)
	}
	if got := strings.Join(ids, " "); got != "L02-bust-left L03-hip-front-left" {
		t.Errorf("templates of %s", got)
	}
	if got := strings.Join(codes, " "); got != "fitting-change fitting-change fitting-change slack" {
		t.Errorf("warnings %s: the take-off, the trim and the new piece are to come first", got)
	}
	if len(only.Layers) != 2 || changes.Kept != 1 {
		t.Errorf("%d layers, %d pieces kept, want 2 and 1", len(only.Layers), changes.Kept)
	}
	if len(after.Pieces) != 3 || len(after.Warnings) != 1 || len(after.Layers) != 3 {
		t.Error("the plan itself has changed")
	}
}

func TestGirthsBeforeAndAfter(t *testing.T) {
	before, after := made(), made()
	before.Levels[2].BuiltGirth, after.Levels[2].BuiltGirth, after.Levels[2].GarmentGirth = mm(603), mm(568), mm(583)
	g := fitting.Compare(before, after).Girths
	if len(g) != 3 || g[2].Level != "waist" || *g[2].Before != 603 || *g[2].After != 568 || *g[2].Inside != 583 || g[0].Before != nil {
		t.Errorf("girths %v", g)
	}
}

// A panel whose corners are moved at random is trimmed by as much as the farthest corner went in, to
// a tenth of a millimetre for the turn that laying it on itself admits.
func TestTrimmedByWhatWasCut(t *testing.T) {
	rnd := rand.New(rand.NewSource(9))
	for range 40 {
		was := panel("L01-bust-left", 1, 60+100*rnd.Float64(), 1000, 1060+100*rnd.Float64())
		cut := 3 + 20*rnd.Float64()
		is := was
		is.Outline = was.Outline.Map(func(q plane.Point) plane.Point { return q })
		_, hi := was.Outline.Bounds()
		for i := range is.Outline {
			if is.Outline[i].Y > hi.Y-1 {
				is.Outline[i].Y -= cut
			}
		}
		c := fitting.Compare(made(was), made(laid(is, plane.Point{X: 40 * rnd.Float64(), Y: 40 * rnd.Float64()}, 0.03*rnd.Float64())))
		if len(c.Pieces) != 1 || math.Abs(c.Pieces[0].Less-cut) > 0.1 || c.Pieces[0].Do != fitting.Trim {
			t.Errorf("cut by %.2f mm: %v", cut, c.Pieces)
		}
	}
}

// On real mounts: a plan is itself, a smaller waist needs less foam at the waist and leaves the neck alone.
func TestCompareRealMounts(t *testing.T) {
	r := demo(t, "demo-three-values.json")
	all := func(fs ...float64) plan.Plan {
		with := r
		for _, gap := range fs {
			s := waist("fails to meet", gap)
			with.Fittings = append(with.Fittings, seen(s))
		}
		p, err := pipeline.Run(context.Background(), with, nil)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	before, after := all(), all(10)
	if c := fitting.Compare(before, before); len(c.Pieces) > 0 || c.Kept != len(before.Pieces) {
		t.Errorf("a plan differs from itself: %v", c.Lines())
	}
	c := fitting.Compare(before, after)
	if again := fitting.Compare(before, after); !reflect.DeepEqual(c, again) {
		t.Error("another answer the second time")
	}
	carved := map[string]bool{}
	for _, p := range c.Pieces {
		carved[p.Was] = p.Do == fitting.Carve
		if p.Do == fitting.Carve && p.Was >= "S15" {
			t.Errorf("the neck is carved: %v", p)
		}
	}
	if !carved["S05"] {
		t.Errorf("the slice of the waist is not carved: %v", c.Lines())
	}
	drop := *level(t, before, measure.Waist).BuiltGirth - *level(t, after, measure.Waist).BuiltGirth
	for _, g := range c.Girths {
		if g.Level == "waist" && math.Abs(*g.Before-*g.After-drop) > 1e-9 {
			t.Errorf("waist from %.1f to %.1f", *g.Before, *g.After)
		}
	}
	if kept, changed := c.Kept, len(c.Pieces); kept+changed < len(before.Pieces) || len(c.Only(after).Pieces) > changed {
		t.Errorf("%d kept and %d changed of %d pieces", kept, changed, len(before.Pieces))
	}
}

func BenchmarkCompare(b *testing.B) {
	r := demo(b, "demo-1872-bodice.json")
	before, err := pipeline.Run(context.Background(), r, nil)
	if err != nil {
		b.Fatal(err)
	}
	r.Fittings = []record.Fitting{seen(waist(record.Tight, 5))}
	after, err := pipeline.Run(context.Background(), r, nil)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		fitting.Compare(before, after)
	}
}
