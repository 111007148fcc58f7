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

// The exit codes. Everything that is neither done nor strained is refused.
const (
	done         = 0
	noWindow     = 1
	refused      = 2
	wouldStrain  = 3
	version      = "0.1.0"
	introduction = "Computes the understructure of a historic garment from tape measurements: what a mount must be so that the garment fits it without strain. Without a verb it opens the window."
)

// verbs is the command line.
type verbs struct {
	Templates      templates      `cmd:"" help:"Write every piece, sheet and list for one record."`
	Fit            fit            `cmd:"" help:"Print the fit table; exit status 3 if anything would strain."`
	MeasuringSheet measuringSheet `cmd:"" help:"Write the blank sheet to take to the store room."`
	Version        showVersion    `cmd:"" help:"Print the version."`
	Window         window         `cmd:"" default:"withargs" hidden:""`
}

// surroundings is what a verb may use of the world.
type surroundings struct {
	ctx      context.Context
	out      io.Writer
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
	defer stop()
	os.Exit(run(os.Args[1:], surroundings{ctx, os.Stdout, progressOn(os.Stderr), pipeline.Run, pipeline.Shape}, os.Stderr))
}

// run does what the arguments say and returns the exit code.
func run(args []string, s surroundings, stderr io.Writer) int {
	helped := false
	parser := kong.Must(&verbs{}, kong.Name("understructure"), kong.Description(introduction),
		kong.Writers(s.out, stderr), kong.Exit(func(int) { helped = true }))
	todo, err := parser.Parse(args)
	if helped {
		return done
	}
	if err == nil {
		err = todo.Run(s)
	}
	s.progress("", 1)
	return code(err, stderr)
}

func code(err error, stderr io.Writer) int {
	if err == nil {
		return done
	}
	var e exit
	if !errors.As(err, &e) {
		e = exit{refused, err.Error()}
	}
	if e.message != "" {
		fmt.Fprintln(stderr, "understructure: "+e.message)
	}
	return e.code
}
