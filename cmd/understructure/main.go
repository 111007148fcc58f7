// Command understructure computes the understructure of a historic garment and writes its templates.
// Without a verb it opens the window.
// It does not compute anything itself: package pipeline does.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"

	"github.com/alecthomas/kong"

	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/patterns/plan"
)

// The exit codes. Everything that is neither done nor strained nor stopped is refused.
const (
	done        = 0
	noWindow    = 1
	refused     = 2 // also where one of many records failed
	wouldStrain = 3
	stopped     = 130 // 128 and the number of the interrupt, as shells have it
)

const (
	version      = "0.1.0"
	introduction = "Computes the understructure of a historic garment from tape measurements: what a mount must be so that the garment fits it without strain. Without a verb it opens the window.\n\n" +
		"Exit status: 0 done; 1 no window; 2 something was refused or failed; 3 a garment would strain; 130 stopped."
)

// verbs is the command line.
type verbs struct {
	Templates      templates      `cmd:"" help:"Write every piece, sheet and list for one record or for many."`
	Fit            fit            `cmd:"" help:"Print the fit table; exit status 3 if anything would strain."`
	Match          match          `cmd:"" help:"Say which form in store serves which garment with the least padding."`
	Measures       measures       `cmd:"" help:"Bring measurements from a spreadsheet into records, or out of them."`
	MeasuringSheet measuringSheet `cmd:"" help:"Write the blank sheet to take to the store room."`
	Condition      conditionSheet `cmd:"" help:"Write the condition sheet of a garment, or a blank one: its outline under a grid, terms for damage, and a table to fill in."`
	Storage        storage        `cmd:"" help:"Write the storage sheet: the box in which a garment lies with the fewest folds, where they lie, the pads in them."`
	TestPage       testPage       `cmd:"" help:"Write a page that shows whether a printer prints true to size, and how to correct it."`
	Version        showVersion    `cmd:"" help:"Print the version."`
	Licences       showLicences   `cmd:"" help:"Print the licences of what the program is built with."`
	Window         window         `cmd:"" default:"withargs" hidden:""`
}

// surroundings is what a verb may use of the world.
type surroundings struct {
	ctx      context.Context
	out      io.Writer
	errs     io.Writer
	progress func(stage string, fraction float64)
	compute  func(context.Context, record.Record, func(string, float64)) (plan.Plan, error)
	shape    func(context.Context, record.Record) (plan.Plan, error) // the same without the pieces
}

// exit is an error that says its own code.
type exit struct {
	code    int
	message string // "" where everything has been said
}

func (e exit) Error() string { return e.message }

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	context.AfterFunc(ctx, stop) // whoever interrupts a second time does not want to wait
	os.Exit(run(os.Args[1:], surroundings{ctx, os.Stdout, os.Stderr, progressOn(os.Stderr), pipeline.Whole, pipeline.Shape}))
}

// run does what the arguments say and returns the exit code.
func run(args []string, s surroundings) int {
	s.out, s.errs = visible{s.out}, visible{s.errs}
	helped := false
	parser := kong.Must(&verbs{}, kong.Name("understructure"), kong.Description(introduction),
		kong.Writers(s.out, s.errs), kong.Exit(func(int) { helped = true }))
	todo, err := parser.Parse(args)
	if helped {
		return done
	}
	if err == nil {
		err = todo.Run(s)
	}
	s.progress("", 1)
	return code(err, s.errs)
}

func code(err error, stderr io.Writer) int {
	if err == nil {
		return done
	}
	var e exit
	switch {
	case errors.As(err, &e):
	case errors.Is(err, context.Canceled):
		e = exit{stopped, "stopped; nothing was written"}
	default:
		e = exit{refused, err.Error()}
	}
	if e.message != "" {
		fmt.Fprintln(stderr, "understructure: "+e.message)
	}
	return e.code
}
