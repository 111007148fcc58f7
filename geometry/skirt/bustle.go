package skirt

import (
	"fmt"
	"math"
	"slices"

	"understructure/geometry/curve"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/geometry/surface"
)

// BustlePad is a stuffed crescent on the back of the waist: two like faces, sewn together along
// the waist and to both long edges of a strip along the outer edge. All of it lies flat.
type BustlePad struct {
	Face       plane.Ring // seen from above, the back upward: the outer edge first, from the tip at the figure's right to that at the left
	Outer      int        // number of corners of the outer edge, tips included
	Edge       plane.Ring // the strip, its upper edge first
	Projection float64    // at centre back, mm
	Thickness  float64    // at centre back, mm
}

// The depth below the waist at which a pad is drawn, and the least that it may stand out, mm. From memory.
const padDepth, leastPad = 60.0, 15.0

// padShare is the thickness of a pad where nothing else is said, as a part of its projection. From memory.
const padShare = 0.5

// Pad fits a pad between the body and the skirt behind; thickness 0 is half its projection.
func (s Skirt) Pad(thickness float64) (BustlePad, error) {
	z := math.Max(s.Lowest(), -padDepth)
	skirt, body := s.Section(z), s.body.at(-z)
	p := BustlePad{Projection: skirt[section.Back] - Beneath - body[section.Back]}
	if p.Projection < leastPad {
		return BustlePad{}, fmt.Errorf("skirt: there are %.0f mm between body and skirt behind, want at least %.0f for a pad", math.Max(0, p.Projection), leastPad)
	}
	if p.Thickness = thickness; thickness == 0 {
		p.Thickness = padShare * p.Projection
	}
	if !(p.Thickness >= 5 && p.Thickness <= 2*p.Projection) {
		return BustlePad{}, fmt.Errorf("skirt: a pad %.6g mm thick, want 5 to %.0f, twice what it stands out", thickness, 2*p.Projection)
	}
	room := func(j int) float64 { return (skirt[j] - Beneath - body[j]) * math.Abs(section.Direction(j).Y) }
	from, to := around(func(j int) bool { return room(j) > 1 })
	var at, rooms, waist []float64
	for j := from - 1; j <= to+1; j++ {
		k := j % section.Directions
		out := 0.0 // at the tips
		if j >= from && j <= to {
			out = room(k)
		}
		at, rooms, waist = append(at, float64(j)), append(rooms, out), append(waist, body[k])
	}
	stands, lies := curve.Through(at, rooms), curve.Through(at, waist)
	var outer, inner plane.Ring
	for _, t := range surface.Rows(at[0], at[len(at)-1], 1.0/finely) {
		d := facing(t)
		outer = append(outer, d.Mul(lies.At(t)+stands.At(t)))
		if t > at[0] && t < at[len(at)-1] {
			inner = append(inner, d.Mul(lies.At(t)))
		}
	}
	slices.Reverse(outer)
	p.Outer = len(outer)
	p.Face = append(outer, inner...)
	p.Edge = lens(curve.Length(p.Face[:p.Outer]), p.Thickness, p.Outer)
	return p, nil
}

// around is the run of directions about the back, within a quarter turn to either side, in which
// something holds. It holds at the back itself.
func around(holds func(j int) bool) (from, to int) {
	from, to = section.Back, section.Back
	for from > section.Left+1 && holds(from-1) {
		from--
	}
	for to < section.Directions-1 && holds(to+1) {
		to++
	}
	return from, to
}

// finely is into how many parts the step from one direction to the next is divided where an edge
// is to be cut, so that its sides lie within a twentieth of a millimetre of it.
const finely = 8

// facing is the unit vector of a direction, counted with parts, seen from above with the back upward.
func facing(turn float64) plane.Point {
	sin, cos := math.Sincos(2 * math.Pi * turn / section.Directions)
	return plane.Point{X: cos, Y: -sin}
}

// lens is a strip that is broad in the middle and runs out to a point at both ends, both edges
// of the given length.
func lens(length, broad float64, corners int) plane.Ring {
	upper := func(wide float64) plane.Ring {
		var r plane.Ring
		for i := range corners {
			t := float64(i)/float64(corners-1) - 0.5
			r = append(r, plane.Point{X: -t * wide, Y: broad / 2 * math.Cos(math.Pi*t)})
		}
		return r
	}
	wide, err := curve.Root(func(w float64) float64 { return curve.Length(upper(w)) - length }, 0, length, 1e-9)
	if err != nil {
		wide = 0
	}
	ring := upper(wide)
	for i := corners - 2; i > 0; i-- {
		ring = append(ring, plane.Point{X: ring[i].X, Y: -ring[i].Y})
	}
	return ring
}

// HalfHoop is a steel bent over the back and held by a strap.
type HalfHoop struct {
	Height float64 // from the waist up, mm
	Strap  float64 // the chord that holds it, against the body's back
	Rise   float64 // how far it stands out from the strap
	Back   float64 // distance of the strap behind the mount's axis
}

// Arc is the length of the steel's curve.
func (h HalfHoop) Arc() float64 { return ArcOver(h.Strap, h.Rise) }

// half is the angle from the middle of the curve to either end.
func (h HalfHoop) half() float64 { return 2 * math.Atan(2*h.Rise/h.Strap) }

// at is the point of the curve that faces the angle θ from straight back, to the figure's right; beyond the ends it is the end.
func (h HalfHoop) at(θ float64) space.Point {
	radius := (h.Strap*h.Strap/4 + h.Rise*h.Rise) / (2 * h.Rise)
	sin, cos := math.Sincos(math.Max(-h.half(), math.Min(h.half(), θ)))
	return space.Point{X: radius * sin, Y: -h.Back - h.Rise + radius*(1-cos), Z: h.Height}
}

// The frame of a bustle of about 1885 (University of New Hampshire, Bowen collection 905): 711
// mm long, four half hoops in the lower two thirds of it, the last at its hem.
const (
	FrameLength = 711.0
	FrameHoops  = 4
	frameTop    = 1.0 / 3
)

// strapShare is the strap as a part of the body's breadth at the hip: 254 mm on a small woman. From memory.
const strapShare = 0.8

// Curve is the steel seen from above, from its end at the figure's right round the back to that at the left, in so
// many steps.
func (h HalfHoop) Curve(steps int) []plane.Point {
	out := make([]plane.Point, 0, steps+1)
	for i := steps; i >= 0; i-- {
		p := h.at(h.half() * (2*float64(i)/float64(steps) - 1))
		out = append(out, plane.Point{X: p.X, Y: p.Y})
	}
	return out
}

// Frame fits n half hoops on a back panel of the given length under the skirt. Where the skirt leaves
// a hoop less than 15 mm behind the body, the frame ends above it; with none left it is an error.
func (s Skirt) Frame(n int, length float64) ([]HalfHoop, error) {
	if n < 2 || n > mostHoops {
		return nil, fmt.Errorf("skirt: %d half hoops, want 2 to %d", n, mostHoops)
	}
	least := 100.0
	most := -s.Lowest() - Shorter
	if !(length >= least && length <= math.Max(most, least)) {
		return nil, fmt.Errorf("skirt: a bustle frame %.6g mm long, want %.0f to %.0f", length, least, math.Max(most, least))
	}
	var out []HalfHoop
	for i := 1; i <= n; i++ {
		z := -length * (frameTop + (1-frameTop)*float64(i)/float64(n))
		h, ok := s.halfHoop(z)
		if !ok {
			break
		}
		out = append(out, h)
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("skirt: the skirt leaves less than %.0f mm behind the body at the top of the frame; it needs none", leastPad)
	}
	return out, nil
}

// leastStrap is the narrowest strap of a half hoop, mm. From memory.
const leastStrap = 100.0

// halfHoop is the farthest half hoop that lies in the skirt at a height, on the broadest strap that does.
func (s Skirt) halfHoop(z float64) (HalfHoop, bool) {
	at, body := s.Section(z), s.body.at(-z)
	skirt := at.Ring()
	h := HalfHoop{Height: z, Strap: strapShare * (body[section.Right] + body[section.Left]), Back: body[section.Back]}
	for h.Strap > leastStrap && !skirt.Contains(plane.Point{X: h.Strap / 2, Y: -h.Back}) {
		h.Strap--
	}
	for h.Rise = at[section.Back] - Beneath - h.Back; h.Rise >= leastPad && !h.in(skirt); {
		h.Rise--
	}
	return h, h.Rise >= leastPad
}

// in reports whether the curve lies in a slice.
func (h HalfHoop) in(skirt plane.Ring) bool {
	for i := range 65 {
		if p := h.at(h.half() * (float64(i)/32 - 1)); !skirt.Contains(plane.Point{X: p.X, Y: p.Y}) {
			return false
		}
	}
	return true
}

// FrameStrip lays the cloth between two half hoops flat, the upper given first. It joins them where
// they face the same way, and the farther ends of the longer to the end of the other, so it is exact.
func FrameStrip(upper, lower HalfHoop) (Strip, error) {
	const n = 384
	most := math.Max(upper.half(), lower.half())
	var above, below []space.Point
	for i := range n + 1 {
		θ := most * (2*float64(i)/n - 1)
		above, below = append(above, upper.at(θ)), append(below, lower.at(θ))
	}
	return LayStrip(below, above)
}

// FrameTop lays the cloth from the waist to the first half hoop flat: as wide as the half hoop, and
// gathered to the strap's width at the waist.
func FrameTop(h HalfHoop) Strip {
	wide, deep := h.Arc(), math.Hypot(h.Rise, h.Height)
	return Strip{
		Lower: []plane.Point{{X: -wide / 2}, {}, {X: wide / 2}},
		Upper: []plane.Point{{X: -wide / 2, Y: deep}, {Y: deep}, {X: wide / 2, Y: deep}},
	}
}
