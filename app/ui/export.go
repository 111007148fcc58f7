package ui

import (
	"context"
	"errors"
	"net/url"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"
)

// export asks for a folder and writes the templates into a new one inside it.
func (w *Window) export() {
	d := dialog.NewFolderOpen(func(f fyne.ListableURI, err error) {
		if err != nil {
			w.failed(err)
		}
		if f == nil || err != nil {
			return
		}
		w.exportTo(filepath.Join(f.Path(), w.stem()+" templates"))
	}, w.win)
	d.SetTitleText("Where shall the folder with the templates go?")
	d.SetConfirmText("Export here")
	w.showFiles(d)
}

// exporting is the dialog shown while the templates are written.
type exporting struct {
	dialog *dialog.CustomDialog
	stage  *widget.Label
	bar    *widget.ProgressBar
	cancel *widget.Button
}

func (w *Window) exportTo(folder string) {
	ctx, cancel := context.WithCancel(context.Background())
	e := &exporting{stage: widget.NewLabel("Computing"), bar: widget.NewProgressBar(), cancel: widget.NewButton("Cancel", cancel)}
	e.dialog = dialog.NewCustomWithoutButtons("Exporting templates", container.NewVBox(e.stage, e.bar), w.win)
	e.dialog.SetButtons([]fyne.CanvasObject{e.cancel})
	e.dialog.Resize(fyne.NewSize(420, 160))
	e.dialog.Show()
	r, post := w.doc.Record(), w.options.Rooms.Post
	go func() {
		defer cancel()
		err := w.options.Export(ctx, r, folder, func(stage string, fraction float64) {
			post(func() { e.show(stage, fraction) })
		})
		post(func() { w.exported(e, folder, err) })
	}()
}

// stages says in a sentence what each stage of the work is doing.
var stages = map[string]string{
	"figure": "Drawing the figure", "mount": "Building the mount", "pieces": "Laying the pieces flat",
	"fit": "Checking the fit", "done": "Computed", "writing": "Writing the files",
}

func (e *exporting) show(stage string, fraction float64) {
	set(e.stage, stages[stage])
	e.bar.SetValue(fraction)
}

func (w *Window) exported(e *exporting, folder string, err error) {
	e.dialog.Hide()
	switch {
	case errors.Is(err, context.Canceled):
	case err != nil:
		w.failed(err)
	default:
		w.written(folder)
	}
}

// written says where everything is, and opens the folder if that is wanted.
func (w *Window) written(folder string) {
	d := dialog.NewConfirm("Templates written", "Everything to print and cut is in\n"+folder, func(yes bool) {
		if !yes {
			return
		}
		if err := w.app.OpenURL(&url.URL{Scheme: "file", Path: filepath.ToSlash(folder)}); err != nil {
			w.failed(err)
		}
	}, w.win)
	d.SetConfirmText("Open the folder")
	d.SetDismissText("Close")
	d.Show()
}
