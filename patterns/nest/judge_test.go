package nest_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"understructure/geometry/plane"
	"understructure/patterns/nest"
)

// polygon hands a ring to an independent library of plane geometry.
func polygon(r plane.Ring) geom.Geometry {
	var xy []float64
	for k := range len(r) + 1 {
		p := r[k%len(r)]
		xy = append(xy, p.X, p.Y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
}

// judge holds a layout against the task, by that library: every piece there once, nothing over the edge of the
// stock, no overlap, and the gap kept.
func judge(t testing.TB, l nest.Layout, pieces []nest.Piece, stock func(bin int) plane.Ring, gap float64) {
	t.Helper()
	got := make([]int, len(pieces))
	seen := map[[2]int]bool{}
	byBin := map[int][]geom.Geometry{}
	area := make([]float64, len(l.Bins))
	for _, p := range l.Placements {
		got[p.Piece]++
		if key := [2]int{p.Piece, p.Copy}; seen[key] {
			t.Errorf("piece %d copy %d is laid twice", p.Piece, p.Copy)
		} else {
			seen[key] = true
		}
		r := p.Ring(pieces[p.Piece].Outline)
		if a, b := r.Area(), pieces[p.Piece].Outline.Area(); math.Abs(a-b) > 1e-6*math.Abs(b) {
			t.Errorf("piece %d changed its area from %g to %g", p.Piece, b, a)
		}
		area[p.Bin] += math.Abs(r.Area())
		one := polygon(r)
		out, err := geom.Difference(one, polygon(stock(p.Bin)))
		if err != nil {
			t.Fatal(err)
		}
		if out.Area() > 1e-4*r.Perimeter() { // a ten-thousandth of a millimetre along the edge
			t.Errorf("piece %d copy %d: %g mm² outside its stock", p.Piece, p.Copy, out.Area())
		}
		for _, o := range byBin[p.Bin] {
			both, err := geom.Intersection(one, o)
			if err != nil {
				t.Fatal(err)
			}
			if both.Area() > 0 {
				t.Errorf("piece %d copy %d overlaps another by %g mm²", p.Piece, p.Copy, both.Area())
			}
			if d, ok := geom.Distance(one, o); !ok || d < gap {
				t.Errorf("piece %d copy %d is %g mm from another, want %g", p.Piece, p.Copy, d, gap)
			}
		}
		byBin[p.Bin] = append(byBin[p.Bin], one)
	}
	for i, p := range pieces {
		if got[i]+l.Left[i] != p.Count {
			t.Errorf("piece %d: %d laid and %d left, want %d", i, got[i], l.Left[i], p.Count)
		}
	}
	for k, b := range l.Bins {
		if math.Abs(b.Utilisation*b.Area-area[k]) > 1e-6*b.Area || math.Abs(b.Area-area[k]-b.Waste) > 1e-6*b.Area {
			t.Errorf("bin %d: utilisation %g and waste %g of %g mm², pieces come to %g", k, b.Utilisation, b.Waste, b.Area, area[k])
		}
	}
}

// box is a rectangle from the origin.
func box(w, h float64) plane.Ring { return plane.Ring{{}, {X: w}, {X: w, Y: h}, {Y: h}} }
