package cutting

import (
	"cmp"
	"slices"

	"understructure/geometry/plane"
	"understructure/patterns/nest"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// tolerance is how much thinner than its slice foam may be, mm: less than foam itself varies.
const tolerance = 0.1

// Slices are turned freely, in steps of 30 degrees; those that are carved or bevelled only by quarters, so that a slanted knife is
// set from the edge of the plank.
const freeTurns, bevelTurns = 12, 4

// foam lays slices on the thinnest planks first that they can be cut from; what finds no room there goes on to the next.
func (l *layer) foam(all []piece.Piece, planks []Plank) error {
	var thicknesses []float64
	for _, p := range planks {
		thicknesses = append(thicknesses, p.Thickness)
	}
	slices.Sort(thicknesses)
	for _, t := range slices.Compact(thicknesses) {
		var these, rest []piece.Piece
		for _, s := range all {
			if s.Thickness <= t+tolerance {
				these = append(these, s)
			} else {
				rest = append(rest, s)
			}
		}
		left, err := l.on(these, slices.DeleteFunc(slices.Clone(planks), func(p Plank) bool { return p.Thickness != t }))
		if err != nil {
			return err
		}
		all = append(left, rest...)
	}
	for _, s := range all {
		l.unlaid = append(l.unlaid, Unlaid{s.ID, s.Material})
	}
	return nil
}

// on lays slices on planks of one thickness and returns those that found no room.
func (l *layer) on(all []piece.Piece, planks []Plank) ([]piece.Piece, error) {
	var laid, left []piece.Piece
	var pieces []nest.Piece
	for _, s := range all {
		n := slicePiece(s)
		if slices.ContainsFunc(planks, func(p Plank) bool { return fits(n, p.Length, p.Width) }) {
			laid, pieces = append(laid, s), append(pieces, n)
		} else {
			left = append(left, s)
		}
	}
	if len(laid) == 0 {
		return left, nil
	}
	stock := make([]nest.Stock, len(planks))
	for i, p := range planks {
		stock[i] = nest.Sheet(p.Stock, p.Length, p.Width, p.Count)
		stock[i].Offcut = p.Offcut
	}
	n, err := nest.Bins(l.ctx, pieces, stock, l.options(foamGap, pieces))
	if err := l.ended(n, err); err != nil {
		return nil, err
	}
	first := len(l.layouts)
	for _, b := range n.Bins {
		p := planks[b.Stock]
		kind := plan.OnPlank
		if p.Offcut {
			kind = plan.OnOffcut
		}
		l.layouts = append(l.layouts, plan.Layout{Kind: kind, Stock: p.Stock, Thickness: p.Thickness, Length: p.Length, Width: p.Width})
	}
	reach := make([]plane.Ring, len(n.Bins))
	for _, q := range n.Placements {
		at := &l.layouts[first+q.Bin]
		at.Places = append(at.Places, place(laid[q.Piece].ID, q))
		fill(at, laid[q.Piece].CutLine())
		reach[q.Bin] = append(reach[q.Bin], q.Ring(pieces[q.Piece].Outline)...)
	}
	for k, r := range reach {
		at := &l.layouts[first+k]
		at.Waste = at.Length * at.Width * (1 - at.Utilisation)
		keep(at, r)
	}
	for i, copies := range n.Left {
		if copies > 0 {
			left = append(left, laid[i])
		}
	}
	slices.SortStableFunc(left, func(a, b piece.Piece) int { return cmp.Compare(a.Layer, b.Layer) })
	return left, nil
}

// slicePiece is a slice as it may lie.
func slicePiece(s piece.Piece) nest.Piece {
	steps := freeTurns
	if slices.ContainsFunc(s.Marks, func(m piece.Mark) bool { return m.Kind == piece.InnerOutline }) {
		steps = bevelTurns
	}
	return nest.Piece{ID: s.ID, Outline: s.CutLine(), Count: s.Count, Turns: turns(steps)}
}
