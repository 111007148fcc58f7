package control

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Notes is text of several lines. It counts as soon as it is typed and is allowed.
type Notes struct {
	widget.BaseWidget
	OnChanged func(text string) error // the error is shown below
	OnDone    func()                  // the text was left

	entry *notesEntry
	note  *widget.Label
	quiet bool
	box   fyne.CanvasObject
}

// NewNotes returns notes without text; the hint stands there while they are empty.
func NewNotes(hint string) *Notes {
	n := &Notes{OnChanged: func(string) error { return nil }, OnDone: func() {}, note: newNote()}
	n.entry = &notesEntry{notes: n}
	n.entry.MultiLine = true
	n.entry.Wrapping = fyne.TextWrapWord
	n.entry.ExtendBaseWidget(n.entry)
	n.entry.SetMinRowsVisible(2)
	n.entry.SetPlaceHolder(hint)
	n.entry.OnChanged = n.typed
	n.box = container.NewVBox(n.entry, n.note)
	n.ExtendBaseWidget(n)
	return n
}

// Entry is where the text is typed.
func (n *Notes) Entry() *widget.Entry { return &n.entry.Entry }

// Say takes over a text that does not stand there already.
func (n *Notes) Say(text string) {
	if strings.TrimSpace(n.entry.Text) == text {
		return
	}
	n.quiet = true
	n.entry.SetText(text)
	n.quiet = false
	say(n.note, "")
}

func (n *Notes) typed(text string) {
	if n.quiet {
		return
	}
	problem := ""
	if err := n.OnChanged(text); err != nil {
		problem = err.Error()
	}
	say(n.note, problem)
}

// CreateRenderer is for the toolkit.
func (n *Notes) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(n.box) }

// notesEntry leaves the tabulator to whoever goes through the window by keys.
type notesEntry struct {
	widget.Entry
	notes *Notes
}

// AcceptsTab is for the toolkit.
func (e *notesEntry) AcceptsTab() bool { return false }

// FocusLost ends the typing.
func (e *notesEntry) FocusLost() {
	e.Entry.FocusLost()
	e.notes.OnDone()
}
