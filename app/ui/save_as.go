package ui

import (
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"
)

// saving asks for a name and a folder. The toolkit's own dialog would empty a file that is to be
// replaced before the record is safely written.
type saving struct {
	w      *Window
	name   *widget.Entry
	folder *widget.Button
	then   func()
}

func (w *Window) saveAs(then func()) {
	s := &saving{w: w, name: widget.NewEntry(), then: then}
	s.name.SetText(w.stem() + ".json")
	s.folder = widget.NewButton(w.folder(), s.chooseFolder)
	s.folder.Alignment = widget.ButtonAlignLeading
	d := dialog.NewForm(lang.L("Save as"), lang.L("Save"), lang.L("Cancel"), []*widget.FormItem{
		widget.NewFormItem(lang.L("Name"), s.name), widget.NewFormItem(lang.L("Folder"), s.folder),
	}, s.chosen, w.win)
	s.name.OnSubmitted = func(string) { d.Submit() }
	d.Resize(fyne.NewSize(560, 200))
	d.Show()
	w.win.Canvas().Focus(s.name)
}

func (s *saving) chooseFolder() {
	s.w.showFiles(dialog.NewFolderOpen(func(f fyne.ListableURI, err error) {
		if err == nil && f != nil {
			s.folder.SetText(f.Path())
		}
	}, s.w.win))
}

func (s *saving) chosen(yes bool) {
	if !yes || s.name.Text == "" {
		return
	}
	path := filepath.Join(s.folder.Text, s.name.Text)
	if filepath.Ext(path) == "" {
		path += ".json"
	}
	if _, err := os.Stat(path); err != nil || path == s.w.doc.Path() {
		s.save(path)
		return
	}
	text := lang.L("{{.Name}} is already there.", map[string]any{"Name": filepath.Base(path)})
	s.w.question(lang.L("Replace the file?"), text, answer{lang.L("Cancel"), func() {}}, answer{lang.L("Replace the file"), func() { s.save(path) }})
}

func (s *saving) save(path string) {
	moved := s.w.carry(path)
	if err := s.w.doc.SaveAs(path); err != nil {
		if moved {
			s.w.doc.Undo()
		}
		s.w.failed(unwritten(path, err))
		return
	}
	s.w.remember(path)
	s.then()
}
