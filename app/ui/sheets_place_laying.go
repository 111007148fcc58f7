package ui

import (
	"context"

	"understructure/app/folder"
	"understructure/patterns/plan"
	"understructure/patterns/preview"
	"understructure/patterns/sheet"
)

// laying lays pages off the window's goroutine. Only the newest counts; those before are told to stop.
type laying struct {
	post   func(func())
	number int
	cancel context.CancelFunc
	busy   bool
	share  float64 // of the work that is done
}

// laid are the pages of a plan, and what share of each is cut out.
type laid struct {
	pages  []sheet.Page
	shares []float64
	err    error
}

// begin lays the pages of a plan; done follows, unless this is stopped, and before it now and then progress.
func (l *laying) begin(p plan.Plan, progress func(), done func(laid)) {
	l.stop()
	ctx, cancel := context.WithCancel(context.Background())
	now := l.number
	l.cancel, l.busy, l.share = cancel, true, 0
	tell := func(share float64) {
		l.post(func() {
			if now == l.number {
				l.share = share
				progress()
			}
		})
	}
	go func() {
		defer cancel()
		out := lay(ctx, p, tell)
		l.post(func() {
			if now == l.number {
				l.busy = false
				done(out)
			}
		})
	}()
}

// stop gives up what is being laid.
func (l *laying) stop() {
	if l.cancel != nil {
		l.cancel()
	}
	l.number++
	l.busy = false
}

func lay(ctx context.Context, p plan.Plan, progress func(float64)) laid {
	pages, err := folder.Pages(ctx, p, progress)
	out := laid{pages: pages, err: err}
	for _, pg := range pages {
		out.shares = append(out.shares, preview.Covered(pg))
	}
	return out
}

// share is what part of all the paper is cut out.
func (l laid) share() float64 {
	cut, paper := 0.0, 0.0
	for i, pg := range l.pages {
		cut += l.shares[i] * pg.Width * pg.Height
		paper += pg.Width * pg.Height
	}
	if paper == 0 {
		return 0
	}
	return cut / paper
}

// pageOf is the number of the first page that a piece, or the one that serves for it turned over, is on; -1 where it is on none.
func (l laid) pageOf(id string) int {
	for i, pg := range l.pages {
		for _, it := range pg.Items {
			if it.Piece.ID == id || it.Twin == id {
				return i
			}
		}
	}
	return -1
}
