package ui

import (
	"context"
	"errors"
	"net/url"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"understructure/app/folder"
)

// exportKey keeps in the preferences where the last export went.
const exportKey = "export folder"

// export asks for a folder and writes the templates into a new one inside it.
func (w *Window) export() {
	d := dialog.NewFolderOpen(func(f fyne.ListableURI, err error) {
		if err != nil {
			w.failed(err)
		}
		if f == nil || err != nil {
			return
		}
		w.app.Preferences().SetString(exportKey, f.Path())
		w.exportTo(filepath.Join(f.Path(), w.stem()+" templates"))
	}, w.win)
	d.SetTitleText(lang.L("Where shall the folder with the templates go?"))
	d.SetConfirmText(lang.L("Export here"))
	w.showFiles(d)
	if last := w.lastExport(); last != nil {
		d.SetLocation(last)
	}
}

// lastExport is the folder that the last export went to; nil where there is none, or none any more.
func (w *Window) lastExport() fyne.ListableURI {
	path := w.app.Preferences().String(exportKey)
	if path == "" {
		return nil
	}
	last, err := storage.ListerForURI(storage.NewFileURI(path))
	if err != nil {
		return nil
	}
	return last
}

func (w *Window) exportTo(to string) {
	r := w.doc.Record()
	w.errand(lang.L("Exporting templates"), func(ctx context.Context, progress Progress) error {
		return w.options.Export(ctx, r, to, progress)
	}, func() { w.written(to) })
}

// errand is work that takes its time, and the dialog that is shown meanwhile.
type errand struct {
	dialog *dialog.CustomDialog
	stage  *widget.Label
	bar    *widget.ProgressBar
	cancel *widget.Button
	called bool // off
}

// errand does something off the window's goroutine, and what comes after it where it was not called off. To
// call it off closes the dialog at once; what is at work then ends by itself, without leaving anything behind.
func (w *Window) errand(title string, do func(context.Context, Progress) error, then func()) {
	ctx, cancel := context.WithCancel(context.Background())
	e := &errand{stage: widget.NewLabel(lang.L("Computing")), bar: widget.NewProgressBar()}
	e.cancel = widget.NewButton(lang.L("Cancel"), func() {
		e.called = true
		e.dialog.Hide()
		cancel()
	})
	e.dialog = dialog.NewCustomWithoutButtons(title, container.NewVBox(e.stage, e.bar), w.win)
	e.dialog.SetButtons([]fyne.CanvasObject{e.cancel})
	e.dialog.Resize(fyne.NewSize(420, 160))
	e.dialog.Show()
	post := w.options.Rooms.Post
	go func() {
		defer cancel()
		err := do(ctx, func(stage string, fraction float64) { post(func() { e.show(stage, fraction) }) })
		post(func() {
			e.dialog.Hide()
			w.ended(e, err, then)
		})
	}()
}

// ended follows the work. What was called off too late to be stopped counts as done.
func (w *Window) ended(e *errand, err error, then func()) {
	switch {
	case err == nil:
		then()
	case !e.called && !errors.Is(err, context.Canceled):
		w.failed(inWords(err))
	}
}

// stageWords says what each stage of the work is doing.
func stageWords() map[string]string {
	return map[string]string{
		"figure": lang.L("Drawing the figure"), "mount": lang.L("Building the mount"), "pieces": lang.L("Laying the pieces flat"),
		"fit": lang.L("Checking the fit"), "cutting": lang.L("Laying the pieces on planks and rolls"), "done": lang.L("Computed"),
		"pages": lang.L("Laying out the pages"), "writing": lang.L("Writing the files"),
	}
}

func (e *errand) show(stage string, fraction float64) {
	if text, ok := stageWords()[stage]; ok {
		set(e.stage, text)
	}
	e.bar.SetValue(fraction)
}

// advice is what to do about each reason why a folder takes no files.
func advice(dir string) map[error]string {
	in := map[string]any{"Folder": dir}
	return map[error]string{
		folder.ErrFull:      lang.L("There is no room left on the disk that {{.Folder}} is on. Make room there or choose another disk; what was in the folder is as it was.", in),
		folder.ErrReadOnly:  lang.L("The disk that {{.Folder}} is on can only be read. Choose a folder on another disk.", in),
		folder.ErrForbidden: lang.L("You may not write to {{.Folder}}. Choose a folder of your own.", in),
		folder.ErrNoFolder:  lang.L("{{.Folder}} cannot be a folder, because a file of that name is there. Choose another place.", in),
		folder.ErrGone:      lang.L("{{.Folder}} is no longer there: a drive may have been taken out. Choose another folder; your work is still in this window.", in),
	}
}

// inWords says what a person can do, where that is known.
func inWords(err error) error {
	var r *folder.Refusal
	if !errors.As(err, &r) {
		return err
	}
	return errors.New(advice(r.Dir)[r.Reason])
}

// written says where everything is, and opens the folder if that is wanted.
func (w *Window) written(to string) {
	w.question(lang.L("Templates written"), lang.L("Everything to print and cut is in")+"\n"+to,
		answer{lang.L("Close"), func() {}}, answer{lang.L("Open the folder"), func() { w.show(to) }})
}

// show opens a file or a folder with whatever the system has for it.
func (w *Window) show(path string) {
	if err := w.app.OpenURL(&url.URL{Scheme: "file", Path: filepath.ToSlash(path)}); err != nil {
		w.failed(err)
	}
}
