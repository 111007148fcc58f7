package sleeve

import (
	"fmt"
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
)

// Options say how a support is made in its sleeve. Lengths are millimetres, angles radians.
type Options struct {
	Ease  float64 // by how much the support is smaller round than the place that it must pass
	Short float64 // by how much it ends above the sleeve's end, so that it does not show
	Bend  float64 // of the elbow, 0 for a straight arm; at most MostBend
}

// Usual are the options of a soft arm: it ends 1 cm inside the sleeve and bends as an arm does that hangs at ease,
// by 20 degrees. Common practice, no published source.
func Usual(ease float64) Options {
	return Options{Ease: ease, Short: 10, Bend: 20 * math.Pi / 180}
}

// MostBend is the greatest bend that two flat pieces follow, rad: 30 degrees. Beyond, a thick arm would strain them by
// more than 3.5 % at the elbow and need a third seam.
const MostBend = math.Pi / 6

// Arm is a soft arm: a bent tube from the bottom of the armhole (place 0) to its end, with a head above. It
// is symmetric but for the bend, which turns the forearm to the front. It is not changed once made.
type Arm struct {
	Head    float64   // height of the head above the bottom of the armhole
	At      []float64 // places along the skin, falling from the sleeve's end to 0
	Girth   []float64 // round the arm at each
	Elbow   float64   // place of the elbow, negative where there is none
	Bend    float64
	Notices []measure.Notice
}

// rowGap is how far two rows of an arm lie apart at most, mm.
const rowGap = 12.0

// mostEase is the greatest part of a sleeve's girth that ease takes off: more would leave a child's wrist no arm.
const mostEase = 0.2

// Arm returns the soft arm for the sleeve. The error names an option with which there is none.
func (s Sleeve) Arm(o Options) (Arm, error) {
	if !(o.Bend >= 0 && o.Bend <= MostBend) {
		return Arm{}, fmt.Errorf("sleeve: bend %.3g rad, want 0–%.3g", o.Bend, MostBend)
	}
	if !(o.Ease >= 0) || math.IsInf(o.Ease, 1) {
		return Arm{}, fmt.Errorf("sleeve: ease %g mm, want 0 or more", o.Ease)
	}
	if !(o.Short >= 0 && o.Short < s.Under/2) {
		return Arm{}, fmt.Errorf("sleeve: the arm is to end %g mm inside the sleeve, want 0 to half the under-sleeve length, %.0f mm", o.Short, s.Under/2)
	}
	a := Arm{Head: s.Cap(), Elbow: -1}
	knots := []float64{0, s.Under - o.Short}
	if s.Bends() && s.Elbow < knots[1]-nearEnd {
		a.Elbow, a.Bend = s.Elbow, o.Bend
		knots = []float64{0, s.Elbow, knots[1]}
	}
	for i := len(knots) - 1; i > 0; i-- {
		n := math.Ceil((knots[i] - knots[i-1]) / rowGap)
		for k := 0.0; k < n; k++ {
			a.At = append(a.At, knots[i]+(knots[i-1]-knots[i])*k/n)
		}
	}
	a.At = append(a.At, 0)
	wanted := s.armGirths(o)
	for _, at := range a.At {
		a.Girth = append(a.Girth, wanted(at))
	}
	a.Notices = s.slack(a, o)
	return a, nil
}

// armGirths is the girth of the arm by place: as large as can pass, but in a sleeve that widens towards its end
// no larger than an arm, and in a full one, whose puff goes round it, no larger either.
func (s Sleeve) armGirths(o Options) func(float64) float64 {
	natural := func(float64) float64 { return math.Inf(1) }
	switch end := s.Girth(s.Under); {
	case s.Widest > 0:
		natural = s.natural()
	case s.Bends() && end > s.Girth(s.Elbow):
		natural = s.natural()
	}
	return func(at float64) float64 { return math.Min(s.passes(at, o), natural(at)) }
}

// passes is the greatest girth that comes as far as a place, ease taken off.
func (s Sleeve) passes(at float64, o Options) float64 {
	pass := s.Passage(at)
	return pass - math.Min(o.Ease, mostEase*pass)
}

// natural is the girth of the usual arm, by place. It tapers to the sleeve's end where that is closer.
func (s Sleeve) natural() func(float64) float64 {
	b := s.body
	if !s.Bends() {
		return func(float64) float64 { return b.upper }
	}
	end := b.wrist
	if g := s.Girth(s.Under); g < b.elbow() {
		end = g
	}
	return curve.Through([]float64{0, s.Elbow, s.Under}, []float64{b.upper, b.elbow(), end}).At
}

// muchSlack is how much of a sleeve's girth may stay unfilled, ease left out, before it is said, mm. From memory.
const muchSlack = 20.0

// slack says where the arm cannot fill the sleeve, and why.
func (s Sleeve) slack(a Arm, o Options) []measure.Notice {
	most, where := 0.0, 0.0
	for i, at := range a.At {
		if d := s.Girth(at) - o.Ease - a.Girth[i]; d > most {
			most, where = d, at
		}
	}
	if most < muchSlack {
		return nil
	}
	key := measure.UpperGirth
	if a.Elbow >= 0 && where > a.Elbow {
		key = measure.WristGirth
	}
	why := fmt.Sprintf("the arm must pass %.0f mm above", s.Passage(where))
	fill := "fill it with soft net that can be pressed together"
	if s.Girth(where) <= s.Passage(where)+1e-6 {
		why, fill = "the sleeve is wider than an arm there", "leave it to hang, or fill it with soft net"
	}
	return []measure.Notice{{Code: "sleeve-not-filled", Key: key, Amount: most, Message: fmt.Sprintf(
		"%.0f mm below the armhole the sleeve is %.0f mm wider round than its arm and ease, because %s; %s.", where, most, why, fill)}}
}
