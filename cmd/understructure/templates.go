package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"understructure/app/batch"
	"understructure/app/folder"
	"understructure/app/record"
	"understructure/patterns/plan"
)

type templates struct {
	Records []string `arg:"" name:"record" help:"The record files, or folders of them."`
	To      string   `required:"" placeholder:"DIR" help:"The folder to write into; it is made where it does not exist."`
}

// Help is shown by --help.
func (templates) Help() string {
	return "Writes plan.json, templates.pdf, cutting.pdf, record.pdf, materials.csv, storage.pdf, condition.pdf, svg and dxf (one piece a file), and the mount and what holds the skirt as bodies: both in mount.obj, each in mount.stl and skirt-support.stl.\n\n" +
		"One record goes into DIR itself. Several, or a folder of them, go into DIR/NAME each, where NAME is the name of the record's file; " +
		"one that fails does not stop the others, and a table says what became of each.\n\n" +
		"Templates are written even where the garment would strain, and that is said: they may show where to squeeze or cut the form. " +
		"Exit status: 0 all written; 2 refused, or at least one record failed; 130 stopped. What is stopped or fails leaves its folder as it was."
}

// Run writes one record into the folder, or many below it.
func (t templates) Run(s surroundings) error {
	if len(t.Records) == 1 && !isFolder(t.Records[0]) {
		return t.one(s)
	}
	return t.many(s)
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// one writes everything even where the garment would strain, and says so.
func (t templates) one(s surroundings) error {
	p, err := s.write(s.ctx, t.Records[0], t.To, s.progress)
	if err != nil {
		return err
	}
	s.progress("", 1)
	fmt.Fprintf(s.out, "%d pieces written to %s\n", len(p.Pieces), filepath.Clean(t.To))
	warn(s.out, p)
	return nil
}

// write computes a record and writes what is made from it.
func (s surroundings) write(ctx context.Context, path, to string, progress func(string, float64)) (plan.Plan, error) {
	r, err := record.Load(path)
	if err != nil {
		return plan.Plan{}, err
	}
	p, err := s.compute(ctx, r, progress)
	if err != nil {
		return plan.Plan{}, err
	}
	return p, folder.Write(ctx, to, p, func(f float64) { progress("writing", f) })
}

func (t templates) many(s surroundings) error {
	items, err := batch.Find(t.Records)
	if err != nil {
		return err
	}
	do := func(ctx context.Context, it batch.Item) (batch.Made, error) {
		p, err := s.write(ctx, it.Path, filepath.Join(t.To, it.Name), func(string, float64) {})
		return batch.Made{Pieces: len(p.Pieces), Strains: p.Strains()}, err
	}
	outcomes := batch.Run(s.ctx, items, do, func(done, failed int) {
		s.progress(fmt.Sprintf("%d of %d records, %d failed,", done, len(items), failed), float64(done)/float64(len(items)))
	})
	s.progress("", 1)
	return sumUp(s, outcomes)
}

// sumUp prints a line for every record on the one side and a sentence for every failure on the other.
func sumUp(s surroundings, outcomes []batch.Outcome) error {
	rows := [][]string{{"record", "pieces", "outcome"}}
	written, failed, off := 0, 0, 0
	for _, o := range outcomes {
		switch {
		case errors.Is(o.Err, context.Canceled):
			off++
			rows = append(rows, []string{o.Name, "–", "stopped"})
		case o.Err != nil:
			failed++
			rows = append(rows, []string{o.Name, "–", "failed"})
			complain(s.errs, o.Path, o.Err)
		default:
			written++
			rows = append(rows, []string{o.Name, fmt.Sprint(o.Pieces), outcome(o.Strains)})
		}
	}
	align(s.out, rows)
	fmt.Fprintf(s.out, "\n%d of %d records written\n", written, len(outcomes))
	switch {
	case off > 0:
		return exit{stopped, fmt.Sprintf("stopped; %d of %d records were not written", off+failed, len(outcomes))}
	case failed > 0:
		return exit{refused, fmt.Sprintf("%d of %d records failed", failed, len(outcomes))}
	}
	return nil
}

func outcome(strains bool) string {
	if strains {
		return "written; the garment would strain"
	}
	return "written"
}

// complain says in one line what is wrong with a file, by name.
func complain(w io.Writer, path string, err error) {
	text := err.Error()
	if !strings.Contains(text, path) {
		text = path + ": " + text
	}
	fmt.Fprintln(w, "understructure: "+text)
}
