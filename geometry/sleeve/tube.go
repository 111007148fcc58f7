package sleeve

import (
	"math"

	"understructure/geometry/plane"
)

// Tube is a plain support for a straight sleeve: the frustum of a cone from the sleeve's end up, its head cut
// aslant from the shoulder seam to the bottom of the armhole.
type Tube struct {
	End, Upper float64 // girths at the end and at the bottom of the armhole, mm
	Under      float64 // from the end to the bottom of the armhole, along the skin
	Length     float64 // from the end to the shoulder seam, along the skin
}

// Tube returns the widest tube, tapered as the sleeve is, that passes every place above.
func (s Sleeve) Tube(o Options) Tube {
	t := Tube{Under: s.Under - o.Short, Length: s.Length - o.Short}
	t.Upper, t.End = s.passes(0, o), s.passes(t.Under, o)
	over := 0.0
	for at := 0.0; at <= t.Under; at += passageStep {
		over = math.Max(over, t.Upper+(t.End-t.Upper)*at/t.Under-s.passes(at, o))
	}
	t.Upper, t.End = t.Upper-over, t.End-over
	return t
}

// The edges of a tube.
const (
	TubeSeam = "seam"
	TubeEnd  = "end"
	TubeHead = "head"
)

// tubeSteps is how finely a tube is drawn round: chords that miss the skin of one of 1 m by 0.02 mm.
const tubeSteps = 240

// Panel is the exact development of the tube, its seam on the side of the body. Both edges of the seam are one
// generator of the cone and equally long.
func (t Tube) Panel() Panel {
	var end, head []plane.Point
	for i := range tubeSteps + 1 {
		θ := 2*math.Pi*float64(i)/tubeSteps - math.Pi
		end, head = append(end, t.flat(θ, 0)), append(head, t.flat(θ, t.generator(θ)))
	}
	last := tubeSteps
	return Panel{Edges: []Edge{
		{TubeEnd, end}, {TubeSeam, []plane.Point{end[last], head[last]}}, {TubeHead, reversed(head)}, {TubeSeam, []plane.Point{head[0], end[0]}},
	}}
}

// sine is that of the cone's half angle, positive where the tube widens upward.
func (t Tube) sine() float64 { return (t.Upper - t.End) / (2 * math.Pi) / t.Under }

// generator is the length of the skin from the end to the slanting head, at an angle from the outside: where the cone
// meets the plane through its outermost point at Length and its innermost at Under.
func (t Tube) generator(θ float64) float64 {
	sin := math.Max(-1, math.Min(1, t.sine()))
	cos := math.Sqrt(1 - sin*sin)
	radius := func(g float64) float64 { return t.End/(2*math.Pi) + g*sin }
	x0, x1 := -radius(t.Under), radius(t.Length)
	slope := (t.Length - t.Under) * cos / (x1 - x0)
	level := t.Under*cos - slope*x0 // height of the plane on the axis
	// height g·cos = level + slope·radius(g)·cos θ
	return (level + slope*radius(0)*math.Cos(θ)) / (cos - slope*sin*math.Cos(θ))
}

// flat is the place on the development: with half angle α and radius r, the circle through it is an
// arc of radius r/sin α, of which θ takes the angle θ·sin α. The limit of a cylinder needs no case of its own.
func (t Tube) flat(θ, g float64) plane.Point {
	ψ := θ * t.sine()
	r := t.End/(2*math.Pi) + g*t.sine()
	along, rise := 1.0, ψ/2 // sin ψ/ψ and (1 − cos ψ)/ψ
	if math.Abs(ψ) > 1e-4 {
		along, rise = math.Sin(ψ)/ψ, (1-math.Cos(ψ))/ψ
	}
	return plane.Point{X: r * θ * along, Y: g - r*θ*rise}
}
