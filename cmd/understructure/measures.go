package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"understructure/app/batch"
	"understructure/app/keep"
	"understructure/app/record"
	tables "understructure/app/table" // a function of this package is named table
)

type measures struct {
	Files   []string `arg:"" optional:"" name:"file" help:"A table to make records of; or records and folders of them to make a table of."`
	To      string   `placeholder:"DIR|FILE.csv" help:"The folder for the records, or the table to write."`
	Blank   string   `placeholder:"FILE.csv" help:"Write an empty table to fill in: every column, where its tape goes, and what is possible."`
	Decimal string   `enum:"point,comma" default:"point" help:"How numbers are written in a table: with a decimal point, and commas between columns; or with a decimal comma, and semicolons. Both are read."`
}

// tableEnding is how the name of a table ends.
const tableEnding = ".csv"

// mostFaults is how many faults of a table are printed.
const mostFaults = 20

// Help is shown by --help.
func (measures) Help() string {
	return "measures FILE.csv --to DIR makes a record of every row. Nothing is written unless every row is possible and none of the files is there yet.\n\n" +
		"measures RECORD… --to FILE.csv makes a row of every record. A table holds what was measured, not how the mount is to be built, nor fittings and photographs.\n\n" +
		"measures --blank FILE.csv writes a table to fill in. One row is one garment; a column is named like the value in a record; " +
		"rows that begin with # are remarks; several readings of one measure stand in one cell with | between them."
}

// Run goes the way that the names of the files say.
func (m measures) Run(s surroundings) error {
	comma := decimal(m.Decimal)
	switch {
	case m.Blank != "" && len(m.Files) == 0 && m.To == "":
		if err := free(m.Blank); err != nil { // a table that somebody has filled in is not lost
			return err
		}
		return keep.File(m.Blank, func(w io.Writer) error { return tables.Blank(w, comma) })
	case m.Blank != "" || len(m.Files) == 0 || m.To == "":
		return errors.New("measures wants a table or records and --to, or --blank alone (see measures --help)")
	case ends(m.To, tableEnding):
		return m.export(s, comma)
	case len(m.Files) == 1 && ends(m.Files[0], tableEnding):
		return m.bring(s)
	}
	return fmt.Errorf("--to: %s is neither a table (%s) nor a folder for the records of one table", m.To, tableEnding)
}

func decimal(word string) tables.Comma { return tables.Comma(word == "comma") }

func ends(path, ending string) bool { return strings.EqualFold(filepath.Ext(path), ending) }

// bring makes records of a table, all or none.
func (m measures) bring(s surroundings) error {
	rows, err := readTable(m.Files[0], s.errs)
	if err != nil {
		return err
	}
	paths := make([]string, len(rows))
	for i, r := range rows {
		paths[i] = filepath.Join(m.To, r.Name+batch.Extension)
		if err := free(paths[i]); err != nil {
			return err
		}
	}
	if err := os.MkdirAll(m.To, 0o755); err != nil {
		return err
	}
	for i, r := range rows {
		if err := s.ctx.Err(); err != nil {
			return exit{stopped, fmt.Sprintf("stopped; %d of %d records were written", i, len(rows))}
		}
		if err := record.SaveDraft(paths[i], r.Record); err != nil {
			return err
		}
	}
	fmt.Fprintf(s.out, "%d records written to %s\n", len(rows), filepath.Clean(m.To))
	return nil
}

// free refuses a path at which something is.
func free(path string) error {
	if _, err := os.Lstat(path); err == nil {
		return fmt.Errorf("%s is there already and is left alone; nothing was written", path)
	}
	return nil
}

// readTable prints every fault of a table in a line of its own.
func readTable(path string, errs io.Writer) ([]tables.Row, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	rows, err := tables.Read(f)
	var faults tables.Faults
	if !errors.As(err, &faults) {
		return rows, err
	}
	for i, fault := range faults {
		if i == mostFaults {
			fmt.Fprintf(errs, "understructure: %s: and %d more\n", path, len(faults)-i)
			break
		}
		complain(errs, path, fault)
	}
	return nil, exit{code: refused}
}

// export makes a table of records; one that cannot be read is named, and the others are written.
func (m measures) export(s surroundings, c tables.Comma) error {
	items, err := batch.Find(m.Files)
	if err != nil {
		return err
	}
	var rows []tables.Row
	for _, it := range items {
		r, err := record.LoadDraft(it.Path)
		if err != nil {
			complain(s.errs, it.Path, err)
			continue
		}
		rows = append(rows, tables.Row{Name: it.Name, Record: r})
	}
	failed := len(items) - len(rows)
	if len(rows) == 0 {
		return exit{code: refused}
	}
	if err := keep.File(m.To, func(w io.Writer) error { return tables.Write(w, rows, c) }); err != nil {
		return err
	}
	fmt.Fprintf(s.out, "%d records written to %s\n", len(rows), m.To)
	if failed > 0 {
		return exit{refused, fmt.Sprintf("%d of %d records failed", failed, len(items))}
	}
	return nil
}
