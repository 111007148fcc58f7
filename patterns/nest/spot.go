package nest

import (
	"math"

	"understructure/geometry/plane"
)

// spot is a pose in a place, with its weighted overlap.
type spot struct {
	pose, room int
	at         plane.Point
	cost       float64
}

// shortlist holds the best spots found, the best first.
type shortlist [followed]spot

func (l *shortlist) clear() {
	for k := range l {
		l[k].cost = math.Inf(1)
	}
}

func (l *shortlist) add(s spot) {
	k := followed - 1
	for ; k > 0 && s.cost < l[k-1].cost; k-- {
		l[k] = l[k-1]
	}
	l[k] = s
}
