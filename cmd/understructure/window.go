//go:build cgo

package main

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"understructure/app/document"
	"understructure/app/folder"
	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/app/ui"
	_ "understructure/app/ui/localeenv" // before the toolkit looks at the language
	"understructure/app/ui/words"
	"understructure/assets"
	"understructure/patterns/plan"
)

// openWindow shows the window until it is closed, with the record of a file or, without one, a demonstration.
func openWindow(path string) error {
	if path != "" {
		if _, err := record.LoadDraft(path); err != nil {
			return err
		}
	}
	demos, err := demonstrations()
	if err != nil {
		return err
	}
	if err := words.Load(); err != nil {
		return err
	}
	a := app.NewWithID("museum.understructure")
	a.SetIcon(fyne.NewStaticResource("icon.png", assets.Icon))
	w, err := newWindow(a, ui.Options{
		Version: version, Licences: assets.Licences,
		Rooms:  document.Rooms{Compute: compute, Sketch: pipeline.Shape, Load: record.LoadDraft, Save: record.SaveDraft, Scratch: scratch()},
		File:   path,
		Demos:  demos,
		Figure: pipeline.Figure,
		Export: export,
		Lay:    pipeline.Lay,
	})
	if err != nil {
		return err
	}
	w.ShowAndRun()
	return nil
}

// newWindow makes the window. The toolkit panics where the display that the environment names does not answer.
func newWindow(a fyne.App, o ui.Options) (w *ui.Window, err error) {
	defer func() {
		switch p := recover(); {
		case p == nil:
		case strings.Contains(fmt.Sprint(p), "GLFW library is not initialized"):
			err = exit{noWindow, "the display does not answer; the verbs templates, fit and measuring-sheet need none (see --help)"}
		default:
			panic(p)
		}
	}()
	return ui.New(a, o), nil
}

func compute(ctx context.Context, r record.Record) (plan.Plan, error) {
	return pipeline.Run(ctx, r, nil)
}

// export does what the verb templates does; computing counts for four fifths of the whole.
func export(ctx context.Context, r record.Record, to string, progress ui.Progress) error {
	const computing = 0.8
	p, err := pipeline.Whole(ctx, r, func(stage string, done float64) { progress(stage, computing*done) })
	if err != nil {
		return err
	}
	return folder.Write(ctx, to, p, func(done float64) { progress("writing", computing+(1-computing)*done) })
}

// demonstrations are the records that come with the program, the first one first.
func demonstrations() ([]ui.Demo, error) {
	names, err := fs.Glob(assets.Demos, "*.json")
	if err != nil {
		return nil, err
	}
	demos := make([]ui.Demo, 0, len(names))
	for _, name := range names {
		r, err := demonstration(name)
		if err != nil {
			return nil, err
		}
		d := ui.Demo{Title: r.Object.Title, Record: r}
		if name == assets.First {
			demos = append([]ui.Demo{d}, demos...)
			continue
		}
		demos = append(demos, d)
	}
	return demos, nil
}

func demonstration(name string) (record.Record, error) {
	f, err := assets.Demos.Open(name)
	if err != nil {
		return record.Record{}, err
	}
	defer f.Close()
	return record.Decode(f)
}

// scratch is the folder for the safety copy of a record that has no file; "" where there is none.
func scratch() string {
	cache, err := os.UserCacheDir()
	if err != nil {
		return ""
	}
	dir := filepath.Join(cache, "understructure")
	if os.MkdirAll(dir, 0o700) != nil {
		return ""
	}
	return dir
}
