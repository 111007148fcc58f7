package rest

import (
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// Flat is a garment that lies on its back, fastened: every girth is twice as long as the cloth is wide. Its middle is
// at x = 0, its lowest point at y = 0 and the highest of its collar at Length; the wearer's left is at the right.
type Flat struct {
	Front   plane.Ring  // bodice, and skirt where there is one, in one
	Back    plane.Ring  // the same from behind; only the neckline differs
	Sleeve  plane.Ring  // of the wearer's left arm, beside the bodice; nil for none
	Waist   plane.Point // where the waist ends at the right
	Length  float64
	Across  float64 // from shoulder point to shoulder point
	Breadth float64 // from the outside of one sleeve to that of the other, or of the hem
	Body    float64 // breadth without sleeves
	Trunk   float64 // breadth down to the waist, or of all where there is no skirt, which must not be folded
	Area    float64 // of all that lies there, sleeves included
}

// Where the parts of a bodice that nobody measured lie: how deep the neck is cut in front and behind, how wide an armhole
// is beside what is measured of it, by which part of a sleeve its elbow lies. For the outline only; from memory.
const (
	pitDepth, napeDepth = 75.0, 18.0
	elbowPart           = 0.55
	usualSlope          = 24.3 // mean of 600 women, landmarks in the R package Anthropometry
	usualNeck           = 0.42 // neck base girth as a part of the bust girth
	hipDrop             = 180.0
)

// Lie lays a garment flat. An error names the reading that is missing or impossible.
func Lie(g Garment) (Flat, error) {
	if err := g.check(); err != nil {
		return Flat{}, err
	}
	b := g.Bodice
	neck := first(b, usualNeck*b[measure.BustGirth], measure.NeckBaseGirth) / (2 * math.Pi) * 1.15
	sin, cos := math.Sincos(first(b, usualSlope, measure.ShoulderSlope) * math.Pi / 180)
	shoulder := first(b, 0.12*b[measure.BustGirth]+10, measure.ShoulderLength)
	point := plane.Point{X: neck + shoulder*cos, Y: napeDepth - shoulder*sin} // from the nape
	under := -b[measure.BackWaist] + first(b, 0.5*b[measure.BackWaist], measure.SideLength)
	under = math.Min(under, point.Y-40)

	edge := g.edge(under)
	low := edge[len(edge)-1].Y
	if s := g.sleeve(point, under); s != nil {
		lo, _ := s.Bounds()
		low = math.Min(low, lo.Y)
	}
	hem := g.hem(edge[len(edge)-1])
	for _, p := range hem {
		low = math.Min(low, p.Y)
	}
	half := append([]plane.Point{{X: neck, Y: napeDepth}}, armhole(point, edge[0], first(b, 0, measure.AcrossBack, measure.AcrossFront)/2)...)
	half = append(append(half, edge...), hem...)

	up := plane.Point{Y: -low}
	f := Flat{Length: napeDepth - low, Across: 2 * point.X, Waist: plane.Point{X: b[measure.WaistGirth] / 4, Y: -b[measure.BackWaist] - low}}
	f.Front = whole(neckline(neck, napeDepth-pitDepth), half).Move(up)
	f.Back = whole(neckline(neck, 0), half).Move(up)
	if s := g.sleeve(point, under); s != nil {
		f.Sleeve = s.Move(up)
	}
	f.sum(len(g.Skirt) > 0)
	return f, nil
}

// sum fills in the sizes of what was drawn.
func (f *Flat) sum(skirt bool) {
	for _, p := range f.Front {
		f.Body = math.Max(f.Body, 2*p.X)
		if !skirt || p.Y > f.Waist.Y+1e-6 {
			f.Trunk = math.Max(f.Trunk, 2*p.X)
		}
	}
	f.Breadth, f.Area = f.Body, f.Front.Area()
	if f.Sleeve != nil {
		_, hi := f.Sleeve.Bounds()
		f.Breadth, f.Area = math.Max(f.Breadth, 2*hi.X), f.Area+2*f.Sleeve.Area()
	}
}

// edge is the right edge from under the arm down to the hem; nape at y = 0. Bodice and skirt meet at the waist in a corner.
func (g Garment) edge(under float64) []plane.Point {
	b, waist := g.Bodice, -g.Bodice[measure.BackWaist]
	upper := side{}
	upper.add(under, b[measure.BustGirth])
	if v, ok := b[measure.UnderbustGirth]; ok {
		upper.add(waist+(under-waist)*0.45, v)
	}
	upper.add(waist, b[measure.WaistGirth])
	if len(g.Skirt) == 0 {
		if v, ok := b[measure.WaistToHip]; ok {
			upper.add(waist-first(b, 0.45*v, measure.WaistToHighHip), b[measure.HighHipGirth])
			upper.add(waist-v, b[measure.HipGirth])
		}
		return upper.smooth()
	}
	long := sideOf(g.Skirt)
	lower := side{}
	lower.add(waist, first(g.Skirt, b[measure.WaistGirth], measure.WaistGirth))
	lower.add(waist-math.Min(first(b, hipDrop, measure.WaistToHip), long/2), g.Skirt[measure.HipGirth])
	lower.add(waist-long, first(g.Skirt, first(b, b[measure.WaistGirth]*1.5, measure.HipGirth), measure.HemGirth, measure.HipGirth))
	return append(upper.smooth(), lower.smooth()...)
}
