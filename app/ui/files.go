package ui

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/folder"
)

// dialogSize leaves a file dialog room on a small screen.
var dialogSize = fyne.NewSize(860, 560)

// leave does something that would lose unsaved changes, after asking.
func (w *Window) leave(then func()) {
	if !w.doc.Dirty() {
		then()
		return
	}
	if w.ask { // whoever is asked already has only to answer
		return
	}
	w.question(lang.L("Save changes?"), lang.L("{{.Name}} has changes that are not saved.", map[string]any{"Name": w.name()}),
		answer{lang.L("Cancel"), func() {}}, answer{lang.L("Don't save"), then}, answer{lang.L("Save"), func() { w.saveThen(then) }})
}

// chooseFile asks which record to open.
func (w *Window) chooseFile() {
	d := dialog.NewFileOpen(func(f fyne.URIReadCloser, err error) {
		if err != nil {
			w.failed(err)
		}
		if f == nil || err != nil {
			return
		}
		_ = f.Close() // the record is read by its path
		w.Open(f.URI().Path())
	}, w.win)
	d.SetFilter(storage.NewExtensionFileFilter([]string{".json"}))
	w.showFiles(d)
}

// showFiles shows a file dialog where the last one was left; Escape closes it.
func (w *Window) showFiles(d *dialog.FileDialog) {
	if folder, err := storage.ListerForURI(storage.NewFileURI(w.folder())); err == nil {
		d.SetLocation(folder)
	}
	d.Resize(dialogSize)
	d.Show()
	w.onEscape(d.Dismiss)
}

// onEscape does something at the next press of Escape, where no entry has the keys.
func (w *Window) onEscape(do func()) {
	canvas := w.win.Canvas()
	canvas.SetOnTypedKey(func(ev *fyne.KeyEvent) {
		if ev.Name == fyne.KeyEscape {
			canvas.SetOnTypedKey(nil)
			do()
		}
	})
}

// folder is where files are looked for: that of the open record, or the person's own.
func (w *Window) folder() string {
	if p := w.doc.Path(); p != "" {
		return filepath.Dir(p)
	}
	home, _ := os.UserHomeDir() // without one the toolkit chooses
	return home
}

// dropped lays photographs behind the figure, or opens a record.
func (w *Window) dropped(_ fyne.Position, files []fyne.URI) {
	if len(files) == 0 {
		return
	}
	for _, f := range files {
		switch strings.ToLower(filepath.Ext(f.Path())) {
		case ".jpg", ".jpeg", ".png":
			w.photographing().addFile(f.Path())
		default:
			w.leave(func() { w.Open(f.Path()) })
			return
		}
	}
}

func (w *Window) save() { w.saveThen(func() {}) }

func (w *Window) saveThen(then func()) {
	if w.doc.Path() == "" {
		w.saveAs(then)
		return
	}
	err := w.doc.Save()
	var overtaken *document.Overtaken
	switch {
	case errors.As(err, &overtaken):
		w.overtaken(then)
	case err != nil:
		w.failed(unwritten(w.doc.Path(), err))
	default:
		then()
	}
}

// unwritten says why a file could not be written.
func unwritten(path string, err error) error { return inWords(folder.Explain(filepath.Dir(path), err)) }

// overtaken asks what to do where somebody else has saved the file.
func (w *Window) overtaken(then func()) {
	text := lang.L("{{.Name}} was changed by somebody else since it was opened here.\nReplacing the file would lose their changes.", map[string]any{"Name": w.name()})
	replace := func() {
		if err := w.doc.SaveAs(w.doc.Path()); err != nil {
			w.failed(unwritten(w.doc.Path(), err))
			return
		}
		then()
	}
	w.question(lang.L("Changed by somebody else"), text,
		answer{lang.L("Cancel"), func() {}}, answer{lang.L("Replace the file"), replace}, answer{lang.L("Save as…"), func() { w.saveAs(then) }})
}

// stem is the record's name as the start of a file name, without what a file name may not hold.
func (w *Window) stem() string {
	name := strings.TrimSuffix(w.name(), filepath.Ext(w.doc.Path()))
	plain := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, name)
	return strings.Trim(plain, " .")
}

// offerRecovery asks what to do with unsaved work that was left behind.
func (w *Window) offerRecovery() {
	when, ok := w.doc.Left()
	if !ok {
		return
	}
	name := w.name()
	if w.doc.Path() == "" {
		name = lang.L("A record without a file")
	}
	text := lang.L("{{.Name}} was left with unsaved changes\non {{.Day}} at {{.Time}}.", map[string]any{"Name": name, "Day": when.Format(time.DateOnly), "Time": when.Format("15:04")})
	take := func() {
		if err := w.doc.Recover(); err != nil {
			w.failed(err)
		}
	}
	w.question(lang.L("Take up the unsaved changes?"), text, answer{lang.L("Decide later"), w.doc.Postpone}, answer{lang.L("Discard"), w.doc.Discard}, answer{lang.L("Take up"), take})
}

// showNotices lists everything the plan has to say.
func (w *Window) showNotices() {
	p, _ := w.doc.Plan()
	box := container.NewVBox()
	for _, n := range p.Warnings {
		l := widget.NewLabel(n.Message)
		l.Wrapping = fyne.TextWrapWord
		box.Add(l)
	}
	d := dialog.NewCustom(lang.L("To know before cutting"), lang.L("Close"), container.NewVScroll(box), w.win)
	d.Resize(fyne.NewSize(640, 420))
	d.Show()
	w.onEscape(d.Hide)
}
