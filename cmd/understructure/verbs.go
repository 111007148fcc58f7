package main

import (
	"fmt"
	"io"
	"os"
	"runtime"

	"understructure/app/record"
	"understructure/patterns/plan"
)

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
		return exit{noWindow, "there is no display to open a window on; the verbs need none (see --help)"}
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
