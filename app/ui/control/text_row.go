package control

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// TextRow is a name and a line of text. The text counts as soon as it is typed and is allowed.
type TextRow struct {
	widget.BaseWidget
	OnChanged func(text string) error // the error is shown below the text when it is left
	OnDone    func()                  // the text was left

	value string
	entry *textEntry
	note  *widget.Label
	err   error
	box   fyne.CanvasObject
}

// NewTextRow returns a row without text; the hint stands in it while it is empty.
func NewTextRow(name, hint string) *TextRow {
	r := &TextRow{OnChanged: func(string) error { return nil }, OnDone: func() {}, note: newNote()}
	r.entry = &textEntry{row: r}
	r.entry.ExtendBaseWidget(r.entry)
	r.entry.SetPlaceHolder(hint)
	r.entry.OnChanged = r.typed
	r.box = container.NewVBox(container.New(textLayout{}, NewName(name), r.entry), r.note)
	r.ExtendBaseWidget(r)
	return r
}

// Entry is where the text is typed.
func (r *TextRow) Entry() *widget.Entry { return &r.entry.Entry }

// Note is what is said below the text.
func (r *TextRow) Note() string { return r.note.Text }

// Say takes over a text, unless it is being typed in while the text stayed.
func (r *TextRow) Say(text string) {
	stayed := r.value == text
	r.value = text
	if strings.TrimSpace(r.entry.Text) == text || r.entry.focused && stayed {
		return
	}
	r.write()
}

func (r *TextRow) write() {
	if r.entry.Text != r.value {
		r.entry.OnChanged = nil
		r.entry.SetText(r.value)
		r.entry.OnChanged = r.typed
	}
	r.err = nil
	r.tell()
}

func (r *TextRow) typed(text string) {
	r.err = r.OnChanged(text)
	r.tell()
}

// tell says what is wrong, once the text was left.
func (r *TextRow) tell() {
	text := ""
	if r.err != nil && !r.entry.focused {
		text = r.err.Error()
	}
	if text != r.note.Text {
		r.note.SetText(text)
	}
	if hidden := text == ""; hidden != r.note.Hidden {
		r.note.Hidden = hidden
		r.Refresh()
	}
}

// CreateRenderer is for the toolkit.
func (r *TextRow) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(r.box) }

// textEntry goes to the next entry by Enter, and gives up what was typed by Escape.
type textEntry struct {
	wholeEntry
	row    *TextRow
	before string // when one came to it
}

// FocusGained remembers what was there.
func (e *textEntry) FocusGained() {
	e.before = e.row.value
	e.wholeEntry.FocusGained()
}

// FocusLost ends the typing.
func (e *textEntry) FocusLost() {
	e.wholeEntry.FocusLost()
	e.row.OnDone()
	if e.row.err == nil {
		e.row.write()
	}
	e.row.tell()
}

// TypedKey handles the keys that lead out of the entry.
func (e *textEntry) TypedKey(ev *fyne.KeyEvent) {
	c := fyne.CurrentApp().Driver().CanvasForObject(e)
	switch {
	case ev.Name == fyne.KeyEscape:
		e.SetText(e.before)
	case c != nil && (ev.Name == fyne.KeyReturn || ev.Name == fyne.KeyEnter || ev.Name == fyne.KeyDown):
		c.FocusNext()
	case c != nil && ev.Name == fyne.KeyUp:
		c.FocusPrevious()
	default:
		e.Entry.TypedKey(ev)
	}
}

// textLayout puts a name and a long entry beside each other.
type textLayout struct{}

// Widths in the toolkit's units: of the name, and of what is left free for the bar of a scrolled column.
const (
	textName = 104
	textEdge = 8
)

// MinSize is that of a value's row.
func (textLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(nameWidth+entryWidth+unitWidth, o[1].MinSize().Height)
}

// Layout gives the entry most of the row.
func (textLayout) Layout(o []fyne.CanvasObject, size fyne.Size) {
	name, entry := o[0], o[1]
	name.Move(fyne.NewPos(0, (size.Height-name.MinSize().Height)/2))
	name.Resize(fyne.NewSize(textName, name.MinSize().Height))
	entry.Move(fyne.NewPos(textName, 0))
	entry.Resize(fyne.NewSize(size.Width-textName-textEdge, size.Height))
}
