package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"strings"
	"syscall"
	"time"
)

// row is one line of the table.
type row struct {
	what string
	ours func() error
	// theirs runs the reference once and returns its processor time in ms; nil where the goal is a time.
	theirs func() (float64, error)
	goal   float64 // ours over theirs, or ms; 0 where the row is for information
}

// race lets both sides run in turn and writes the row.
func (r row) race(out io.Writer) error {
	ours, theirs := math.Inf(1), math.Inf(1)
	for range rounds {
		ms, err := quickest(r.ours)
		if err != nil {
			return err
		}
		ours = min(ours, ms)
		if r.theirs == nil {
			continue
		}
		switch ms, err := r.theirs(); {
		case errors.Is(err, fs.ErrNotExist):
			theirs = math.NaN()
		case err != nil:
			return err
		default:
			theirs = min(theirs, ms)
		}
	}
	_, err := fmt.Fprintln(out, r.line(ours, theirs))
	return err
}

func (r row) line(ours, theirs float64) string {
	switch {
	case r.theirs == nil:
		return fmt.Sprintf("%s\t%.1f\t\t\t%.0f ms\t%s", r.what, ours, r.goal, verdict(ours <= r.goal))
	case math.IsNaN(theirs):
		return fmt.Sprintf("%s\t%.1f\tnot built\t\t%.2f\t", r.what, ours, r.goal)
	case r.goal == 0:
		return fmt.Sprintf("%s\t%.1f\t%.1f\t%.2f\t\t", r.what, ours, theirs, ours/theirs)
	}
	return fmt.Sprintf("%s\t%.1f\t%.1f\t%.2f\t%.2f\t%s", r.what, ours, theirs, ours/theirs, r.goal, verdict(ours/theirs <= r.goal))
}

func verdict(met bool) string {
	if met {
		return "met"
	}
	return "not met"
}

// quickest repeats the work for a fifth of a second, at least once, and returns the least processor time in ms.
func quickest(work func() error) (float64, error) {
	least := math.Inf(1)
	for end := time.Now().Add(200 * time.Millisecond); ; {
		before := processor()
		if err := work(); err != nil {
			return 0, err
		}
		least = min(least, float64(processor()-before)/float64(time.Millisecond))
		if time.Now().After(end) {
			return least, nil
		}
	}
}

// processor is the time that all processors together have spent on this program.
func processor() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err) // the kernel knows no other answer for these arguments
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// load is how many programs wanted a processor in the last minute, as the kernel says.
func load() string {
	b, err := os.ReadFile("/proc/loadavg")
	if err != nil {
		return "not known"
	}
	now, _, _ := strings.Cut(string(b), " ")
	return now
}
