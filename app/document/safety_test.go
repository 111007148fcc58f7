package document

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"understructure/app/record"
	"understructure/geometry/measure"
)

// copied waits until the safety copy is on disk.
func (d *desk) copied(t *testing.T) {
	t.Helper()
	for len(d.wrote) == 0 {
		select {
		case f := <-d.posts:
			f()
		case path := <-d.wrote:
			d.wrote <- path
		}
	}
	<-d.wrote
	d.safety.disk.Lock() // the copy is wholly written before this is ours
	defer d.safety.disk.Unlock()
}

// killed leaves the copy, and lets go of it as the system does.
func (d *desk) killed() { d.safety.claim.release() }

// atOnce is for tests that do not wait.
func atOnce(_ time.Duration, f func()) { f() }

// Nobody is made to wait longer for a copy by going on working: the first change sets the clock,
// those that follow go into the same copy, and the next after it sets the clock again.
func TestGoingOnWorkingDoesNotPutTheCopyOff(t *testing.T) {
	d := newDesk(t, echo)
	var clock []func()
	d.safety.after = func(delay time.Duration, f func()) {
		if delay <= 0 || delay > time.Second {
			t.Errorf("a change waits for %v, and the writing still needs its time", delay)
		}
		clock = append(clock, f)
	}
	d.Start("demo", dress())
	waist := field(t, dress(), "garment.bodice.waist_girth")
	for round := range 3 {
		for i := range 10 {
			d.Set(waist, mm(float64(600+10*round+i)))
		}
		if len(clock) != round+1 {
			t.Fatalf("ten changes set the clock %d times", len(clock)-round)
		}
		clock[round]()
		d.copied(t)
		if got := d.files[d.copyPath()].Garment.Bodice[measure.WaistGirth]; got != float64(609+10*round) {
			t.Errorf("copied %v, want the last, %d", got, 609+10*round)
		}
	}
}

func TestWorkThatIsNotYetWholeIsCopiedToo(t *testing.T) {
	var drafts []record.Record
	wrote := make(chan bool, 10)
	d := New(Rooms{
		Compute: echo,
		Save:    func(string, record.Record) error { return &record.Refusal{Message: "must be given"} },
		Draft: func(_ string, r record.Record) error {
			drafts = append(drafts, r)
			wrote <- true
			return nil
		},
		Recall:  func(string) (record.Record, error) { return drafts[len(drafts)-1], nil },
		Post:    func(f func()) {},
		Scratch: t.TempDir(),
	})
	t.Cleanup(d.Close)
	d.Start("new", record.Record{Unit: "cm"})
	d.Set(field(t, dress(), "garment.bodice.hip_girth"), mm(900))
	d.copyNow()
	<-wrote
	if err := d.Recover(); err != nil || d.Record().Garment.Bodice[measure.HipGirth] != 900 {
		t.Errorf("recovered %+v, %v", d.Record(), err)
	}
}

func TestUnsavedWorkIsCopiedAndRecovered(t *testing.T) {
	d := newDesk(t, echo)
	d.safety.after = atOnce
	path := filepath.Join(t.TempDir(), "dress.json")
	d.files[path] = dress()
	waist := field(t, dress(), "garment.bodice.waist_girth")
	if err := d.Open(path); err != nil {
		t.Fatal(err)
	}
	if _, ok := d.Left(); ok {
		t.Fatal("a file without unsaved work has some left behind")
	}
	d.Set(waist, mm(600))
	d.copied(t)

	d.killed()
	after := newDesk(t, echo)
	after.files = d.files
	if err := after.Open(path); err != nil {
		t.Fatal(err)
	}
	if when, ok := after.Left(); !ok || when.IsZero() {
		t.Fatal("the unsaved work is not found again")
	}
	if err := after.Recover(); err != nil || *waist.Get(after.Record()) != 600 || !after.Dirty() {
		t.Errorf("recovered %v, %v, dirty %v; want 600, unsaved", *waist.Get(after.Record()), err, after.Dirty())
	}
	after.Undo()
	if got := *waist.Get(after.Record()); got != 580 {
		t.Errorf("undo after recovery leads to %v, want what is in the file, 580", got)
	}
	after.Discard()
	if _, ok := after.Left(); ok {
		t.Error("discarded work is still there")
	}
}

func TestASaveRemovesTheCopyAndTheCopyThatWasStillToCome(t *testing.T) {
	d := newDesk(t, echo)
	d.safety.after = atOnce
	path := filepath.Join(t.TempDir(), "dress.json")
	d.Start("demo", dress())
	untitled := d.copyPath()
	d.Set(field(t, dress(), "garment.bodice.waist_girth"), mm(600))
	d.copied(t)
	if _, err := os.Stat(untitled); err != nil {
		t.Fatalf("work without a file is not copied: %v", err)
	}
	late := d.safety.number
	if err := d.SaveAs(path); err != nil {
		t.Fatal(err)
	}
	d.write(late, untitled, d.Record())
	if _, err := os.Stat(untitled); err == nil {
		t.Error("the copy is still there, or came back, after the save")
	}
}

func TestUndoingEverythingRemovesTheCopy(t *testing.T) {
	d := newDesk(t, echo)
	d.safety.after = atOnce
	d.Start("demo", dress())
	d.Set(field(t, dress(), "garment.bodice.waist_girth"), mm(600))
	d.copied(t)
	d.Undo()
	for d.safety.kept {
		d.next(t)
	}
	if _, err := os.Stat(d.copyPath()); err == nil {
		t.Error("there is a copy of work that was undone")
	}
}

func TestARecordThatIsNotYetWholeIsNoFailure(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	d.computed(t)
	said := 0
	d.Failed = func(error) { said++ }
	for _, c := range []struct {
		refuse error
		want   int
	}{{&record.Refusal{Path: "form.bodice.bust_girth", Message: "must be given"}, 0}, {errors.New("the disk is full"), 1}, {errors.New("the disk is full"), 1}, {nil, 1}, {errors.New("the disk is full"), 2}} {
		d.refuse = c.refuse
		d.write(d.safety.number, d.copyPath(), d.Record())
		for len(d.posts) > 0 {
			d.next(t)
		}
		if said != c.want {
			t.Errorf("%v: told %d times, want %d", c.refuse, said, c.want)
		}
	}
}

func TestWhatEveryMountNeedsCannotBeTakenOut(t *testing.T) {
	for path, ok := range map[string]bool{"garment.bodice.waist_girth": false, "garment.bodice.hip_girth": true, "garment.skirt.waist_girth": true} {
		if _, err := field(t, dress(), path).Read("", "cm"); (err == nil) != ok {
			t.Errorf("%s may be empty: %v, want %v", path, err == nil, ok)
		}
	}
}

// The first window has the copy with the plain name; a second neither sees it as left behind nor writes to it, and
// what either leaves when it is killed is found.
func TestTwoWindowsOnOneFileKeepACopyEach(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dress.json")
	waist := field(t, dress(), "garment.bodice.waist_girth")
	open := func() *desk {
		d := newDesk(t, echo)
		d.safety.after = atOnce
		d.files[path] = dress()
		if err := d.Open(path); err != nil {
			t.Fatal(err)
		}
		return d
	}
	first := open()
	first.Set(waist, mm(600))
	first.copied(t)
	second := open()
	if _, ok := second.Left(); ok {
		t.Fatal("the work of a window that lives is offered to another")
	}
	second.Set(waist, mm(610))
	second.copied(t)
	if first.copyPath() == second.copyPath() {
		t.Fatalf("both windows write %s", first.copyPath())
	}
	second.killed()
	if third := open(); third.copyPath() != second.copyPath() {
		t.Errorf("a third window does not find what the second left, but has %s", third.copyPath())
	}
	if _, err := os.Stat(first.copyPath()); err != nil {
		t.Errorf("the first window's copy: %v", err)
	}
}

// Who closes the window before deciding is asked again the next time.
func TestClosingLeavesWhatWasLeftBehind(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dress.json")
	if err := os.WriteFile(CopyPath(path), nil, 0o600); err != nil {
		t.Fatal(err)
	}
	d := newDesk(t, echo)
	d.files[path] = dress()
	if err := d.Open(path); err != nil {
		t.Fatal(err)
	}
	d.Close()
	if _, err := os.Stat(CopyPath(path)); err != nil {
		t.Errorf("the work that was left behind: %v", err)
	}
}

func TestPostponedWorkIsNotWrittenOver(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dress.json")
	if err := os.WriteFile(CopyPath(path), []byte("left behind"), 0o600); err != nil {
		t.Fatal(err)
	}
	d := newDesk(t, echo)
	d.safety.after = atOnce
	d.files[path] = dress()
	if err := d.Open(path); err != nil {
		t.Fatal(err)
	}
	d.Postpone()
	if _, ok := d.Left(); ok {
		t.Error("what was put off is offered again at once")
	}
	d.Set(field(t, dress(), "garment.bodice.waist_girth"), mm(600))
	d.copied(t)
	if text, err := os.ReadFile(CopyPath(path)); string(text) != "left behind" {
		t.Errorf("the work that was put off is now %q, %v", text, err)
	}
	d.Close()
	again := newDesk(t, echo)
	again.files[path] = dress()
	if err := again.Open(path); err != nil {
		t.Fatal(err)
	}
	if _, ok := again.Left(); !ok {
		t.Error("what was put off is not offered the next time")
	}
}
