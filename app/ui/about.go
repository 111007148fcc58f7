package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// about says what the program is and under which terms it may be used.
func (w *Window) about() {
	icon := canvas.NewImageFromResource(w.app.Icon())
	icon.FillMode = canvas.ImageFillContain
	icon.SetMinSize(fyne.NewSize(72, 72))
	name := widget.NewLabelWithStyle("Understructure "+w.options.Version, fyne.TextAlignLeading, fyne.TextStyle{Bold: true})
	name.SizeName = theme.SizeNameSubHeadingText
	text := widget.NewLabel(lang.L("From the tape measurements of a historic garment to templates of the mount that carries it.") + "\n\n" +
		lang.L("Free under the Apache License, version 2.0, and built with works of others under terms of their own.") + "\n\n" +
		lang.L("A computed mount is a proposal. Whoever dresses the garment decides."))
	text.Wrapping = fyne.TextWrapWord
	d := dialog.NewCustom(lang.L("About"), lang.L("Close"), container.NewBorder(nil, nil, container.NewPadded(icon), nil, container.NewVBox(name, text)), w.win)
	d.Resize(fyne.NewSize(520, 260))
	d.Show()
	w.onEscape(d.Hide)
}
