// Package document is what is open: one record, the line of its changes, its file, and the
// newest plan computed from it. All methods are for one goroutine, the one that Post leads to.
// It does not draw, and it knows no window and no file format.
package document

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"understructure/app/history"
	"understructure/app/record"
	"understructure/patterns/plan"
)

// Rooms are the doings of other rooms that a document asks for.
type Rooms struct {
	Compute Compute
	Sketch  Compute // the same without what takes long, shown until the whole has come; may be nil
	Load    func(path string) (record.Record, error)
	Save    func(path string, r record.Record) error // whole or not at all
	Draft   func(path string, r record.Record) error // as Save, of a record that need not be whole yet, for safety copies; nil is Save
	Recall  func(path string) (record.Record, error) // reads what Draft wrote; nil is Load
	Post    func(func())                             // runs a function on the document's goroutine, later
	Scratch string                                   // folder for the safety copy of a record without a file; "" keeps none
}

// Document is one open record. Start with New, then Start or Open.
type Document struct {
	Changed  func() // the record, its file or what can be undone has changed
	Computed func() // a plan, or the reason why there is none, has come, or one is being computed
	Failed   func(error)

	rooms   Rooms
	history *history.Of[record.Record]
	path    string
	title   string
	state   state // of the file as this window knows it
	plan    plan.Plan
	err     error
	run     run
	safety  safety
}

// New returns a document with nothing in it.
func New(rooms Rooms) *Document {
	if rooms.Draft == nil {
		rooms.Draft = rooms.Save
	}
	if rooms.Recall == nil {
		rooms.Recall = rooms.Load
	}
	return &Document{
		Changed: func() {}, Computed: func() {}, Failed: func(error) {},
		rooms: rooms, history: history.From(record.Record{}),
		safety: safety{after: func(delay time.Duration, f func()) { time.AfterFunc(delay, f) }, claim: unclaimed()},
	}
}

// Start shows a record that has no file yet, under a title.
func (d *Document) Start(title string, r record.Record) {
	d.begin("", title, r)
}

// Open shows the record of a file. On error what was open stays open.
func (d *Document) Open(path string) error {
	state := stateOf(path)
	r, err := d.rooms.Load(path)
	if err != nil {
		return err
	}
	d.begin(path, "", r)
	d.state = state
	return nil
}

func (d *Document) begin(path, title string, r record.Record) {
	if d.Dirty() {
		d.forgetCopy()
	}
	d.path, d.title, d.state = path, title, ""
	d.claim(false)
	d.history = history.From(r)
	d.plan, d.err = plan.Plan{}, nil
	d.changed()
}

// Record returns the record as it now is; it must not be written to.
func (d *Document) Record() record.Record { return d.history.Now() }

// Path is the record's file, "" when it has none.
func (d *Document) Path() string { return d.path }

// Title is what Start was given; "" for a record with a file.
func (d *Document) Title() string { return d.title }

// Dirty reports whether there is anything that is not in the file.
func (d *Document) Dirty() bool { return !d.history.AtMark() }

// Change takes r as the next step, under a name that the undo menu shows.
func (d *Document) Change(name string, r record.Record) {
	d.history.Push(name, r)
	d.changed()
}

// Set gives one field a value, nil for not taken. Until Settle, setting the same field again
// belongs to the same step.
func (d *Document) Set(f Field, v *float64) {
	if same(f.Get(d.Record()), v) {
		return
	}
	d.history.Amend(f.Label, f.With(d.Record(), v))
	d.changed()
}

// SetUnit changes the unit in which lengths are written, to one of record.Units; no value changes.
func (d *Document) SetUnit(u string) error {
	r := d.Record()
	if !slices.Contains(record.Units, u) {
		return fmt.Errorf("unit %q, want %s", u, strings.Join(record.Units, ", "))
	}
	if r.Unit != u {
		r.Unit = u
		d.Change("unit", r)
	}
	return nil
}

// Settle ends the step that a live change such as Set is in.
func (d *Document) Settle() { d.history.Close() }

// Undo takes the last step back.
func (d *Document) Undo() {
	if d.history.Undo() {
		d.changed()
	}
}

// Redo takes the step again that was last taken back.
func (d *Document) Redo() {
	if d.history.Redo() {
		d.changed()
	}
}

// Undoes names what Undo would take back; false when there is nothing.
func (d *Document) Undoes() (string, bool) { return d.history.Undoes() }

// Redoes names what Redo would take again; false when there is nothing.
func (d *Document) Redoes() (string, bool) { return d.history.Redoes() }

// changed follows a change that the plan depends on.
func (d *Document) changed() {
	d.keepCopy()
	d.compute()
	d.Changed()
}

// noted follows a change that the plan does not depend on.
func (d *Document) noted() {
	d.keepCopy()
	d.Changed()
}

func same(a, b *float64) bool {
	return a == nil && b == nil || a != nil && b != nil && *a == *b
}
