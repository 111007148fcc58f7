package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/plane"
)

// Handle is where a section is taken to shape it.
type Handle int

// The handles, in the order in which Tab goes through them.
const (
	Right Handle = iota
	Front
	Left
	Back
	handles
)

// Pull is a handle moved outward by so many millimetres since it was taken: the section broader or deeper, or, in
// Balance, more of it on that side.
type Pull struct {
	Handle  Handle
	By      float64
	Balance bool
}

// hand is what is being done to a section.
type hand struct {
	outline plane.Ring // that can be shaped; nil for none
	shaped  plane.Ring // as it becomes; nil while nothing is pulled
	over    bool       // the pointer is over the section
	focused bool
	chosen  Handle
	frame   *picture.Frame // of the section when the handle was taken; nil while none is
	from    plane.Point
	pulled  float64
}

// dragged is the outline while it is being shaped.
func (h hand) dragged() plane.Ring { return h.shaped }

// ends are the places of the handles: the middle of each side of the outline.
func (h hand) ends() (at [handles]plane.Point) {
	r := h.outline
	if h.shaped != nil {
		r = h.shaped
	}
	at = [handles]plane.Point{r[0], r[0], r[0], r[0]}
	for _, p := range r {
		if p.X > at[Right].X {
			at[Right] = p
		}
		if p.X < at[Left].X {
			at[Left] = p
		}
		if p.Y > at[Front].Y {
			at[Front] = p
		}
		if p.Y < at[Back].Y {
			at[Back] = p
		}
	}
	lo, hi := r.Bounds()
	at[Front].X, at[Back].X = (lo.X+hi.X)/2, (lo.X+hi.X)/2
	return at
}

// outward is how far to is further out than from, on the side of a handle.
func (h Handle) outward(from, to plane.Point) float64 {
	switch d := to.Sub(from); h {
	case Right:
		return d.X
	case Left:
		return -d.X
	case Front:
		return d.Y
	default:
		return -d.Y
	}
}

// Shape gives the section the outline that can be shaped, nil for none.
func (s *Section) Shape(outline plane.Ring) {
	s.hand.outline = outline
	if s.hand.frame == nil {
		s.hand.shaped = nil
	}
	s.Refresh()
}

// Follow shows the outline as a pull shapes it.
func (s *Section) Follow(outline plane.Ring) {
	s.hand.shaped = outline
	s.Refresh()
}

// handleSize is the diameter of a handle, and handleReach how near one must come to it, in the toolkit's units.
const handleSize, handleReach = 11, 12

func (s *Section) markHandles(f picture.Frame) {
	if len(s.hand.outline) == 0 || !s.hand.over && !s.hand.focused {
		return
	}
	for h, p := range s.hand.ends() {
		x, y := onScreen(f, p)
		c := canvas.NewCircle(theme.Color(theme.ColorNameBackground))
		c.StrokeColor, c.StrokeWidth = theme.Color(look.ColorWanted), 2
		if Handle(h) == s.hand.chosen && (s.hand.focused || s.hand.frame != nil) {
			c.FillColor = theme.Color(look.ColorWanted)
		}
		c.Move(fyne.NewPos(x-handleSize/2, y-handleSize/2))
		c.Resize(fyne.NewSize(handleSize, handleSize))
		s.layer.Add(c)
	}
}

// onScreen is where a point of the section is drawn, its right hand at the left and its front below.
func onScreen(f picture.Frame, p plane.Point) (x, y float32) {
	return float32(f.X - p.X*f.Scale), float32(f.Y + p.Y*f.Scale)
}

// onSection is the other way round.
func onSection(f picture.Frame, at fyne.Position) plane.Point {
	return plane.Point{X: (f.X - float64(at.X)) / f.Scale, Y: (float64(at.Y) - f.Y) / f.Scale}
}

// MouseDown takes the handle under the pointer.
func (s *Section) MouseDown(ev *desktop.MouseEvent) {
	if len(s.hand.outline) == 0 || ev.Button != desktop.MouseButtonPrimary {
		return
	}
	f := s.frame(s.Size())
	for h, p := range s.hand.ends() {
		x, y := onScreen(f, p)
		if dx, dy := x-ev.Position.X, y-ev.Position.Y; dx*dx+dy*dy <= handleReach*handleReach {
			s.hand.chosen, s.hand.frame, s.hand.from, s.hand.pulled = Handle(h), &f, onSection(f, ev.Position), 0
			takeKeys(s)
			s.mark()
		}
	}
}

// MouseUp lets it go.
func (s *Section) MouseUp(*desktop.MouseEvent) { s.DragEnd() }

// Dragged pulls the handle in hand.
func (s *Section) Dragged(ev *fyne.DragEvent) {
	if s.hand.frame == nil {
		return
	}
	h := s.hand.chosen
	s.hand.pulled = h.outward(s.hand.from, onSection(*s.hand.frame, ev.Position))
	s.OnPulled(Pull{h, s.hand.pulled, balancing()})
}

// DragEnd lets the handle go.
func (s *Section) DragEnd() {
	if s.hand.frame != nil {
		s.hand.frame = nil
		s.OnSettled()
		s.Refresh()
	}
}

// balancing reports whether Shift is held, with which a pull moves the balance and Tab goes back.
func balancing() bool {
	d, ok := fyne.CurrentApp().Driver().(desktop.Driver)
	return ok && d.CurrentKeyModifiers()&fyne.KeyModifierShift != 0
}

// AcceptsTab keeps Tab for going from handle to handle, where there are any.
func (s *Section) AcceptsTab() bool { return len(s.hand.outline) > 0 }

// tab goes to the next handle, or back, and from the last one out of the section.
func (s *Section) tab(back bool) {
	c := fyne.CurrentApp().Driver().CanvasForObject(s)
	switch h := s.hand.chosen; {
	case back && h > 0:
		s.hand.chosen--
	case !back && h < handles-1:
		s.hand.chosen++
	case c != nil && back:
		s.hand.chosen = handles - 1
		c.FocusPrevious()
	case c != nil:
		s.hand.chosen = 0
		c.FocusNext()
	}
	s.mark()
}

// TypedKey moves the chosen handle by a millimetre, with Shift the balance; Tab chooses the next.
func (s *Section) TypedKey(ev *fyne.KeyEvent) {
	if len(s.hand.outline) == 0 {
		return
	}
	step := map[fyne.KeyName]plane.Point{fyne.KeyLeft: {X: 1}, fyne.KeyRight: {X: -1}, fyne.KeyUp: {Y: -1}, fyne.KeyDown: {Y: 1}}
	switch to, arrow := step[ev.Name]; {
	case ev.Name == fyne.KeyTab:
		s.tab(balancing())
	case ev.Name == fyne.KeyEscape && s.hand.frame != nil:
		s.hand.frame, s.hand.shaped = nil, nil
		s.OnGivenUp()
		s.Refresh()
	case arrow:
		if by := s.hand.chosen.outward(plane.Point{}, to); by != 0 {
			s.OnPulled(Pull{s.hand.chosen, by, balancing()})
			s.OnSettled()
		}
	}
}

// TypedRune does nothing.
func (s *Section) TypedRune(rune) {}

// FocusGained shows the handles.
func (s *Section) FocusGained() { s.hand.focused = true; s.mark() }

// FocusLost hides them.
func (s *Section) FocusLost() { s.hand.focused = false; s.mark() }

// MouseIn shows the handles.
func (s *Section) MouseIn(*desktop.MouseEvent) { s.hand.over = true; s.mark() }

// MouseMoved is for the toolkit.
func (s *Section) MouseMoved(*desktop.MouseEvent) {}

// MouseOut hides them.
func (s *Section) MouseOut() { s.hand.over = false; s.mark() }
