package pipeline

import (
	"fmt"
	"math"

	"understructure/geometry/space"
	"understructure/patterns/asbuilt"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// The mount made anew from its pieces is measured at heights this far apart, mm, and from this far inside
// its lower and upper end, where every sheet runs out over its feathered edge.
const (
	tapeGap = 5.0
	tapeEnd = 12.0
)

// tapeSlip is how far a tape may lie from its height, mm: no hand lays it truer, and on the slope of the
// shoulders that much height is several centimetres of girth. From memory, no published source.
const tapeSlip = 4.0

// asBuilt makes the mount a second time from the pieces, and says where it would strain the garment though the
// bare form does not. Nil where no pieces were cut.
func (j *job) asBuilt() *plan.AsBuilt {
	if len(j.pieces) == 0 {
		return nil
	}
	out := &plan.AsBuilt{Objections: []plan.Objection{}}
	for _, o := range asbuilt.Check(j.pieces) {
		out.Objections = append(out.Objections, plan.Objection{Piece: o.Piece, Message: o.Message})
	}
	bare := j.bareForm()
	made, form := asbuilt.Make(bare, j.pieces), asbuilt.Make(bare, only(j.pieces, isCover))
	b := j.bands()
	for z := b.Hip + tapeEnd; z <= b.Neck-tapeEnd; z += tapeGap {
		girth := made.Tape(z)
		out.Heights, out.Girths = append(out.Heights, z+j.waist), append(out.Girths, girth)
		if over := girth - max(j.loosest(z), form.Tape(z)); over > exactTape {
			j.strains = append(j.strains, struct{ height, by float64 }{z, over})
			out.Objections = append(out.Objections, plan.Objection{
				Message: fmt.Sprintf("%.0f mm above the floor the pieces make a mount %.0f mm larger round than the garment", z+j.waist, over)})
		}
	}
	return out
}

// exactTape is how truly the tape round a mount made anew is known, mm: straight lines between its columns
// make it shorter than a smooth one by no more than that.
const exactTape = 1.0

// loosest is the garment's girth within a tape's slip of a height.
func (j *job) loosest(z float64) float64 {
	most := 0.0
	for _, slip := range []float64{-tapeSlip, 0, tapeSlip} {
		s := j.garment.Skin.At(z + slip)
		most = math.Max(most, s.Tape())
	}
	return most
}

// bareForm are the outlines of the form, none where there is no form.
func (j *job) bareForm() asbuilt.Bare {
	var b asbuilt.Bare
	if j.form == nil {
		return b
	}
	const every = 2 // rows of the skin are 2 mm apart; sheets of wadding follow no finer shape
	for i := 0; i < len(j.bare.Z); i += every {
		b.Heights, b.Outlines = append(b.Heights, j.bare.Z[i]), append(b.Outlines, j.bare.R[i].Ring())
	}
	return b
}

func only(pieces []piece.Piece, is func(piece.Piece) bool) []piece.Piece {
	var out []piece.Piece
	for _, p := range pieces {
		if is(p) {
			out = append(out, p)
		}
	}
	return out
}

// raised are the pieces with their positions that much higher.
func raised(pieces []piece.Piece, by float64) []piece.Piece {
	out := make([]piece.Piece, len(pieces))
	for i, p := range pieces {
		at := make([]space.Point, len(p.Position))
		for k, q := range p.Position {
			at[k] = q.Add(space.Point{Z: by})
		}
		if p.Position = at; len(at) == 0 {
			p.Position = nil
		}
		out[i] = p
	}
	return out
}
