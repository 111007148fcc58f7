package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"

	"understructure/app/folder"
	"understructure/app/keep"
	"understructure/app/record"
	"understructure/patterns/plan"
	"understructure/patterns/report"
)

type templates struct {
	Record string `arg:"" help:"The record file."`
	To     string `required:"" placeholder:"DIR" help:"The folder to write into; it is made where it does not exist."`
}

// Run writes everything even where the garment would strain, and says so: the templates may
// be what shows where to squeeze or cut the form.
func (t templates) Run(s surroundings) error {
	r, err := record.Load(t.Record)
	if err != nil {
		return err
	}
	p, err := s.compute(s.ctx, r, s.progress)
	if err != nil {
		return err
	}
	if err := folder.Write(s.ctx, t.To, p, func(f float64) { s.progress("writing", f) }); err != nil {
		return err
	}
	s.progress("", 1)
	fmt.Fprintf(s.out, "%d pieces written to %s\n", len(p.Pieces), filepath.Clean(t.To))
	warn(s.out, p)
	return nil
}

type fit struct {
	Record string `arg:"" help:"The record file."`
}

// Run prints the table, and says by its exit code whether anything would strain.
func (f fit) Run(s surroundings) error {
	r, err := record.Load(f.Record)
	if err != nil {
		return err
	}
	p, err := s.shape(s.ctx, r)
	if err != nil {
		return err
	}
	table(s.out, p, r.Unit)
	warn(s.out, p)
	if p.Strains() {
		return exit{code: wouldStrain}
	}
	return nil
}

type measuringSheet struct {
	To string `required:"" placeholder:"FILE.pdf" help:"The file to write."`
}

func (m measuringSheet) Run(surroundings) error {
	return keep.File(m.To, report.MeasuringSheet)
}

type showVersion struct{}

func (showVersion) Run(s surroundings) error {
	_, err := fmt.Fprintln(s.out, "understructure", version)
	return err
}

type window struct {
	Record string `arg:"" optional:"" help:"The record file to open."`
}

func (w window) Run(surroundings) error {
	if runtime.GOOS == "linux" && os.Getenv("DISPLAY") == "" && os.Getenv("WAYLAND_DISPLAY") == "" {
		return exit{noWindow, "there is no display to open a window on; the verbs templates, fit and measuring-sheet need none (see --help)"}
	}
	return openWindow(w.Record)
}

// warn prints what the maker should know, one sentence a line.
func warn(w io.Writer, p plan.Plan) {
	if len(p.Warnings) == 0 {
		return
	}
	fmt.Fprintln(w)
	for _, note := range p.Warnings {
		if note.Level != "" {
			fmt.Fprintf(w, "%s: ", note.Level)
		}
		fmt.Fprintln(w, note.Message)
	}
}
