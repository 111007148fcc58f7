package torso_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/section"
	"understructure/geometry/torso"
)

// readingOf asks by hand for what a level has already.
func readingOf(l torso.Level) measure.Adjustment {
	a := measure.Adjustment{Height: to(l.Height)}
	for _, p := range parts {
		*p.of(&a) = to(p.got(l))
	}
	return a
}

// apart is the greatest distance between two slices as seen from the axis, mm.
func apart(a, b section.Section) (most float64) {
	for j := range a {
		most = math.Max(most, math.Abs(a[j]-b[j]))
	}
	return most
}

// supports are how far a slice reaches in each of 64 directions. What two convex outlines lie
// apart is the most that these differ by (F. Hausdorff, "Grundzüge der Mengenlehre", 1914).
func supports(s section.Section) (reach [64]float64) {
	for k := range reach {
		u := section.Direction(k * section.Directions / len(reach))
		for _, p := range s.Ring() {
			reach[k] = math.Max(reach[k], p.Dot(u))
		}
	}
	return reach
}

func hausdorff(a, b section.Section) (most float64) {
	ra, rb := supports(a), supports(b)
	for k := range ra {
		most = math.Max(most, math.Abs(ra[k]-rb[k]))
	}
	return most
}

// mirrored is the slice with left and right changed.
func mirrored(s section.Section) (m section.Section) {
	for j := range s {
		m[j] = s[(section.Directions/2-j+section.Directions)%section.Directions]
	}
	return m
}

// Each length set alone, five parts in a hundred larger or smaller, comes out at every level of
// every figure, and nothing else of the tape changes. The breadth of a level whose girth nobody
// knows changes its girth with it.
func TestWhatTheHandSetsIsExact(t *testing.T) {
	for _, p := range people(3, 9) {
		f := p.figure(t, nil)
		for _, was := range f.Levels {
			for k, part := range parts {
				for _, by := range []float64{0.95, 1.05} {
					var a measure.Adjustment
					*part.of(&a) = to(by * part.got(was))
					g := p.figure(t, measure.Shape{was.Name: a})
					now := g.At(was.Name)
					near(t, p.name()+" "+string(was.Name)+" "+part.name, part.got(now), by*part.got(was))
					above := was.Name == measure.Shoulder || was.Name == measure.AcrossChest
					if k > 0 && !above {
						near(t, p.name()+" "+string(was.Name)+" girth", now.Girth, was.Girth)
					}
				}
			}
		}
	}
}

func (p person) name() string { return string(p.wearer) }

// Asking for all that is there already leaves every level where it is, to what drawing is good for.
func TestAskingForWhatIsThereChangesNothing(t *testing.T) {
	for _, p := range people(4, 9) {
		f := p.figure(t, nil)
		for _, l := range f.Levels {
			if l.Name == measure.NeckBase {
				continue // its height moves the nape, which the back waist length has set
			}
			g := p.figure(t, measure.Shape{l.Name: readingOf(l)})
			for i, now := range g.Levels {
				was := f.Levels[i]
				if d := apart(was.Section, now.Section); d > 1 || math.Abs(was.Height-now.Height) > 1 {
					t.Errorf("%s: asking for the %s as it is moves the %s by %.2f mm, up by %.2f", p.name(), l.Name, now.Name, d, now.Height-was.Height)
				}
			}
		}
	}
}

// A figure whose tapes are alike on both sides stays so, unless a left arc is set; then the two
// arcs still make up the girth.
func TestSides(t *testing.T) {
	for _, p := range people(5, 9) {
		delete(p.sheet, measure.BustLeftArc)
		delete(p.sheet, measure.WaistLeftArc)
		f := p.figure(t, nil)
		for _, l := range f.Levels {
			a := readingOf(l)
			*a.Breadth *= 1.03
			a.LeftArc = nil
			even := p.figure(t, measure.Shape{l.Name: a}).At(l.Name).Section
			if d := apart(even, mirrored(even)); d > 1e-9 {
				t.Errorf("%s: the %s is %g mm uneven", p.name(), l.Name, d)
			}
			want := l.Reading.LeftArc + 8
			now := p.figure(t, measure.Shape{l.Name: {LeftArc: to(want)}}).At(l.Name)
			other := mirrored(now.Section)
			near(t, p.name()+" "+string(l.Name)+" left arc", now.Reading.LeftArc, want)
			near(t, p.name()+" "+string(l.Name)+" both arcs", now.Reading.LeftArc+other.Reading(now.Seam).LeftArc, now.Girth)
			if now.Section[section.Left] <= now.Section[section.Right] {
				t.Errorf("%s: the longer side of the %s is not the broader one", p.name(), l.Name)
			}
		}
	}
}

// Whatever the hand asks for, the girth that is known is built; what is not built as asked is
// told with the amount; nothing is infinite, and no figure is refused.
func TestAnyShape(t *testing.T) {
	g := rand.New(rand.NewPCG(6, 1872))
	for _, p := range people(6, 60) {
		f := p.figure(t, nil)
		hand := measure.Shape{}
		for _, l := range f.Levels {
			if g.IntN(3) > 0 {
				continue
			}
			a := readingOf(l)
			for k, part := range parts {
				if at := part.of(&a); g.IntN(2) == 0 {
					*at = nil
				} else {
					**at *= math.Exp([]float64{0.05, 0.15, 0.15, 0.1, 0.1}[k] * g.NormFloat64())
				}
			}
			*a.Height += 20 * g.NormFloat64()
			if g.IntN(2) == 0 || l.Name == measure.Waist {
				a.Height = nil
			}
			hand[l.Name] = a
		}
		now := p.figure(t, hand)
		for i, l := range now.Levels {
			a, was := hand[l.Name], f.Levels[i]
			if a.Girth != nil {
				near(t, p.name()+" "+string(l.Name)+" girth", l.Girth, *a.Girth)
			} else if was.Taken {
				near(t, p.name()+" "+string(l.Name)+" girth", l.Girth, was.Girth)
			}
			miss := 0.0
			for _, part := range parts {
				if asked := *part.of(&a); asked != nil {
					miss = math.Max(miss, math.Abs(*asked-part.got(l)))
				}
			}
			told := 0.0
			for _, n := range now.Notices {
				if n.Code == "hand-beyond-girth" && n.Level == l.Name {
					told = n.Amount
				}
			}
			if miss > 0.1 && math.Abs(told-miss) > 1e-9 {
				t.Errorf("%s: the %s misses by %.2f mm, told %.2f", p.name(), l.Name, miss, told)
			}
		}
	}
}

// The farther a drag goes, the farther the slice: breadth and depth follow it all the way between
// their limits, and the skin never jumps.
func TestADragIsFollowed(t *testing.T) {
	const steps = 40
	for _, p := range append(people(7, 9), lady) {
		f := p.figure(t, nil)
		for _, l := range f.Levels {
			m := f.Limits(l.Name, measure.Adjustment{})
			for _, drag := range []struct {
				part int
				span section.Span
			}{{1, m.Breadth}, {2, m.Depth}, {3, m.FrontArc}, {4, m.LeftArc}} {
				part := parts[drag.part]
				from := drag.span.Inside(0.02 * (drag.span.Most - drag.span.Least))
				var last torso.Level
				for k := range steps + 1 {
					var a measure.Adjustment
					want := from.Least + (from.Most-from.Least)*float64(k)/steps
					*part.of(&a) = to(want)
					now, notices := f.Reshape(l.Name, a)
					if math.Abs(part.got(now)-want) > 0.3 || len(notices) > 0 {
						t.Errorf("%s: %s %s dragged to %.2f mm comes to %.2f of %v: %v", p.name(), l.Name, part.name, want, part.got(now), drag.span, notices)
					}
					if step := (from.Most - from.Least) / steps; k > 0 && hausdorff(last.Section, now.Section) > 2*step+0.5 {
						t.Errorf("%s: %s %s dragged by %.2f mm to %.2f, and the skin jumps by %.2f", p.name(), l.Name, part.name, step, want, hausdorff(last.Section, now.Section))
					}
					last = now
				}
			}
		}
	}
}
