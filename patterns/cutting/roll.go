package cutting

import (
	"understructure/geometry/plane"
	"understructure/geometry/unit"
	"understructure/patterns/nest"
	"understructure/patterns/plan"
)

// ways are how pieces lie on a roll, whose length runs to the right: their upright becomes its length.
var ways = map[Lie][]unit.Angle{
	AnyQuarter: turns(4),
	AlongGrain: {90 * unit.Degree, 270 * unit.Degree},
	WithNap:    {270 * unit.Degree},
}

// roll lays what is of the roll's material on a stretch of it.
func (l *layer) roll(r Roll, p plan.Plan) error {
	var names []string
	var pieces []nest.Piece
	var outlines, drawn []plane.Ring // drawn: of what is no piece of the plan
	take := func(name string, outline, alone plane.Ring, count int, turns []unit.Angle) {
		n := nest.Piece{ID: name, Outline: outline, Count: count, Turns: turns}
		if !fits(n, longest, r.Width) {
			l.unlaid = append(l.unlaid, Unlaid{name, r.Material})
			return
		}
		names, pieces, outlines, drawn = append(names, name), append(pieces, n), append(outlines, outline), append(drawn, alone)
	}
	for _, pc := range p.Pieces {
		if pc.Material == r.Material {
			take(pc.ID, pc.CutLine(), nil, pc.Count, ways[r.Lie])
		}
	}
	for _, c := range p.Cuts {
		if c.Material == r.Material && c.Width > narrow && c.Length > 0 {
			band := plane.Ring{{}, {X: c.Length}, {X: c.Length, Y: c.Width}, {Y: c.Width}}
			take(c.Name, band, band, c.Count, turns(2)) // a band lies along the roll
		}
	}
	if len(pieces) == 0 {
		return nil
	}
	n, err := nest.Strip(l.ctx, pieces, r.Width, l.options(clothGap, pieces))
	if err := l.ended(n, err); err != nil {
		return err
	}
	out := plan.Layout{Kind: plan.OnRoll, Stock: r.Stock, Length: n.Bins[0].Length, Width: r.Width}
	for _, q := range n.Placements {
		at := place(names[q.Piece], q)
		at.Outline = drawn[q.Piece]
		out.Places = append(out.Places, at)
		fill(&out, outlines[q.Piece])
	}
	out.Waste = out.Length * out.Width * (1 - out.Utilisation)
	l.layouts = append(l.layouts, out)
	return nil
}

// longest is more than a roll has, mm.
const longest = 1e5

// narrow is the width of the broadest tape, mm; a cut that is no broader is not cut from cloth.
const narrow = 30.0
