package main

import (
	"fmt"
	"io"
	"strings"

	"understructure/app/keep"
	"understructure/app/record"
	"understructure/patterns/sheet"
	"understructure/patterns/testpage"
)

type testPage struct {
	To    string `required:"" placeholder:"FILE.pdf" help:"The file to write."`
	Paper string `default:"A4" placeholder:"PAPER" help:"What the page is printed on, such as A4, Letter or roll-914."`
}

// Run writes the page.
func (p testPage) Run(surroundings) error {
	paper, known := sheet.Named(p.Paper)
	if !known {
		return fmt.Errorf("--paper: %q is not a paper; allowed %s", p.Paper, strings.Join(record.Papers, ", "))
	}
	return keep.File(p.To, func(w io.Writer) error { return testpage.Write(w, paper) })
}
