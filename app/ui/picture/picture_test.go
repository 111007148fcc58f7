package picture

import (
	"image"
	"image/color"
	"math"
	"testing"

	"understructure/geometry/fit"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/unit"
	"understructure/geometry/view"
	"understructure/patterns/eyetest"
	"understructure/patterns/plan"
)

// circle is counter-clockwise and begins at the figure's right.
func circle(radius float64) plane.Ring {
	r := make(plane.Ring, 2*columns)
	for i := range r {
		s, c := math.Sincos(math.Pi * float64(i) / columns)
		r[i] = plane.Point{X: radius * c, Y: radius * s}
	}
	return r
}

// upright stands from 1000 to 1200 mm; built and garment have the radii given at each height.
func upright(built, garment func(z float64) float64) plan.Surface {
	var s plan.Surface
	for z := 1000.0; z <= 1200; z += 10 {
		s.Heights = append(s.Heights, z)
		s.Built = append(s.Built, circle(built(z)))
		s.Garment = append(s.Garment, circle(garment(z)))
	}
	return s
}

func cylinder(built float64, garment func(z float64) float64) *Body {
	return NewBody(upright(same(built), garment))
}

func same(r float64) func(float64) float64 { return func(float64) float64 { return r } }

var frame = Frame{Scale: 1, X: 150, Y: 1250} // height 1250 is the top row

func elevation(b *Body, v View) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, 300, 300))
	b.Elevation(img, v, frame, Light)
	return img
}

// figure is what a camera sees, by clearance, without the garment's outline.
func figure(b *Body, c view.Camera, m Mode) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, 300, 300))
	new(Painter).shade(img, b, Scene{Camera: c, Frame: frame, Palette: Light, Mode: m})
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
	if left, right, ok := b.Extent(Front, 1105); !ok || math.Abs(left+100) > 0.01 || math.Abs(right-100) > 0.01 {
		t.Errorf("extent %v to %v, %v; want -100 to 100", left, right, ok)
	}
	if _, _, ok := b.Extent(Front, 900); ok {
		t.Error("there is an extent below the body")
	}
}

// A pixel that the edge runs through is painted by as much as lies inside.
func TestEdgesAreSmooth(t *testing.T) {
	for _, r := range []float64{100.1, 100.25, 100.5, 100.75, 99.9} {
		img := figure(cylinder(r, same(200)), view.From(0, 0), Plain)
		for _, side := range []float64{-1, 1} {
			for x := 45; x < 255; x++ {
				lo, hi := float64(x)-150, float64(x)-149
				want := 255 * max(0, min(hi, r)-max(lo, -r))
				if got := float64(img.RGBAAt(x, 150).A); math.Abs(got-want) > 3 {
					t.Errorf("radius %g side %g: pixel %d is covered by %.0f, want %.0f", r, side, x, got, want)
				}
			}
		}
	}
}

// An ellipsoid covers π·a·b pixels, a and b half the axes of its contour, whichever way one looks; smoothing gets that
// right to a few pixels of thousands.
func TestSmoothEdgesCoverWhatTheyShould(t *testing.T) {
	const a, b, c = 110.0, 70.0, 95.0
	var s plan.Surface
	for i := 0; i <= 100; i++ {
		φ := math.Pi * (float64(i)/100 - 0.5) * 0.999
		s.Heights = append(s.Heights, 1110+c*math.Sin(φ))
		r := circle(math.Cos(φ))
		s.Built = append(s.Built, r.Map(func(p plane.Point) plane.Point { return plane.Point{X: a * p.X, Y: b * p.Y} }))
	}
	body := NewBody(s)
	for _, yaw := range []unit.Angle{0, 0.5, view.LeftSide, 2} {
		img := figure(body, view.From(yaw, 0), Plain)
		got := 0.0
		for i := 3; i < len(img.Pix); i += 4 {
			got += float64(img.Pix[i]) / 255
		}
		sin, cos := math.Sincos(float64(yaw))
		want := math.Pi * c * math.Hypot(a*cos, b*sin)
		if math.Abs(got-want) > 0.002*want {
			t.Errorf("yaw %.1f: %.1f pixels, want %.1f", yaw, got, want)
		}
	}
}

// Nothing behind the mount shines through, and no gap shows, from any side.
func TestFiguresHaveNoHoles(t *testing.T) {
	b := NewBody(torso())
	for yaw := unit.Angle(0); yaw < 6.3; yaw += 0.21 {
		for _, pitch := range []unit.Angle{0, 0.3, -0.2} {
			c := view.From(yaw, pitch)
			img := image.NewRGBA(image.Rect(0, 0, 300, 400))
			new(Painter).shade(img, b, Scene{Camera: c, Frame: b.Stand(c, 300, 400, 5), Palette: Light})
			for y := range 400 {
				runs, inside := 0, false
				for x := range 300 {
					full := img.RGBAAt(x, y).A == 255
					if full && !inside {
						runs++
					}
					inside = full
				}
				if runs > 1 {
					t.Fatalf("yaw %.2f pitch %.1f: row %d is broken", yaw, pitch, y)
				}
			}
		}
	}
}

// The figure's right hand is at the viewer's left in front, and its front is at the left of the side view.
func TestViewsAreNotMirrored(t *testing.T) {
	right, front := plane.Point{X: 1}, plane.Point{Y: 1}
	if f := (Frame{Scale: 1}).lay(plane.Ring{right, front}); f[0].X != -1 || f[1].Y != 1 {
		t.Errorf("section laid out as %v: want right at the left, front below", f)
	}
	if turn := (Frame{Scale: 1}).turn(-5, 0); turn != section.Right {
		t.Errorf("the left of a section is direction %g, want the figure's right", turn)
	}
	if turn := (Frame{Scale: 1}).turn(0, 5); turn != section.Front {
		t.Errorf("below is direction %g, want the front", turn)
	}
	s := upright(same(100), same(110))
	for i := range s.Garment { // it hangs to the right and strains on the left
		s.Garment[i] = s.Garment[i].Move(plane.Point{X: 40})
	}
	b := NewBody(s)
	for _, c := range []struct {
		yaw          unit.Angle
		slack, tight int // columns
	}{{view.Front, 80, 220}, {view.Back, 220, 80}} {
		img := figure(b, view.From(c.yaw, 0), Clearance)
		if p := img.RGBAAt(c.slack, 150); p.B <= p.R {
			t.Errorf("yaw %g: slack is %v at %d, want a blue", c.yaw, p, c.slack)
		}
		if p := img.RGBAAt(c.tight, 150); int(p.R)-int(p.B) < 60 {
			t.Errorf("yaw %g: strain is %v at %d, want a burnt orange", c.yaw, p, c.tight)
		}
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

// Every band is drawn in the colour that the legend gives it, and hatched as it says: in the middle of
// the figure, where it is fully lit, both colours of the legend occur, and as much of the lines as their gap says.
func TestClearanceIsDrawnAsTheLegendSays(t *testing.T) {
	for band, look := range Light.Legend() {
		from, to := look.From, look.To
		mm := (max(from, -6) + min(to, 24)) / 2
		b := cylinder(100, same(100+mm))
		img := image.NewRGBA(image.Rect(0, 0, 300, 300))
		p := new(Painter)
		p.Map(img, b.Unroll(image.Rect(20, 20, 280, 280)), MapScene{Palette: Light, Line: 1})
		ground, lines := 0, 0
		for y := 100; y < 140; y++ {
			for x := 100; x < 140; x++ {
				switch c := img.RGBAAt(x, y); {
				case near(c, look.Colour):
					ground++
				case look.Hatch.Slope != 0:
					lines++
				}
			}
		}
		if look.Hatch.Slope == 0 {
			if ground != 1600 {
				t.Errorf("%v: %d of 1600 pixels have its colour", fit.Band(band), ground)
			}
			continue
		}
		// A line one pixel wide, slanting, touches two to three pixels of every row it crosses.
		if got, least, most := float64(lines)/1600, 1/look.Hatch.Gap, 3/look.Hatch.Gap; got < least || got > most {
			t.Errorf("%v: lines touch %.2f of the pixels, want %.2f to %.2f", fit.Band(band), got, least, most)
		}
	}
}

func near(c color.RGBA, want color.NRGBA) bool {
	off := func(a, b uint8) bool { return math.Abs(float64(a)-float64(b)) > 2 }
	return !off(c.R, want.R) && !off(c.G, want.G) && !off(c.B, want.B)
}

func TestSectionShowsRoomAndStrain(t *testing.T) {
	f := Frame{Scale: 1, X: 150, Y: 150}
	draw := func(built, garment float64, m Mode) *image.RGBA {
		img := image.NewRGBA(image.Rect(0, 0, 300, 300))
		new(Painter).Section(img, cylinder(built, same(garment)), Cut{Height: 1100, Frame: f, Palette: Light, Mode: m})
		return img
	}
	for _, m := range []Mode{Plain, Clearance} {
		if c := draw(80, 110, m).RGBAAt(150, 150+95); c.A == 0 || c.B <= c.R {
			t.Errorf("mode %d: the room between is %v, want a tint of blue", m, c)
		}
		if c := draw(110, 80, m).RGBAAt(150, 150+95); int(c.R)-int(c.B) < 60 {
			t.Errorf("mode %d: what is too large is %v, want a burnt orange", m, c)
		}
		if c := draw(80, 110, m).RGBAAt(150, 150); c != (color.RGBA{Light.Skin.R, Light.Skin.G, Light.Skin.B, 255}) {
			t.Errorf("mode %d: the mount is %v, want %v", m, c, Light.Skin)
		}
	}
	if c := draw(100, 105, Clearance).RGBAAt(150, 150+102); c.A > 40 {
		t.Errorf("room as wanted is %v, want it left empty", c)
	}
}

// The outline that is being dragged is drawn where it is, and only then.
func TestSectionShowsWhatIsDragged(t *testing.T) {
	f := Frame{Scale: 1, X: 150, Y: 150}
	for _, dragged := range []plane.Ring{nil, circle(60)} {
		img := image.NewRGBA(image.Rect(0, 0, 300, 300))
		new(Painter).Section(img, cylinder(100, same(105)), Cut{Height: 1100, Frame: f, Palette: Light, Dragged: dragged})
		if drawn := near(img.RGBAAt(150, 150+60), Light.Wanted); drawn != (dragged != nil) {
			t.Errorf("dragged %v: drawn is %v", dragged != nil, drawn)
		}
	}
}

func TestAnEmptyBodyDrawsNothing(t *testing.T) {
	for _, b := range []*Body{new(Body), NewBody(plan.Surface{}), NewBody(plan.Surface{Heights: []float64{1, 2}, Built: []plane.Ring{nil}}), NewStage(plan.Plan{}, 3)} {
		img := elevation(b, Front)
		b.Section(img, 0, frame, Light)
		p := new(Painter)
		p.Figure(img, b, Scene{Camera: view.From(1, 0), Frame: frame, Palette: Light, Mode: Clearance, Tapes: []Tape{{Height: 1}}})
		p.Map(img, b.Unroll(img.Rect), MapScene{Palette: Light, Line: 1})
		for _, v := range img.Pix {
			if v != 0 {
				t.Fatal("something was drawn")
			}
		}
		if !b.Empty() || b.Ring(Built, 1) != nil || len(b.Clearance()) != 0 {
			t.Error("an empty body is not empty")
		}
		if before, behind := b.TapeLine(view.From(0, 0), 1); before != nil || behind != nil {
			t.Error("there is a tape round nothing")
		}
		if _, _, ok := p.Under(Scene{}, 5, 5); ok {
			t.Error("a pixel shows nothing's skin")
		}
	}
}

// Nothing is drawn outside the image that a painter was given, be it a part of another.
func TestPaintersStayOnTheirImage(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 300, 300))
	p := new(Painter)
	b := cylinder(100, same(110))
	p.Figure(part(img, 100, 60), b, Scene{Camera: view.From(0, 0), Frame: frame, Palette: Light})
	p.Section(part(img, 100, 60), b, Cut{Height: 1100, Frame: Frame{Scale: 1, X: 150, Y: 150}, Palette: Light, Mode: Clearance})
	p.Map(part(img, 100, 60), b.Unroll(img.Rect), MapScene{Palette: Light, Levels: []float64{1100}, Line: 1})
	for y := range 300 {
		for _, x := range []int{0, 99, 160, 299} {
			if img.RGBAAt(x, y).A != 0 {
				t.Fatalf("something was drawn at %d,%d", x, y)
			}
		}
	}
	if img.RGBAAt(130, 150).A == 0 {
		t.Error("nothing was drawn inside")
	}
}

// After one picture another allocates nothing.
func TestPaintersAllocateNothingMore(t *testing.T) {
	b := NewBody(torso())
	p := new(Painter)
	yaw := unit.Angle(0)
	draw := func() {
		yaw += 0.1
		s := fill(b, 300, yaw, Clearance)
		s.Tapes = tenth
		p.Figure(p.Sheet(300, 300), b, s)
	}
	for range 70 { // once round
		draw()
	}
	if n := testing.AllocsPerRun(50, draw); n > 0 {
		t.Errorf("%g allocations a picture", n)
	}
}

var tenth = []Tape{{1030, Light.Faint, 1}, {1170, Light.Faint, 1}}

func TestSheetsTakeTurns(t *testing.T) {
	p := new(Painter)
	a := p.Sheet(20, 10)
	a.Pix[0] = 9
	b := p.Sheet(20, 10)
	if a == b || a.Pix[0] != 9 {
		t.Error("the picture on show was touched")
	}
	if c := p.Sheet(20, 10); c != a || c.Pix[0] != 0 {
		t.Error("the older one is not taken again, empty")
	}
	if d := p.Sheet(7, 7); d.Rect.Dx() != 7 {
		t.Errorf("another size is %v", d.Rect)
	}
}

// A tape spans hollows: round a mount with a hollow back it is the hull.
func TestTapesSpanHollows(t *testing.T) {
	s := upright(same(100), same(120))
	for i, r := range s.Built {
		s.Built[i] = r.Map(func(p plane.Point) plane.Point {
			if p.Y < -80 {
				p.Y = -80 + 0.5*(-80-p.Y)
			}
			return p
		})
	}
	b := NewBody(s)
	before, behind := b.TapeLine(view.From(view.Back, 20*unit.Degree), 1105)
	for _, line := range [][]plane.Point{before, behind} {
		if line[0].X > -99.9 || line[len(line)-1].X < 99.9 {
			t.Errorf("the tape is seen from %.1f to %.1f, want -100 to 100", line[0].X, line[len(line)-1].X)
		}
	}
	flat := 0.0
	for i := 1; i < len(before); i++ {
		flat = max(flat, before[i].X-before[i-1].X)
	}
	if flat < 100 {
		t.Errorf("the longest straight part behind is %.1f mm, want the 120 of the hollow", flat)
	}
	f := Frame{Scale: 2, X: 10, Y: 3000}
	on, _ := b.TapeOn(view.From(0, 0), f, 1100)
	if got := on[0]; math.Abs(got.X-(10-200)) > 0.1 || got.Y != 800 {
		t.Errorf("in pixels the tape begins at %v, want -190,800", got)
	}
}

// What is under a pixel is what is drawn there, and the other way round.
func TestUnderAndSpotAgree(t *testing.T) {
	b := NewBody(torso())
	p := new(Painter)
	for _, yaw := range []unit.Angle{0, 0.8, view.LeftSide, 3.9} {
		for _, pitch := range []unit.Angle{0, 0.2} {
			c := view.From(yaw, pitch)
			s := Scene{Camera: c, Frame: b.Stand(c, 400, 500, 10), Palette: Light}
			p.Figure(p.Sheet(400, 500), b, s)
			met := 0
			for z := 900.0; z < 1380; z += 37 {
				for turn := 3.0; turn < columns; turn += 17 {
					at, seen := b.SpotOn(c, s.Frame, z, turn)
					z2, turn2, ok := p.Under(s, at.X, at.Y)
					d := math.Abs(math.Remainder(turn-turn2, columns))
					if !seen || !ok || d > 20 { // turned away, at the edge, or behind something
						continue
					}
					met++
					if math.Abs(z-z2) > 3 || d > 6 {
						t.Errorf("yaw %.1f pitch %.1f: %.0f mm at %g is drawn where %.0f mm at %.1f lies", yaw, pitch, z, turn, z2, turn2)
					}
				}
			}
			if met < 60 {
				t.Errorf("yaw %.1f: only %d places were met", yaw, met)
			}
		}
	}
}

// A body that turns in its frame stays in it.
func TestStandLeavesAirOnEverySide(t *testing.T) {
	b := NewBody(torso())
	scale := 0.0
	for yaw := unit.Angle(0); yaw < 6.3; yaw += 0.3 {
		c := view.From(yaw, 0.2)
		f := b.Stand(c, 300, 200, 12)
		if scale != 0 && f.Scale != scale {
			t.Fatalf("the scale is %g and %g", scale, f.Scale)
		}
		scale = f.Scale
		img := image.NewRGBA(image.Rect(0, 0, 300, 200))
		new(Painter).Figure(img, b, Scene{Camera: c, Frame: f, Palette: Light})
		for x := range 300 {
			for y := range 200 {
				if inner := (image.Point{X: x, Y: y}).In(image.Rect(10, 10, 290, 190)); !inner && img.RGBAAt(x, y).A > 0 {
					t.Fatalf("yaw %.1f: something is drawn at %d,%d", yaw, x, y)
				}
			}
		}
	}
}

func TestMapPlaces(t *testing.T) {
	s := upright(same(100), same(104))
	for i := range s.Garment {
		if s.Heights[i] > 1100 {
			s.Garment[i] = circle(110).Move(plane.Point{X: 40}) // hangs to the right
		}
	}
	b := NewBody(s)
	img := image.NewRGBA(image.Rect(0, 0, 500, 300))
	u := b.Unroll(image.Rect(50, 20, 450, 280))
	new(Painter).Map(img, u, MapScene{Palette: Light, Line: 1})
	if z, turn, ok := u.Place(150, 280); !ok || z != 1000 || turn != section.Right {
		t.Errorf("a quarter along the foot is %g mm, direction %g, %v; want 1000, the right", z, turn, ok)
	}
	if _, _, ok := u.Place(40, 150); ok {
		t.Error("beside the map is a place")
	}
	for z := 1001.0; z < 1200; z += 13 {
		for turn := 0.5; turn < columns; turn += 9 {
			x, y := u.Spot(z, turn)
			if z2, turn2, ok := u.Place(x, y); !ok || math.Abs(z-z2) > 1e-9 || math.Abs(turn-turn2) > 1e-9 {
				t.Fatalf("%g, %g is at %g, %g, where %g, %g lies", z, turn, x, y, z2, turn2)
			}
		}
	}
	at := func(z, turn float64) color.RGBA {
		x, y := u.Spot(z, turn)
		return img.RGBAAt(int(x), int(y))
	}
	if c := at(1150, section.Right+10); c.B <= c.R {
		t.Errorf("slack at the right is %v, want a blue", c)
	}
	if c := at(1150, section.Left+10); int(c.R)-int(c.B) < 60 {
		t.Errorf("strain at the left is %v, want a burnt orange", c)
	}
	if c := at(1050, section.Left+10); !near(c, Light.Skin) {
		t.Errorf("what is as wanted is %v, want %v", c, Light.Skin)
	}
	var names []string
	for _, l := range u.Balances() {
		names = append(names, l.Name)
	}
	if len(names) != 5 || names[0] != "back" || names[1] != "right" || names[2] != "front" || names[3] != "left" || names[4] != "back" {
		t.Errorf("across the map lie %v", names)
	}
	point, tape, ok := b.ClearanceAt(1150, section.Right)
	if !ok || math.Abs(point-50) > 0.1 || math.Abs(tape-20*math.Pi) > 0.1 {
		t.Errorf("clearance at the right %.2f mm, tape %.2f, %v; want 50 and %.2f", point, tape, ok, 20*math.Pi)
	}
	if _, _, ok := b.ClearanceAt(900, 0); ok {
		t.Error("there is a clearance below the mount")
	}
}

// grown is a plan in three slices, one of them all round larger, a layer of wadding on the front and a cover.
func grown() plan.Plan {
	s := torso()
	n := len(s.Heights)
	scaled := func(f float64, from, to int, front float64) []plane.Ring {
		out := make([]plane.Ring, n)
		for i := from; i < to; i++ {
			out[i] = s.Built[i].Map(func(p plane.Point) plane.Point {
				if p.Y > 20 {
					return p.Mul(f * front)
				}
				return p.Mul(f)
			})
		}
		return out
	}
	p := plan.Plan{Surface: s}
	add := func(kind string, number int, outlines []plane.Ring) {
		p.Stages = append(p.Stages, plan.Stage{Kind: kind, Number: number, Outlines: outlines})
	}
	add(plan.SliceStage, 1, scaled(0.85, 0, n/3+1, 1))
	add(plan.SliceStage, 2, scaled(0.7, n/3, 2*n/3+1, 1))
	add(plan.SliceStage, 3, scaled(0.85, 2*n/3, n, 1))
	add(plan.WaddingStage, 1, scaled(0.85, n/3, 2*n/3, 1.1))
	add(plan.WaddingStage, 2, scaled(0.95, 0, n, 1))
	add(plan.CoverStage, 1, s.Built)
	return p
}

func TestStagesShowWhatStands(t *testing.T) {
	p := grown()
	whole := NewBody(p.Surface)
	for i := range p.Stages {
		b := NewStage(p, i)
		if b.Low != whole.Low || b.High != whole.High {
			t.Errorf("stage %d has another box", i)
		}
		if got, want := len(b.mesh.nets), 3*min(i+1, 3); i < 3 && got != want {
			t.Errorf("stage %d has %d nets, want %d: every slice has its own faces", i, got, want)
		}
	}
	first := NewStage(p, 0)
	if top := first.mesh.heights[first.mesh.nets[0].end-1]; math.Abs(top-p.Surface.Heights[len(p.Surface.Heights)/3]) > 1e-9 {
		t.Errorf("the first slice ends at %g", top)
	}
	wadded := NewStage(p, 3)
	code := func(z float64, j int) float32 {
		for row, h := range wadded.mesh.heights {
			if math.Abs(h-z) < 5 {
				return wadded.layers[row*columns+j]
			}
		}
		t.Fatalf("no row at %g", z)
		return 0
	}
	if got := code(1140, section.Front); got != codeNew {
		t.Errorf("new wadding has code %g, want %d", got, codeNew)
	}
	if got := code(900, section.Back); got != codeBare {
		t.Errorf("bare foam has code %g, want %d", got, codeBare)
	}
	if NewStage(p, 99).layers != nil || NewStage(p, -4).Empty() {
		t.Error("numbers beyond the stages are not the first and the last")
	}
}

func TestDashesAddUp(t *testing.T) {
	drawn := 0.0
	for s := firstDash(3, 4); s.from < 100; s = s.next() {
		drawn += min(s.to, 100) - max(s.from, 0)
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

var grounds = map[Palette]color.NRGBA{Light: {0xfa, 0xf8, 0xf4, 0xff}, Dark: {0x1d, 0x1e, 0x20, 0xff}}

// The areas lie side by side, so a step in lightness of one and a half is plain to see, whatever
// colours the eye can tell (the step is our choice). Lines on the ground keep the 3:1 that WCAG 2.1,
// success criterion 1.4.11, asks of graphics.
func TestColoursAreToldApartWithoutHue(t *testing.T) {
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

// Every two bands are told apart by every eye and in grey, and hatching stands out from what it lies on. A
// CIEDE2000 of 1 is about what is just seen side by side; 15 is our choice.
func TestBandsAreToldApartByEveryEye(t *testing.T) {
	for _, p := range []Palette{Light, Dark} {
		var colours []color.NRGBA
		for _, look := range p.Legend() {
			colours = append(colours, look.Colour)
			for _, s := range eyetest.Sights {
				if d := eyetest.Difference(s.Sees(look.Colour), s.Sees(look.Hatch.Colour)); look.Hatch.Slope != 0 && d < 15 {
					t.Errorf("%s: the lines on %v differ by %.1f, want 15", s.Name, look.Band, d)
				}
			}
		}
		for _, fault := range eyetest.TooAlike(colours...) {
			t.Error(fault)
		}
	}
}
