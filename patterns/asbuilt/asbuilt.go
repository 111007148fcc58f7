// Package asbuilt makes a mount a second time, from its pieces alone: it lays each flat piece
// where its position says, sheet upon sheet, over the bare form or over the stacked slices, and puts a tape round what
// comes out. It shares no step with the way in which the pieces were found, so that a slip there is seen here.
//
// It does not know the wanted shape, nor how a layer was found; it works from what the maker is handed.
package asbuilt

import (
	"slices"
	"strings"

	"understructure/geometry/plane"
	"understructure/patterns/piece"
)

// Bare is the form as measured: its outlines by height, bottom to top. Outlines may be nil where
// there is no form.
type Bare struct {
	Heights  []float64
	Outlines []plane.Ring
}

// Mount is the mount made from its pieces.
type Mount struct{ skin *grid }

// Make lays the pieces over a bare form, or, where there are slices among them, over the
// stack of these. The zero Mount is returned where there is nothing to lay them on.
func Make(bare Bare, pieces []piece.Piece) Mount {
	skin := newGrid(bare)
	if stack := of(pieces, "plank"); len(stack) > 0 {
		skin = newGrid(stacked(stack))
		skin.smoothNormals(stack[0].Thickness)
	}
	if skin == nil {
		return Mount{}
	}
	for _, sheets := range byLayer(of(pieces, "wadding")) {
		skin.cover(sheets)
	}
	if panels := of(pieces, "cover"); len(panels) > 0 {
		skin.wrap(panels[0].Thickness)
	}
	return Mount{skin}
}

// of picks the pieces of one kind of material, in order of laying.
func of(pieces []piece.Piece, material string) []piece.Piece {
	var out []piece.Piece
	for _, p := range pieces {
		if strings.HasPrefix(p.Material, material) {
			out = append(out, p)
		}
	}
	slices.SortStableFunc(out, func(a, b piece.Piece) int { return a.Layer - b.Layer })
	return out
}

// byLayer groups sorted pieces into those that are laid together.
func byLayer(pieces []piece.Piece) [][]piece.Piece {
	var out [][]piece.Piece
	for i, p := range pieces {
		if i == 0 || p.Layer != pieces[i-1].Layer {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], p)
	}
	return out
}
