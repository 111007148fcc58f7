package nest

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/unit"
)

// pose is a piece in one of the ways that it may lie.
type pose struct {
	kind   int // index of the piece, or of a fixed shape behind the pieces
	turn   unit.Angle
	over   bool
	parts  []plane.Ring // convex parts of the outline used for the search
	lo, hi plane.Point  // box round it, measured from its origin
	back   matrix       // undoes the turn, and the turning over
	size   float64      // fourth root of the hull's area: how much its overlaps count
}

func newPose(kind int, turn unit.Angle, over bool, parts []plane.Ring) pose {
	q := pose{kind: kind, turn: turn, over: over, parts: mapped(parts, rigid(turn, over), over)}
	var all plane.Ring
	for _, r := range q.parts {
		all = append(all, r...)
	}
	if len(all) == 0 {
		return q
	}
	q.lo, q.hi = all.Bounds()
	back := inverse(turn, over)
	x, y := back(plane.Point{X: 1}), back(plane.Point{Y: 1})
	q.back = matrix{x.X, y.X, x.Y, y.Y}
	q.size = math.Sqrt(math.Sqrt(all.Hull().Area()))
	return q
}

// mapped moves parts and keeps them counter-clockwise when they are turned over.
func mapped(parts []plane.Ring, to func(plane.Point) plane.Point, over bool) []plane.Ring {
	out := make([]plane.Ring, len(parts))
	for i, r := range parts {
		out[i] = r.Map(to)
		if over {
			out[i] = out[i].Reverse()
		}
	}
	return out
}

// shapes holds all poses of a job and the no-fit polygons of their pairs, made when first asked for.
type shapes struct {
	poses  []pose
	of     [][]int   // poses of each kind
	area   []float64 // of each kind, as drawn
	loose  int       // kinds from here on are what a stock lacks of its box; no gap is kept to such
	gap    float64
	nofits []*nofit // of each pair of poses, as a matrix; nil before it is asked for
	made   map[pairing]*nofit
}

// add lists the ways that a kind may lie.
func (s *shapes) add(turns []unit.Angle, over bool, area float64, parts []plane.Ring) {
	kind := len(s.of)
	s.of, s.area = append(s.of, nil), append(s.area, area)
	for _, side := range []bool{false, true} {
		for _, t := range turns {
			if over || !side {
				s.of[kind] = append(s.of[kind], len(s.poses))
				s.poses = append(s.poses, newPose(kind, t, side, parts))
			}
		}
	}
}

// bulk says which kinds are to be laid first: the large and the long.
func (s *shapes) bulk(kind int) float64 {
	p := &s.poses[s.of[kind][0]]
	return p.size * p.size * max(p.hi.X-p.lo.X, p.hi.Y-p.lo.Y)
}

// pairing is what a no-fit polygon depends on: two kinds, and how the second lies to the first.
type pairing struct {
	a, b int
	over bool
	turn int64 // in parts of a turn
}

// fineness is how many turns are told apart; a metre from the origin two of them lie 6 nm apart.
const fineness = 1 << 30

// view is a no-fit polygon seen from a pose that is itself turned: places are turned back before they are looked up.
type view struct {
	nofit *nofit
	back  matrix
}

// matrix is a linear map of the plane.
type matrix struct{ xx, xy, yx, yy float64 }

// depth is how deep the second pose, at p measured from the first, overlaps it.
func (v *view) depth(p plane.Point) float64 {
	return v.nofit.depth(plane.Point{X: v.back.xx*p.X + v.back.xy*p.Y, Y: v.back.yx*p.X + v.back.yy*p.Y})
}

// view returns where pose b overlaps pose a, measured from a. Poses that lie alike to each other share a no-fit
// polygon: turned together, turned over together, or each seen from the other.
func (s *shapes) view(a, b int) view {
	f := &s.nofits[a*len(s.poses)+b]
	sign := 1.0
	if s.poses[a].kind > s.poses[b].kind {
		a, b, sign = b, a, -1
	}
	p := &s.poses[a]
	if *f == nil {
		*f = s.nofit(p, &s.poses[b])
	}
	m := p.back
	return view{*f, matrix{sign * m.xx, sign * m.xy, sign * m.yx, sign * m.yy}}
}

func (s *shapes) nofit(p, q *pose) *nofit {
	rel := q.turn - p.turn
	if p.over {
		rel = -rel
	}
	turn := int64(math.Round(float64(rel)/(2*math.Pi)*fineness)) & (fineness - 1)
	key := pairing{p.kind, q.kind, p.over != q.over, turn}
	f := s.made[key]
	if f == nil {
		gap := s.gap + hair
		if q.kind >= s.loose {
			gap = 0
		}
		back := inverse(p.turn, p.over)
		f = newNofit(mapped(p.parts, back, p.over), mapped(q.parts, back, p.over), gap)
		s.made[key] = f
	}
	return f
}
