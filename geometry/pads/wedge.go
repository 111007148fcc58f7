package pads

import (
	"math"

	"understructure/geometry/plane"
)

// Shoulder is a form's shoulder that is to slope as the garment's does.
type Shoulder struct {
	Length  float64 // from the neck point to the shoulder point along the form, mm
	Form    float64 // its slope below level, rad
	Wanted  float64 // the garment's, rad
	Neck    float64 // girth at the neck base, mm
	Wadding float64 // thickness of a sheet, mm
}

// neckShare is how far a wedge reaches round the neck, as a part of the neck's girth: from before to behind the
// shoulder seam. From memory.
const neckShare = 0.28

// Rise is how thick the wedge is at its thick end, measured square to the form, mm: with the wanted line turned
// by δ about the thin end, L·tan δ. Positive for a shoulder that is to slope more, its thick end at the neck; negative for one that
// is to be squarer, its thick end at the arm.
func (s Shoulder) Rise() float64 { return s.Length * math.Tan(s.Wanted-s.Form) }

// Wedge returns the triangles for one shoulder, symmetric about the shoulder seam: wide end and thick end at the neck, point to the arm (in
// handbooks of mounting). Each ends where its upper face would meet the wanted line. A shoulder that is to be squarer gets them the
// other way round. Every triangle has its thick end at the bottom of the page.
func (s Shoulder) Wedge() (Pad, error) {
	const steepest = 80 * math.Pi / 180
	for _, c := range []struct {
		what          string
		value, lo, hi float64
	}{
		{"shoulder length, mm,", s.Length, 10, 400}, {"slope of the form, rad,", s.Form, -steepest, steepest}, {"slope wanted, rad,", s.Wanted, -steepest, steepest},
		{"neck girth, mm,", s.Neck, 100, 1000}, {"wadding, mm,", s.Wadding, 0.5, 60},
	} {
		if err := check(c.what, c.value, c.lo, c.hi); err != nil {
			return Pad{}, err
		}
	}
	rise := s.Rise()
	if err := check("rise of the shoulder, sheets,", math.Abs(rise)/s.Wadding, 0, mostSheets); err != nil {
		return Pad{}, err
	}
	var p Pad
	high := math.Abs(rise)
	for k := sheets(high, s.Wadding); k >= 1; k-- { // the k-th from below is laid last to first
		share := 1 - float64(k)*s.Wadding/high
		if length := share * s.Length; length >= shortest {
			p.Sheets = append(p.Sheets, s.triangle(length, share, rise > 0))
		}
	}
	p.Left = high - float64(len(p.Sheets))*s.Wadding
	return p, nil
}

// arcSteps is how finely the edge at the neck is drawn.
const arcSteps = 12

// triangle has its wide end at the bottom, hollowed to the neck where it lies there, and its point at the top.
func (s Shoulder) triangle(length, share float64, atNeck bool) plane.Ring {
	half := neckShare * s.Neck / 2 * math.Sqrt(share) // small ones are narrower, but not as fast as they are shorter
	if !atNeck {
		return plane.Ring{{X: -half}, {X: half}, {Y: length}}
	}
	r := s.Neck / (2 * math.Pi)
	reach := math.Min(half/r, math.Pi/3) // half the angle round the neck
	var out plane.Ring
	for i := range arcSteps + 1 {
		sin, cos := math.Sincos(reach * (2*float64(i)/arcSteps - 1))
		out = append(out, plane.Point{X: r * sin, Y: r*cos - r})
	}
	return append(out, plane.Point{Y: length})
}
