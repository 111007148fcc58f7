package ui

import (
	"errors"
	"image"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"

	"understructure/app/photo"
	"understructure/app/record"
)

// developed is a photograph as it was read, or why it cannot be: a picture for the easel, with more to it.
type developed struct {
	image.Image
	photo photo.Photo
	err   error
}

// developed is the photograph of a record as it was read; false while it is being read.
func (p *photoPlace) developed(f record.Photograph) (developed, bool) { return p.read(p.path(f)) }

// read reads a file off the window's goroutine, the last few of them once; false until it has come.
func (p *photoPlace) read(path string) (developed, bool) {
	img := p.reader.picture(path, func() image.Image {
		read, err := photo.Open(path)
		return developed{photo: read, err: err}
	}, p.arrived)
	if img == nil {
		return developed{}, false
	}
	return img.(developed), true
}

// arrived follows a file that was read: those that are to be added are, in the order in which they were named.
func (p *photoPlace) arrived() {
	p.follow()
	for len(p.adding) > 0 {
		read, ok := p.read(p.adding[0])
		if !ok {
			break
		}
		path := p.adding[0]
		p.adding = p.adding[1:]
		p.added(path, read)
	}
	p.show()
}

// addFile adds a photograph to the record, if it is one.
func (p *photoPlace) addFile(path string) {
	p.adding = append(p.adding, path)
	p.arrived()
}

// added lays a photograph that was read behind the first view of the figure that has none.
func (p *photoPlace) added(path string, read developed) {
	if read.err != nil {
		p.window.failed(read.err)
		return
	}
	f := record.Photograph{View: record.Views[0], File: relative(p.doc.Path(), path), SHA256: read.photo.SHA256, Fade: 0.3}
	for _, v := range record.Views {
		if !slices.ContainsFunc(p.photographs(), func(other record.Photograph) bool { return other.View == v }) {
			f.View = v
			break
		}
	}
	p.guess(&f, read.photo)
	if err := p.doc.AddPhotograph(f); err != nil {
		p.window.failed(err)
		return
	}
	p.open(len(p.photographs()) - 1)
}

// showState says what is being read, and what is wrong with the photograph in hand.
func (p *photoPlace) showState(s developed, read bool) {
	f, ok := p.inHand()
	busy := len(p.adding) > 0 || ok && !read
	work(p.busy, busy)
	text, changed := "", ok && read && s.err == nil && f.SHA256 != "" && f.SHA256 != s.photo.SHA256
	switch {
	case ok && !read:
		text = lang.L("Reading {{.Name}} …", map[string]any{"Name": filepath.Base(p.path(f))})
	case ok && errors.Is(s.err, fs.ErrNotExist):
		text = lang.L("{{.File}} is not there.", map[string]any{"File": p.path(f)})
	case ok && s.err != nil:
		text = s.err.Error()
	case changed:
		text = lang.L("The photograph is not the one that was traced: its file has changed.")
	}
	set(p.notice, text)
	visible(p.notice, text != "")
	visible(p.find, ok && read && (s.err != nil || changed))
	visible(p.keep, changed)
}

// trust takes a file that has changed for the right one.
func (p *photoPlace) trust() {
	f, _ := p.inHand()
	if s, read := p.developed(f); read && s.err == nil {
		p.step(func(f *record.Photograph) { f.SHA256 = s.photo.SHA256 })
	}
}

// choose asks which photograph to add.
func (p *photoPlace) choose() { p.ask(p.addFile) }

// refind asks where the file of the photograph in hand is now.
func (p *photoPlace) refind() {
	p.ask(func(path string) {
		p.step(func(f *record.Photograph) { f.File = relative(p.doc.Path(), path) })
	})
}

func (p *photoPlace) ask(then func(path string)) {
	d := dialog.NewFileOpen(func(f fyne.URIReadCloser, err error) {
		if err != nil {
			p.window.failed(err)
		}
		if f == nil || err != nil {
			return
		}
		_ = f.Close() // it is read by its path
		then(f.URI().Path())
	}, p.window.win)
	d.SetFilter(storage.NewExtensionFileFilter([]string{".jpg", ".jpeg", ".png", ".JPG", ".JPEG", ".PNG"}))
	p.window.showFiles(d)
}

// remove takes a photograph out of the record.
func (p *photoPlace) remove(i int) {
	p.stand.Trace(false)
	if err := p.doc.RemovePhotograph(i); err != nil {
		p.window.failed(err)
	}
}

// path is where the file lies: from the record's folder where its path is relative.
func (p *photoPlace) path(f record.Photograph) string { return absolute(p.doc.Path(), f.File) }

func absolute(of, file string) string {
	file = filepath.FromSlash(file)
	if filepath.IsAbs(file) || of == "" {
		return file
	}
	return filepath.Join(filepath.Dir(of), file)
}

// relative is a path as the record of that file keeps it: from its own folder where it lies below that.
func relative(of, path string) string {
	if of == "" {
		return path
	}
	short, err := filepath.Rel(filepath.Dir(of), path)
	if err != nil || short == ".." || strings.HasPrefix(short, ".."+string(filepath.Separator)) {
		return path
	}
	return filepath.ToSlash(short)
}

// carry writes the paths of the photographs as a record in another file keeps them, and reports whether any changed.
func (w *Window) carry(to string) bool {
	r := w.doc.Record()
	r.Photographs = slices.Clone(r.Photographs)
	moved := false
	for i := range r.Photographs {
		f := &r.Photographs[i].File
		now := relative(to, absolute(w.doc.Path(), *f))
		moved = moved || now != *f
		*f = now
	}
	if moved {
		w.doc.Change("paths of the photographs", r)
	}
	return moved
}
