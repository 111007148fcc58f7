package section

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// Readings are what a tape or a pair of callipers said of one slice, in millimetres. Girth
// is always there; a 0 elsewhere was not taken.
type Readings struct {
	Girth, Breadth, Depth, FrontArc, LeftArc float64
}

// Usual is the slice that statistics expect, and how firmly: one standard deviation of
// each part as a fraction of it (0.05 is 5 %), and of the left-to-right balance.
type Usual struct {
	Halves
	Spread struct{ Breadth, Depth, Fullness, Balance float64 }
}

// ErrReadings is returned when no slice of the kind has all the readings given.
var ErrReadings = errors.New("section: no outline has these readings together")

// Fit returns the slice nearest to the usual one that has every reading exactly.
//
// It minimises the squared departure from the usual, each part measured in its own
// standard deviation, under the readings as equations, by Newton steps on the Lagrange
// conditions (J. Nocedal, S. J. Wright, "Numerical Optimization", 2006, chapter 18).
func Fit(r Readings, u Usual) (Halves, error) {
	if !(r.Girth > 0) {
		return Halves{}, fmt.Errorf("%w: girth %g mm", ErrReadings, r.Girth)
	}
	// Work on the usual slice at the right size, so that "near" means near in shape.
	g, _, _ := u.Arcs()
	u.Halves = u.Halves.sized(r.Girth / g)
	var x vector
	for range 60 {
		miss, jac := linearise(r, u, x)
		next, err := step(miss, jac, u, x)
		if err != nil {
			return Halves{}, err
		}
		moved := 0.0
		for i := range next {
			d := math.Max(-0.35, math.Min(0.35, next[i]-x[i])) // a step changes no part by more than a third
			moved = math.Max(moved, math.Abs(d))
			x[i] += d
		}
		if moved < 1e-8 {
			break
		}
	}
	h := at(u, x)
	miss, _ := linearise(r, u, x)
	for _, m := range miss {
		if math.Abs(m) > 1e-3 || math.IsNaN(m) {
			return Halves{}, fmt.Errorf("%w: off by %.4f mm", ErrReadings, m)
		}
	}
	if h.FrontFullness < leastFullness || h.BackFullness < leastFullness || h.FrontFullness > mostFullness || h.BackFullness > mostFullness {
		return Halves{}, fmt.Errorf("%w: the outline would have corners or points", ErrReadings)
	}
	return h, nil
}

// A body is neither a diamond (n = 1) nor a box: real torsos lie between 1.7 and 9.6
// (5 to 95 % of ANSUR II women, chest, by Gordon et al., NATICK/TR-15/007, 2014).
const leastFullness, mostFullness = 1.2, 14

// vector holds the departures from the usual: natural logarithms of breadth, front depth,
// back depth, front fullness, back fullness, and left over right.
type vector [6]float64

func (h Halves) sized(f float64) Halves {
	h.Right, h.Left, h.Front, h.Back, h.Valley, h.Y = h.Right*f, h.Left*f, h.Front*f, h.Back*f, h.Valley*f, h.Y*f
	return h
}

func at(u Usual, x vector) Halves {
	h := u.Halves
	b := math.Exp(x[0])
	h.Right *= b * math.Exp(-x[5])
	h.Left *= b * math.Exp(x[5])
	h.Front *= math.Exp(x[1])
	h.Back *= math.Exp(x[2])
	h.FrontFullness *= math.Exp(x[3])
	h.BackFullness *= math.Exp(x[4])
	return h
}

func (u Usual) spreads() vector {
	s := u.Spread
	return vector{s.Breadth, s.Depth, s.Depth, s.Fullness, s.Fullness, s.Balance}
}

// misses are the readings of h less those taken, in the order girth, breadth, depth, front, left.
func misses(r Readings, h Halves) []float64 {
	girth, front, left := h.Arcs()
	m := []float64{girth - r.Girth}
	for _, c := range [...]struct{ got, want float64 }{
		{h.Right + h.Left, r.Breadth}, {h.Front + h.Back, r.Depth}, {front, r.FrontArc}, {left, r.LeftArc},
	} {
		if c.want != 0 {
			m = append(m, c.got-c.want)
		}
	}
	return m
}

func linearise(r Readings, u Usual, x vector) ([]float64, *mat.Dense) {
	const dx = 1e-5
	at0 := misses(r, at(u, x))
	jac := mat.NewDense(len(at0), len(x), nil)
	for i := range x {
		hi, lo := x, x
		hi[i] += dx
		lo[i] -= dx
		up, down := misses(r, at(u, hi)), misses(r, at(u, lo))
		for k := range at0 {
			jac.Set(k, i, (up[k]-down[k])/(2*dx))
		}
	}
	return at0, jac
}

// step solves min Σ(xᵢ/σᵢ)² under jac·(x − now) = −miss.
func step(miss []float64, jac *mat.Dense, u Usual, now vector) (vector, error) {
	n, m := len(now), len(miss)
	σ := u.spreads()
	scaled := mat.NewDense(m, n, nil) // J·Σ
	rhs := mat.NewVecDense(m, nil)
	for k := range m {
		v := -miss[k]
		for i := range n {
			scaled.Set(k, i, jac.At(k, i)*σ[i])
			v += jac.At(k, i) * now[i]
		}
		rhs.SetVec(k, v)
	}
	var normal mat.Dense
	normal.Mul(scaled, scaled.T())
	for k := range m {
		normal.Set(k, k, normal.At(k, k)*(1+1e-12)+1e-12)
	}
	var λ mat.VecDense
	if err := λ.SolveVec(&normal, rhs); err != nil {
		return now, fmt.Errorf("%w: readings that say the same thing twice differ", ErrReadings)
	}
	var x vector
	for i := range n {
		for k := range m {
			x[i] += σ[i] * scaled.At(k, i) * λ.AtVec(k)
		}
	}
	return x, nil
}
