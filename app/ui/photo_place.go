package ui

import (
	"path/filepath"
	"reflect"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
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
	of     openRecord
	from   record.Record // as it was shown last
	reader *easel
	adding []string // files that are added to the record once they are read

	outside float64         // what lies over the figure, each side, mm
	ticks   map[string]bool // what a person ticked or unticked, by level

	list             *control.LogList
	add              *widget.Button
	busy             *widget.Activity
	notice           *widget.Label
	find, keep       *widget.Button
	seen             *pick
	length, height   *lengthRow
	fade             *widget.Slider
	scale            *control.Fold
	trace, clear     *widget.Button
	hint             *widget.Label
	cloth            *lengthRow
	head             *widget.Label
	changes          *control.ProposalList
	apply            *widget.Button
	advice, one, fit fyne.CanvasObject // what is said without a photograph, what there is to set of one, what it proposes
	stand            *control.PhotoStage
	box              fyne.CanvasObject
}

// mostPhotos is how many photographs are kept as they were read: some 20 MB each.
const mostPhotos = 4

func newPhotoPlace(w *Window) *photoPlace {
	p := &photoPlace{window: w, doc: w.doc, reader: newEasel(w.options.Rooms.Post, mostPhotos), ticks: map[string]bool{}}
	p.build()
	p.listen()
	return p
}

func (p *photoPlace) name() string             { return "Photograph" }
func (p *photoPlace) side() fyne.CanvasObject  { return p.box }
func (p *photoPlace) stage() fyne.CanvasObject { return p.stand }

// photographing goes to the photographs.
func (w *Window) photographing() *photoPlace {
	w.places.goTo("Photograph")
	return w.places.all[w.places.chosen].(*photoPlace)
}

// photographs are those of the record.
func (p *photoPlace) photographs() []record.Photograph { return p.doc.Record().Photographs }

// inHand is the photograph that is shown, laid somewhere even where the record does not say; false for none.
func (p *photoPlace) inHand() (record.Photograph, bool) {
	all := p.photographs()
	if p.at < 0 || p.at >= len(all) {
		return record.Photograph{}, false
	}
	f := all[p.at]
	if _, ok := document.Placed(f); !ok {
		shown, _ := p.developed(f)
		p.guess(&f, shown.photo)
	}
	return f, true
}

// guess lays a photograph so that what is on it is about as high as the figure.
func (p *photoPlace) guess(f *record.Photograph, shown photo.Photo) {
	low, high := 0.0, 1000.0
	if body := p.window.figure.body; !body.Empty() {
		low, high = body.Low.Z, body.High.Z
	}
	w, h := float64(max(shown.Width, 10)), float64(max(shown.Height, 10))
	f.Low, f.High = tenth(plane.Point{X: w / 2, Y: 0.9 * h}), tenth(plane.Point{X: w / 2, Y: 0.1 * h})
	f.Length, f.At = max(100, float64(int(high-low)/10*10)), tenth(plane.Point{Y: low})
}

// open shows another photograph.
func (p *photoPlace) open(i int) {
	p.hold(i)
	p.show()
}

// hold takes a photograph in hand.
func (p *photoPlace) hold(i int) {
	p.at, p.ticks = i, map[string]bool{}
	p.stand.Trace(false)
	if f, ok := p.inHand(); ok {
		p.scale.Fold(len(f.Trace) > 0) // which was scaled before
	}
}

// follow lets go of what belongs to a record that is no longer open. A record that was merely saved under another
// name is the same.
func (p *photoPlace) follow() {
	now, r := opened(p.doc), p.doc.Record()
	other := now != p.of && !reflect.DeepEqual(r, p.from)
	p.of, p.from = now, r
	if other {
		p.adding = nil
		p.hold(0)
	}
}

// viewpoints are from where a photograph of each view is taken.
var viewpoints = map[string]unit.Angle{"front": view.Front, "side": view.LeftSide, "back": view.Back}

// show brings the place to the record and the newest plan.
func (p *photoPlace) show() {
	p.follow()
	p.at = max(0, min(p.at, len(p.photographs())-1))
	p.showList()
	f, ok := p.inHand()
	pl, _ := p.doc.Plan()
	var marks []control.Mark
	for _, l := range pl.Levels {
		marks = append(marks, control.Mark{Name: l.Name, Height: l.Height})
	}
	p.stand.Figure(p.window.figure.body, view.From(viewpoints[f.View], 0), marks, rules[p.doc.Record().Unit])
	visible(p.one, ok)
	visible(p.advice, !ok)
	if !ok {
		p.showState(developed{}, false)
		p.stand.Lay(control.Laid{})
		return
	}
	p.showOne(f)
}

// showList lists the photographs.
func (p *photoPlace) showList() {
	var names []string
	for i, f := range p.photographs() {
		names = append(names, strconv.Itoa(i+1)+"  "+filepath.Base(filepath.FromSlash(f.File))+" · "+lang.L(f.View))
	}
	p.list.Fill(names, p.at)
}

// showOne shows the photograph in hand and what can be set of it.
func (p *photoPlace) showOne(f record.Photograph) {
	r := p.doc.Record()
	shown, read := p.developed(f)
	p.showState(shown, read)
	p.seen.show(f.View, "")
	p.length.show(f.Length, r.Unit)
	p.height.show(f.At.Y, r.Unit)
	p.cloth.show(p.outside, r.Unit)
	if p.fade.Value != f.Fade {
		p.fade.Value = f.Fade
		p.fade.Refresh()
	}
	all, err := p.proposals(f)
	laid := control.Laid{
		Sizes: shown.photo.Sizes, Shrunk: shown.photo.Shrunk, Fade: f.Fade, Low: f.Low, High: f.High, Trace: f.Trace,
		Apart: length(&f.Length, r.Unit) + " " + r.Unit,
	}
	if placed, ok := document.Placed(f); ok {
		laid.Placing = placed
	}
	for _, x := range all {
		if p.stand.Tracing() {
			break // one would not see the outline for the lines
		}
		laid.Widths = append(laid.Widths, control.Width{Height: x.Height, Left: x.Left, Right: x.Right})
	}
	p.stand.Lay(laid)
	p.showTrace(f, all, err)
}
