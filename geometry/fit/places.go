package fit

import (
	"cmp"
	"math"
	"slices"

	"understructure/geometry/section"
	"understructure/geometry/space"
)

// Place is somewhere on a mount that one should look at before the garment is put on.
type Place struct {
	Band   Band
	Height float64 // mm, as that of the Round
	Level  string  // nearest level, "" where none was given
	Above  float64 // height above that level, mm; negative below it
	// Side is where on the figure, in its own right and left: "front", "left front", "left", and so on.
	Side  string
	Turn  int     // direction of package section
	Point float64 // clearance at the point, mm; negative where the mount stands out of the garment
	Tape  float64 // clearance of the tape at that height, mm of girth
}

// Level is a height with a name.
type Level struct {
	Name   string
	Height float64
}

// apart is how far two places are from each other at least, mm: a hand's breadth, so that each
// stands for a part of the body of its own.
const apart = 80.0

// Worst lists the places that one should look at, at most so many: those that strain, the worst
// first, then those that touch, the closest first, then those where the garment hangs slack, the
// slackest first. Each is worse than everything round it, and lies apart from the others. If anything
// is slack, the slackest place is always among them. Nothing is listed where all is as wanted.
func Worst(rounds []Round, levels []Level, most int) []Place {
	var slack, tight []Place
	for i := range rounds {
		for j := range section.Directions {
			switch p := place(rounds, levels, i, j); {
			case p.Band == AsWanted:
			case p.Band > AsWanted && peak(rounds, i, j, -1):
				slack = append(slack, p)
			case p.Band < AsWanted && peak(rounds, i, j, 1):
				tight = append(tight, p)
			}
		}
	}
	slices.SortStableFunc(tight, func(a, b Place) int { return cmp.Or(cmp.Compare(a.Band, b.Band), cmp.Compare(a.Point, b.Point)) })
	slices.SortStableFunc(slack, func(a, b Place) int { return cmp.Compare(b.Point, a.Point) })
	kept := 0
	if len(slack) > 0 {
		kept = 1
	}
	out := spread(nil, tight, max(most-kept, 0), rounds)
	return spread(out, slack, most, rounds)
}

// spread adds places that lie apart from those there are, as long as there are fewer than most.
func spread(out, more []Place, most int, rounds []Round) []Place {
	for _, p := range more {
		if len(out) >= most {
			break
		}
		near := func(q Place) bool { return spot(rounds, p).Dist(spot(rounds, q)) < apart }
		if !slices.ContainsFunc(out, near) {
			out = append(out, p)
		}
	}
	return out
}

// spot is where on the mount a place lies.
func spot(rounds []Round, p Place) space.Point {
	i, _ := slices.BinarySearchFunc(rounds, p.Height, func(r Round, z float64) int { return cmp.Compare(r.Height, z) })
	d := section.Direction(p.Turn).Mul(rounds[i].Mount[p.Turn])
	return space.Point{X: d.X, Y: d.Y, Z: p.Height}
}

// peak reports whether nothing round a point is worse: less room for sign 1, more for sign -1.
func peak(rounds []Round, i, j int, sign float64) bool {
	here := sign * rounds[i].Felt(j)
	for k := max(i-1, 0); k <= min(i+1, len(rounds)-1); k++ {
		for _, l := range [3]int{j - 1, j, j + 1} {
			if sign*rounds[k].Felt(l&(section.Directions-1)) < here {
				return false
			}
		}
	}
	return true
}

func place(rounds []Round, levels []Level, i, j int) Place {
	r := &rounds[i]
	p := Place{Band: BandOf(r.Felt(j)), Height: r.Height, Side: Side(j), Turn: j, Point: r.Point[j], Tape: r.Tape}
	nearest := math.Inf(1)
	for _, l := range levels {
		if d := math.Abs(r.Height - l.Height); d < nearest {
			nearest, p.Level, p.Above = d, l.Name, r.Height-l.Height
		}
	}
	return p
}

// Side is the word for a direction of package section, in the figure's own right and left.
func Side(turn int) string {
	words := [8]string{"right", "right front", "front", "left front", "left", "left back", "back", "right back"}
	const eighth = section.Directions / 8
	return words[(turn+eighth/2)&(section.Directions-1)/eighth]
}
