package document

import (
	"math"
	"math/rand/v2"
	"testing"

	"understructure/app/record"
	"understructure/geometry/plane"
)

func near(a, b plane.Point, within float64) bool { return a.Dist(b) <= within }

// Derived by hand: 100 pixels stand for 1000 mm; in the second picture the figure lies on its
// side, its head to the right, so that what is below it in the picture is to the right in the view.
func TestWhereAPixelLies(t *testing.T) {
	upright := record.Photograph{Low: plane.Point{X: 50, Y: 200}, High: plane.Point{X: 50, Y: 100}, Length: 1000, At: plane.Point{X: -20, Y: 30}}
	lying := upright
	lying.High = plane.Point{X: 150, Y: 200}
	for _, c := range []struct {
		photo       record.Photograph
		pixel, view plane.Point
	}{
		{upright, plane.Point{X: 50, Y: 200}, plane.Point{X: -20, Y: 30}},
		{upright, plane.Point{X: 50, Y: 100}, plane.Point{X: -20, Y: 1030}},
		{upright, plane.Point{X: 60, Y: 200}, plane.Point{X: 80, Y: 30}},
		{lying, plane.Point{X: 150, Y: 200}, plane.Point{X: -20, Y: 1030}},
		{lying, plane.Point{X: 50, Y: 210}, plane.Point{X: 80, Y: 30}},
	} {
		p, ok := Placed(c.photo)
		if !ok || p.Scale() != 10 {
			t.Fatalf("scale %v, %v", p.Scale(), ok)
		}
		if got := p.View(c.pixel); !near(got, c.view, 1e-9) {
			t.Errorf("pixel %v lies at %v, want %v", c.pixel, got, c.view)
		}
		if got := p.Pixel(c.view); !near(got, c.pixel, 1e-9) {
			t.Errorf("at %v lies pixel %v, want %v", c.view, got, c.pixel)
		}
	}
}

// However a photograph lies: there and back is where one began, the low point lies where it was
// put with the high point straight above it, and every distance is scaled alike.
func TestPlacingIsASimilarity(t *testing.T) {
	r := rand.New(rand.NewPCG(1860, 1870))
	point := func(size float64) plane.Point {
		return plane.Point{X: (r.Float64() - 0.5) * size, Y: (r.Float64() - 0.5) * size}
	}
	for range 5000 {
		photo := record.Photograph{Low: point(8000), High: point(8000), Length: 1 + r.Float64()*3000, At: point(4000)}
		p, ok := Placed(photo)
		if !ok {
			t.Fatalf("%+v is not placed", photo)
		}
		a, b := point(8000), point(8000)
		if back := p.Pixel(p.View(a)); !near(back, a, 1e-6) {
			t.Fatalf("%+v: %v comes back as %v", photo, a, back)
		}
		if high := photo.At.Add(plane.Point{Y: photo.Length}); !near(p.View(photo.Low), photo.At, 1e-9) || !near(p.View(photo.High), high, 1e-6) {
			t.Fatalf("%+v: low at %v, high at %v", photo, p.View(photo.Low), p.View(photo.High))
		}
		if d := a.Dist(b) * p.Scale(); math.Abs(p.View(a).Dist(p.View(b))-d) > 1e-6*(1+d) {
			t.Fatalf("%+v: a distance of %v became %v", photo, d, p.View(a).Dist(p.View(b)))
		}
		// not mirrored: a turn to the left in the picture, seen with y down, stays one in the view
		c := point(8000)
		seen := -b.Sub(a).Cross(c.Sub(a))
		if laid := p.View(b).Sub(p.View(a)).Cross(p.View(c).Sub(p.View(a))); math.Abs(seen) > 1 && seen*laid <= 0 {
			t.Fatalf("%+v: mirrored", photo)
		}
	}
}

func TestWhatIsNotPlaced(t *testing.T) {
	point := plane.Point{X: 3, Y: 4}
	for name, p := range map[string]record.Photograph{
		"nothing given":          {},
		"the points coincide":    {Low: point, High: point, Length: 100},
		"no length":              {High: point},
		"a negative length":      {High: point, Length: -1},
		"not a number":           {High: plane.Point{X: math.NaN()}, Length: 1},
		"beyond all bounds":      {High: plane.Point{X: math.Inf(1)}, Length: 1},
		"points closer than any": {High: plane.Point{X: 5e-324}, Length: 1e10},
	} {
		if _, ok := Placed(p); ok {
			t.Errorf("%s: placed", name)
		}
	}
}
