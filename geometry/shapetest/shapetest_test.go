package shapetest

import (
	"math"
	"testing"

	"understructure/geometry/space"
)

func area(p []space.Point, t [][3]int) float64 {
	sum := 0.0
	for _, v := range t {
		sum += p[v[1]].Sub(p[v[0]]).Cross(p[v[2]].Sub(p[v[0]])).Norm() / 2
	}
	return sum
}

// The areas are those of the books: Archimedes for sphere and cylinder, Pappus for the torus.
func TestAreas(t *testing.T) {
	check := func(name string, want float64) func(p []space.Point, tr [][3]int) {
		return func(p []space.Point, tr [][3]int) {
			if got := area(p, tr); math.Abs(got/want-1) > 2e-3 {
				t.Errorf("%s: area %.2f, want %.2f", name, got, want)
			}
		}
	}
	check("cylinder", 100*200*3)(Cylinder(100, 200, 3, 80, 3))
	check("cone", math.Pi*30*50*(1-0.25*0.25))(Cone(30, 40, 0.75, 2*math.Pi, 100, 5))
	check("torus", 4*math.Pi*math.Pi*50*20)(Torus(50, 20, 0, 2*math.Pi, 0, 2*math.Pi, 150, 100))
	check("sphere", 40*40*1.5*(math.Sin(0.9)-math.Sin(-0.4)))(Sphere(40, 0, 1.5, -0.4, 0.9, 60, 60))
	check("cap", 2*math.Pi*40*40*(1-math.Cos(1)))(SphericalCap(40, 1, 40))
}

// Triangles face outward: away from the axis, the centre or the tube's middle.
func TestFacesOutward(t *testing.T) {
	check := func(name string, outward func(m space.Point) space.Point) func(p []space.Point, tr [][3]int) {
		return func(p []space.Point, tr [][3]int) {
			for i, v := range tr {
				n := p[v[1]].Sub(p[v[0]]).Cross(p[v[2]].Sub(p[v[0]]))
				if n.Dot(outward(p[v[0]].Add(p[v[1]]).Add(p[v[2]]).Mul(1./3))) <= 0 {
					t.Fatalf("%s: triangle %d faces inward", name, i)
				}
			}
		}
	}
	axis := func(m space.Point) space.Point { return space.Point{X: m.X, Y: m.Y} }
	centre := func(m space.Point) space.Point { return m }
	check("cylinder", axis)(Cylinder(100, 200, 3, 20, 3))
	check("cone", axis)(Cone(100, 200, 0.9, 3, 20, 3))
	check("sphere", centre)(Sphere(100, 0, 1, -1, 1, 20, 20))
	check("cap", centre)(SphericalCap(100, 1, 9))
	check("panel", axis)(Corseted(20, 30))
	check("torus", func(m space.Point) space.Point { return m.Sub(axis(m).Unit().Mul(50)) })(Torus(50, 20, 0, 3, -3, 3, 40, 40))
}

func TestCapStrain(t *testing.T) {
	if got := CapStrain(0.4); math.Abs(got-0.0134) > 5e-5 {
		t.Errorf("%.5f, want 1.34 %%: half of ln(0.4/sin 0.4) = 2.68 %%", got)
	}
}
