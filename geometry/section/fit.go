package section

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
)

// Readings are what a tape or a pair of callipers said of one slice, in millimetres; a 0 was
// not taken. Without a girth there must be a breadth and a depth.
type Readings struct {
	Girth, Breadth, Depth, FrontArc, LeftArc float64
}

// Usual is the slice that statistics expect, and how firmly, as standard deviations; a part
// with a deviation of 0 stays as it is.
type Usual struct {
	Body
	Ratio    float64 // of ln(breadth/depth)
	Fullness float64 // of the fullness common to front and back
	Lean     float64 // of the fullness of the front less that of the back, halved
	Balance  float64 // of ln(left/right)
	Seam     float64 // of where the side seams lie, as a fraction of the depth
}

// ErrReadings is returned when no slice of the kind has all the readings given.
var ErrReadings = errors.New("section: no outline has these readings together")

// Fit returns the slice nearest to the usual one that has every reading exactly.
//
// It minimises the squared departure from the usual, each part measured in its own
// standard deviation, under the readings as equations, by Newton steps on the Lagrange
// conditions (J. Nocedal, S. J. Wright, "Numerical Optimization", 2006, chapter 18).
func Fit(r Readings, u Usual) (Body, error) {
	b, err := fit(r, u)
	if err != nil && r.FrontArc == 0 && u.Lean > 0 {
		// With front and back alike the widest place may lie on the fold between them, where
		// leaning either way looks the same and the steps go to and fro. Nothing asks for a lean here.
		u.Lean *= firmly
		return fit(r, u)
	}
	return b, err
}

// firmly holds a part of the usual slice practically where it is.
const firmly = 1e-3

func fit(r Readings, u Usual) (Body, error) {
	f, err := newFitter(r, u)
	if err != nil {
		return Body{}, err
	}
	return f.sought()
}

// fitter seeks one slice. It keeps the last outline it drew, for most of the slices that it
// tries differ in size or seams alone.
type fitter struct {
	Readings
	usual       Usual
	front, back float64 // fullness of the outline kept
	kept        *outline
}

// newFitter begins with the usual slice at the right size, so that "near" means near in shape.
func newFitter(r Readings, u Usual) (fitter, error) {
	if r.Girth == 0 && r.Breadth > 0 && r.Depth > 0 {
		return fitter{Readings: r, usual: u}, nil
	}
	if !(r.Girth > 0) {
		return fitter{}, fmt.Errorf("%w: girth %g mm", ErrReadings, r.Girth)
	}
	g, _, _ := u.Arcs()
	u.Breadth, u.Depth = u.Breadth*r.Girth/g, u.Depth*r.Girth/g
	return fitter{Readings: r, usual: u}, nil
}

// sought steps from the usual slice to the one that has the readings.
func (f *fitter) sought() (Body, error) {
	var x vector
	for range mostSteps {
		next, err := f.step(x)
		if err != nil {
			return Body{}, err
		}
		moved := 0.0
		for i := range x {
			moved = math.Max(moved, math.Abs(next[i]-x[i]))
		}
		x = next
		if moved < settled && total(f.misses(x)) < met/2 {
			break
		}
	}
	for _, m := range f.misses(x) {
		if math.Abs(m) > met || math.IsNaN(m) {
			return Body{}, fmt.Errorf("%w: off by %.3f mm", ErrReadings, m)
		}
	}
	b := at(f.usual, x)
	if math.Min(b.Front, b.Back) < leanest || math.Max(b.Front, b.Back) > fullest {
		return Body{}, fmt.Errorf("%w: the outline would have corners or points", ErrReadings)
	}
	return b, nil
}

// settled is a change too small to matter: a hundredth of a percent.
const settled = 1e-4

// mostSteps is how often Fit steps; readings of real bodies need five to ten.
const mostSteps = 40

// met is how nearly a reading must come out, mm: a tenth of what printed templates are held to.
const met = 0.01

// Below leanest an outline is a diamond with points at the sides (n = 1.1); above fullest it
// is a box with corners (n = 30). The bodies that the profiles come from lie between −0.15 and 0.2.
const leanest, fullest = -0.2, 0.94

// vector holds the departures from the usual: ln of size, ln of breadth over depth,
// fullness, lean, balance, and seam as a fraction of the depth.
type vector [6]float64

func at(u Usual, x vector) Body {
	b := u.Body
	b.Breadth *= math.Exp(x[0] + x[1]/2)
	b.Depth *= math.Exp(x[0] - x[1]/2)
	b.Front += x[2] + x[3]
	b.Back += x[2] - x[3]
	b.Balance += x[4]
	b.Seam += x[5] * u.Depth
	return b
}

// anySize lets the girth alone settle the size.
const anySize = 1.0

func (u Usual) spreads() vector {
	return vector{anySize, u.Ratio, u.Fullness, u.Lean, u.Balance, u.Seam}
}

// misses are the readings of the slice at x less those taken, in the order girth, breadth,
// depth, front, left.
func (f *fitter) misses(x vector) []float64 {
	b := at(f.usual, x)
	if f.kept == nil || f.front != b.Front || f.back != b.Back {
		f.front, f.back, f.kept = b.Front, b.Back, b.outline()
	}
	skin := b.stretched(f.kept)
	girth, front, left := arcs(&skin, b.Seam)
	m := make([]float64, 0, 5)
	for _, c := range [...]struct{ got, want float64 }{
		{girth, f.Girth}, {b.Breadth, f.Breadth}, {b.Depth, f.Depth}, {front, f.FrontArc}, {left, f.LeftArc},
	} {
		if c.want != 0 {
			m = append(m, c.got-c.want)
		}
	}
	return m
}

func (f *fitter) linearise(x vector) ([]float64, *mat.Dense) {
	const dx = 1e-5
	at0 := f.misses(x)
	jac := mat.NewDense(len(at0), len(x), nil)
	for i, σ := range f.usual.spreads() {
		if σ == 0 {
			continue // never departs
		}
		hi, lo := x, x
		hi[i] += dx
		lo[i] -= dx
		up, down := f.misses(hi), f.misses(lo)
		for k := range at0 {
			jac.Set(k, i, (up[k]-down[k])/(2*dx))
		}
	}
	return at0, jac
}

// step goes from now towards the solution of the linearised conditions, the whole way
// where that brings the readings nearer and a part of it where it does not.
func (f *fitter) step(now vector) (vector, error) {
	miss, jac := f.linearise(now)
	to, err := solve(miss, jac, f.usual, now)
	if err != nil {
		return now, err
	}
	before := total(miss)
	for part := 1.0; ; part /= 2 {
		next := now
		for i := range next {
			next[i] += part * math.Max(-farthest, math.Min(farthest, to[i]-now[i]))
		}
		if after := total(f.misses(next)); after <= before || after < met/10 || part < 0.1 {
			return next, nil
		}
	}
}

// farthest is the most that a part changes in one step, as a logarithm: a third.
const farthest = 0.3

func total(miss []float64) float64 {
	sum := 0.0
	for _, m := range miss {
		sum += math.Abs(m)
	}
	return sum
}

// solve returns the x with the least Σ(xᵢ/σᵢ)² under jac·(x − now) = −miss.
func solve(miss []float64, jac *mat.Dense, u Usual, now vector) (vector, error) {
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
