// Package batch does the same for many records: it finds them, works on as many at a time as there are
// processors, goes on where one fails, and sums up what became of each.
// It does not know what is done, and it keeps nothing of it.
package batch

import (
	"context"
	"fmt"
	"runtime"
)

// Made is what is worth saying of a record that was done.
type Made struct {
	Pieces  int
	Strains bool // the garment would strain on this mount
}

// Outcome is what became of a record: Made, or why it failed. One that was not begun before the work was
// called off has the context's error.
type Outcome struct {
	Item
	Made
	Err error
}

// Run does every record and returns what became of each, in the order of the items. tell hears after each
// how many are done and how many of those failed. A panic is that record's failure, not the end of the rest.
func Run(ctx context.Context, items []Item, do func(context.Context, Item) (Made, error), tell func(done, failed int)) []Outcome {
	out := make([]Outcome, len(items))
	for i, it := range items {
		out[i] = Outcome{Item: it, Err: context.Canceled}
	}
	done, failed := 0, 0
	work := func(i int) Outcome {
		made, err := guarded(ctx, items[i], do)
		return Outcome{items[i], made, err}
	}
	Each(ctx, len(items), runtime.GOMAXPROCS(0), work, func(i int, o Outcome) {
		out[i] = o
		done++
		if o.Err != nil {
			failed++
		}
		tell(done, failed)
	})
	return out
}

func guarded(ctx context.Context, it Item, do func(context.Context, Item) (Made, error)) (made Made, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("%s: a fault of this program: %v; please report it with the record", it.Path, p)
		}
	}()
	return do(ctx, it)
}
