package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/ui/control"
	"understructure/geometry/measure"
)

// pull shapes the section in hand.
func (f *figure) pull(p control.Pull) {
	ring, said := f.shaping.pull(measure.Level(f.elevation.Picked()), p, f.unit)
	f.section.Follow(ring)
	f.say(said...)
}

// lift moves a level, as far as its neighbours let it.
func (f *figure) lift(name string, z float64) {
	waist := f.plan.StandHeight
	at, err := f.shaping.lift(measure.Level(name), z-waist)
	if err != nil {
		f.say(err.Error())
		return
	}
	lines := []string{f.above(waist + at), lang.L("{{.Height}} from the waist", map[string]any{"Height": length(&at, f.unit) + " " + f.unit})}
	if at != z-waist {
		f.elevation.Hold(name, waist+at)
		lines = append(lines, lang.L("It goes no farther: the next level is too near."))
	}
	f.say(lines...)
}

// explain says why a tape cannot be moved.
func (f *figure) explain(string) {
	f.say(lang.L("All heights are counted from the waist."), lang.L("Type the waist height to move it."))
}

// letGo ends what the hand does.
func (f *figure) letGo() {
	if err := f.shaping.settle(); err != nil {
		f.say(err.Error())
	}
}

// giveUp leaves the level in hand as it was.
func (f *figure) giveUp() {
	f.shaping.giveUp()
	f.drawStage()
	f.showLevel()
}

// follow sets what the hand has done since the plan that now has come was begun.
func (f *figure) follow() {
	if err := f.shaping.follow(); err != nil {
		f.say(err.Error())
	}
}

// typeGirth asks for the garment's girth at a level over its number in the table.
func (f *figure) typeGirth(name string, at fyne.Position) {
	c := fyne.CurrentApp().Driver().CanvasForObject(f.elevation)
	if c == nil {
		return
	}
	f.doc.Settle()
	t := newGirthEntry(f.doc, girthField(f.doc.Record(), measure.Level(name)), f.unit)
	asked := widget.NewPopUp(t, c)
	t.hide = func() {
		asked.Hide()
		f.doc.Settle()
		c.Focus(f.elevation)
	}
	t.OnSubmitted = func(text string) {
		if _, err := t.field.Read(text, t.unit); err != nil {
			f.say(err.Error())
			return
		}
		t.hide()
	}
	size := fyne.NewSize(girthWidth, t.MinSize().Height)
	asked.Resize(size)
	asked.ShowAtRelativePosition(at.SubtractXY(size.Width-girthEdge, size.Height/2+theme.InnerPadding()/2), f.elevation)
	c.Focus(t)
	t.TypedShortcut(&fyne.ShortcutSelectAll{})
}

// The entry's width, and how far its edge is from its number, in the toolkit's units.
const girthWidth, girthEdge = 70, 14

// girthEntry is where a girth is typed. It counts while it is typed, if it can be read, and is one step.
type girthEntry struct {
	widget.Entry
	doc   *document.Document
	field document.Field
	unit  string
	typed bool // something else than before
	hide  func()
}

func newGirthEntry(d *document.Document, f document.Field, unit string) *girthEntry {
	t := &girthEntry{doc: d, field: f, unit: unit, hide: func() {}}
	t.ExtendBaseWidget(t)
	if v := f.Get(d.Record()); v != nil {
		t.Text = f.Kind.Format(*v, unit)
	}
	t.OnChanged = func(text string) {
		if v, err := f.Read(text, unit); err == nil {
			before := f.Get(d.Record())
			d.Set(f, v)
			t.typed = t.typed || before == nil || v == nil || *before != *v
		}
	}
	return t
}

// TypedKey leaves the girth as it was at Escape.
func (t *girthEntry) TypedKey(ev *fyne.KeyEvent) {
	if ev.Name != fyne.KeyEscape {
		t.Entry.TypedKey(ev)
		return
	}
	t.doc.Settle()
	if t.typed {
		t.typed = false
		t.doc.Undo()
	}
	t.hide()
}
