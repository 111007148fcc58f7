package cutting

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"understructure/geometry/plane"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
	"understructure/patterns/vector"
)

func box(length, width float64) plane.Ring {
	return plane.Ring{{}, {X: length}, {X: length, Y: width}, {Y: width}}
}

// oval is a slice-like outline: one half broader than the other.
func oval(a, b float64) plane.Ring {
	r := make(plane.Ring, 72)
	for i := range r {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 72)
		r[i] = plane.Point{X: a * cos, Y: b * sin * (1 + 0.2*sin)}
	}
	return r
}

func slice(n int, outline plane.Ring, thickness float64) piece.Piece {
	return piece.Piece{ID: fmt.Sprintf("S%02d", n), Material: "plank 50 mm", Count: 1, Layer: n, Thickness: thickness, Outline: outline}
}

func lay(t *testing.T, p plan.Plan, s Stock) ([]plan.Layout, []Unlaid) {
	t.Helper()
	l, unlaid, err := Lay(t.Context(), p, s, nil)
	if err != nil {
		t.Fatal(err)
	}
	judge(t, p, l)
	return l, unlaid
}

func polygon(t *testing.T, r plane.Ring) geom.Geometry {
	t.Helper()
	var c []float64
	for _, p := range append(r[:len(r):len(r)], r[0]) {
		c = append(c, p.X, p.Y)
	}
	g := geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(c, geom.DimXY))}).AsGeometry()
	if err := g.Validate(); err != nil {
		t.Fatal(err)
	}
	return g
}

// judge lets simplefeatures look for overlaps and for what leaves its stock, at the true outlines, and checks the sums by its areas.
func judge(t *testing.T, p plan.Plan, layouts []plan.Layout) {
	t.Helper()
	for n, l := range layouts {
		stock := polygon(t, box(l.Length, l.Width))
		var lying []geom.Geometry
		sum := 0.0
		for _, q := range l.Places {
			outline := q.Outline
			if i := slices.IndexFunc(p.Pieces, func(pc piece.Piece) bool { return pc.ID == q.Piece }); i >= 0 {
				outline = p.Pieces[i].CutLine()
			}
			g := polygon(t, outline.Map(q.Of))
			out, err := geom.Difference(g, stock)
			if err != nil || out.Area() > 0.1 {
				t.Errorf("layout %d: %.3f mm² of %s lie outside: %v", n, out.Area(), q.Piece, err)
			}
			for k, o := range lying {
				if d, ok := geom.Distance(g, o); !ok || d < clothGap-1e-4 || l.Kind != plan.OnRoll && d < foamGap-1e-4 {
					t.Errorf("layout %d: %s lies %.4f mm from %s", n, q.Piece, d, l.Places[k].Piece)
				}
			}
			lying = append(lying, g)
			sum += g.Area()
		}
		rest := 0.0
		if r := l.Rest; r != nil {
			rest = r.Length * r.Width
			keep := polygon(t, box(r.Length, r.Width).Move(r.At))
			for k, o := range lying {
				if d, _ := geom.Distance(keep, o); d < foamGap-1e-4 {
					t.Errorf("layout %d: what is left over lies %.4f mm from %s", n, d, l.Places[k].Piece)
				}
			}
		}
		area := l.Length * l.Width
		if math.Abs(l.Utilisation-sum/area) > 1e-6 || math.Abs(l.Waste+rest+sum-area) > 1e-3*area/1000 {
			t.Errorf("layout %d: utilisation %.6f, waste %.1f; want %.6f, %.1f", n, l.Utilisation, l.Waste, sum/area, area-rest-sum)
		}
	}
}

// Two slices of 300 by 200 go on an offcut of 310 by 410 and nowhere else; the third needs a plank, of which 600 less 300 and a cut are left.
func TestOffcutsAreUsedFirst(t *testing.T) {
	p := plan.Plan{Pieces: []piece.Piece{slice(1, box(300, 200), 50), slice(2, box(300, 200), 50), slice(3, box(300, 200), 50)}}
	l, unlaid := lay(t, p, Stock{Planks: []Plank{
		{Stock: "plank", Thickness: 50, Length: 600, Width: 200}, {Stock: "offcut", Thickness: 50, Length: 310, Width: 410, Count: 1, Offcut: true},
	}})
	if len(unlaid) > 0 || len(l) != 2 || l[0].Kind != plan.OnOffcut || len(l[0].Places) != 2 || l[1].Kind != plan.OnPlank || len(l[1].Places) != 1 {
		t.Fatalf("%+v, unlaid %v", l, unlaid)
	}
	if r := l[1].Rest; r == nil || math.Abs(r.Length-295) > 1e-3 || r.Width != 200 {
		t.Errorf("left over %+v", r)
	}
	if math.Abs(l[1].Utilisation-0.5) > 1e-9 || math.Abs(l[1].Waste-5*200) > 1 { // the cut beside the slice
		t.Errorf("utilisation %g, waste %g", l[1].Utilisation, l[1].Waste)
	}
}

// Of the larger planks there is one; what has no room on it goes on those of which there is no end.
func TestCountsInStoreAreHonoured(t *testing.T) {
	var p plan.Plan
	for n := range 8 {
		p.Pieces = append(p.Pieces, slice(n+1, oval(150, 110), 50))
	}
	l, unlaid := lay(t, p, Stock{Planks: []Plank{{Stock: "large", Thickness: 50, Length: 1200, Width: 300, Count: 1}, {Stock: "small", Thickness: 50, Length: 700, Width: 300}}})
	count := map[string]int{}
	for _, k := range l {
		count[k.Stock]++
	}
	if len(unlaid) > 0 || count["large"] != 1 || count["small"] < 1 {
		t.Errorf("%v, unlaid %v", count, unlaid)
	}
	l, unlaid = lay(t, p, Stock{Planks: []Plank{{Stock: "large", Thickness: 50, Length: 1200, Width: 300, Count: 1}}})
	placed := 0
	for _, k := range l {
		placed += len(k.Places)
	}
	if len(l) != 1 || placed == 0 || placed+len(unlaid) != 8 {
		t.Errorf("%d planks, %d laid, unlaid %v", len(l), placed, unlaid)
	}
}

// A slice that is cut down goes on the thinner foam; a whole one never does, and one that is too large is named.
func TestSlicesLieOnFoamThatIsThickEnough(t *testing.T) {
	p := plan.Plan{Pieces: []piece.Piece{slice(1, box(200, 200), 50), slice(2, box(200, 200), 24), slice(3, box(700, 700), 50)}}
	l, unlaid := lay(t, p, Stock{Planks: []Plank{{Stock: "thick", Thickness: 50, Length: 600, Width: 600}, {Stock: "thin", Thickness: 25, Length: 300, Width: 300, Count: 1, Offcut: true}}})
	if len(l) != 2 || l[0].Stock != "thin" || l[0].Places[0].Piece != "S02" || l[1].Places[0].Piece != "S01" {
		t.Errorf("%+v", l)
	}
	if !slices.Equal(unlaid, []Unlaid{{"S03", "plank 50 mm"}}) {
		t.Errorf("unlaid %v", unlaid)
	}
}

// gore is narrow at its top, so that one upright beside one upside down need the least cloth.
var gore = plane.Ring{{X: -200}, {X: 200}, {X: 40, Y: 600}, {X: -40, Y: 600}}

func TestPiecesLieAsGrainAndNapWant(t *testing.T) {
	p := plan.Plan{Pieces: []piece.Piece{{ID: "C1", Material: "cloth", Count: 4, Outline: gore}}, Cuts: []plan.Cut{
		{Name: "band", Material: "cloth", Length: 900, Width: 60, Count: 2}, {Name: "tape", Material: "cloth", Length: 900, Width: 15, Count: 2}, {Name: "other", Material: "net", Length: 100, Width: 100, Count: 1},
	}}
	for lie, allowed := range map[Lie][]float64{AlongGrain: {90, 270}, WithNap: {270}, AnyQuarter: {0, 90, 180, 270}} {
		l, unlaid := lay(t, p, Stock{Rolls: []Roll{{Stock: "cloth", Material: "cloth", Width: 900, Lie: lie}}})
		if len(l) != 1 || len(unlaid) > 0 || len(l[0].Places) != 6 {
			t.Fatalf("%d: %+v, unlaid %v", lie, l, unlaid)
		}
		for _, q := range l[0].Places {
			if q.Over || q.Piece == "C1" && !slices.Contains(allowed, q.Turn) || q.Piece == "band" && q.Turn != 0 && q.Turn != 180 {
				t.Errorf("%d: %s is turned by %g", lie, q.Piece, q.Turn)
			}
			if (q.Piece == "band") != (q.Outline != nil) {
				t.Errorf("%s has outline %v", q.Piece, q.Outline)
			}
		}
	}
	_, unlaid := lay(t, p, Stock{Rolls: []Roll{{Stock: "ribbon", Material: "cloth", Width: 300, Lie: AlongGrain}}})
	if !slices.Equal(unlaid, []Unlaid{{"C1", "cloth"}}) {
		t.Errorf("unlaid %v", unlaid)
	}
}

// someOfAll is a plan with some of everything.
func someOfAll() (plan.Plan, Stock) {
	var p plan.Plan
	for n := range 12 {
		s := slice(n+1, oval(110+5*float64(n), 80+4*float64(n)), 50)
		p.Pieces = append(p.Pieces, s)
		p.Pieces = append(p.Pieces, piece.Piece{ID: fmt.Sprintf("L%02d", n), Material: "wadding 6 mm", Count: 1 + n%2, Outline: gore.Map(func(q plane.Point) plane.Point { return q.Mul(0.3 + 0.05*float64(n)) })})
	}
	return p, Stock{
		Planks: []Plank{{Stock: "plank", Thickness: 50, Length: 1200, Width: 600}, {Stock: "offcut", Thickness: 50, Length: 500, Width: 350, Count: 1, Offcut: true}},
		Rolls:  []Roll{{Stock: "wadding", Material: "wadding 6 mm", Width: 1500}},
	}
}

func TestTheSamePlanGivesTheSameLayoutsAndPages(t *testing.T) {
	p, s := someOfAll()
	shares := []float64{}
	first, _, err := Lay(t.Context(), p, s, func(done float64) { shares = append(shares, done) })
	if err != nil {
		t.Fatal(err)
	}
	judge(t, p, first)
	again, _ := lay(t, p, s)
	if !reflect.DeepEqual(first, again) {
		t.Error("the layouts differ")
	}
	if !slices.IsSorted(shares) || len(shares) == 0 || shares[len(shares)-1] > 1+1e-9 {
		t.Errorf("progress %v", shares)
	}
	p.Layouts = first
	var a, b bytes.Buffer
	for _, w := range []*bytes.Buffer{&a, &b} {
		if err := Write(w, p, vector.Meta{Title: "cutting"}); err != nil {
			t.Fatal(err)
		}
	}
	if a.Len() == 0 || !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("the pages differ")
	}
}

// What is called off gives no layout, since that would depend on the clock.
func TestCalledOff(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	p, s := someOfAll()
	l, _, err := Lay(ctx, p, s, func(done float64) {
		if done > 0.2 {
			cancel()
		}
	})
	if !errors.Is(err, context.Canceled) || l != nil {
		t.Errorf("%d layouts, %v", len(l), err)
	}
}

func BenchmarkLay(b *testing.B) {
	p, s := someOfAll()
	for b.Loop() {
		if _, _, err := Lay(b.Context(), p, s, nil); err != nil {
			b.Fatal(err)
		}
	}
}

// Round the middle of a square of 100 there is room of 50; the letter L has most in its corner: a circle that touches both outer sides and the inner
// corner, so that r = 40·√2/(1+√2) (derived).
func TestHeart(t *testing.T) {
	for _, c := range []struct {
		name    string
		outline plane.Ring
		want    float64
	}{
		{"square", box(100, 100), 50},
		{"letter L", plane.Ring{{}, {X: 200}, {X: 200, Y: 40}, {X: 40, Y: 40}, {X: 40, Y: 200}, {Y: 200}}, 40 * math.Sqrt2 / (1 + math.Sqrt2)},
	} {
		at, free := heart(c.outline)
		if !c.outline.Contains(at) || free > c.want+1e-9 || free < 0.97*c.want {
			t.Errorf("%s: %.2f at %v, want %.2f", c.name, free, at, c.want)
		}
	}
}
