package ui

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"understructure/app/folder"
	"understructure/app/record"
)

func TestAnExportRemembersItsFolder(t *testing.T) {
	b := newPrintBench(t)
	if b.lastExport() != nil {
		t.Error("a folder is remembered before there was an export")
	}
	dir := t.TempDir()
	b.app.Preferences().SetString(exportKey, dir)
	if last := b.lastExport(); last == nil || last.Path() != dir {
		t.Errorf("remembered %v, want %s", last, dir)
	}
	b.app.Preferences().SetString(exportKey, filepath.Join(dir, "gone"))
	if b.lastExport() != nil {
		t.Error("a folder that is gone is offered")
	}
}

// Cancelling takes the dialog away at once, however long what is at work needs to notice.
func TestCancelDoesNotWait(t *testing.T) {
	b := newPrintBench(t)
	gate, dir := make(chan struct{}), filepath.Join(t.TempDir(), "templates")
	b.options.Export = func(ctx context.Context, r record.Record, to string, _ Progress) error {
		<-gate // deaf to ctx
		p, err := pieced(ctx, r)
		if err == nil {
			err = folder.Write(ctx, to, p, func(float64) {})
		}
		b.exited <- err
		return err
	}
	b.exportTo(dir)
	b.press("Cancel")
	if b.win.Canvas().Overlays().Top() != nil {
		t.Error("the dialog stays")
	}
	close(gate)
	if err := <-b.exited; !errors.Is(err, context.Canceled) {
		t.Errorf("the export ended with %v", err)
	}
	for range 50 {
		select {
		case f := <-b.posts:
			f()
		case <-time.After(10 * time.Millisecond):
		}
	}
	if top := b.win.Canvas().Overlays().Top(); top != nil {
		t.Error("something is said of an export that was called off")
	}
	if _, err := os.Stat(dir); err == nil {
		t.Error("a cancelled export left a folder")
	}
}

func TestAnExportWritesEverything(t *testing.T) {
	b := newPrintBench(t)
	dir := filepath.Join(t.TempDir(), "templates")
	b.exportTo(dir)
	b.until("the end", func() bool { return says(b.win.Canvas().Overlays().Top(), dir) })
	for _, name := range []string{"plan.json", "templates.pdf", "record.pdf", "materials.csv", "svg/W01-front.svg"} {
		if _, err := os.Stat(filepath.Join(dir, name)); err != nil {
			t.Error(err)
		}
	}
}

func TestWhatStoppedAnExportIsSaidInWords(t *testing.T) {
	for reason := range advice("/somewhere") {
		b := newPrintBench(t)
		b.options.Export = func(context.Context, record.Record, string, Progress) error {
			return &folder.Refusal{Dir: "/somewhere", Reason: reason, Err: errors.New("system")}
		}
		b.exportTo("/somewhere")
		b.until("the reason", func() bool { return says(b.win.Canvas().Overlays().Top(), "/somewhere") })
	}
	other := errors.New("anything else")
	if inWords(other) != other {
		t.Error("what is not known is put into other words")
	}
}
