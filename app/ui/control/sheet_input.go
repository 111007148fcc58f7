package control

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// Scrolled goes nearer or farther about the pointer.
func (v *SheetView) Scrolled(ev *fyne.ScrollEvent) {
	steps := math.Max(-3, math.Min(float64(ev.Scrolled.DY)/10, 3))
	v.zoomTo(v.frame().scale*math.Pow(wheelStep, steps), ev.Position)
}

// Dragged moves the page along.
func (v *SheetView) Dragged(ev *fyne.DragEvent) { v.pan(ev.Dragged.DX, ev.Dragged.DY) }

// DragEnd is the end of that.
func (v *SheetView) DragEnd() {}

// Tapped says where on the page.
func (v *SheetView) Tapped(ev *fyne.PointEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(v); c != nil {
		c.Focus(v)
	}
	v.OnTapped(v.frame().page(ev.Position))
}

// TypedRune goes nearer and farther.
func (v *SheetView) TypedRune(r rune) {
	switch r {
	case '+', '=':
		v.Nearer(1)
	case '-', '−':
		v.Nearer(-1)
	case '0':
		v.Fit()
	case '1':
		v.TrueSize()
	}
}

// TypedKey moves the page or turns to another. A page that is seen whole is turned by the arrows too.
func (v *SheetView) TypedKey(ev *fyne.KeyEvent) {
	const far = 60
	moves := map[fyne.KeyName][2]float32{fyne.KeyLeft: {far, 0}, fyne.KeyRight: {-far, 0}, fyne.KeyUp: {0, far}, fyne.KeyDown: {0, -far}}
	turns := map[fyne.KeyName]int{fyne.KeyPageUp: -1, fyne.KeyPageDown: 1, fyne.KeyHome: -allPages, fyne.KeyEnd: allPages}
	if v.zoom == 0 {
		turns[fyne.KeyLeft], turns[fyne.KeyUp], turns[fyne.KeyRight], turns[fyne.KeyDown] = -1, -1, 1, 1
	}
	if by, ok := turns[ev.Name]; ok {
		v.OnTurned(by)
	} else if d, ok := moves[ev.Name]; ok {
		v.pan(d[0], d[1])
	}
}

// FocusGained shows that keys go here.
func (v *SheetView) FocusGained() { v.focused = true; v.Refresh() }

// FocusLost takes that back.
func (v *SheetView) FocusLost() { v.focused = false; v.Refresh() }

// Cursor is the ordinary one.
func (v *SheetView) Cursor() desktop.Cursor { return desktop.DefaultCursor }
