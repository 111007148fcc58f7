package tapes

import (
	"math"
	"reflect"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plantest"
)

var (
	wearers = []measure.Wearer{measure.Woman, measure.Man, measure.Child}
	tables  = map[Part][]measure.Measure{Bodice: measure.Keys, Form: measure.Keys, Skirt: measure.Skirt, Sleeve: measure.Sleeve}
)

// each runs a check on every drawing that there must be.
func each(t *testing.T, check func(t *testing.T, d Drawing)) {
	for part, table := range tables {
		for _, m := range table {
			for _, w := range wearers {
				t.Run(string(part)+" "+string(m.Key)+" "+string(w), func(t *testing.T) {
					d, ok := Of(part, m.Key, w)
					if !ok {
						t.Fatal("there is no drawing")
					}
					check(t, d)
				})
			}
		}
	}
}

func TestEveryMeasureHasATapeWithinTheFrame(t *testing.T) {
	within := Frame.Grow(-tapeWidth / 2)
	each(t, func(t *testing.T, d Drawing) {
		length := 0.0
		for _, l := range d.Path() {
			for i, p := range l {
				if !within.Contains(p) {
					t.Fatalf("the tape leaves the frame at %v", p)
				}
				if i > 0 {
					length += p.Dist(l[i-1])
				}
			}
		}
		if length < 10 {
			t.Errorf("the tape is %.1f parts long, too short to be seen", length)
		}
		if len(d.cloth) == 0 {
			t.Error("there is no garment")
		}
	})
}

func TestNothingIsDrawnThatIsNotAskedFor(t *testing.T) {
	for _, c := range []struct {
		drawn map[measure.Key]func(figure) Drawing
		table []measure.Measure
	}{{onBodice, measure.Keys}, {onSkirt, measure.Skirt}, {onSleeve, measure.Sleeve}} {
		for k := range c.drawn {
			if _, ok := measure.Find(c.table, k); !ok {
				t.Errorf("%s is drawn and not asked for", k)
			}
		}
	}
}

// far is how far the point of one path that is farthest from another lies from it.
func far(a, b [][]plane.Point) float64 {
	most := 0.0
	for _, l := range a {
		for i := 1; i < len(l); i++ {
			for k := range 8 {
				p, least := l[i-1].Lerp(l[i], float64(k)/7), math.Inf(1)
				for _, other := range b {
					for j := 1; j < len(other); j++ {
						least = min(least, p.Dist(plane.Nearest(p, other[j-1], other[j])))
					}
				}
				most = max(most, least)
			}
		}
	}
	return most
}

// Everywhere within a width of each other, two tapes would look alike; on the same garment seen from
// the same side they need half as much again.
func TestNoTwoTapesLookAlike(t *testing.T) {
	for part, table := range tables {
		for _, w := range wearers {
			for i, m := range table {
				for _, n := range table[:i] {
					a, _ := Of(part, m.Key, w)
					b, _ := Of(part, n.Key, w)
					least := tapeWidth
					if reflect.DeepEqual(a.garment, b.garment) {
						least *= 1.5
					}
					if d := max(far(a.Path(), b.Path()), far(b.Path(), a.Path())); d < least {
						t.Errorf("%s, %s: the tapes of %s and %s lie within %.1f parts", part, w, m.Key, n.Key, d)
					}
				}
			}
		}
	}
}

// In black and white the tape is told by its weight.
func TestTheTapeIsTheHeaviestLine(t *testing.T) {
	box := drawing.Box{Lo: plane.Point{X: 30, Y: 40}, Hi: plane.Point{X: 80, Y: 65}} // 25 mm high, wider than needed
	each(t, func(t *testing.T, d Drawing) {
		r := &plantest.Recorder{}
		d.Draw(r, box, Print)
		tape, thin := 0.0, 0.0
		for _, s := range r.Lines {
			if s.Pen.Colour == Print.Tape && len(s.Pen.Dash) == 0 {
				tape = max(tape, s.Pen.Width)
			} else {
				thin = max(thin, s.Pen.Width)
			}
			for _, p := range s.Points {
				if !box.Contains(p) {
					t.Fatalf("a line leaves the box at %v", p)
				}
			}
		}
		if tape < 0.6 || tape < 1.6*thin {
			t.Errorf("the tape is %.2f mm wide and the next line %.2f", tape, thin)
		}
	})
}

// The seams say where things lie: the tape follows the figure that it is drawn on.
func TestTapesLieWhereTheySay(t *testing.T) {
	path := func(k measure.Key) plane.Ring {
		d, ok := Of(Bodice, k, measure.Woman)
		if !ok {
			t.Fatal(k)
		}
		var all plane.Ring
		for _, l := range d.Path() {
			all = append(all, l...)
		}
		return all
	}
	middle := func(k measure.Key) plane.Point {
		lo, hi := path(k).Bounds()
		return lo.Lerp(hi, 0.5)
	}
	down := []measure.Key{measure.NeckBaseGirth, measure.UnderarmGirth, measure.BustGirth, measure.UnderbustGirth, measure.WaistGirth, measure.HighHipGirth, measure.HipGirth}
	for i := 1; i < len(down); i++ {
		if middle(down[i]).Y >= middle(down[i-1]).Y {
			t.Errorf("%s does not lie below %s", down[i], down[i-1])
		}
	}
	for _, k := range []measure.Key{measure.BustLeftArc, measure.WaistLeftArc, measure.HipLeftArc} {
		if lo, _ := path(k).Bounds(); lo.X < -1e-9 {
			t.Errorf("%s passes over the wearer's right, which is the viewer's left", k)
		}
	}
	for _, k := range []measure.Key{measure.BustFrontArc, measure.WaistBreadth, measure.AcrossBack, measure.BustPointWidth} {
		if math.Abs(middle(k).X) > 1e-9 {
			t.Errorf("%s is not level with both sides", k)
		}
	}
	if b, d := path(measure.WaistBreadth), path(measure.WaistDepth); b.Hull().Perimeter() <= d.Hull().Perimeter() {
		t.Error("the waist is drawn deeper than broad")
	}
}

func TestWhoIsNotKnownIsDrawnAsAWoman(t *testing.T) {
	a, _ := Of(Bodice, measure.WaistGirth, "")
	b, _ := Of(Bodice, measure.WaistGirth, measure.Woman)
	if far(a.Path(), b.Path()) > 1e-9 {
		t.Error("the tape lies elsewhere")
	}
	for _, d := range []struct {
		part Part
		key  measure.Key
	}{{"hat", measure.WaistGirth}, {Sleeve, measure.WaistGirth}, {Bodice, "mount.ease"}} {
		if _, ok := Of(d.part, d.key, measure.Woman); ok {
			t.Errorf("there is a drawing of %s on a %s", d.key, d.part)
		}
	}
}

func TestWithoutATapeTheGarmentIsPlain(t *testing.T) {
	for part := range tables {
		if d := Plain(part, measure.Man); len(d.cloth) == 0 || len(d.Path()) != 0 {
			t.Errorf("%s: %d outlines, %d tapes", part, len(d.cloth), len(d.Path()))
		}
	}
}

func BenchmarkDraw(b *testing.B) {
	box := drawing.Box{Hi: plane.Point{X: 25, Y: 25}}
	for b.Loop() {
		d, _ := Of(Bodice, measure.HipLeftArc, measure.Woman)
		d.Draw(&plantest.Recorder{}, box, Print)
	}
}
