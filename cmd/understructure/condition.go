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
	subject, err := v.subject(s)
	if err != nil {
		return err
	}
	return keep.File(v.To, func(w io.Writer) error { return condition.Write(w, subject) })
}

// subject is the garment of the record. One of which too little was taken for a figure has a blank outline.
func (v conditionSheet) subject(s surroundings) (condition.Subject, error) {
	blank := condition.Blank(measure.Wearer(v.Wearer))
	if v.Record == "" {
		return blank, nil
	}
	r, err := record.LoadDraft(v.Record)
	if err != nil {
		return blank, err
	}
	if v.Wearer == "" {
		blank = condition.Blank(r.Object.Wearer)
	}
	blank.Number, blank.Title = r.Object.Number, r.Object.Title
	if r, err = record.Load(v.Record); err != nil {
		return blank, nil // it is a draft
	}
	p, err := s.shape(s.ctx, r)
	return condition.Of(p), err
}
