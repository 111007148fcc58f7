// Package cutting lays the pieces of a plan on what they are cut from: slices on planks and offcuts, wadding and cloth on
// rolls; and draws where each lies, to scale, for whoever cuts.
//
// Slices lie on the thinnest foam that they can be cut from, offcuts first. Cloth and wadding lie in a strip as wide as the
// roll, and as short as may be. What is too large for every stock is named and left out. The same plan gives the same layouts.
// It does not know records, prices or weights.
package cutting

import (
	"context"
	"fmt"
	"math"
	"strings"

	"understructure/geometry/plane"
	"understructure/geometry/unit"
	"understructure/patterns/nest"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// Plank is a size of foam, mm. Offcuts are used first, from the smallest, planks in the order given.
type Plank struct {
	Stock                    string // what it is called
	Thickness, Length, Width float64
	Count                    int  // how many there are; 0 for as many as are wanted
	Offcut                   bool // of which there is at least one
}

// Roll is cloth or wadding off a roll.
type Roll struct {
	Stock    string // what it is called
	Material string // of the pieces and the cuts that come from it
	Width    float64
	Lie      Lie
}

// Lie is how pieces may lie on a roll.
type Lie int

// What has no grain may be turned by quarters, what has a grain lies along it, either way up, and what has a nap lies one way.
const (
	AnyQuarter Lie = iota
	AlongGrain
	WithNap
)

// Stock is all that can be cut from.
type Stock struct {
	Planks []Plank
	Rolls  []Roll
}

// Cuts are laid apart by the room that a tool needs, mm (common practice, no published source): a knife or hot wire in foam,
// scissors in cloth.
const (
	foamGap  = 5.0
	clothGap = 2.0
)

// effort is how many places are tried for one material: some tenths of a second.
const effort = 1_000_000

// many pieces make each place dear to try: for more than so many fewer are tried, of simpler outlines.
const many = 40

// Unlaid is a piece, or a cut, that is larger than all that it could be cut from, or for which none is left.
type Unlaid struct{ Piece, Material string }

// Lay lays the pieces of a plan, and of its cuts those that are rectangles of a material off a roll. progress is told
// the share that is done, and may be nil. It fails when ctx ends, or where an outline is none.
func Lay(ctx context.Context, p plan.Plan, s Stock, progress func(done float64)) ([]plan.Layout, []Unlaid, error) {
	l := &layer{ctx: ctx, progress: progress, parts: float64(1 + len(s.Rolls))}
	if err := l.foam(ofFoam(p.Pieces), s.Planks); err != nil {
		return nil, nil, err
	}
	for i, r := range s.Rolls {
		l.done = float64(1 + i)
		if err := l.roll(r, p); err != nil {
			return nil, nil, err
		}
	}
	return l.layouts, l.unlaid, nil
}

// ofFoam are the pieces that are cut from planks.
func ofFoam(all []piece.Piece) []piece.Piece {
	var out []piece.Piece
	for _, p := range all {
		if strings.HasPrefix(p.Material, "plank ") {
			out = append(out, p)
		}
	}
	return out
}

// layer gathers layouts.
type layer struct {
	ctx         context.Context
	progress    func(float64)
	done, parts float64 // materials laid, and all
	layouts     []plan.Layout
	unlaid      []Unlaid
}

// options makes pieces ready to be laid, and says how.
func (l *layer) options(gap float64, pieces []nest.Piece) nest.Options {
	items := 0
	for _, p := range pieces {
		items += p.Count
	}
	for i, p := range pieces {
		if items > many {
			p.Outline = plain(p.Outline)
		}
		pieces[i].Outline = p.Outline.Map(rounded)
	}
	o := nest.Options{Gap: gap, Slack: nest.MostSlack, Effort: effort * many / max(many, items)}
	if l.progress != nil {
		before := l.done
		o.Progress = func(done float64) { l.progress((before + done) / l.parts) }
	}
	return o
}

// ended wants a layout that was worked out to its end, since one that was broken off depends on the clock.
func (l *layer) ended(laid nest.Layout, err error) error {
	switch {
	case err != nil:
		return fmt.Errorf("cutting: %w", err)
	case laid.Stopped:
		return fmt.Errorf("cutting: %w", context.Cause(l.ctx))
	}
	return nil
}

// fits reports whether a piece goes into a rectangle in one of the ways that it may lie.
func fits(p nest.Piece, length, width float64) bool {
	for _, t := range p.Turns {
		lo, hi := p.Outline.Map(nest.Placement{Turn: t}.Of).Bounds()
		if hi.X-lo.X <= length && hi.Y-lo.Y <= width {
			return true
		}
	}
	return false
}

// turns are whole turns in so many equal steps.
func turns(steps int) []unit.Angle {
	out := make([]unit.Angle, steps)
	for i := range out {
		out[i] = 360 * unit.Degree * unit.Angle(i) / unit.Angle(steps)
	}
	return out
}

// place is a placement by name.
func place(name string, q nest.Placement) plan.Place {
	turn := math.Mod(math.Round(float64(q.Turn)*180/math.Pi*1e6)/1e6+360, 360)
	return plan.Place{Piece: name, Copy: q.Copy + 1, Turn: turn, Over: q.Over, Move: q.Move}
}

// nearly is the part of its hull that an outline must be to be laid as that where there are many: the little that is lost is less than is gained
// by more ways tried in the same time.
const nearly = 0.95

// plain is an outline as it is laid, nowhere inside the true one.
func plain(outline plane.Ring) plane.Ring {
	if hull := outline.Hull(); math.Abs(outline.Area()) > nearly*hull.Area() {
		return hull
	}
	return outline
}

// rounded is a point as it is laid: a mount is symmetric but for the last digits of its points, and of outlines that are all but the same
// a layout can't be shortened well.
func rounded(p plane.Point) plane.Point {
	const grain = 1e-5 // mm
	return plane.Point{X: math.Round(p.X/grain) * grain, Y: math.Round(p.Y/grain) * grain}
}

// fill adds what a piece takes of a layout.
func fill(l *plan.Layout, outline plane.Ring) {
	l.Utilisation += math.Abs(outline.Area()) / (l.Length * l.Width)
}
