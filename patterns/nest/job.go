package nest

import (
	"cmp"
	"context"
	"fmt"
	"math/rand/v2"
	"slices"

	"understructure/geometry/plane"
	"understructure/geometry/unit"
)

// job is a crowd with what it was made from.
type job struct {
	*crowd
	pieces []Piece
	stock  []Stock
	bins   []bin  // one for each room
	used   []int  // how many of each stock
	wait   []item // not laid yet, and in the end those that found no room
	laid   []item
	fixed  []item // what the rooms lack of their boxes
}

// bin is the copy of a stock that a room stands for.
type bin struct{ stock, copy int }

// newJob makes the items of the pieces, the largest first, and a kind for what each stock lacks of its box.
func newJob(ctx context.Context, pieces []Piece, stock []Stock, o Options) (*job, error) {
	if o.Effort == 0 {
		o.Effort = UsualEffort
	}
	s := &shapes{gap: o.Gap, loose: len(pieces), made: map[pairing]*nofit{}}
	j := &job{
		pieces: pieces, stock: stock, used: make([]int, len(stock)),
		crowd: &crowd{
			shapes: s,
			rnd:    rand.New(rand.NewPCG(o.Seed, 0)),
			meter:  &meter{ctx: ctx, effort: o.Effort, until: o.Effort, progress: o.Progress},
		},
	}
	for k, p := range pieces {
		b, err := newBody(append([]plane.Ring{p.Outline}, p.Beside...), o.Slack)
		if err != nil {
			return nil, fmt.Errorf("nest: piece %d %q: %w", k+1, p.ID, err)
		}
		s.add(allowed(p), p.Over, clean(p.Outline).Area(), b.parts)
		for i := range p.Count {
			j.wait = append(j.wait, item{kind: k, copy: i, pose: s.of[k][0]})
		}
	}
	for _, st := range stock {
		s.add([]unit.Angle{0}, false, 0, lacking(st.Outline))
	}
	s.nofits = make([]*nofit, len(s.poses)*len(s.poses))
	slices.SortStableFunc(j.wait, j.byBulk)
	return j, nil
}

// byBulk puts the bulky items first.
func (j *job) byBulk(a, b item) int { return cmp.Compare(j.bulk(b.kind), j.bulk(a.kind)) }

// open adds a room for the next copy of a stock, right of all others.
func (j *job) open(stock int) int {
	lo, hi := j.stock[stock].Outline.Bounds()
	at := plane.Point{}
	n := len(j.rooms)
	if n > 0 {
		from, to := j.stock[j.bins[n-1].stock].Outline.Bounds() // its room may have been shortened
		at.X = j.rooms[n-1].lo.X + to.X - from.X + apart
	}
	j.rooms = append(j.rooms, room{at, at.Add(hi.Sub(lo)).Add(plane.Point{X: edge, Y: edge})})
	j.bins = append(j.bins, bin{stock, j.used[stock]})
	j.used[stock]++
	kind := j.loose + stock
	if o := j.of[kind][0]; len(j.poses[o].parts) > 0 {
		j.fixed = append(j.fixed, item{kind: kind, pose: o, room: n, at: at.Sub(lo)})
	}
	return n
}

// shut takes the last room away again.
func (j *job) shut() {
	n := len(j.rooms) - 1
	j.used[j.bins[n].stock]--
	j.rooms, j.bins = j.rooms[:n], j.bins[:n]
	j.fixed = slices.DeleteFunc(j.fixed, func(it item) bool { return it.room == n })
}

// edge is how far pieces may reach over the edge of the stock, so that those fit that fill it side by side, a hair between them, mm.
const edge = 1e-4

// apart is the distance between two rooms, mm.
const apart = 1000.0

// gather makes the crowd of what is laid and what is fixed.
func (j *job) gather() {
	j.items = append(slices.Clone(j.laid), j.fixed...)
	j.moves = len(j.laid)
	n := len(j.items)
	j.depth, j.load = make([]float64, n*n), make([]float64, n*n)
	j.unload()
	j.measureAll()
}

// layout is the crowd as it stands. Empty rooms are left out.
func (j *job) layout() Layout {
	l := Layout{Left: make([]int, len(j.pieces)), Stopped: j.meter.ctx.Err() != nil}
	for r := range j.rooms {
		one, placed := j.bin(r)
		if len(placed) == 0 {
			continue
		}
		for k := range placed {
			placed[k].Bin = len(l.Bins)
		}
		l.Bins, l.Placements = append(l.Bins, one), append(l.Placements, placed...)
	}
	for _, it := range j.wait {
		l.Left[it.kind]++
	}
	return l
}

// bin is what lies in one room, moved to where the stock was drawn.
func (j *job) bin(r int) (Bin, []Placement) {
	st := j.stock[j.bins[r].stock]
	origin, _ := st.Outline.Bounds()
	b := Bin{Stock: j.bins[r].stock, Copy: j.bins[r].copy, Area: clean(st.Outline).Area()}
	var placed []Placement
	used := 0.0
	for i := range j.items[:j.moves] {
		it := &j.items[i]
		if it.room != r {
			continue
		}
		p := &j.poses[it.pose]
		move := it.at.Sub(j.rooms[r].lo).Add(origin)
		placed = append(placed, Placement{Piece: it.kind, Copy: it.copy, Turn: p.turn, Over: p.over, Move: move})
		used += j.area[it.kind]
		_, hi := j.box(it)
		b.Length = max(b.Length, hi.X-j.rooms[r].lo.X)
	}
	if st.open {
		b.Area = b.Length * (j.rooms[r].hi.Y - j.rooms[r].lo.Y)
	}
	b.Waste, b.Utilisation = b.Area-used, used/b.Area
	slices.SortFunc(placed, func(a, b Placement) int { return cmp.Or(a.Piece-b.Piece, a.Copy-b.Copy) })
	return b, placed
}
