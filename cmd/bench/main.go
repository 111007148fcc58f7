// Command bench times the program against libraries of other makes, and against the times that it is to
// keep on its own. It takes the folder in which the references were built; see testdata/reference.
//
// Both sides work on the same input and in turn, round after round, and of each side the least processor
// time counts, so that whatever else the machine does shows as little as can be. Processor time is
// that of all cores together.
package main

import (
	"fmt"
	"os"
	"text/tabwriter"
)

// rounds is how often the two sides take their turn.
const rounds = 5

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "bench: name the folder of the references")
		os.Exit(2)
	}
	if err := compare(os.Args[1]); err != nil {
		fmt.Fprintln(os.Stderr, "bench:", err)
		os.Exit(1)
	}
}

func compare(folder string) error {
	w, err := newWork(folder)
	if err != nil {
		return err
	}
	t := tabwriter.NewWriter(os.Stdout, 0, 0, 2, ' ', 0)
	fmt.Fprintln(t, "what\tours, ms\treference, ms\tratio\tgoal\t")
	for _, r := range w.rows() {
		if err := r.race(t); err != nil {
			return fmt.Errorf("%s: %w", r.what, err)
		}
	}
	if err := t.Flush(); err != nil {
		return err
	}
	fmt.Printf("\nLeast processor time of %d rounds in turn, all cores together. The machine's load was %s.\n", rounds, load())
	for _, n := range w.notes {
		fmt.Println(n)
	}
	return nil
}
