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
	b.boned("tube", "tube petticoat, in place of legs", b.stock.PaddedHip, 1)
	b.petticoats = append(b.petticoats, "tube petticoat")
	return nil
}

// legShare is the girth of a leg's tube as a part of the hip's: less than a thigh has, so that the
// tube goes into the leg. From memory; the leg's own girth, taken, is better.
const legShare = 0.45

// legs drafts a boned tube for each leg of breeches or trousers. How they are made is common practice, no published source.
func (b *supporter) legs() error {
	b.boned("leg", "leg tube; narrow it to the leg's own girth", legShare*b.stock.PaddedHip, 2)
	return nil
}

// boned adds a tube of cloth with bones round it, and the bones.
func (b *supporter) boned(word, name string, around float64, count int) {
	s := b.skirt
	long := min(s.Front.Length, s.Right.Length, s.Left.Length, s.Back.Length)
	ring := plane.Ring{{}, {X: around}, {X: around, Y: long}, {Y: long}}
	right, left := []plane.Point{ring[1], ring[2]}, []plane.Point{ring[3], ring[0]}
	id := b.number('P') + "-" + word
	p := piece.Piece{
		ID: id, Name: name, Material: calico, Count: count, Thickness: calicoThickness, Outline: ring,
		Marks: []piece.Mark{{Kind: piece.Allowance, Points: ring.Offset(clothAllowance)}, grain(ring)},
		Seams: []piece.Seam{{To: id, Kind: "sewn", Length: long, Points: right}, {To: id, Kind: "sewn", Length: long, Points: left}},
	}
	n := max(2, int(math.Ceil(long/tubeBones)))
	for i := range n {
		y := channel + (long-2*channel)*float64(i)/float64(n)
		p.Marks = append(p.Marks, piece.Mark{Kind: piece.LevelLine, Label: "boning", Points: []plane.Point{{Y: y}, {X: around, Y: y}}})
	}
	for _, k := range []float64{0.25, 0.75} {
		p.Marks = append(p.Marks, notchAt(right, k*long), notchAt(left, k*long))
	}
	b.add(p)
	b.cut(Cut{Name: "boning of the " + word, Material: "flexible plastic boning", Length: around + tubeOverlap, Width: 8, Count: n * count, Note: "round the tube, ends overlapping and bound"})
}
