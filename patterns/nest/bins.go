package nest

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"understructure/geometry/plane"
)

// Bins lays all pieces on the stock: offcuts first, then as few of the whole as the effort allows; and on the
// emptiest of them as far to the left as may be, so that what is left over can be used again. Stock is used in
// the order given, offcuts from the smallest, and the emptiest is exchanged for a smaller size if there is one that does. Pieces that find no room are counted in Layout.Left. It fails when a piece
// fits no stock at all, or when the context ends before there is any layout; later, the best layout so far is returned.
func Bins(ctx context.Context, pieces []Piece, stock []Stock, o Options) (Layout, error) {
	if err := refuse(pieces, o); err != nil {
		return Layout{}, err
	}
	if err := refuseStock(stock); err != nil {
		return Layout{}, err
	}
	j, err := newJob(ctx, pieces, stock, o)
	if err != nil {
		return Layout{}, err
	}
	if err := j.fitSomewhere(); err != nil {
		return Layout{}, err
	}
	if err := j.fill(); err != nil {
		return Layout{}, err
	}
	j.admit()
	if j.moves > 0 {
		j.empty()
		j.shorten(j.emptiest())
		j.pullBack(j.emptiest())
		j.trade()
	}
	l := j.layout()
	return l, l.Check(pieces, stock, o.Gap)
}

// refuseStock names what can't be laid on.
func refuseStock(stock []Stock) error {
	if len(stock) == 0 {
		return fmt.Errorf("nest: no stock, want at least 1")
	}
	for i, s := range stock {
		where := fmt.Sprintf("stock %d %q", i+1, s.ID)
		if err := refuseRing(where, s.Outline); err != nil {
			return err
		}
		if s.Count < 0 {
			return fmt.Errorf("nest: %s: count %d, want 0 or more", where, s.Count)
		}
		if s.Offcut && s.Count == 0 {
			return fmt.Errorf("nest: %s: an offcut of which there is no end; want a count of 1 or more", where)
		}
	}
	return nil
}

// fitSomewhere wants for every piece a stock whose box holds it in some pose.
func (j *job) fitSomewhere() error {
	for kind, of := range j.of[:len(j.pieces)] {
		fits := slices.ContainsFunc(of, func(o int) bool {
			return slices.ContainsFunc(j.stock, func(s Stock) bool {
				lo, hi := s.Outline.Bounds()
				_, _, ok := (room{lo, hi.Add(plane.Point{X: edge, Y: edge})}).span(&j.poses[o])
				return ok
			})
		})
		if !fits {
			p := j.poses[of[0]]
			return fmt.Errorf("nest: piece %d %q, %.4g × %.4g mm as drawn, fits no stock", kind+1, j.pieces[kind].ID, p.hi.X-p.lo.X, p.hi.Y-p.lo.Y)
		}
	}
	return nil
}

// order lists the stock as it is to be used: offcuts from the smallest, then the others as given.
func (j *job) order() []int {
	var order []int
	for i := range j.stock {
		order = append(order, i)
	}
	slices.SortStableFunc(order, func(a, b int) int {
		p, q := j.stock[a], j.stock[b]
		switch {
		case p.Offcut && q.Offcut:
			return cmp.Compare(math.Abs(p.Outline.Area()), math.Abs(q.Outline.Area()))
		case p.Offcut:
			return -1
		case q.Offcut:
			return 1
		}
		return 0
	})
	return order
}

// fill lays the pieces one by one, the largest first, each in the first room where it finds a place; rooms are
// opened as need be.
func (j *job) fill() error {
	order := j.order()
	var left []item
	for _, it := range j.wait {
		if err := j.meter.ctx.Err(); err != nil {
			return fmt.Errorf("nest: stopped before there was a layout: %w", err)
		}
		if j.layAnywhere(&it) || j.layOnNew(&it, order) {
			j.laid = append(j.laid, it)
		} else {
			left = append(left, it)
		}
	}
	j.wait = left
	j.gather()
	return nil
}

func (j *job) layAnywhere(it *item) bool {
	for r := range j.rooms {
		if j.lay(it, r) {
			return true
		}
	}
	return false
}

// layOnNew opens a room of the first stock that has a place for the item.
func (j *job) layOnNew(it *item, order []int) bool {
	for _, s := range order {
		if n := j.stock[s].Count; j.stock[s].open || n > 0 && j.used[s] >= n {
			continue
		}
		if j.lay(it, j.open(s)) {
			return true
		}
		j.shut()
	}
	return false
}
