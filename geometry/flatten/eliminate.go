package flatten

import (
	"slices"

	"understructure/geometry/plane"
)

// factor assembles and decomposes the system. expand gives the gradient and Hessian of one
// element; the diagonal is raised by the share raise of itself and by pins. It returns the assembled gradient, and false when the
// system is not positive definite.
func (s *solver) factor(points int, expand func(t int, l *local), raise float64, pins map[int]float64) ([]float64, bool) {
	grad, diagonal := make([]float64, 2*points), make([]float64, points)
	var l local
	for i := range s.fronts {
		f := &s.fronts[i]
		clear(f.panel)
		f.update = s.take(4 * (len(f.vertices) - f.own) * (len(f.vertices) - f.own))
		for k, t := range f.triangles {
			expand(t, &l)
			f.assemble(f.corners[k], &l, grad, diagonal)
		}
		for k, v := range f.vertices[:f.own] {
			shift := raise*diagonal[v] + pins[v]
			*f.entry(2*k, 2*k) += shift
			*f.entry(2*k+1, 2*k+1) += shift
		}
		for _, c := range f.children {
			f.extend(&s.fronts[c])
			s.spare = append(s.spare, s.fronts[c].update)
		}
		if !f.eliminate() {
			return grad, false
		}
	}
	return grad, true
}

// take returns n zeros, in memory used before if there is some.
func (s *solver) take(n int) []float64 {
	for i, b := range slices.Backward(s.spare) {
		if cap(b) >= n {
			s.spare = slices.Delete(s.spare, i, i+1)
			clear(b[:n])
			return b[:n]
		}
	}
	return make([]float64, n, 2*n)
}

// entry returns the place of row r, column c, r ≥ c, in the panel or the update.
func (f *front) entry(r, c int) *float64 {
	n := 2 * f.own
	if c < n {
		return &f.panel[r*n+c]
	}
	return &f.update[(r-n)*(2*len(f.vertices)-n)+c-n]
}

// assemble adds one triangle.
func (f *front) assemble(corners [3]int, l *local, grad, diagonal []float64) {
	var at [6]int
	for j, c := range corners {
		at[2*j], at[2*j+1] = 2*c, 2*c+1
		v := 2 * f.vertices[c]
		grad[v] += l.g[2*j]
		grad[v+1] += l.g[2*j+1]
		diagonal[f.vertices[c]] += l.h[2*j][2*j] + l.h[2*j+1][2*j+1]
	}
	for i := range 6 {
		for j := i; j < 6; j++ {
			*f.entry(max(at[i], at[j]), min(at[i], at[j])) += l.h[i][j]
		}
	}
}

// extend adds what a child left over. Its places rise, so that the lower half stays the lower half.
func (f *front) extend(c *front) {
	n, m := 2*f.own, 2*len(c.places)
	inside := 0 // of its columns, how many are own here
	for inside < len(c.places) && c.places[inside] < f.own {
		inside++
	}
	for i := range m {
		r := 2*c.places[i/2] + i&1
		row := c.update[i*m : i*m+i+1]
		into := f.panel[r*n : r*n+n]
		for j, u := range row[:min(i+1, 2*inside)] {
			into[2*c.places[j/2]+j&1] += u
		}
		if r < n {
			continue
		}
		width := 2*len(f.vertices) - n
		into = f.update[(r-n)*width : (r-n+1)*width]
		for j := 2 * inside; j <= i; j++ {
			into[2*c.places[j/2]+j&1-n] += row[j]
		}
	}
}

// eliminate decomposes the own block and takes its share off the rest.
func (f *front) eliminate() bool {
	n := 2 * f.own
	if n == 0 {
		return true
	}
	if !cholesky(f.panel, n) {
		return false
	}
	downdate(f.update, f.panel[n*n:], n)
	return true
}

// solve replaces b by the solution of the decomposed system.
func (s *solver) solve(b []float64) {
	for i := range s.fronts {
		s.fronts[i].forward(b)
	}
	for i := len(s.fronts) - 1; i >= 0; i-- {
		s.fronts[i].backward(b)
	}
}

func (f *front) forward(b []float64) {
	n := 2 * f.own
	for r := range 2 * len(f.vertices) {
		row := f.panel[r*n : r*n+min(r, n)]
		at := 2*f.vertices[r/2] + r&1
		sum := b[at]
		for c, l := range row {
			sum -= l * b[2*f.vertices[c/2]+c&1]
		}
		if r < n {
			sum /= f.panel[r*n+r]
		}
		b[at] = sum
	}
}

func (f *front) backward(b []float64) {
	n := 2 * f.own
	for r := 2*len(f.vertices) - 1; r >= 0; r-- {
		at := 2*f.vertices[r/2] + r&1
		if r < n {
			b[at] /= f.panel[r*n+r]
		}
		for c, l := range f.panel[r*n : r*n+min(r, n)] {
			b[2*f.vertices[c/2]+c&1] -= l * b[at]
		}
	}
}

// places copies the unknowns into points.
func places(u []float64) []plane.Point {
	x := make([]plane.Point, len(u)/2)
	for i := range x {
		x[i] = plane.Point{X: u[2*i], Y: u[2*i+1]}
	}
	return x
}
