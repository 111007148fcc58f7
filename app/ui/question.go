package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"
)

// answer is one that can be given to a question, and what follows.
type answer struct {
	label string
	do    func()
}

// question asks. The first answer is what Escape says, the last is what one would rather do.
func (w *Window) question(title, text string, answers ...answer) {
	w.ask = true
	d := dialog.NewCustomWithoutButtons(title, widget.NewLabel(text), w.win)
	var buttons []fyne.CanvasObject
	var last *widget.Button
	for _, a := range answers {
		last = widget.NewButton(a.label, func() {
			w.ask = false
			w.win.Canvas().SetOnTypedKey(nil)
			d.Hide()
			a.do()
		})
		buttons = append(buttons, last)
	}
	last.Importance = widget.HighImportance
	d.SetButtons(buttons)
	d.Show()
	w.onEscape(buttons[0].(*widget.Button).OnTapped)
}
