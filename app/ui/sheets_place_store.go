package ui

import (
	"context"
	"io"

	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/patterns/condition"
	"understructure/patterns/keeping"
	"understructure/patterns/plan"
)

// storageSheet writes and opens the sheet that says how the garment is put away.
func (w *Window) storageSheet() { w.storePaper(lang.L("Storage sheet"), keeping.Write) }

// conditionSheet asks whether the sheet is for the garment at hand, and writes and opens it.
func (w *Window) conditionSheet() {
	this := widget.NewCheck(lang.L("this garment, with its number, title and outline"), nil)
	this.Checked = true
	dialog.ShowCustomConfirm(lang.L("Condition sheet"), lang.L("Open the sheet"), lang.L("Cancel"), this, func(yes bool) {
		switch {
		case !yes:
		case this.Checked:
			w.storePaper(lang.L("Condition sheet"), func(out io.Writer, p plan.Plan) error { return condition.Write(out, condition.Of(p)) })
		default:
			w.blankCondition()
		}
	}, w.win)
}

// blankCondition writes and opens a condition sheet for any garment of such a wearer.
func (w *Window) blankCondition() {
	wearer := w.doc.Record().Object.Wearer
	path := w.printPath(lang.L("Condition sheet"))
	w.errand(lang.L("Condition sheet"), func(_ context.Context, progress Progress) error {
		progress("writing", 0.5)
		return writePrint(path, func(out io.Writer) error { return condition.Write(out, condition.Blank(wearer)) })
	}, func() { w.printed(path, handlingAdvice()) })
}

// storePaper writes and opens a paper about the garment as the record has it now.
func (w *Window) storePaper(name string, write func(io.Writer, plan.Plan) error) {
	r, compute := w.doc.Record(), w.options.Rooms.Compute
	p, err := w.doc.Plan()
	old := err != nil || w.doc.Busy()
	path := w.printPath(name)
	w.errand(name, func(ctx context.Context, progress Progress) error {
		if old {
			if p, err = compute(ctx, r); err != nil {
				return err
			}
		}
		progress("writing", 0.8)
		return writePrint(path, func(out io.Writer) error { return write(out, p) })
	}, func() { w.printed(path, handlingAdvice()) })
}
