package ui

import (
	"path/filepath"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/photo"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/geometry/plane"
	"understructure/geometry/unit"
	"understructure/geometry/view"
)

// photoPlace is where a photograph is laid behind the outline, and its silhouette traced.
type photoPlace struct {
	window *Window
	doc    *document.Document
	at     int // the photograph in hand, counted from 0
	read   map[string]photo.Photo

	list      *widget.Select
	seen      *pick
	length    *control.TextRow
	allowance *control.TextRow
	fade      *widget.Slider
	trace     *widget.Check
	notice    *widget.Label
	proposals *widget.Label
	apply     *widget.Button
	one       fyne.CanvasObject // what there is to set of a photograph
	stand     *control.PhotoStage
	box       fyne.CanvasObject
	room      float64 // of cloth and air outside the mount, each side, mm
}

func newPhotoPlace(w *Window) *photoPlace {
	p := &photoPlace{
		window: w, doc: w.doc, read: map[string]photo.Photo{}, stand: control.NewPhotoStage(),
		notice: widget.NewLabel(""), proposals: widget.NewLabel(""), fade: widget.NewSlider(0, 1),
		length: control.NewTextRow(lang.L("distance"), ""), allowance: control.NewTextRow(lang.L("cloth"), "0"),
	}
	p.list = widget.NewSelect(nil, func(string) { p.take(p.list.SelectedIndex()) })
	p.list.PlaceHolder = lang.L("No photograph yet")
	p.seen = newPick(record.Views, func(word string) {
		p.tell(p.change(func(f *record.Photograph) { f.View = word }))
		p.doc.Settle()
	})
	p.fade.Step = 0.02
	p.fade.OnChanged = func(v float64) { p.tell(p.change(func(f *record.Photograph) { f.Fade = v })) }
	p.fade.OnChangeEnded = func(float64) { p.doc.Settle() }
	p.length.OnChanged, p.length.OnDone = p.setLength, p.doc.Settle
	p.allowance.OnChanged = p.setAllowance
	p.trace = widget.NewCheck(lang.L("Trace the silhouette"), p.stand.Trace)
	p.apply = widget.NewButton(lang.L("Fit the figure to it"), p.fit)
	p.stand.OnMoved, p.stand.OnTraced, p.stand.OnErased, p.stand.OnSettled = p.moved, p.traced, p.erased, p.doc.Settle
	p.layOut()
	return p
}

func (p *photoPlace) name() string             { return "Photograph" }
func (p *photoPlace) side() fyne.CanvasObject  { return p.box }
func (p *photoPlace) stage() fyne.CanvasObject { return p.stand }

func (p *photoPlace) layOut() {
	for _, l := range []*widget.Label{p.notice, p.proposals} {
		l.Wrapping = fyne.TextWrapWord
		small(l)
	}
	advice := widget.NewLabel(lang.L("A photograph of the garment, or of its time, taken from far away and level. Drag the two points to places whose distance you know, one straight above the other; drag the photograph to move it."))
	advice.Wrapping = fyne.TextWrapWord
	small(advice)
	add := widget.NewButton(lang.L("Add…"), p.add)
	remove := widget.NewButton(lang.L("Remove"), p.remove)
	add.Importance, remove.Importance = widget.LowImportance, widget.LowImportance
	fade := container.New(control.ChoiceLayout{}, control.NewName(lang.L("fade")), p.fade)
	p.one = container.NewVBox(pickRow(lang.L("seen from"), p.seen), p.length, fade, control.NewGroup(lang.L("silhouette")), p.trace, p.allowance, p.apply, p.proposals)
	p.box = container.NewVScroll(container.NewVBox(advice, p.list, container.NewHBox(add, remove), p.notice, p.one))
}

// photographs are those of the record.
func (p *photoPlace) photographs() []record.Photograph { return p.doc.Record().Photographs }

// inHand is the photograph that is shown; false for none.
func (p *photoPlace) inHand() (record.Photograph, bool) {
	all := p.photographs()
	if p.at < 0 || p.at >= len(all) {
		return record.Photograph{}, false
	}
	return all[p.at], true
}

func (p *photoPlace) take(i int) {
	if i >= 0 && i != p.at {
		p.at = i
		p.show()
	}
}

// show brings the place to the record and the newest plan.
func (p *photoPlace) show() {
	p.at = min(max(p.at, 0), max(len(p.photographs())-1, 0))
	p.showList()
	f, ok := p.inHand()
	if p.one.Hide(); !ok {
		set(p.notice, "")
		p.stand.Draw(p.window.figure.body, view.From(view.Front, 0), control.Laid{})
		return
	}
	p.one.Show()
	u := p.doc.Record().Unit
	p.seen.show(f.View, "")
	p.length.Say(document.Length.Format(f.Length, u))
	p.fade.Value = f.Fade
	p.fade.Refresh()
	p.draw(f)
	p.propose()
}

func (p *photoPlace) showList() {
	var names []string
	for i, f := range p.photographs() {
		names = append(names, strconv.Itoa(i+1)+"  "+filepath.Base(f.File))
	}
	p.list.Options = names
	selected := ""
	if p.at < len(names) {
		selected = names[p.at]
	}
	if p.list.Selected != selected {
		p.list.Selected = selected
	}
	p.list.Refresh()
}

// viewpoints are from where a photograph of each view is taken.
var viewpoints = map[string]unit.Angle{"front": view.Front, "side": view.LeftSide, "back": view.Back}

func (p *photoPlace) draw(f record.Photograph) {
	laid := control.Laid{Fade: f.Fade, Low: f.Low, High: f.High, Trace: f.Trace}
	if placed, ok := document.Placed(f); ok {
		laid.View, laid.Pixel = placed.View, placed.Pixel
	}
	if picture, ok := p.read[p.path(f)]; ok {
		laid.Image, laid.Shrunk = picture.Sizes[0], picture.Shrunk
		set(p.notice, "")
		if f.SHA256 != "" && f.SHA256 != picture.SHA256 {
			set(p.notice, lang.L("The file is not the one that was traced: its contents have changed."))
		}
	} else {
		p.load(f)
	}
	p.stand.Draw(p.window.figure.body, view.From(viewpoints[f.View], 0), laid)
}

// path is where the file lies: beside the record, where its name is relative.
func (p *photoPlace) path(f record.Photograph) string {
	if filepath.IsAbs(f.File) || p.doc.Path() == "" {
		return f.File
	}
	return filepath.Join(filepath.Dir(p.doc.Path()), filepath.FromSlash(f.File))
}

// load reads the file beside the main thread.
func (p *photoPlace) load(f record.Photograph) {
	path := p.path(f)
	set(p.notice, lang.L("Reading the photograph…"))
	p.reading(path, func(photo.Photo) { p.show() })
}

// reading reads a file once, and goes on with it where it could be read.
func (p *photoPlace) reading(path string, then func(photo.Photo)) {
	post := p.window.options.Rooms.Post
	go func() {
		read, err := photo.Open(path)
		post(func() {
			if err != nil {
				set(p.notice, err.Error())
				return
			}
			p.read[path] = read
			then(read)
		})
	}()
}

func (p *photoPlace) add() {
	d := dialog.NewFileOpen(func(f fyne.URIReadCloser, err error) {
		if err != nil {
			p.window.failed(err)
		}
		if f == nil || err != nil {
			return
		}
		_ = f.Close() // it is read by its path
		p.addFile(f.URI().Path())
	}, p.window.win)
	d.SetFilter(storage.NewExtensionFileFilter([]string{".jpg", ".jpeg", ".png", ".JPG", ".JPEG", ".PNG"}))
	p.window.showFiles(d)
}

// addFile lays a file behind the front of the figure, as high as that.
func (p *photoPlace) addFile(path string) {
	set(p.notice, lang.L("Reading the photograph…"))
	p.reading(path, func(read photo.Photo) {
		body := p.window.figure.body
		w, h := float64(read.Width), float64(read.Height)
		f := record.Photograph{
			View: "front", File: p.relative(path), SHA256: read.SHA256, Fade: 0.3,
			Low: plane.Point{X: w / 2, Y: 0.9 * h}, High: plane.Point{X: w / 2, Y: 0.1 * h},
			Length: max(body.High.Z-body.Low.Z, 100), At: plane.Point{Y: body.Low.Z},
		}
		if err := p.doc.AddPhotograph(f); err != nil {
			p.window.failed(err)
			return
		}
		p.at = len(p.photographs()) - 1
		p.show()
	})
}

// relative is a path as the record keeps it: from its own folder where the file lies in that.
func (p *photoPlace) relative(path string) string {
	if p.doc.Path() == "" {
		return path
	}
	short, err := filepath.Rel(filepath.Dir(p.doc.Path()), path)
	if err != nil || strings.HasPrefix(short, "..") {
		return path
	}
	return filepath.ToSlash(short)
}

func (p *photoPlace) remove() {
	if _, ok := p.inHand(); ok {
		if err := p.doc.RemovePhotograph(p.at); err != nil {
			p.window.failed(err)
		}
	}
}
