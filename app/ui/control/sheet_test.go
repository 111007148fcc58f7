package control

import (
	"fmt"
	"image"
	"math"
	"math/rand/v2"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// heard is what a view told.
type heard struct {
	wanted []Cutout
	tapped [][2]float64
	turned []int
}

var a4 = Sheet{Name: "1", Width: 210, Height: 297}

func shownSheet(t *testing.T) (*SheetView, *heard) {
	newApp(t)
	v, h := NewSheetView(), &heard{}
	v.OnWanted = func(c Cutout) { h.wanted = append(h.wanted, c) }
	v.OnTapped = func(x, y float64) { h.tapped = append(h.tapped, [2]float64{x, y}) }
	v.OnTurned = func(by int) { h.turned = append(h.turned, by) }
	w := test.NewTempWindow(t, v)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(700, 500))
	v.Draw(a4, nil)
	return v, h
}

func TestAPageIsAskedForWholeAtFirst(t *testing.T) {
	v, h := shownSheet(t)
	c := h.wanted[len(h.wanted)-1]
	if c.Left != 0 || c.Top != 0 || math.Abs(c.Width-210) > 1 || math.Abs(c.Height-297) > 1 {
		t.Errorf("asked for %+v", c)
	}
	if got, want := c.Scale, (500-2*sheetEdge)/297.0; math.Abs(got-want) > 1e-9 {
		t.Errorf("at %g pixels a millimetre, want %g", got, want)
	}
	before := len(h.wanted)
	v.Put(c, image.NewRGBA(image.Rect(0, 0, 10, 10)))
	v.Refresh()
	if len(h.wanted) != before || v.Picture() == nil {
		t.Error("what has come is asked for again")
	}
	stale := c
	stale.Left++
	v.Put(stale, nil)
	if v.Picture() == nil {
		t.Error("a picture that nobody wants any more is shown")
	}
	v.Again()
	if len(h.wanted) != before+1 || h.wanted[before] != c {
		t.Error("it is not asked for anew")
	}
}

// Whatever one does, what is asked for lies on the page and is no larger than the view.
func TestWhatIsAskedForLiesOnThePage(t *testing.T) {
	v, h := shownSheet(t)
	rng := rand.New(rand.NewPCG(3, 9))
	for range 500 {
		switch rng.IntN(5) {
		case 0:
			v.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(700*rng.Float32(), 500*rng.Float32())}, Scrolled: fyne.NewDelta(0, 40*rng.Float32()-18)})
		case 1:
			v.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(900*rng.Float32()-450, 900*rng.Float32()-450)})
		case 2:
			v.TypedRune([]rune("+-01")[rng.IntN(4)])
		case 3:
			v.TypedKey(&fyne.KeyEvent{Name: []fyne.KeyName{fyne.KeyLeft, fyne.KeyRight, fyne.KeyUp, fyne.KeyDown}[rng.IntN(4)]})
		case 4:
			v.Draw([]Sheet{a4, {Width: 914, Height: 4800}, {Width: 841, Height: 300}}[rng.IntN(3)], nil)
		}
		c, s := h.wanted[len(h.wanted)-1], v.Sheet()
		pixel := 1 / c.Scale
		if c.Left < 0 || c.Top < 0 || c.Left+c.Width > s.Width+pixel || c.Top+c.Height > s.Height+pixel {
			t.Fatalf("asked for %+v of a page of %g × %g", c, s.Width, s.Height)
		}
		if c.Width*c.Scale > 701 || c.Height*c.Scale > 501 {
			t.Fatalf("asked for %.0f × %.0f pixels in a view of 700 × 500", c.Width*c.Scale, c.Height*c.Scale)
		}
		if z := v.Zoom(); !(z > 0 && z <= mostZoom+1e-9) {
			t.Fatalf("seen at %g times its size", z)
		}
	}
}

func TestTheWheelLeavesWhatIsUnderThePointer(t *testing.T) {
	v, h := shownSheet(t)
	v.TrueSize()
	v.Nearer(3)
	at := fyne.NewPos(300, 220)
	test.TapAt(v, at)
	v.Scrolled(&fyne.ScrollEvent{PointEvent: fyne.PointEvent{Position: at}, Scrolled: fyne.NewDelta(0, 20)})
	test.TapAt(v, at)
	if a, b := h.tapped[0], h.tapped[1]; math.Hypot(a[0]-b[0], a[1]-b[1]) > 0.5 { // the page stands on whole pixels
		t.Errorf("the pointer was at %.2f mm, and is at %.2f", a, b)
	}
}

// A screen of 96 pixels to the inch and one of 240, on which the toolkit has a unit of two pixels.
func TestTrueSize(t *testing.T) {
	for pixels, want := range map[float32]float64{1: 96 / 25.4, 2: 240 / 25.4} {
		if got := trueSize(pixels) * float64(pixels); math.Abs(got-want) > 1e-9 {
			t.Errorf("%g pixels a unit: %g pixels a millimetre, want %g", pixels, got, want)
		}
	}
	v, _ := shownSheet(t)
	v.TrueSize()
	if v.Zoom() != 1 {
		t.Errorf("true size is %g", v.Zoom())
	}
}

func TestAClickIsToldInMillimetres(t *testing.T) {
	v, h := shownSheet(t)
	scale := (500 - 2*sheetEdge) / 297.0
	left := math.Round((700 - 210*scale) / 2)
	for _, mm := range [][2]float64{{0, 0}, {105, 148.5}, {200, 20}} {
		h.tapped = nil
		test.TapAt(v, fyne.NewPos(float32(left+mm[0]*scale), float32(sheetEdge+mm[1]*scale)))
		if got := h.tapped[0]; math.Hypot(got[0]-mm[0], got[1]-mm[1]) > 0.02 {
			t.Errorf("a click at %v mm is told as %v", mm, got)
		}
	}
}

func TestKeysTurnPages(t *testing.T) {
	v, h := shownSheet(t)
	press := func(keys ...fyne.KeyName) string {
		h.turned = nil
		for _, k := range keys {
			v.TypedKey(&fyne.KeyEvent{Name: k})
		}
		return fmt.Sprint(h.turned)
	}
	if got := press(fyne.KeyPageDown, fyne.KeyPageUp, fyne.KeyRight, fyne.KeyUp, fyne.KeyHome, fyne.KeyEnd); got != fmt.Sprint([]int{1, -1, 1, -1, -allPages, allPages}) {
		t.Errorf("a whole page: turned by %s", got)
	}
	v.TypedRune('+')
	v.TypedRune('1')
	if got := press(fyne.KeyRight, fyne.KeyDown, fyne.KeyPageDown); got != "[1]" {
		t.Errorf("near by the arrows move the page, yet it was turned by %s", got)
	}
	v.TypedRune('0')
	if got := press(fyne.KeyRight); got != "[1]" {
		t.Errorf("whole again: turned by %s", got)
	}
}

func TestAViewOfNoPage(t *testing.T) {
	v, h := shownSheet(t)
	v.Draw(Sheet{}, nil)
	h.wanted = nil
	v.Nearer(2)
	v.TrueSize()
	v.Fit()
	v.Dragged(&fyne.DragEvent{Dragged: fyne.NewDelta(5, 5)})
	if len(h.wanted) != 0 {
		t.Errorf("asked for %v of no page", h.wanted)
	}
}

func TestThePageRendersAsBefore(t *testing.T) {
	v, _ := shownSheet(t)
	test.AssertObjectRendersToMarkup(t, "sheet_whole.xml", v)
	v.TrueSize()
	v.FocusGained()
	test.AssertObjectRendersToMarkup(t, "sheet_near.xml", v)
}

func TestTheStrip(t *testing.T) {
	newApp(t)
	s := NewSheetStrip()
	asked, chosen := map[int]bool{}, []int{}
	s.Picture = func(i int) image.Image { asked[i] = true; return nil }
	s.OnChosen = func(i int) { chosen = append(chosen, i) }
	w := test.NewTempWindow(t, s)
	w.Resize(fyne.NewSize(130, 500))
	var all []Sheet
	for i := range 110 {
		all = append(all, Sheet{fmt.Sprint(i + 1), 210, 297})
	}
	all[2] = Sheet{"3 · A1", 914, 3000}
	s.Draw(all)
	if len(asked) > 8 || !asked[0] || !asked[3] {
		t.Errorf("asked for %v, want those on the screen", asked)
	}
	test.AssertObjectRendersToMarkup(t, "strip.xml", s)
	s.Choose(90)
	if !asked[90] || len(chosen) != 0 || s.Chosen() != 90 {
		t.Errorf("page 91 was asked for: %v, told %v", asked[90], chosen)
	}
	s.list.Select(4)
	if len(chosen) != 1 || chosen[0] != 4 {
		t.Errorf("told %v, want page 5", chosen)
	}
	s.Draw(all[:2])
	if s.Chosen() != -1 || s.Pages() != 2 {
		t.Errorf("of two other pages number %d is chosen", s.Chosen())
	}
}

func TestTheGridOfPieces(t *testing.T) {
	newApp(t)
	g := NewPieceGrid()
	asked, picked := map[int]bool{}, []int{}
	g.Picture = func(i int) image.Image { asked[i] = true; return nil }
	g.OnPicked = func(i int) { picked = append(picked, i) }
	var all []Piece
	for i := range 200 {
		all = append(all, Piece{fmt.Sprintf("W%03d", i), [3]string{"layer 1 of 9: front", "layer 1 · cut 2 · wadding 6 mm", "20.0 × 30.0 cm · strain 1.0 %"}})
	}
	g.Draw(all) // before it is on the screen
	w := test.NewTempWindow(t, g)
	w.Resize(fyne.NewSize(420, 420))
	if len(asked) > 10 || !asked[0] {
		t.Errorf("asked for %d pictures, want those on the screen", len(asked))
	}
	g.Draw(all[:3])
	test.AssertObjectRendersToMarkup(t, "pieces.xml", g)
	g.Pick(2)
	g.Pick(2)
	if len(picked) != 2 || picked[1] != 2 {
		t.Errorf("the same piece picked twice is told as %v", picked)
	}
}

func TestAPieceIsPaintedAsLargeAsTheView(t *testing.T) {
	newApp(t)
	v := NewPieceView()
	var sizes [][2]int
	v.Picture = func(w, h int, pixels float64) image.Image {
		sizes = append(sizes, [2]int{w, h})
		if pixels != 1 {
			t.Errorf("%g pixels a unit", pixels)
		}
		return nil
	}
	w := test.NewTempWindow(t, v)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(320, 240))
	w.Canvas().Capture()
	if len(sizes) == 0 || sizes[len(sizes)-1] != [2]int{320, 240} {
		t.Errorf("asked for %v, want 320 × 240", sizes)
	}
	var turned []int
	closed := false
	v.OnTurned, v.OnClosed = func(by int) { turned = append(turned, by) }, func() { closed = true }
	for _, k := range []fyne.KeyName{fyne.KeyLeft, fyne.KeyDown, fyne.KeyEscape} {
		v.TypedKey(&fyne.KeyEvent{Name: k})
	}
	if fmt.Sprint(turned) != "[-1 1]" || !closed {
		t.Errorf("turned %v, closed %v", turned, closed)
	}
}

func BenchmarkGridOf200Pieces(b *testing.B) {
	test.NewTempApp(b)
	g := NewPieceGrid()
	var all []Piece
	for i := range 200 {
		all = append(all, Piece{fmt.Sprintf("W%03d", i), [3]string{"layer 1 of 9: front", "layer 1 · cut 2", "20.0 × 30.0 cm"}})
	}
	w := test.NewTempWindow(b, g)
	w.Resize(fyne.NewSize(1000, 600))
	for b.Loop() {
		g.Draw(all)
	}
}
