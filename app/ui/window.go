// Package ui is the window: it shows an open document and passes on what a person does to it.
// It does not compute anything.
package ui

import (
	"context"
	"errors"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/look"
	"understructure/geometry/measure"
	"understructure/geometry/torso"
)

// Progress tells how far a piece of work has come: what is being done, and the fraction, 0 to 1.
type Progress func(stage string, fraction float64)

// Demo is a record that comes with the program.
type Demo struct {
	Title  string
	Record record.Record
}

// Options are what a window is made from.
type Options struct {
	Version, Licences string                                   // of the program, and of what it is built with
	Rooms             document.Rooms                           // Post may be nil: the toolkit's is taken
	File              string                                   // the record to begin with; "" for the first demo
	Demos             []Demo                                   // at least one
	Figure            func(record.Record) (torso.Torso, error) // the garment's figure alone; nil: it cannot be shaped by hand
	Export            func(ctx context.Context, r record.Record, folder string, progress Progress) error
	Lay               Lay // nil: how well planks and rolls are used is not said
}

// errNoFigure is why nothing can be shaped by hand in a window that was given no Figure.
var errNoFigure = errors.New("this window cannot shape a figure")

// Window is the program's one window.
type Window struct {
	app     fyne.App
	win     fyne.Window
	options Options
	doc     *document.Document

	menu   *menus
	head   *head
	places *places
	figure *figure
	status *status
	ask    bool // a question is on the screen
}

// New makes a window with a record in it.
func New(a fyne.App, o Options) *Window {
	if o.Rooms.Post == nil {
		o.Rooms.Post = fyne.Do
	}
	if o.Figure == nil {
		o.Figure = func(record.Record) (torso.Torso, error) { return torso.Torso{}, errNoFigure }
	}
	w := &Window{app: a, win: a.NewWindow("Understructure"), options: o, doc: document.New(o.Rooms)}
	a.Settings().SetTheme(look.New(w.appearance()))
	w.head, w.figure, w.status = newHead(), newFigure(w.doc, o.Figure), newStatus(w.export)
	w.places = newPlaces(w.figure.box, newMeasurePlace(w.doc), newShapePlace(w), newBuildPlace(w), newSkirtPlace(w.doc), newSleevePlace(w.doc), newSheetsPlace(w), newFittingPlace(w), newPhotoPlace(w))
	w.status.onOpen, w.figure.onLevel = w.showNotices, w.places.show
	w.menu = newMenus(w)
	w.doc.Changed, w.doc.Computed, w.doc.Failed = w.changed, w.computed, w.failed
	w.win.SetContent(w.content())
	w.win.SetMainMenu(w.menu.main)
	w.win.SetCloseIntercept(func() { w.leave(w.close) })
	w.win.SetOnDropped(w.dropped)
	w.win.Resize(fyne.NewSize(1280, 700))
	w.begin()
	return w
}

// begin shows the file, or where there is none that can be read the first demo.
func (w *Window) begin() {
	if w.options.File != "" {
		err := w.open(w.options.File)
		if err == nil {
			return
		}
		w.failed(err)
	}
	w.start(w.options.Demos[0])
	w.offerRecovery()
}

// ShowAndRun shows the window until it is closed.
func (w *Window) ShowAndRun() { w.win.ShowAndRun() }

// content puts the head and the row of places over the chosen place and its stage, and the status below.
func (w *Window) content() fyne.CanvasObject {
	top := container.NewBorder(nil, widget.NewSeparator(), nil, nil, container.New(topRow{}, w.head.box, w.places.bar))
	foot := container.NewVBox(widget.NewSeparator(), w.status.box)
	return container.NewBorder(top, foot, nil, nil, container.New(twoColumns{}, w.places.left, w.places.stage))
}

// Open shows the record of a file, or says why it cannot.
func (w *Window) Open(path string) {
	if err := w.open(path); err != nil {
		w.failed(err)
	}
}

func (w *Window) open(path string) error {
	if err := w.doc.Open(path); err != nil {
		return err
	}
	w.remember(path)
	w.offerRecovery()
	return nil
}

// blank begins a record in which nothing is taken yet, in the unit of the one before.
func (w *Window) blank() {
	w.start(Demo{lang.L("New record"), record.Record{
		Unit:   w.doc.Record().Unit,
		Object: record.Object{Wearer: measure.Woman},
		Mount:  record.Mount{Build: record.Builds[1]},
	}})
}

func (w *Window) start(d Demo) { w.doc.Start(d.Title, d.Record) }

// name is what the open record is called.
func (w *Window) name() string {
	if p := w.doc.Path(); p != "" {
		return filepath.Base(p)
	}
	return w.doc.Title()
}

func (w *Window) changed() {
	title := w.name() + " – Understructure"
	if w.doc.Dirty() {
		title = "• " + title
	}
	w.win.SetTitle(title)
	w.menu.show(w.doc)
	w.head.show(w.doc.Record())
	w.places.show()
}

func (w *Window) computed() {
	p, err := w.doc.Plan()
	w.status.show(p, err, w.doc.Busy(), w.doc.Record())
	w.figure.show(p, w.doc.Record().Unit)
	w.places.show()
}

func (w *Window) failed(err error) {
	d := dialog.NewError(err, w.win)
	d.Show()
	w.onEscape(d.Hide)
}

func (w *Window) close() {
	w.doc.Close()
	w.win.SetCloseIntercept(nil)
	w.win.Close()
}
