package foam

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// wall is the least foam beside the pole or a pin, mm: less tears out. Workshop habit, from memory.
const wall = 10.0

// setPole finds the place on the middle line that leaves most foam round the pole in as
// many slices from the bottom as can be, and puts a hole there.
func setPole(slices []Slice, pole float64) error {
	need := pole/2 + wall
	carried, y := 0, 0.0
	for most, at := -1.0, -80.0; at <= 80; at += 2 {
		n, room := 0, math.Inf(1)
		for _, s := range slices {
			r := math.Min(distance(s.Lower, at), distance(s.Upper, at))
			if r < need {
				break
			}
			n++
			room = math.Min(room, r)
		}
		if n > carried || n == carried && n > 0 && room > most {
			carried, most, y = n, room, at
		}
	}
	if carried == 0 {
		return fmt.Errorf("foam: no slice has %.0f mm of foam round a pole of %.0f mm; take a thinner pole", wall, pole)
	}
	for k := range slices[:carried] {
		slices[k].Pole = &plane.Point{Y: y}
	}
	return nil
}

// pin places two pins between neighbours, right and left of the pole, at different
// distances from it so that a slice cannot be turned round or over by mistake.
func pin(below, above *Slice, pole float64) {
	y := 0.0
	if below.Pole != nil {
		y = below.Pole.Y
	}
	for _, p := range []struct{ side, part float64 }{{1, 0.62}, {-1, 0.5}} {
		room := math.Min(reach(below.Upper, y, p.side), reach(above.Lower, y, p.side))
		d := math.Min(math.Max(p.part*room, pole/2+wall), room-wall)
		at := plane.Point{X: p.side * d, Y: y}
		below.Pins = append(below.Pins, Pin{at, true})
		above.Pins = append(above.Pins, Pin{at, false})
	}
}

// reach is how far a slice goes from the middle line at y, to the right (side 1) or left (−1).
func reach(s section.Section, y, side float64) float64 {
	ring := s.Ring()
	far := 0.0
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		if (p.Y > y) != (q.Y > y) {
			far = math.Max(far, side*p.Lerp(q, (y-p.Y)/(q.Y-p.Y)).X)
		}
	}
	return far
}

// distance is how far the outline of a slice is from a place on the middle line; negative outside.
func distance(s section.Section, y float64) float64 {
	at, d := plane.Point{Y: y}, math.Inf(1)
	ring := s.Ring()
	for i, p := range ring {
		d = math.Min(d, plane.Nearest(at, p, ring[(i+1)%len(ring)]).Dist(at))
	}
	if !ring.Contains(at) {
		return -d
	}
	return d
}
