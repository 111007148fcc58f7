package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"
)

// licences shows the terms of every work of others that the program is built with.
func (w *Window) licences() {
	text := widget.NewTextGridFromString(w.options.Licences)
	text.Scroll = fyne.ScrollBoth
	d := dialog.NewCustom(lang.L("Licences"), lang.L("Close"), text, w.win)
	d.Resize(fyne.NewSize(760, 520))
	d.Show()
	w.onEscape(d.Hide)
}
