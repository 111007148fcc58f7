package fit

import (
	"math"
	"slices"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// circle has its middle to the front of the axis by so much.
func circle(radius, forward float64) plane.Ring {
	r := make(plane.Ring, 360)
	for i := range r {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 360)
		r[i] = plane.Point{X: radius * c, Y: radius*s + forward}
	}
	return r
}

func compare(t *testing.T, built, garment plane.Ring) Round {
	t.Helper()
	all := Compare([]float64{1000}, []plane.Ring{built}, []plane.Ring{garment})
	if len(all) != 1 {
		t.Fatalf("%d rounds, want 1", len(all))
	}
	return all[0]
}

// Steiner: a parallel curve at distance d is 2πd longer.
func TestEvenRoomIsTheSameAllRound(t *testing.T) {
	for _, d := range []float64{-7, 0, 3, 40} {
		r := compare(t, circle(150, 0), circle(150+d, 0))
		for j, got := range r.Point {
			if math.Abs(got-d) > 0.02 {
				t.Fatalf("direction %d: %.3f mm, want %g", j, got, d)
			}
		}
		if math.Abs(r.Tape-2*math.Pi*d) > 0.02 {
			t.Errorf("tape %.3f mm, want %.3f", r.Tape, 2*math.Pi*d)
		}
	}
}

// A circle of radius a about the axis in one of radius b whose middle lies e to the front: a
// normal of the inner at angle φ from the front meets the outer where
// (a+t)² − 2(a+t)e·cos φ + e² = b² (law of cosines; derived).
func TestRoomInARoundGarmentThatHangsForward(t *testing.T) {
	const a, b, e = 150.0, 160.0, 20.0
	r := compare(t, circle(a, 0), circle(b, e))
	for j, got := range r.Point {
		c := section.Direction(j).Y
		want := e*c + math.Sqrt(e*e*c*c-e*e+b*b) - a
		if math.Abs(got-want) > 0.03 {
			t.Errorf("direction %d: %.3f mm, want %.3f", j, got, want)
		}
	}
	if r.Point[section.Front] < 29 || r.Point[section.Back] > -9 {
		t.Errorf("front %.1f, back %.1f, want 30 and -10", r.Point[section.Front], r.Point[section.Back])
	}
}

// The clearance is square to the mount, not along the rays from the axis: a thin mount
// 10 mm inside a garment, both with flat fronts.
func TestClearanceIsSquareToTheMount(t *testing.T) {
	box := func(x, y float64) plane.Ring {
		return plane.Ring{{X: x, Y: -y}, {X: x, Y: y}, {X: -x, Y: y}, {X: -x, Y: -y}}
	}
	r := compare(t, box(200, 50), box(210, 60))
	for _, j := range []int{section.Front, section.Front - 30, section.Front + 30, section.Back, section.Left} {
		if math.Abs(r.Point[j]-10) > 0.01 {
			t.Errorf("direction %d: %.3f mm, want 10", j, r.Point[j])
		}
	}
}

func TestNothingIsComparedWithNothing(t *testing.T) {
	c := circle(100, 0)
	got := Compare([]float64{1, 2, 3, 4}, []plane.Ring{nil, c, c}, []plane.Ring{c, nil, c})
	if len(got) != 1 || got[0].Height != 3 {
		t.Errorf("%d rounds, want the one at height 3", len(got))
	}
	if Worst(nil, nil, 5) != nil {
		t.Error("places on nothing")
	}
}

func TestBands(t *testing.T) {
	for felt, want := range map[float64]Band{-30: Straining, -0.51: Straining, -0.5: Touching, 0.99: Touching, 1: AsWanted, 7.9: AsWanted, 8: Slack, 16: VerySlack, math.Inf(1): VerySlack} {
		if got := BandOf(felt); got != want {
			t.Errorf("%g mm is %v, want %v", felt, got, want)
		}
	}
	for b := Straining; b < Bands; b++ {
		from, to := b.Limits()
		if from >= to || b > Straining && BandOf(from) != b {
			t.Errorf("%v lies between %g and %g", b, from, to)
		}
	}
}

// Where the tape is short, what touches is stretched; what has room is not.
func TestAShortTapeStretchesWhatTouches(t *testing.T) {
	r := compare(t, circle(150, 0), circle(150, 0))
	r.Tape = -4
	r.Point[7] = 3
	if b := BandOf(r.Felt(0)); b != Straining {
		t.Errorf("a point that touches is %v, want strain", b)
	}
	if b := BandOf(r.Felt(7)); b != AsWanted {
		t.Errorf("a point with room is %v, want as wanted", b)
	}
	before := math.Inf(-1)
	for d := -3.0; d < 4; d += 0.01 {
		r.Point[0] = d
		if felt := r.Felt(0); felt < before || felt > d || felt-before > 0.06 && d > -3 {
			t.Fatalf("a clearance of %.2f is felt as %.2f after %.2f", d, felt, before)
		} else {
			before = felt
		}
	}
}

// dented is a mount with room of 4 mm all over, and bumps of its own.
func dented(bumps map[[2]int]float64) []Round {
	var all []Round
	for i := range 40 {
		r := Round{Height: 1000 + 10*float64(i), Tape: 25}
		for j := range r.Point {
			r.Point[j], r.Mount[j] = 4, 150
			for at, d := range bumps {
				far := math.Hypot(float64(i-at[0]), float64(j-at[1])/2.7) // 10 mm either way
				r.Point[j] += d * math.Exp(-far*far/4)
			}
		}
		all = append(all, r)
	}
	return all
}

func TestWorstPlaces(t *testing.T) {
	levels := []Level{{"hip", 1000}, {"waist", 1200}}
	all := dented(map[[2]int]float64{
		{20, section.Front}:     -7,  // strain of 3 mm at the waist in front
		{23, section.Front + 4}: -6,  // a neighbour of it, less bad
		{20, section.Back}:      -10, // worse, behind
		{5, section.Left}:       -4,  // touches
		{35, section.Right}:     9,   // slack
	})
	got := Worst(all, levels, 9)
	want := []Place{
		{Band: Straining, Side: "back", Level: "waist"}, {Band: Straining, Side: "front", Level: "waist"},
		{Band: Touching, Side: "left", Level: "hip", Above: 50}, {Band: Slack, Side: "right", Level: "waist", Above: 150},
	}
	if len(got) != len(want) {
		t.Fatalf("%d places %+v, want %d", len(got), got, len(want))
	}
	for i, w := range want {
		if g := got[i]; g.Band != w.Band || g.Side != w.Side || g.Level != w.Level || math.Abs(g.Above-w.Above) > 0.1 {
			t.Errorf("place %d is %+v, want %+v", i, g, w)
		}
	}
	if d := got[0].Point; math.Abs(d+6) > 0.1 {
		t.Errorf("the worst is %.2f mm, want -6", d)
	}
	two := Worst(all, levels, 2)
	if len(two) != 2 || two[0].Side != "back" || two[1].Band != Slack {
		t.Errorf("the two worst are %+v, want the strain behind and the slack", two)
	}
	if len(Worst(all, levels, 0)) != 0 {
		t.Error("none were asked for")
	}
}

// A hill is one place, however broad: its slopes are no places of their own.
func TestAHillIsOnePlace(t *testing.T) {
	all := dented(nil)
	for i := range all {
		for j := range all[i].Point {
			far := math.Hypot(float64(i-20), float64(j-section.Front)/2.7)
			all[i].Point[j] = min(-20+far, 4)
		}
	}
	if got := Worst(all, nil, 9); len(got) != 1 || got[0].Point != -20 {
		t.Errorf("places on one hill: %+v", got)
	}
}

// No two places are neighbours, whatever the mount is like: one that strains all over.
func TestWorstPlacesLieApart(t *testing.T) {
	all := dented(nil)
	for i := range all {
		all[i].Tape = -40
		for j := range all[i].Point {
			all[i].Point[j] = -5 + math.Sin(float64(i*7+j*3))
		}
	}
	got := Worst(all, nil, 12)
	if len(got) != 12 {
		t.Fatalf("%d places, want 12", len(got))
	}
	for i, p := range got {
		for _, q := range got[:i] {
			if d := spot(all, p).Dist(spot(all, q)); d < apart {
				t.Errorf("%v %g and %v %g are %.0f mm apart", p.Side, p.Height, q.Side, q.Height, d)
			}
		}
	}
	if !slices.IsSortedFunc(got, func(a, b Place) int { return int(math.Copysign(1, a.Point-b.Point)) }) {
		t.Error("the worst do not come first")
	}
}

func TestSides(t *testing.T) {
	for turn, want := range map[int]string{0: "right", 15: "right", 16: "right front", section.Front: "front", 96: "left front", section.Left: "left", section.Back: "back", 224: "right back", 255: "right"} {
		if got := Side(turn); got != want {
			t.Errorf("direction %d is %q, want %q", turn, got, want)
		}
	}
}

func BenchmarkCompare(b *testing.B) {
	var heights []float64
	var built, garment []plane.Ring
	for i := range 67 {
		inner, outer := section.Of(circle(150, 5)), section.Of(circle(155, 3))
		heights, built, garment = append(heights, float64(i)), append(built, inner.Ring()), append(garment, outer.Ring())
	}
	for b.Loop() {
		Compare(heights, built, garment)
	}
}

func BenchmarkWorst(b *testing.B) {
	all := dented(map[[2]int]float64{{20, 64}: -7})
	for b.Loop() {
		Worst(all, nil, 8)
	}
}
