package document

import (
	"context"

	"understructure/app/record"
	"understructure/patterns/plan"
)

// Compute makes the plan of a record; it returns early, with an error, when ctx ends.
type Compute func(ctx context.Context, r record.Record) (plan.Plan, error)

// run is the newest computation: its number, how to stop it, and when it is over.
type run struct {
	number int
	cancel context.CancelFunc
	over   chan struct{}
	busy   bool
}

// compute starts the newest run. The one before is told to stop, and the new one waits for
// that, so that at most one is at work however fast one types.
func (d *Document) compute() {
	before := d.run
	if before.cancel != nil {
		before.cancel()
	}
	ctx, cancel := context.WithCancel(context.Background())
	d.run = run{number: before.number + 1, cancel: cancel, over: make(chan struct{}), busy: true}
	go d.work(ctx, before.over, d.run, d.Record())
	d.Computed()
}

func (d *Document) work(ctx context.Context, before <-chan struct{}, now run, r record.Record) {
	defer close(now.over)
	if before != nil {
		<-before
	}
	if ctx.Err() != nil {
		return
	}
	if d.rooms.Sketch != nil {
		p, err := d.rooms.Sketch(ctx, r)
		d.report(ctx, now, p, err, err == nil)
		if err != nil {
			return
		}
	}
	p, err := d.rooms.Compute(ctx, r)
	d.report(ctx, now, p, err, false)
}

// report hands a result over, unless the run was told to stop.
func (d *Document) report(ctx context.Context, from run, p plan.Plan, err error, more bool) {
	if ctx.Err() == nil {
		d.rooms.Post(func() { d.take(from, p, err, more) })
	}
}

// take shows a result unless a newer run has begun since. A failed run leaves the last plan to look at.
func (d *Document) take(from run, p plan.Plan, err error, more bool) {
	if from.number != d.run.number {
		return
	}
	if d.run.busy = more; !more {
		d.run.cancel()
	}
	d.err = err
	if err == nil {
		d.plan = p
	}
	d.Computed()
}

// Plan returns the last plan, and why there is no newer one.
func (d *Document) Plan() (plan.Plan, error) { return d.plan, d.err }

// Busy reports whether a newer plan is on its way.
func (d *Document) Busy() bool { return d.run.busy }

// Close stops computing and forgets the safety copy: whoever closes has been asked what to do
// with unsaved changes.
func (d *Document) Close() {
	if d.run.cancel != nil {
		d.run.cancel()
	}
	d.run.number++
	if d.safety.kept { // what an earlier window left stays for the next
		d.forgetCopy()
	}
	d.safety.claim.release()
	d.safety.claim = unclaimed()
}
