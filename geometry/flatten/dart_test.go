package flatten

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"understructure/geometry/shapetest"
	"understructure/geometry/space"
)

// bust is an invented front with one round bump on a gently curved ground.
func bust(nu, nv int) Patch {
	return patch(shapetest.Grid(nu, nv, func(u, v float64) space.Point {
		x, z := 240*(u-0.5), 300*v
		d := math.Hypot(x-20, z-180)
		return space.Point{X: -x, Y: 45*math.Exp(-d*d/3600) - x*x/300, Z: z}
	}))
}

func TestDartTakesStrainFromBust(t *testing.T) {
	for _, p := range []Patch{bust(30, 36), bust(13, 15)} {
		plain, darted := laid(t, p, Options{}), laid(t, p, Options{MaxDarts: 1})
		if len(darted.Darts) != 1 || darted.Strain.Greatest > 0.6*plain.Strain.Greatest {
			t.Fatalf("%d darts, strain %.4f after %.4f", len(darted.Darts), darted.Strain.Greatest, plain.Strain.Greatest)
		}
		d := darted.Darts[0]
		if tip := darted.Surface[d.Apex]; math.Hypot(tip.X+20, tip.Z-180) > 50 {
			t.Errorf("dart points to %v, want the bust at (-20, 180)", tip)
		}
		for i := range d.Left {
			if darted.Source[d.Left[i]] != darted.Source[d.Right[i]] {
				t.Fatalf("legs part at %d", i)
			}
		}
		if gap := darted.Points[d.Left[0]].Dist(darted.Points[d.Right[0]]); gap < 20 {
			t.Errorf("dart opens %.1f mm", gap)
		}
		near(t, "leg", d.Length, length(darted.Points, append(slices.Clone(d.Left), d.Apex)), 0.001*d.Length)
		// Left lies to the left of the way in.
		in := darted.Points[d.Apex].Sub(darted.Points[d.Right[0]])
		if in.Cross(darted.Points[d.Left[0]].Sub(darted.Points[d.Right[0]])) <= 0 {
			t.Error("left and right leg are exchanged")
		}
	}
}

func TestNoDartWhereNoneHelps(t *testing.T) {
	saddle := patch(shapetest.Torus(200, 60, 0, 1, math.Pi-1, math.Pi+1, 20, 20))
	if !saddle.Saddle() {
		t.Error("the inside of a torus is not called a saddle")
	}
	for name, p := range map[string]Patch{
		"saddle": saddle,
		"flat":   patch(shapetest.Cylinder(100, 200, 3, 20, 20)),
		"little": patch(shapetest.SphericalCap(100, 0.3, 10)),
	} {
		if f := laid(t, p, Options{MaxDarts: 3}); len(f.Darts) > 0 {
			t.Errorf("%s: %d darts", name, len(f.Darts))
		}
	}
}

func TestDartsStopAtTheStrainAllowed(t *testing.T) {
	p := patch(shapetest.SphericalCap(100, 0.8, 14))
	last := math.Inf(1)
	for n := range 4 {
		f := laid(t, p, Options{MaxDarts: n})
		if len(f.Darts) > n || f.Strain.Greatest > last {
			t.Errorf("%d darts of %d, strain %.4f after %.4f", len(f.Darts), n, f.Strain.Greatest, last)
		}
		last = f.Strain.Greatest
	}
	if f := laid(t, p, Options{MaxDarts: 3, Greatest: 0.5}); len(f.Darts) > 0 {
		t.Errorf("%d darts where 50 %% strain is allowed", len(f.Darts))
	}
}

func TestStraightDartOnItsSurface(t *testing.T) {
	f := laid(t, patch(shapetest.SphericalCap(100, 0.8, 14)), Options{MaxDarts: 1})
	for i, s := range f.Surface {
		if d := math.Abs(s.Norm() - 100); d > 0.5 {
			t.Fatalf("point %d lies %.2f mm off the sphere", i, d)
		}
	}
}

// Clipping leaves slivers of every thinness, down to none at all.
func TestSlivers(t *testing.T) {
	p := patch(shapetest.Corseted(30, 40))
	plain := laid(t, p, Options{}).Strain.Greatest
	for _, off := range []float64{-1e-8, 1e-12, 1e-9, 1e-6, 1e-3, 0.03, 0.2, 13.8, 13.999, 13.9999999} {
		if g := laid(t, clipped(p, space.Point{Z: 1}, 56+off), Options{}).Strain.Greatest; g > 1.2*plain {
			t.Errorf("clipped at %g above a row: strain %.4f, unclipped %.4f", off, g, plain)
		}
	}
}

func TestClippedAnyWay(t *testing.T) {
	rnd := rand.New(rand.NewSource(7))
	p := patch(shapetest.Corseted(24, 32))
	middle := p.Points[12+25*16]
	for n := 0; n < 60; {
		q := p
		for range 2 {
			dir := space.Point{X: rnd.NormFloat64(), Y: rnd.NormFloat64() / 2, Z: rnd.NormFloat64()}.Unit()
			q = clipped(q, dir, middle.Dot(dir)-40*rnd.Float64())
		}
		if _, err := q.Boundary(); err != nil {
			continue // the plane cut it in two
		}
		n++
		if f := laid(t, q, Options{MaxDarts: n % 2}); f.Strain.Greatest > 0.12 || f.Strain.P95 > 0.05 {
			t.Errorf("case %d: %d triangles, strain %+v", n, len(q.Triangles), f.Strain)
		}
	}
}
