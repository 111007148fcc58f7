package main

import (
	"io"

	"understructure/app/keep"
	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/patterns/condition"
)

type conditionSheet struct {
	Record string `arg:"" optional:"" help:"The record whose garment is drawn; without one the sheet is blank."`
	To     string `required:"" placeholder:"FILE.pdf" help:"The file to write."`
	Wearer string `enum:",woman,man,child" default:"" placeholder:"WEARER" help:"Whom the outline of a blank sheet is of: woman, man or child."`
}

// Run writes the sheet.
func (v conditionSheet) Run(s surroundings) error {
	subject := condition.Blank(measure.Wearer(v.Wearer))
	if v.Record != "" {
		r, err := record.Load(v.Record)
		if err != nil {
			return err
		}
		p, err := s.shape(s.ctx, r)
		if err != nil {
			return err
		}
		subject = condition.Of(p)
	}
	return keep.File(v.To, func(w io.Writer) error { return condition.Write(w, subject) })
}
