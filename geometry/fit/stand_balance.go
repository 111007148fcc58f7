package fit

import (
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/space"
)

// Load is something that a stand carries: its mass in kilograms and its centre, in
// millimetres from the middle of the base on the floor; x to the figure's right, y to its front.
type Load struct {
	Name string
	Mass float64
	At   space.Point
}

// Balance is what all loads are together. The zero Balance weighs nothing and stands.
type Balance struct {
	Mass float64     // kg
	At   space.Point // centre of gravity, mm
	Top  float64     // height of the whole, mm
}

// Weighed adds loads up. top is the height of the whole, in millimetres. A load without mass counts for nothing.
func Weighed(loads []Load, top float64) Balance {
	b := Balance{Top: top}
	for _, l := range loads {
		if l.Mass > 0 {
			b.Mass += l.Mass
			b.At = b.At.Add(l.At.Mul(l.Mass))
		}
	}
	if b.Mass > 0 {
		b.At = b.At.Mul(1 / b.Mass)
	}
	return b
}

// The two tests. Neither standard is written for dressed figures.
const (
	tilt      = 10 * math.Pi / 180 // plane on which nothing may overturn, IEC 60335-1, clause 20.1
	pushShare = 0.13               // part of the weight that pushes level, IEC 62368-1, edition 3
	pushMost  = 250.0              // N, the greatest such push, same
	pushAt    = 1500.0             // mm, the height up to which it is pushed, same
	gravity   = 9.80665            // m/s², standard (3rd General Conference on Weights and Measures, 1901)
)

// Aside is how far the centre of gravity lies from over the middle of the base, mm: a train or a bustle draws it back.
func (b Balance) Aside() float64 { return math.Hypot(b.At.X, b.At.Y) }

// tiltReach and pushReach are how far from under the centre of gravity the edge of the base must lie, mm, whichever
// way the floor leans or the hand pushes.
func (b Balance) tiltReach() float64 { return b.At.Z * math.Tan(tilt) }

func (b Balance) pushReach() float64 {
	share := pushShare
	if weight := b.Mass * gravity; weight > 0 {
		share = math.Min(share, pushMost/weight)
	}
	return share * math.Min(b.Top, pushAt)
}

// reach is the larger of the two.
func (b Balance) reach() float64 { return math.Max(b.tiltReach(), b.pushReach()) }

// Round is the least radius of a round base with which the mount passes both tests, mm.
func (b Balance) Round() float64 { return b.Aside() + b.reach() }

// Square is the least side of a square base, its edges in front, behind and at the sides: its inscribed circle
// is what counts, moved by the centre of gravity, mm.
func (b Balance) Square() float64 {
	return 2 * (math.Max(math.Abs(b.At.X), math.Abs(b.At.Y)) + b.reach())
}

// Under is where the middle of a base would lie under the centre of gravity, mm from where it is now: there the
// smallest base does, of radius Round less Aside.
func (b Balance) Under() plane.Point { return plane.Point{X: b.At.X, Y: b.At.Y} }

// Base is what stands on the floor.
type Base struct {
	Round bool    // otherwise square
	Size  float64 // radius of a round base, side of a square one, mm
}

// margin is how far the nearest edge of the base lies from under the centre of gravity, mm; negative outside the base.
func (b Balance) margin(base Base) float64 {
	if base.Round {
		return base.Size - b.Aside()
	}
	return base.Size/2 - math.Max(math.Abs(b.At.X), math.Abs(b.At.Y))
}

// Check is how a mount stands on a base.
type Check struct {
	TipsAt  float64 // lean of the floor at which it overturns the easiest way, rad; 0 where it falls by itself
	TipsBy  float64 // level push at up to 1.5 m that overturns it, as a part of its weight
	Tilt    bool    // it stands on a floor that leans by 10°
	Push    bool    // it stands a push of 13 % of its weight, at most 250 N
	ShortBy float64 // by how much the base is too small, mm of radius or half side; 0 where it passes
	Ballast float64 // kg, low in the middle of the base, with which it would pass; 0 where it passes, +Inf where none helps
}

// On checks a base.
func (b Balance) On(base Base) Check {
	m := b.margin(base)
	c := Check{
		Tilt: m >= b.tiltReach()-rounding, Push: m >= b.pushReach()-rounding,
		ShortBy: math.Max(0, b.reach()-m), Ballast: b.ballast(base),
	}
	if m > 0 {
		c.TipsAt = math.Atan2(m, b.At.Z)
		c.TipsBy = m / math.Max(math.Min(b.Top, pushAt), rounding)
	}
	return c
}

// ballast is the weight in the middle of the base with which the mount would pass: it lowers the centre of gravity and
// draws it over the middle, but the push grows with it.
func (b Balance) ballast(base Base) float64 {
	half := base.Size
	if !base.Round {
		half /= 2
	}
	aside := half - b.margin(base)
	push := pushShare * math.Min(b.Top, pushAt)
	if b.margin(base) >= b.reach()-rounding {
		return 0
	}
	if half <= push || half <= 0 {
		return math.Inf(1)
	}
	return b.Mass * (math.Max((aside+b.tiltReach())/half, aside/(half-push)) - 1)
}

// rounding is a length too small to matter, mm.
const rounding = 1e-9
