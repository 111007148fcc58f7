// Package pipeline is the arrow from a record to a mount, as one function: measurements to
// figure, figure to padding or slices, these to pieces and to the fit.
// It does not read or write files.
package pipeline

import (
	"context"
	"fmt"

	"understructure/app/fitting"
	"understructure/app/record"
	"understructure/geometry/cover"
	"understructure/geometry/measure"
	"understructure/patterns/draft"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// Progress is told what is being done and how much of the whole is done, from 0 to 1. It
// may be nil.
type Progress func(stage string, done float64)

// Run computes the mount of a record. It stops early with the context's error when ctx
// ends; any other error names a reading with which no mount can be made, or is a *Fault.
func Run(ctx context.Context, r record.Record, progress func(stage string, done float64)) (p plan.Plan, err error) {
	defer confess(&err)
	tell := func(stage string, done float64) error {
		if progress != nil {
			progress(stage, done)
		}
		return ctx.Err()
	}
	if err := tell("figure", 0); err != nil {
		return plan.Plan{}, err
	}
	j, seen, err := made(ctx, r, tell)
	if err != nil {
		return plan.Plan{}, err
	}
	if err := tell("supports", 0.85); err != nil {
		return plan.Plan{}, err
	}
	if err := j.support(ctx); err != nil {
		return plan.Plan{}, err
	}
	if err := tell("fit", 0.95); err != nil {
		return plan.Plan{}, err
	}
	p = seen.Mark(j.plan())
	return p, tell("done", 1)
}

// Shape is Run without the pieces and what is summed up from them: the surface, the levels and
// what is to be known of the fit, in a fraction of the time.
func Shape(ctx context.Context, r record.Record) (p plan.Plan, err error) {
	defer confess(&err)
	j, seen, err := start(r, nil)
	if err != nil {
		return plan.Plan{}, err
	}
	if err := ctx.Err(); err != nil {
		return plan.Plan{}, err
	}
	if err := j.build(); err != nil {
		return plan.Plan{}, err
	}
	return seen.Mark(j.plan()), ctx.Err()
}

// start makes the job of a record as its fittings leave it, with a figure that is smaller where it is to be spared.
func start(r record.Record, spare spared) (*job, fitting.Applied, error) {
	seen := fitting.Apply(r)
	j, err := newJob(seen.Record, spare)
	if err == nil {
		j.notices = append(j.notices, seen.Notices...)
	}
	return j, seen, err
}

// build makes the mount, by padding or by slices, and hangs on it what has a shape of its own.
func (j *job) build() error {
	mount := j.pad
	if j.record.Mount.Build == "slices" {
		mount = j.stack
	}
	if err := mount(); err != nil {
		return err
	}
	j.hang()
	j.fill()
	return nil
}

// cut draws the pieces.
func (j *job) cut(ctx context.Context) error {
	lines := j.lines()
	pieces, err := draft.Wadding(ctx, j.mount, j.zones(), lines)
	if err != nil {
		return fmt.Errorf("pipeline: %w", err)
	}
	if j.slices != nil {
		pieces = append(draft.Slices(j.slices, j.stock.Plank.Thickness, j.stock.Plank.Pole, lines), pieces...)
	}
	j.pieces = pieces
	if j.stock.Cover == 0 {
		return nil
	}
	panels, err := draft.Cover(ctx, j.cover(lines), j.mount.Symmetric(), 1+lastLayer(pieces), lines)
	if err != nil {
		return fmt.Errorf("pipeline: %w", err)
	}
	j.pieces = append(j.pieces, panels...)
	return nil
}

// cover is drawn over the mount from hip to neck base, with a row at every level marked.
func (j *job) cover(lines []draft.Line) cover.Cover {
	var levels []float64
	for _, l := range lines {
		levels = append(levels, l.Height)
	}
	b := j.bands()
	return cover.Over(j.mount.Built, j.stock.Cover, b.Hip, b.Neck, levels...)
}

// lastLayer is the number of the wadding laid last, 0 where there is none.
func lastLayer(pieces []piece.Piece) int {
	last := 0
	for _, p := range pieces {
		if isWadding(p) {
			last = max(last, p.Layer)
		}
	}
	return last
}

// lines are the levels marked on pieces.
func (j *job) lines() []draft.Line {
	var out []draft.Line
	for _, l := range j.garment.Levels {
		if l.Name != measure.NeckBase && l.Name != measure.Hip {
			out = append(out, draft.Line{Name: string(l.Name), Height: l.Height})
		}
	}
	return out
}
