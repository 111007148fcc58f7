package document

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"time"

	"understructure/app/record"
)

// SafetyDelay is how long a change waits to be copied, together with those that follow it. A
// second is left for the writing, so that a crash costs no more than the last two.
const SafetyDelay = time.Second

// safety keeps a copy of unsaved work beside the file. The number counts the copies that were
// asked for or forgotten, so that a copy asked for before a save is not written after it.
type safety struct {
	after   func(time.Duration, func()) // time.AfterFunc
	waiting bool
	kept    bool // there is a copy, or will be
	disk    sync.Mutex
	number  int  // guarded by disk
	failing bool // the last copy could not be written; guarded by disk
	claim   claim
}

// copyPath is where this window's safety copy lies; "" where none is kept.
func (d *Document) copyPath() string { return d.safety.claim.path }

// claim takes a safety copy of the file that is open now, and gives up the one before; fresh, one without work left behind.
func (d *Document) claim(fresh bool) {
	d.safety.disk.Lock()
	defer d.safety.disk.Unlock()
	d.safety.number++ // what is still to be written belongs to the one before
	d.safety.claim.release()
	d.safety.kept, d.safety.failing = false, false
	switch {
	case d.path != "":
		d.safety.claim = claimed(d.path, fresh)
	case d.rooms.Scratch != "":
		d.safety.claim = claimed(filepath.Join(d.rooms.Scratch, "untitled.json"), fresh)
	default:
		d.safety.claim = unclaimed()
	}
}

// keepCopy sees to it that the record is copied within the delay; further changes until then
// go into the same copy.
func (d *Document) keepCopy() {
	needed := d.Dirty() || d.safety.kept
	if !needed || d.safety.waiting || d.copyPath() == "" {
		return
	}
	d.safety.waiting = true
	d.safety.after(SafetyDelay, func() { d.rooms.Post(d.copyNow) })
}

func (d *Document) copyNow() {
	d.safety.waiting = false
	if !d.Dirty() { // undone
		d.forgetCopy()
		return
	}
	d.safety.kept = true
	d.safety.disk.Lock()
	d.safety.number++
	number := d.safety.number
	d.safety.disk.Unlock()
	go d.write(number, d.copyPath(), d.Record())
}

func (d *Document) write(number int, path string, r record.Record) {
	d.safety.disk.Lock()
	defer d.safety.disk.Unlock()
	if number != d.safety.number {
		return
	}
	err := d.rooms.Draft(path, r)
	var unfinished *record.Refusal // something that a record needs is still to be typed
	if failed := err != nil && !errors.As(err, &unfinished); failed != d.safety.failing {
		d.safety.failing = failed
		if failed { // said once, not at every key
			d.rooms.Post(func() { d.Failed(fmt.Errorf("unsaved work cannot be copied for safety: %w", err)) })
		}
	}
}

// forgetCopy removes the safety copy and drops those still to be written.
func (d *Document) forgetCopy() {
	path := d.copyPath()
	if path == "" {
		return
	}
	d.safety.disk.Lock()
	defer d.safety.disk.Unlock()
	d.safety.number++
	d.safety.kept = false
	if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		d.rooms.Post(func() { d.Failed(err) })
	}
}

// Left tells of unsaved work that an earlier run of the program left behind for the file that is
// open, and when it was written.
func (d *Document) Left() (written time.Time, ok bool) {
	info, err := os.Stat(d.copyPath())
	if err != nil || !info.Mode().IsRegular() {
		return time.Time{}, false
	}
	return info.ModTime(), true
}

// Recover takes the work that was left behind as a step of its own, so that undo leads back to the file.
func (d *Document) Recover() error {
	r, err := d.rooms.Recall(d.copyPath())
	if err != nil {
		return err
	}
	d.Change("recovered work", r)
	return nil
}

// Postpone leaves the work that was left behind where it is, for another time.
func (d *Document) Postpone() { d.claim(true) }

// Discard throws away the work that was left behind.
func (d *Document) Discard() { d.forgetCopy() }
