package main

import (
	"fmt"
	"os"
	"time"
)

// patience is how long work may take before its progress is shown.
const patience = 500 * time.Millisecond

// progressOn returns a function that shows stage and share done on one line of a terminal, once
// the work has lasted a while. An empty stage clears the line. Off a terminal nothing is shown.
func progressOn(f *os.File) func(stage string, fraction float64) {
	info, err := f.Stat()
	if err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return func(string, float64) {}
	}
	start, shown := time.Now(), false
	return func(stage string, fraction float64) {
		const clear = "\r\x1b[K"
		switch {
		case stage == "" && shown:
			fmt.Fprint(f, clear)
			start, shown = time.Now(), false
		case stage != "" && time.Since(start) > patience:
			fmt.Fprintf(f, "%s%s %.0f %%", clear, stage, 100*fraction)
			shown = true
		}
	}
}
