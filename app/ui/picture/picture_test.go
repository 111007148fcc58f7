package picture

import (
	"image"
	"image/color"
	"math"
	"testing"

	"understructure/geometry/plane"
	"understructure/patterns/plan"
)

// circle is counter-clockwise and begins at the figure's right.
func circle(radius float64) plane.Ring {
	r := make(plane.Ring, 180)
	for i := range r {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 180)
		r[i] = plane.Point{X: radius * c, Y: radius * s}
	}
	return r
}

// cylinder stands from 1000 to 1200 mm; the garment has the given radius at each height.
func cylinder(built float64, garment func(z float64) float64) *Body {
	var s plan.Surface
	for z := 1000.0; z <= 1200; z += 10 {
		s.Heights = append(s.Heights, z)
		s.Built = append(s.Built, circle(built))
		s.Garment = append(s.Garment, circle(garment(z)))
	}
	return NewBody(s)
}

func same(r float64) func(float64) float64 { return func(float64) float64 { return r } }

var frame = Frame{Scale: 1, X: 150, Y: 1250} // height 1250 is the top row

func elevation(b *Body, v View) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, 300, 300))
	b.Elevation(img, v, frame, Light)
	return img
}

func TestACylinderIsARectangleLitFromTheLeft(t *testing.T) {
	b := cylinder(100, same(100))
	for _, v := range []View{Front, Side} {
		img := elevation(b, v)
		for _, p := range []struct {
			x, y int
			in   bool
		}{{40, 150, false}, {55, 150, true}, {245, 150, true}, {260, 150, false}, {150, 45, false}, {150, 55, true}, {150, 245, true}, {150, 255, false}} {
			if painted := img.RGBAAt(p.x, p.y).A > 0; painted != p.in {
				t.Errorf("view %d: painted at %d,%d is %v", v, p.x, p.y, painted)
			}
		}
		left, right := img.RGBAAt(90, 150), img.RGBAAt(230, 150)
		if left.G <= right.G {
			t.Errorf("view %d: left %v is not lighter than right %v", v, left, right)
		}
	}
	if left, right, ok := b.Extent(Front, 1105); !ok || math.Abs(left+100) > 1e-9 || math.Abs(right-100) > 1e-9 {
		t.Errorf("extent %v to %v, %v; want -100 to 100", left, right, ok)
	}
	if _, _, ok := b.Extent(Front, 900); ok {
		t.Error("there is an extent below the body")
	}
}

// The figure's right hand is at the viewer's left in front, and its front is at the left of the side view.
func TestViewsAreNotMirrored(t *testing.T) {
	right, front := plane.Point{X: 1}, plane.Point{Y: 1}
	if Front.across(right) != -1 || Front.toward(front) != 1 {
		t.Error("front view is mirrored")
	}
	if Side.across(front) != -1 || Side.toward(right) != -1 {
		t.Error("side view does not show the left side")
	}
	if f := (Frame{Scale: 1}).lay(plane.Ring{right, front}); f[0].X != -1 || f[1].Y != 1 {
		t.Errorf("section laid out as %v: want right at the left, front below", f)
	}
}

func TestTintShowsStrainAndSlackWhereTheyAre(t *testing.T) {
	img := elevation(cylinder(100, func(z float64) float64 {
		switch {
		case z < 1060:
			return 96 // 25 mm of strain
		case z > 1140:
			return 115 // 94 mm of slack
		}
		return 103
	}), Front)
	at := func(z float64) color.RGBA { return img.RGBAAt(150, int(frame.Y-z)) }
	if c := at(1020); int(c.R)-int(c.B) < 80 {
		t.Errorf("strain is %v, want a burnt orange", c)
	}
	if c := at(1180); int(c.B)-int(c.R) < 40 {
		t.Errorf("slack is %v, want a blue", c)
	}
	if c := at(1100); math.Abs(float64(c.R)-float64(c.B)) > 40 {
		t.Errorf("a good fit is %v, want a quiet colour", c)
	}
}

func TestSectionShowsRoomAndStrain(t *testing.T) {
	f := Frame{Scale: 1, X: 150, Y: 150}
	draw := func(built, garment float64) *image.RGBA {
		img := image.NewRGBA(image.Rect(0, 0, 300, 300))
		cylinder(built, same(garment)).Section(img, 1100, f, Light)
		return img
	}
	if c := draw(80, 110).RGBAAt(150, 150+95); c.A == 0 || c.B <= c.R {
		t.Errorf("the room between is %v, want a tint of blue", c)
	}
	if c := draw(110, 80).RGBAAt(150, 150+95); int(c.R)-int(c.B) < 80 {
		t.Errorf("what is too large is %v, want a burnt orange", c)
	}
	if c := draw(80, 110).RGBAAt(150, 150); c != (color.RGBA{Light.Skin.R, Light.Skin.G, Light.Skin.B, 255}) {
		t.Errorf("the mount is %v, want %v", c, Light.Skin)
	}
}

func TestAnEmptyBodyDrawsNothing(t *testing.T) {
	for _, b := range []*Body{new(Body), NewBody(plan.Surface{}), NewBody(plan.Surface{Heights: []float64{1, 2}, Built: []plane.Ring{nil}})} {
		img := elevation(b, Front)
		b.Section(img, 0, frame, Light)
		for _, v := range img.Pix {
			if v != 0 {
				t.Fatal("something was drawn")
			}
		}
		if !b.Empty() || b.Ring(Built, 1) != nil {
			t.Error("an empty body is not empty")
		}
	}
}

// A ring may begin anywhere and have its corners anywhere: the outline drawn is the same.
func TestAroundKeepsTheOutline(t *testing.T) {
	r := circle(100)
	turned := append(append(plane.Ring{}, r[70:]...), r[:70]...)
	a, b := around(r), around(turned)
	for j := range a {
		if a[j].Dist(b[j]) > 1e-6 {
			t.Fatalf("point %d is at %v or %v, depending on where the ring begins", j, a[j], b[j])
		}
		if d := a[j].Norm(); d < 99.9 || d > 100.001 {
			t.Fatalf("point %d is %v from the middle, want 100", j, d)
		}
	}
}

func TestDashesAddUp(t *testing.T) {
	a, b := plane.Point{}, plane.Point{X: 100}
	drawn := 0.0
	for _, d := range dashes(a, b, 3, 4) {
		drawn += d[0].Dist(d[1])
	}
	if drawn < 48 || drawn > 52 {
		t.Errorf("dashes of 4 in 8 cover %v of 100", drawn)
	}
}

// luminance is the relative luminance of WCAG 2.1 (W3C Recommendation, 2018).
func luminance(c color.NRGBA) float64 {
	lin := func(v uint8) float64 {
		x := float64(v) / 255
		if x <= 0.03928 {
			return x / 12.92
		}
		return math.Pow((x+0.055)/1.055, 2.4)
	}
	return 0.2126*lin(c.R) + 0.7152*lin(c.G) + 0.0722*lin(c.B)
}

func contrast(a, b color.NRGBA) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// The areas lie side by side, so a step in lightness of one and a half is plain to see, whatever
// colours the eye can tell (the step is our choice). Lines on the ground keep the 3:1 that WCAG 2.1,
// success criterion 1.4.11, asks of graphics.
func TestColoursAreToldApartWithoutHue(t *testing.T) {
	grounds := map[*Palette]color.NRGBA{&Light: {0xfa, 0xf8, 0xf4, 0xff}, &Dark: {0x1d, 0x1e, 0x20, 0xff}}
	for p, ground := range grounds {
		areas := []color.NRGBA{p.Strain, p.Skin, p.Slack}
		for i, a := range areas {
			for _, b := range areas[i+1:] {
				if c := contrast(a, b); c < 1.5 {
					t.Errorf("%v and %v differ in lightness by %.2f, want 1.5", a, b, c)
				}
			}
		}
		for _, line := range []color.NRGBA{p.Ink, p.Faint, p.Strain, p.Wanted, p.Form} {
			if c := contrast(line, ground); c < 3 {
				t.Errorf("%v on %v has contrast %.2f, want 3", line, ground, c)
			}
		}
	}
}

func BenchmarkElevation900(b *testing.B) {
	body := cylinder(100, same(103))
	img := image.NewRGBA(image.Rect(0, 0, 900, 900))
	for b.Loop() {
		body.Elevation(img, Front, Frame{Scale: 4, X: 450, Y: 4850}, Light)
	}
}

func BenchmarkSection600(b *testing.B) {
	body := cylinder(100, same(103))
	img := image.NewRGBA(image.Rect(0, 0, 600, 600))
	for b.Loop() {
		body.Section(img, 1100, Frame{Scale: 2.6, X: 300, Y: 300}, Light)
	}
}
