package ui

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/folder"
	"understructure/app/keep"
	"understructure/patterns/sheet"
	"understructure/patterns/testpage"
)

// print writes the templates as one PDF and opens it with the system's viewer, which can print it. The
// pages are those given, or where there are none they are laid.
func (w *Window) print(pages []sheet.Page) {
	r, compute := w.doc.Record(), w.options.Rooms.Compute
	p, err := w.doc.Plan()
	old := err != nil || w.doc.Busy()
	path := w.printPath(lang.L("{{.Name}} templates", map[string]any{"Name": w.stem()}))
	w.errand(lang.L("Preparing the pages to print"), func(ctx context.Context, progress Progress) error {
		if old {
			if p, err = compute(ctx, r); err != nil {
				return err
			}
		}
		if progress("pages", 0.5); old || pages == nil {
			if pages, err = folder.Pages(ctx, p, nil); err != nil {
				return err
			}
		}
		if len(pages) == 0 {
			return errors.New(lang.L("There are no pieces to print."))
		}
		progress("writing", 0.8)
		return writePrint(path, func(out io.Writer) error { return folder.Templates(ctx, out, p, pages) })
	}, func() { w.printed(path, printAdvice()) })
}

// testPage writes and opens the page that shows whether the printer prints true, for the record's paper. It is never
// corrected itself.
func (w *Window) testPage() {
	r := w.doc.Record()
	stock, _ := r.Mount.Stocked(r.Garment.Strength)
	path := w.printPath(lang.L("Test page"))
	w.errand(lang.L("Test page"), func(_ context.Context, progress Progress) error {
		progress("writing", 0.5)
		return writePrint(path, func(out io.Writer) error { return testpage.Write(out, stock.Paper) })
	}, func() {
		w.printed(path, lang.L("In the print window choose “Actual size” or 100 %, never “Fit to page”. The page says what to measure, and what to write into the record where the printer is not true."))
	})
}

// printAdvice is what keeps templates true to size.
func printAdvice() string {
	return lang.L("In the print window choose “Actual size” or 100 %, never “Fit to page”. Before you cut anything, measure both 100 mm rules on the first page that comes out.")
}

// printPath is where a file to be printed lies until the next one takes its place: the viewer may need it long
// after the window is closed.
func (w *Window) printPath(name string) string {
	dir := w.options.Rooms.Scratch
	if dir == "" {
		dir = filepath.Join(os.TempDir(), "understructure")
	}
	return filepath.Join(dir, "print", name+".pdf")
}

func writePrint(path string, write func(io.Writer) error) error {
	dir := filepath.Dir(path)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return folder.Explain(dir, err)
	}
	return folder.Explain(dir, keep.File(path, write))
}

// printed opens the file, and says where it is for the case that nothing comes of that.
func (w *Window) printed(path, advice string) {
	w.show(path)
	text := widget.NewLabel(advice)
	text.Wrapping = fyne.TextWrapWord
	where := widget.NewLabel(lang.L("The file is opened by your system's PDF viewer. If nothing opens, it is here:") + "\n" + path)
	where.Wrapping = fyne.TextWrapWord
	d := dialog.NewCustomConfirm(lang.L("Ready to print"), lang.L("Open once more"), lang.L("Close"), container.NewVBox(text, where), func(again bool) {
		if again {
			w.show(path)
		}
	}, w.win)
	d.Resize(fyne.NewSize(520, 240))
	d.Show()
}
