package control

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"understructure/app/ui/look"
	"understructure/geometry/plane"
	"understructure/geometry/view"
)

// similar lays a photograph by turning, scaling and moving it: pixel origin lies at zero of the view.
type similar struct {
	turn, scale float64
	origin      plane.Point
}

func (s similar) View(p plane.Point) plane.Point {
	sin, cos := math.Sincos(s.turn)
	d := p.Sub(s.origin).Mul(s.scale)
	return plane.Point{X: d.X*cos - d.Y*sin, Y: -d.X*sin - d.Y*cos}
}

func (s similar) Pixel(v plane.Point) plane.Point {
	sin, cos := math.Sincos(s.turn)
	return plane.Point{X: v.X*cos - v.Y*sin, Y: -v.X*sin - v.Y*cos}.Mul(1 / s.scale).Add(s.origin)
}

func (s similar) Scale() float64 { return s.scale }

// ramp is a picture whose red counts its columns and whose green counts its rows.
func ramp(w, h int) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			img.SetRGBA(x, y, color.RGBA{uint8(x * 255 / w), uint8(y * 255 / h), 90, 255})
		}
	}
	return img
}

// told is what a stage has told.
type told struct {
	shifts, puts, traced []plane.Point
	grips                []Grip
	erased               []int
	settled, ended       int
}

// shownPhoto is a stage with a photograph of 400 × 600 pixels, two to the millimetre, behind a barrel that is 300 mm
// wide. It follows what it tells, as a window would.
func shownPhoto(t *testing.T) (*PhotoStage, *told) {
	t.Helper()
	newApp(t)
	s, said := NewPhotoStage(), new(told)
	laid := Laid{
		Sizes: []*image.RGBA{ramp(400, 600)}, Shrunk: 2, Placing: similar{0.05, 0.5, plane.Point{X: 400, Y: 1200 + 1800}},
		Low: plane.Point{X: 400, Y: 1150}, High: plane.Point{X: 420, Y: 100}, Apart: "50 cm",
	}
	s.OnShifted = func(by plane.Point) { said.shifts = append(said.shifts, by) }
	s.OnPut = func(g Grip, p plane.Point) {
		said.grips, said.puts = append(said.grips, g), append(said.puts, p)
		if g >= GripTrace {
			laid.Trace[g-GripTrace] = p
			s.Lay(laid)
		}
	}
	s.OnSettled = func() { said.settled++ }
	s.OnTraced = func(p plane.Point) {
		said.traced = append(said.traced, p)
		laid.Trace = append(laid.Trace[:len(laid.Trace):len(laid.Trace)], p)
		s.Lay(laid)
	}
	s.OnErased = func(i int) {
		said.erased = append(said.erased, i)
		laid.Trace = append(laid.Trace[:i:i], laid.Trace[i+1:]...)
		s.Lay(laid)
	}
	s.OnEnded = func() { said.ended++; s.Trace(false) }
	w := test.NewTempWindow(t, s)
	w.Resize(fyne.NewSize(620, 520))
	s.Figure(barrel(), view.From(view.Front, 0), []Mark{{"waist", 1050}}, Rule{Name: "cm", Step: 50, Count: 2, Unit: 10})
	s.Lay(laid)
	return s, said
}

// over is where a pixel of the photograph is seen in the stage.
func (s *PhotoStage) over(pixel plane.Point) fyne.Position {
	return fromView(s.frame(), s.laid.Placing.View(pixel))
}

func press(s *PhotoStage, at fyne.Position) {
	s.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary})
}

func drag(s *PhotoStage, from, by fyne.Position) {
	press(s, from)
	for range 10 {
		s.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(by.X/10, by.Y/10)})
	}
}

func tap(s *PhotoStage, at fyne.Position) {
	press(s, at)
	s.MouseUp(nil)
	s.Tapped(&fyne.PointEvent{Position: at})
}

func typed(s *PhotoStage, keys ...fyne.KeyName) {
	for _, k := range keys {
		s.TypedKey(&fyne.KeyEvent{Name: k})
	}
}

// However a photograph lies, the picture shows at each place the pixel that lies there, and nothing beside it.
func TestAPhotographIsPaintedWhereItLies(t *testing.T) {
	first := ramp(30, 24)
	r := rand.New(rand.NewPCG(1872, 4))
	img := image.NewRGBA(image.Rect(0, 0, 120, 90))
	seen := 0
	for range 400 {
		p := similar{r.Float64() * 7, 1 + 7*r.Float64(), plane.Point{X: 30 * r.Float64(), Y: 24 * r.Float64()}}
		at := func(x, y float64) plane.Point { return p.Pixel(plane.Point{X: x - 60, Y: 45 - y}) }
		clear(img.Pix)
		layPhoto(img, []*image.RGBA{first}, groundOf{origin: at(0, 0), side: at(120, 0), end: at(120, 90), fade: 0.25})
		for y := 0; y < 90; y += 7 {
			for x := 0; x < 120; x += 7 {
				q, c := at(float64(x)+0.5, float64(y)+0.5), img.RGBAAt(x, y)
				switch inside := min(q.X, q.Y, 30-q.X, 24-q.Y); {
				case inside > 1:
					seen++
					red, green := 0.75*(q.X-0.5)*255/30, 0.75*(q.Y-0.5)*255/24
					if math.Abs(float64(c.R)-red) > 2.5 || math.Abs(float64(c.G)-green) > 2.5 || c.A < 190 || c.A > 192 {
						t.Fatalf("%+v: at %d, %d there is %v, want red %.0f, green %.0f", p, x, y, c, red, green)
					}
				case inside < -1 && c != (color.RGBA{}):
					t.Fatalf("%+v: beside the photograph there is %v", p, c)
				}
			}
		}
	}
	if seen < 10000 {
		t.Errorf("only %d pixels were on a photograph", seen)
	}
}

// A photograph that is seen small is taken from a smaller size of it.
func TestAFarPhotographIsTakenFromASmallSize(t *testing.T) {
	sizes := []*image.RGBA{ramp(800, 800), image.NewRGBA(image.Rect(0, 0, 400, 400)), image.NewRGBA(image.Rect(0, 0, 200, 200))}
	for i := range sizes[2].Pix {
		sizes[2].Pix[i] = 255
	}
	img := image.NewRGBA(image.Rect(0, 0, 190, 190))
	layPhoto(img, sizes, groundOf{side: plane.Point{X: 760}, end: plane.Point{X: 760, Y: 760}})
	if c := img.RGBAAt(90, 90); c != (color.RGBA{255, 255, 255, 255}) {
		t.Errorf("%v, want the white of the smallest size", c)
	}
}

// Nonsense paints nothing, and harms nothing.
func TestPhotographsThatLieNowhere(t *testing.T) {
	img, one := image.NewRGBA(image.Rect(0, 0, 40, 30)), []*image.RGBA{ramp(50, 40)}
	for _, x := range []float64{0, 1e-9, 1e9, -1e9, 1e15} {
		for _, side := range []plane.Point{{}, {X: 1}, {X: -1e9, Y: 3}, {X: 1e-7, Y: 1e-7}} {
			origin := plane.Point{X: x, Y: -x}
			layPhoto(img, one, groundOf{origin: origin, side: origin.Add(side), end: origin.Add(side).Add(plane.Point{Y: side.X})})
		}
	}
	layPhoto(img, []*image.RGBA{image.NewRGBA(image.Rect(0, 0, 1, 1))}, groundOf{side: plane.Point{X: 1}, end: plane.Point{X: 1, Y: 1}})
	layPhoto(img, nil, groundOf{})
}

func TestOutlinesLieOverThePhotograph(t *testing.T) {
	s, _ := shownPhoto(t)
	img := s.paint(int(s.Size().Width), int(s.Size().Height)).(*image.RGBA)
	f, wanted := s.frame(), look.Palette().Wanted
	at := fromView(f, plane.Point{X: 150, Y: 1150})
	green := false
	for x := -3; x <= 3; x++ {
		c := img.RGBAAt(int(at.X)+x, int(at.Y))
		green = green || math.Abs(float64(c.R)-float64(wanted.R)) < 20 && math.Abs(float64(c.G)-float64(wanted.G)) < 20
	}
	middle := fromView(f, plane.Point{X: 60, Y: 1180})
	if c := img.RGBAAt(int(middle.X), int(middle.Y)); !green || c.A != 255 || c.B < 80 || c.B > 100 {
		t.Errorf("the outline is there: %v; within it there is %v, want the photograph", green, c)
	}
	s.laid.Fade = 1
	img = s.paint(int(s.Size().Width), int(s.Size().Height)).(*image.RGBA)
	if c := img.RGBAAt(int(middle.X), int(middle.Y)); c != (color.RGBA{}) {
		t.Errorf("faded away there is still %v", c)
	}
}

// The picture stays as it is painted while only lines over it change.
func TestOnlyWhatChangesIsPaintedAgain(t *testing.T) {
	s, _ := shownPhoto(t)
	s.paint(620, 520)
	before := s.ground.img
	s.Trace(true)
	tap(s, fyne.NewPos(300, 200))
	if s.paint(620, 520); s.ground.img != before {
		t.Error("a traced point painted the photograph again")
	}
	s.Nearer(1)
	if s.paint(620, 520); s.ground.img == before {
		t.Error("the photograph is not seen from nearer by")
	}
}

// A point goes where the pointer puts it on the photograph, which lies still until then.
func TestAPointIsDraggedOverThePhotograph(t *testing.T) {
	for _, g := range []Grip{GripLow, GripHigh} {
		s, said := shownPhoto(t)
		from, by := s.over(s.pixel(g)), fyne.NewPos(40, -30)
		want := s.laid.Placing.Pixel(s.at(from.Add(by)))
		drag(s, from, by)
		if len(said.puts) > 0 {
			t.Fatal("a point still in the hand was told")
		}
		s.DragEnd()
		s.MouseUp(nil)
		if len(said.puts) != 1 || said.grips[0] != g || said.puts[0].Dist(want) > 0.01 || s.Chosen() != g {
			t.Errorf("told %v of %v, want %v of %v", said.puts, said.grips, want, g)
		}
	}
}

func TestThePhotographIsDragged(t *testing.T) {
	s, said := shownPhoto(t)
	s.paint(620, 520)
	before := s.ground.of
	drag(s, s.over(plane.Point{X: 600, Y: 700}), fyne.NewPos(50, 20))
	if s.paint(620, 520); s.ground.of == before {
		t.Error("it does not follow the pointer")
	}
	s.DragEnd()
	scale := s.frame().Scale
	want := plane.Point{X: 50 / scale, Y: -20 / scale}
	if len(said.shifts) != 1 || said.shifts[0].Dist(want) > 0.01 {
		t.Errorf("told %v, want %v", said.shifts, want)
	}
}

func TestWhatIsInTheHandCanBeGivenUp(t *testing.T) {
	s, said := shownPhoto(t)
	drag(s, s.over(s.laid.Low), fyne.NewPos(30, 0))
	typed(s, fyne.KeyEscape)
	s.DragEnd()
	if len(said.puts) > 0 || s.pixel(GripLow) != s.laid.Low {
		t.Errorf("told %v", said.puts)
	}
}

func TestTracing(t *testing.T) {
	s, said := shownPhoto(t)
	tap(s, fyne.NewPos(300, 200))
	if len(said.traced) > 0 {
		t.Fatal("a tap traced before one was asked to")
	}
	s.Trace(true)
	for _, at := range []fyne.Position{{X: 200, Y: 400}, {X: 200, Y: 100}, {X: 400, Y: 100}, {X: 400, Y: 380}} {
		want := s.laid.Placing.Pixel(s.at(at))
		tap(s, at)
		if n := len(said.traced); n == 0 || said.traced[n-1].Dist(want) > 1e-6 {
			t.Fatalf("traced %v, want %v", said.traced, want)
		}
	}
	if s.Chosen() != GripTrace+3 {
		t.Errorf("%v is chosen, want the last point", s.Chosen())
	}
	typed(s, fyne.KeyBackspace)
	drag(s, fyne.NewPos(200, 100), fyne.NewPos(-30, 0)) // the second point
	s.DragEnd()
	if len(said.erased) != 1 || said.erased[0] != 3 || said.grips[0] != GripTrace+1 {
		t.Errorf("erased %v, moved %v", said.erased, said.grips)
	}
	tap(s, fyne.NewPos(400, 100)) // the last point again, as a double tap does
	if said.ended != 1 || s.Tracing() || len(said.traced) != 4 {
		t.Errorf("ended %d times, %d points", said.ended, len(said.traced))
	}
	s.Trace(true)
	tap(s, fyne.NewPos(200, 400)) // the first point closes the line
	if n := len(said.traced); said.ended != 2 || said.traced[n-1] != said.traced[0] {
		t.Errorf("ended %d times with %v", said.ended, said.traced)
	}
	s.Trace(true)
	if typed(s, fyne.KeyReturn); said.ended != 3 {
		t.Error("Enter does not end the trace")
	}
	if typed(s, fyne.KeyPageDown, fyne.KeyPageDown); s.Chosen() != GripLow { // from the last point round to the photograph, then to its low point
		t.Errorf("%v is chosen", s.Chosen())
	}
}

// Arrows move what is chosen by a pixel of the photograph, with Shift by ten, and several are one step.
func TestArrowsMoveByPixels(t *testing.T) {
	s, said := shownPhoto(t)
	typed(s, fyne.KeyPageDown)
	said.settled = 0
	typed(s, fyne.KeyUp)
	if d := said.puts[0].Dist(s.laid.Low); said.grips[0] != GripLow || math.Abs(d-1) > 1e-9 {
		t.Errorf("%v was moved by %v pixels", said.grips, d)
	}
	s.nudge(plane.Point{X: 1}, true)
	if d := said.puts[1].Dist(s.laid.Low); math.Abs(d-10) > 1e-9 {
		t.Errorf("with Shift it was moved by %v pixels", d)
	}
	if said.settled > 0 {
		t.Error("two arrows were two steps")
	}
	if typed(s, fyne.KeyPageUp); said.settled != 1 || s.Chosen() != GripWhole {
		t.Errorf("settled %d times, %v chosen", said.settled, s.Chosen())
	}
	if typed(s, fyne.KeyRight); math.Abs(said.shifts[0].Norm()-s.laid.Placing.Scale()) > 1e-9 {
		t.Errorf("the photograph was moved by %v mm", said.shifts[0])
	}
	if s.FocusLost(); said.settled != 2 {
		t.Error("what the keys moved is not settled when they go elsewhere")
	}
}

// Coming nearer, what lies under the pointer stays there.
func TestTheWheelGoesNearerAboutThePointer(t *testing.T) {
	s, _ := shownPhoto(t)
	at := fyne.NewPos(431, 87)
	before, scale := s.at(at), s.frame().Scale
	for range 7 {
		s.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: at}, Scrolled: fyne.NewDelta(0, 10)})
	}
	if d := s.at(at).Dist(before); d > 1e-6 || s.frame().Scale < 2*scale {
		t.Errorf("what was under the pointer is %v mm off, at %v times the scale", d, s.frame().Scale/scale)
	}
	drag(s, fyne.NewPos(20, 20), fyne.NewPos(15, 0)) // beside the photograph: the view
	s.DragEnd()
	for range 200 {
		s.Nearer(1)
	}
	if z := s.frame().Scale / scale; math.Abs(z-nearest) > 1e-6 {
		t.Errorf("one comes %v times nearer", z)
	}
	if s.TypedRune('0'); s.frame().Scale != scale {
		t.Error("the figure is not seen whole again")
	}
}

// Before there is a figure a photograph can be laid, and before there is a photograph nothing happens.
func TestAStageWithoutFigureOrPhotograph(t *testing.T) {
	s, said := shownPhoto(t)
	s.Figure(nil, view.From(view.LeftSide, 0), nil, Rule{})
	drag(s, s.over(s.laid.High), fyne.NewPos(5, 5))
	s.DragEnd()
	if len(said.puts) != 1 {
		t.Error("a point cannot be moved without a figure")
	}
	s.Lay(Laid{})
	s.Trace(true)
	tap(s, fyne.NewPos(100, 100))
	drag(s, fyne.NewPos(100, 100), fyne.NewPos(5, 5))
	s.DragEnd()
	typed(s, fyne.KeyUp, fyne.KeyPageDown, fyne.KeyBackspace, fyne.KeyReturn)
	s.paint(300, 200)
	if len(said.puts) != 1 || len(said.traced)+len(said.shifts) > 0 {
		t.Errorf("something was moved that is not there: %+v", said)
	}
}

// BenchmarkLayPhoto is a frame of a drag in a large window.
func BenchmarkLayPhoto(b *testing.B) {
	sizes := []*image.RGBA{ramp(2000, 2000)}
	img := image.NewRGBA(image.Rect(0, 0, 2100, 1300))
	p := similar{0.05, 1, plane.Point{X: 1000, Y: 1000}}
	at := func(x, y float64) plane.Point { return p.Pixel(plane.Point{X: x - 1050, Y: 650 - y}) }
	g := groundOf{origin: at(0, 0), side: at(2100, 0), end: at(2100, 1300), fade: 0.3}
	for b.Loop() {
		layPhoto(img, sizes, g)
	}
}
