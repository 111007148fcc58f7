package ui

import (
	"context"
	"io"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/patterns/report"
)

// asking is what a measuring sheet is to ask for.
type asking struct{ skirt, sleeve, form, object *widget.Check }

// measuringSheet asks what is to be measured, and writes and opens the blank sheet for it.
func (w *Window) measuringSheet() {
	check := func(label string, on bool) *widget.Check {
		c := widget.NewCheck(label, nil)
		c.Checked = on
		return c
	}
	r := w.doc.Record()
	a := asking{
		check(lang.L("skirt"), true), check(lang.L("sleeves"), true), check(lang.L("a bare form"), r.Mount.Build == "padded"),
		check(lang.L("only this garment, with its number and title"), false),
	}
	box := container.NewVBox(a.skirt, a.sleeve, a.form, a.object)
	dialog.ShowCustomConfirm(lang.L("What is to be measured beside the bodice?"), lang.L("Open the sheet"), lang.L("Cancel"), box, func(yes bool) {
		if yes {
			w.openMeasuringSheet(a)
		}
	}, w.win)
}

func (w *Window) openMeasuringSheet(a asking) {
	r := w.doc.Record()
	asked := report.Asked{Skirt: a.skirt.Checked, Sleeve: a.sleeve.Checked, Form: a.form.Checked, Unit: r.Unit}
	if a.object.Checked {
		asked.Wearer, asked.Number, asked.Title = r.Object.Wearer, r.Object.Number, r.Object.Title
	}
	path := w.printPath(lang.L("Measuring sheet"))
	w.errand(lang.L("Measuring sheet"), func(_ context.Context, progress Progress) error {
		progress("writing", 0.5)
		return writePrint(path, func(out io.Writer) error { return report.MeasuringSheetFor(out, asked) })
	}, func() {
		w.printed(path, handlingAdvice())
	})
}

// handlingAdvice goes with every sheet that is taken to a garment.
func handlingAdvice() string {
	return lang.L("Old garments may carry pesticides, arsenic or mould: ask before touching, wear gloves and wash hands.")
}
