package flatten

import (
	"math"
	"math/rand"
	"testing"

	"gonum.org/v1/gonum/mat"

	"understructure/geometry/plane"
	"understructure/geometry/shapetest"
)

// Every energy has its stated slope and curvature, and agrees with the others on small strains.
func TestEnergies(t *testing.T) {
	const h = 1e-5
	for name, en := range map[string]energy{"supple": supple{}, "stiff": stiff{80, 0.05}, "flap": flap{stiff{80, 0.05}}} {
		for σ := -0.9503; σ < 1.6; σ += 0.0501 {
			g, dg, ddg := en.price(σ)
			up, dup, _ := en.price(σ + h)
			down, ddown, _ := en.price(σ - h)
			near(t, name+" slope", dg, (up-down)/(2*h), 1e-4*(1+math.Abs(dg)))
			near(t, name+" curvature", ddg, (dup-ddown)/(2*h), 1e-3*ddg)
			if g < 0 || ddg <= 0 {
				t.Errorf("%s at %.2f: %g, curvature %g", name, σ, g, ddg)
			}
		}
		g, dg, ddg := en.price(1)
		near(t, name+" at rest", math.Abs(g)+math.Abs(dg)+math.Abs(ddg-1), 0, 1e-12)
	}
}

func TestGradientOfElement(t *testing.T) {
	rnd := rand.New(rand.NewSource(3))
	p := patch(shapetest.Corseted(3, 3))
	sh := newSheet(p)
	for i := range sh.elements {
		e := &sh.elements[i]
		x := make([]plane.Point, len(p.Points))
		for v := range x {
			x[v] = plane.Point{X: -p.Points[v].X + 5*rnd.NormFloat64(), Y: p.Points[v].Z + 5*rnd.NormFloat64()}
		}
		var l local
		e.expand(supple{}, x, &l)
		for j, v := range e.v {
			const h = 1e-4
			was := x[v]
			x[v].X += h
			up := e.energy(supple{}, x)
			x[v].X -= 2 * h
			down := e.energy(supple{}, x)
			x[v] = was
			near(t, "gradient", l.g[2*j], (up-down)/(2*h), 1e-4*(1+math.Abs(l.g[2*j])))
		}
	}
}

// The multifrontal decomposition solves what gonum's dense one does.
func TestSolverAgainstDense(t *testing.T) {
	rnd := rand.New(rand.NewSource(4))
	p := patch(shapetest.Corseted(9, 7))
	sh := newSheet(p)
	n := 2 * len(p.Points)
	pins := map[int]float64{0: 3, 40: 5}
	dense := mat.NewSymDense(n, nil)
	var l local
	diagonal := make([]float64, len(p.Points))
	for i := range sh.elements {
		sh.elements[i].conform(&l)
		v := sh.elements[i].v
		for a := range 6 {
			for b := a; b < 6; b++ {
				r, c := 2*v[a/2]+a%2, 2*v[b/2]+b%2
				dense.SetSym(r, c, dense.At(r, c)+l.h[a][b])
			}
			diagonal[v[a/2]] += l.h[a][a]
		}
	}
	for i := range n {
		dense.SetSym(i, i, dense.At(i, i)+hold*diagonal[i/2]+pins[i/2])
	}
	s := newSolver(sh, p.Points)
	if _, ok := s.factor(len(p.Points), func(t int, l *local) { sh.elements[t].conform(l) }, hold, pins); !ok {
		t.Fatal("not positive definite")
	}
	b := make([]float64, n)
	for i := range b {
		b[i] = rnd.NormFloat64()
	}
	var want mat.VecDense
	var chol mat.Cholesky
	if !chol.Factorize(dense) {
		t.Fatal("dense not positive definite")
	}
	if err := chol.SolveVecTo(&want, mat.NewVecDense(n, b)); err != nil {
		t.Fatal(err)
	}
	s.solve(b)
	for i := range b {
		near(t, "unknown", b[i], want.AtVec(i), 1e-6*(1+math.Abs(want.AtVec(i))))
	}
}

// Putting vertices back is exact for affine maps inside, and nearly so on the boundary.
func TestRestoreFollowsAffineMap(t *testing.T) {
	p := patch(shapetest.Cylinder(100, 120, 1, 20, 24))
	sh := newSheet(p)
	x := laid(t, p, Options{}).Points
	th := thinned(sh, x, 100)
	if left := len(x) - len(th.gone); left > 150 {
		t.Errorf("%d vertices left of %d, want about 100", left, len(x))
	}
	affine := func(q plane.Point) plane.Point { return plane.Point{X: 1.04*q.X + 0.02*q.Y, Y: 0.97*q.Y - 0.01*q.X} }
	y := make([]plane.Point, len(x))
	for v := range x {
		if th.round[v] != nil {
			y[v] = affine(x[v])
		}
	}
	th.restore(y)
	for v := range y {
		if d := y[v].Dist(affine(x[v])); d > 0.15 {
			t.Errorf("vertex %d lies %.3f mm off", v, d)
		}
	}
	few, _ := sh.coarse(th, x)
	near(t, "coarse area", few.area, p.Area(), 0.01*p.Area())
}

// Gauss–Bonnet: the curvature of the part of a sphere or torus, against its formula.
func TestTotalCurvature(t *testing.T) {
	for _, c := range []struct {
		name string
		p    Patch
		want float64
	}{
		{"cap", patch(shapetest.SphericalCap(50, 0.8, 40)), 2 * math.Pi * (1 - math.Cos(0.8))},
		{"sphere", patch(shapetest.Sphere(50, 0, 1, -0.5, 0.5, 80, 80)), 2 * math.Sin(0.5)},
		{"torus inside", patch(shapetest.Torus(200, 60, 0, 1, math.Pi-1, math.Pi+1, 80, 80)), -2 * math.Sin(1)},
		{"cone", patch(shapetest.Cone(100, 200, 0.8, 6, 40, 10)), 0},
	} {
		near(t, c.name, c.p.TotalCurvature(), c.want, 0.05*math.Abs(c.want)+1e-9)
	}
}
