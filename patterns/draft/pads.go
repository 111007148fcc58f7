package draft

import (
	"fmt"

	"understructure/geometry/pads"
	"understructure/geometry/plane"
	"understructure/patterns/piece"
)

// Where names a place of a pad on the mount, as it stands on its pieces.
type Where struct {
	ID, Name string // "K01-shoulder", "shoulder wedge"
	Count    int    // 2 for a pad on either side
	Point    string // what its upper end points to: "to the arm", "up"
}

// The places of pads. A wedge for a square shoulder has its thick end at the arm.
var (
	SlopingShoulder = Where{"K01-shoulder", "shoulder wedge, thick end at the neck", 2, "to the arm"}
	SquareShoulder  = Where{"K01-shoulder", "shoulder wedge, thick end at the arm", 2, "to the neck"}
	BustPad         = Where{"K02-bust", "bust pad", 2, "up"}
	HipPad          = Where{"K03-hip", "hip pad", 2, "up"}
	ShoulderFill    = Where{"K04-shoulder-fill", "soft fill under the front of the shoulder", 2, "up"}
	BustFill        = Where{"K05-bust-fill", "soft fill under the bust", 2, "up"}
)

// Pad draws the sheets of a pad of wadding of a thickness, the smallest, which is laid first, first; layer is the place of the first in the order of
// laying. Every edge but the thick end of a wedge is marked to be thinned.
func Pad(p pads.Pad, at Where, wadding float64, layer int) []piece.Piece {
	var out []piece.Piece
	for i, ring := range p.Sheets {
		lo, hi := ring.Bounds()
		ring = ring.Move(plane.Point{}.Sub(lo))
		height := hi.Y - lo.Y
		middle := plane.Point{X: -lo.X, Y: height * 0.3}
		name := at.Name
		if len(p.Sheets) > 1 {
			name = fmt.Sprintf("%s: %d of %d, smallest first", at.Name, i+1, len(p.Sheets))
		}
		out = append(out, piece.Piece{
			ID: fmt.Sprintf("%s-%d", at.ID, i+1), Name: name, Material: fmt.Sprintf("loose wadding %g mm", wadding),
			Count: at.Count, Layer: layer + i, Thickness: wadding, Outline: ring,
			Marks: []piece.Mark{
				{Kind: piece.Feather, Points: thinEdge(ring)},
				{Kind: piece.Up, Label: at.Point, Points: []plane.Point{middle, middle.Add(plane.Point{Y: height * 0.4})}},
			},
		})
	}
	return out
}

// thinEdge is the part of an outline that is not its lower end, or all of a round one.
func thinEdge(ring plane.Ring) []plane.Point {
	tip := 0
	for i, q := range ring {
		if q.Y > ring[tip].Y {
			tip = i
		}
	}
	if n := len(ring); tip == n-1 { // a wedge: from its right corner over the point to its left
		return []plane.Point{ring[n-2], ring[n-1], ring[0]}
	}
	return append(append([]plane.Point{}, ring...), ring[0])
}

// Fill draws a soft pad of one sheet.
func Fill(outline plane.Ring, at Where, wadding float64, layer int) []piece.Piece {
	return Pad(pads.Pad{Sheets: []plane.Ring{outline}}, at, wadding, layer)
}

// NeckDisc draws the disc that closes the neck, front up.
func NeckDisc(d pads.Disc, layer int) piece.Piece {
	lo, hi := d.Outline.Bounds()
	x := (lo.X + hi.X) / 2
	p := piece.Piece{
		ID: "D01-neck-disc", Name: "disc for the neck, to be covered", Material: armCard, Count: 1, Layer: layer, Thickness: cardThickness, Outline: d.Outline,
		Marks: []piece.Mark{
			{Kind: piece.CentreFront, Points: []plane.Point{{X: x, Y: hi.Y - tick}, {X: x, Y: hi.Y}}},
			{Kind: piece.CentreBack, Points: []plane.Point{{X: x, Y: lo.Y}, {X: x, Y: lo.Y + tick}}},
		},
	}
	if d.Hole != nil {
		p.Holes = []plane.Ring{d.Hole}
	}
	return p
}
