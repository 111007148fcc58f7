package draft

import (
	"fmt"

	"understructure/geometry/plane"
	"understructure/geometry/sleeve"
	"understructure/patterns/piece"
)

// frillTurn is what is added along both long edges of a strip for the gathers, and at its short ends for the join, mm.
// Common practice, no published source.
const frillTurn = 10.0

// Puff draws the strips of net of a puff, from the shoulder down; each is cut for both arms.
func Puff(p sleeve.Puff, layer int) []piece.Piece {
	var out []piece.Piece
	for i, f := range p.Frills {
		w, h := f.Length+2*frillTurn, 2*(f.Deep+frillTurn)
		where := fmt.Sprintf("round the arm %.0f mm below the armhole", f.At)
		if f.At < 0 {
			where = fmt.Sprintf("on the over-arm, %.0f mm over its side seams", -f.At)
		}
		out = append(out, piece.Piece{
			ID:       fmt.Sprintf("A%02d-frill", 21+i),
			Name:     fmt.Sprintf("frill %d of %d, %s", i+1, len(p.Frills), where),
			Material: puffNet, Count: 2, Layer: layer, Thickness: netThickness,
			Outline: plane.Ring{{}, {X: w}, {X: w, Y: h}, {Y: h}},
			Marks: []piece.Mark{
				{Kind: piece.LevelLine, Label: "fold lengthwise", Points: []plane.Point{{Y: h / 2}, {X: w, Y: h / 2}}},
				{Kind: piece.LevelLine, Label: fmt.Sprintf("gather both layers to %.0f mm (%.1f to 1)", f.Gather, f.Ratio()), Points: []plane.Point{{Y: frillTurn}, {X: w, Y: frillTurn}}},
				{Kind: piece.LevelLine, Points: []plane.Point{{Y: h - frillTurn}, {X: w, Y: h - frillTurn}}},
			},
		})
	}
	return out
}
