package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"understructure/app/keep"
	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/patterns/report"
)

type measuringSheet struct {
	Record string   `arg:"" optional:"" help:"A record whose number, title, unit and wearer are filled in; it may be incomplete."`
	To     string   `required:"" placeholder:"FILE.pdf" help:"The file to write."`
	Parts  []string `default:"bodice,skirt,sleeve" placeholder:"PARTS" help:"What to ask for, with commas between: bodice, skirt, sleeve, form. The bodice is always asked for."`
	Wearer string   `enum:",woman,man,child" default:"" placeholder:"WEARER" help:"Whom the drawings are of: woman, man or child."`
	Unit   string   `enum:",mm,cm,in" default:"" placeholder:"UNIT" help:"The unit that is ticked: mm, cm or in."`
}

// parts are those that a sheet can ask for.
var parts = []string{"bodice", "skirt", "sleeve", "form"}

// Run writes the sheet. What is asked for on the line outweighs the record.
func (m measuringSheet) Run(surroundings) error {
	for _, p := range m.Parts {
		if !slices.Contains(parts, p) {
			return fmt.Errorf("--parts: %q is not a part; allowed %s", p, strings.Join(parts, ", "))
		}
	}
	asked := report.Asked{
		Skirt: slices.Contains(m.Parts, "skirt"), Sleeve: slices.Contains(m.Parts, "sleeve"), Form: slices.Contains(m.Parts, "form"),
		Wearer: measure.Wearer(m.Wearer), Unit: m.Unit,
	}
	if m.Record != "" {
		r, err := record.LoadDraft(m.Record)
		if err != nil {
			return err
		}
		asked.Number, asked.Title = r.Object.Number, r.Object.Title
		if asked.Unit == "" {
			asked.Unit = r.Unit
		}
		if asked.Wearer == "" {
			asked.Wearer = r.Object.Wearer
		}
	}
	return keep.File(m.To, func(w io.Writer) error { return report.MeasuringSheetFor(w, asked) })
}
