package main

import (
	"io"

	"understructure/app/keep"
	"understructure/app/record"
	"understructure/patterns/keeping"
)

type storage struct {
	Record string `arg:"" help:"The record file."`
	To     string `required:"" placeholder:"FILE.pdf" help:"The file to write."`
}

// Run writes the sheet.
func (v storage) Run(s surroundings) error {
	r, err := record.Load(v.Record)
	if err != nil {
		return err
	}
	p, err := s.shape(s.ctx, r)
	if err != nil {
		return err
	}
	return keep.File(v.To, func(w io.Writer) error { return keeping.Write(w, p) })
}
