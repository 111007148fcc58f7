package draft

import (
	"fmt"

	"understructure/geometry/plane"
	"understructure/patterns/piece"
)

// skirtNet is what tiers are cut from, and its thickness, mm; from memory.
const skirtNet, netThickness = "net", 0.4

// net drafts the tiers of gathered net that go over the petticoats, on a waist tape of their own.
func (b *supporter) net() error {
	p, err := b.skirt.Petticoat(b.stock.Hoops)
	if err != nil {
		return err
	}
	sil := b.skirt.Silhouette
	domed := sil.Front.Dome+2*sil.Side.Dome+sil.Back.Dome > 2
	for _, t := range p.Net(b.stock.Waist, b.stock.NetWidth, domed) {
		wide := t.Flat / float64(t.Widths)
		ring := plane.Ring{{}, {X: wide}, {X: wide, Y: t.Depth}, {Y: t.Depth}}
		id := b.number('N')
		b.add(piece.Piece{
			ID: id, Name: fmt.Sprintf("net, %s: %d widths joined to %.0f mm, %d deep", t.Name, t.Widths, t.Flat, t.Layers), Material: skirtNet, Count: t.Widths * t.Layers,
			Thickness: netThickness, Outline: ring,
			Marks: []piece.Mark{
				{Kind: piece.Allowance, Points: ring.Offset(netJoin)},
				{Kind: piece.LevelLine, Label: fmt.Sprintf("gather all widths to %.0f mm (%.1f to 1)", t.Finished, t.Ratio()), Points: []plane.Point{ring[3], ring[2]}},
				grain(ring),
			},
			Seams: []piece.Seam{{To: id, Kind: "sewn", Length: t.Depth, Points: []plane.Point{ring[1], ring[2]}}, {To: id, Kind: "sewn", Length: t.Depth, Points: []plane.Point{ring[3], ring[0]}}},
		})
		b.cut(Cut{Name: "tape of the " + t.Name, Material: "narrow cotton tape", Length: t.Finished + 2*tapeSpare, Width: 10, Count: t.Layers,
			Note: fmt.Sprintf("%.0f mm of net is gathered to it, %.1f to 1, and zigzagged; 2 cm spare at each end", t.Flat, t.Ratio())})
	}
	b.petticoats = append(b.petticoats, "net")
	return nil
}

// netJoin is the allowance at the edges of net, mm; from memory.
const netJoin = 10.0
