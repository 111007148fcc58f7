package draft

import (
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/piece"
)

// tubeBones is how far apart the bones of a tube lie at most, mm, and tubeOverlap how far their
// ends lie over each other. From memory.
const tubeBones, tubeOverlap = 250.0, 40.0

// tube drafts the boned petticoat that stands in for legs: as long as the skirt's shortest
// length from waist to hem, as wide as the padded hip (Museum of New Zealand Te Papa Tongarewa, how to make a garment fit a mannequin).
func (b *supporter) tube() error {
	around, long := b.stock.PaddedHip, math.Min(b.skirt.Front.Length, math.Min(b.skirt.Right.Length, math.Min(b.skirt.Left.Length, b.skirt.Back.Length)))
	ring := plane.Ring{{}, {X: around}, {X: around, Y: long}, {Y: long}}
	id := b.number('P') + "-tube"
	p := piece.Piece{
		ID: id, Name: "tube petticoat, in place of legs", Material: calico, Count: 1, Thickness: calicoThickness, Outline: ring,
		Marks: []piece.Mark{{Kind: piece.Allowance, Points: ring.Offset(clothAllowance)}, grain(ring)},
		Seams: []piece.Seam{
			{To: id, Kind: "sewn", Length: long, Points: []plane.Point{ring[1], ring[2]}},
			{To: id, Kind: "sewn", Length: long, Points: []plane.Point{ring[3], ring[0]}},
		},
	}
	n := max(2, int(math.Ceil(long/tubeBones)))
	for i := range n {
		y := channel + (long-2*channel)*float64(i)/float64(n)
		p.Marks = append(p.Marks, piece.Mark{Kind: piece.LevelLine, Label: "boning", Points: []plane.Point{{Y: y}, {X: around, Y: y}}})
	}
	for _, k := range []float64{0.25, 0.75} {
		p.Marks = append(p.Marks, notchAt([]plane.Point{ring[1], ring[2]}, k*long), notchAt([]plane.Point{ring[3], ring[0]}, k*long))
	}
	b.add(p)
	b.cut(Cut{Name: "boning of the tube", Material: "flexible plastic boning", Length: around + tubeOverlap, Width: 8, Count: n, Note: "round the tube, ends overlapping and bound"})
	b.petticoats = append(b.petticoats, "tube petticoat")
	return nil
}
