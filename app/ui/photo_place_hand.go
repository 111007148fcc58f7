package ui

import (
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/geometry/plane"
)

// change changes the photograph in hand; until it is settled that is one step.
func (p *photoPlace) change(do func(*record.Photograph)) error {
	f, ok := p.inHand()
	if !ok {
		return nil
	}
	f = f.Clone()
	do(&f)
	return p.doc.ChangePhotograph(p.at, f)
}

// step changes the photograph in hand in a step of its own.
func (p *photoPlace) step(do func(*record.Photograph)) {
	p.doc.Settle()
	p.tell(p.change(do))
	p.doc.Settle()
}

func (p *photoPlace) tell(err error) {
	if err != nil {
		p.window.failed(err)
	}
}

// tenth keeps no more of a point than the eye can tell, so that records stay short.
func tenth(p plane.Point) plane.Point {
	return plane.Point{X: math.Round(10*p.X) / 10, Y: math.Round(10*p.Y) / 10}
}

// shift moves the photograph behind the figure. It is kept to a thousandth, of which many make a pixel.
func (p *photoPlace) shift(by plane.Point) {
	p.tell(p.change(func(f *record.Photograph) { f.At = tenth(f.At.Add(by).Mul(100)).Mul(0.01) }))
}

// put puts a point on another pixel. Where it is the lower of the two that scale the photograph, it stays where it
// is seen, and the photograph turns and grows about it; where it is the higher, about the lower.
func (p *photoPlace) put(g control.Grip, pixel plane.Point) {
	f, _ := p.inHand()
	placed, ok := document.Placed(f)
	if !ok {
		return
	}
	pixel = tenth(pixel)
	p.tell(p.change(func(f *record.Photograph) {
		switch i := int(g - control.GripTrace); {
		case g == control.GripLow && pixel != f.High:
			f.Low, f.At = pixel, tenth(placed.View(pixel))
		case g == control.GripHigh && pixel != f.Low:
			f.High = pixel
		case i >= 0 && i < len(f.Trace):
			f.Trace[i] = pixel
		}
	}))
}

// traced adds a point to the trace.
func (p *photoPlace) traced(pixel plane.Point) {
	p.tell(p.change(func(f *record.Photograph) { f.Trace = append(f.Trace, tenth(pixel)) }))
}

// erased takes a point out of it.
func (p *photoPlace) erased(i int) {
	p.tell(p.change(func(f *record.Photograph) {
		if i < len(f.Trace) {
			f.Trace = slices.Delete(f.Trace, i, i+1)
		}
	}))
}

// clearTrace takes the whole trace away.
func (p *photoPlace) clearTrace() { p.step(func(f *record.Photograph) { f.Trace = nil }) }

// turnTrace begins or ends the tracing. The keys go to the stage.
func (p *photoPlace) turnTrace() {
	if p.stand.Tracing() {
		p.endTrace()
		return
	}
	p.stand.Trace(true)
	if c := fyne.CurrentApp().Driver().CanvasForObject(p.stand); c != nil {
		c.Focus(p.stand)
	}
	p.show()
}

// endTrace makes room for what the silhouette proposes: the photograph has been scaled before it was traced.
func (p *photoPlace) endTrace() {
	p.stand.Trace(false)
	p.scale.Fold(true)
	p.show()
}

// showTraceState says what a click does, and what the buttons would.
func (p *photoPlace) showTraceState(f record.Photograph, text string) {
	label, importance := lang.L("Trace"), widget.MediumImportance
	if p.stand.Tracing() {
		label, importance = lang.L("End the trace"), widget.HighImportance
		text = lang.L("Click along the outline, up one side and down the other. Backspace takes the last point away; Enter, or a second click on the last point, ends. The wheel goes nearer.")
	}
	if p.trace.Text != label {
		p.trace.Importance = importance
		p.trace.SetText(label)
	}
	visible(p.clear, len(f.Trace) > 0)
	set(p.hint, text)
	visible(p.hint, text != "")
}
