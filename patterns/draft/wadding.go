// Package draft turns each part of a mount into flat pieces with their marks.
// It does not place pieces on paper.
package draft

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"understructure/geometry/flatten"
	"understructure/geometry/padding"
	"understructure/geometry/parallel"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/patterns/piece"
)

// Line is a level to mark on the pieces it crosses.
type Line struct {
	Name   string
	Height float64
}

// Bands are the heights that divide the body into zones, bottom to top.
type Bands struct{ Hip, Waist, Chest, Neck float64 }

// quarters are the four quarters of the body, by the column each begins at.
var quarters = []struct {
	name string
	from int
	back bool
}{
	{"right", section.Right, false}, {"left", section.Front, false},
	{"left", section.Left, true}, {"right", section.Back, true},
}

// Zones divides the body as it is padded: hips, bust and back, shoulders, each a quarter
// of the way round, so that every seam falls on a balance line.
func Zones(b Bands) []padding.Zone {
	// The ends are open: how far a layer goes is for the layer to say.
	const open = 100.0
	var zs []padding.Zone
	for _, band := range []struct {
		front, back string
		lo, hi      float64
	}{{"hip front", "hip back", b.Hip - open, b.Waist}, {"bust", "back", b.Waist, b.Chest}, {"shoulder front", "shoulder back", b.Chest, b.Neck + open}} {
		for _, q := range quarters {
			name := band.front
			if q.back {
				name = band.back
			}
			zs = append(zs, padding.Zone{Name: name + ", " + q.name, From: q.from, To: q.from + section.Directions/4, Lo: band.lo, Hi: band.hi})
		}
	}
	return zs
}

// Strips divides the body into a right and a left half only: for the narrow strips that
// fill the steps of a stacked core.
func Strips(b Bands) []padding.Zone {
	return []padding.Zone{
		{Name: "right", From: section.Back, To: section.Back + section.Directions/2, Lo: b.Hip - 100, Hi: b.Neck + 100},
		{Name: "left", From: section.Front, To: section.Front + section.Directions/2, Lo: b.Hip - 100, Hi: b.Neck + 100},
	}
}

// part is a patch on its way to a piece.
type part struct {
	layer     int
	thickness float64
	patch     padding.Patch
	flat      flatten.Flat
	id, name  string
}

// Wadding lays every layer flat, in the order in which the layers are laid on the form. zones chooses
// how a layer is divided. The error names the piece that cannot be laid.
func Wadding(ctx context.Context, m padding.Mount, zones func(l padding.Layer) []padding.Zone, lines []Line) ([]piece.Piece, error) {
	var whole []part
	layers := 0
	symmetric := m.Symmetric()
	for _, l := range m.Layers {
		zs := zones(l)
		if symmetric {
			zs = oneSide(zs)
		}
		patches := m.Patches(l, zs)
		if len(patches) > 0 { // a layer of scraps too small to cut is none
			layers++
		}
		for _, p := range patches {
			whole = append(whole, part{layer: layers, thickness: l.Thickness, patch: p})
		}
	}
	laid := make([][]part, len(whole))
	err := each(ctx, len(whole), func(i int) (err error) {
		laid[i], err = lay(whole[i], 0)
		return err
	})
	if err != nil {
		return nil, err
	}
	parts := slices.Concat(laid...)
	name(parts, layers)
	pieces := make([]piece.Piece, len(parts))
	for i, p := range parts {
		pieces[i] = piece.Piece{
			ID: p.id, Name: p.name, Material: fmt.Sprintf("wadding %g mm", p.thickness), Count: 1,
			Layer: p.layer, Thickness: p.thickness, Outline: p.flat.Outline(), Strain: p.flat.Strain.Greatest,
			Marks: marks(p.flat, p.patch, lines), Position: p.position(),
		}
	}
	join(pieces, parts, "butt", symmetric)
	if symmetric {
		pieces = both(pieces)
	}
	return pieces, nil
}

// position is where the corners of the outline lie on the mount.
func (p part) position() []space.Point {
	out := make([]space.Point, len(p.flat.Boundary))
	for k, v := range p.flat.Boundary {
		out[k] = p.flat.Surface[v]
	}
	return out
}

// mostStrain is the stretch above which a dart is opened: what soft wadding takes up in the
// hand. Common practice, no published source for the figure.
const mostStrain = 0.03

// tooStrained is the stretch at which a piece is divided by a full seam: darts have not
// helped, because it is saddled there, and a slit would make it overlap itself.
const tooStrained = 0.05

// mostHalvings is how often a patch that cannot be laid in one piece is divided, and
// seamsAtMost how often one that only strains is.
const mostHalvings, seamsAtMost = 7, 2

// scrap is an area not worth cutting that dividing a piece may leave, mm²: a thumbnail.
const scrap = 200.0

// lay flattens a part, with darts where they help, and divides it where it cannot lie flat
// or strains too much. What strains but will not lie better divided stays whole.
func lay(p part, depth int) ([]part, error) {
	darts := 2
	if p.patch.Mesh.Saddle() {
		darts = 0
	}
	flat, err := flatten.Lay(p.patch.Mesh, flatten.Options{Greatest: mostStrain, MaxDarts: darts})
	p.flat = flat
	if err == nil && (flat.Strain.Greatest <= tooStrained || depth >= seamsAtMost) {
		return []part{p}, nil
	}
	if err != nil && (depth == mostHalvings || len(p.patch.Mesh.Triangles) < 2) {
		return nil, fmt.Errorf("draft: layer %d, %s: %w", p.layer, p.patch.Zone.Name, err)
	}
	halves, divided := layHalves(p, depth)
	if divided != nil && err == nil {
		return []part{p}, nil
	}
	return halves, divided
}

// layHalves lays the halves of a part; scraps are left off.
func layHalves(p part, depth int) ([]part, error) {
	var out []part
	for _, half := range p.patch.Halves() {
		if half.Mesh.Area() < scrap {
			continue
		}
		laid, err := lay(part{layer: p.layer, thickness: p.thickness, patch: half}, depth+1)
		if err != nil {
			return nil, err
		}
		out = append(out, laid...)
	}
	return out, nil
}

// name gives the pieces of every layer their names and short names.
func name(parts []part, layers int) {
	type place struct {
		layer int
		zone  string
	}
	count, seen := map[place]int{}, map[place]int{}
	for _, p := range parts {
		count[place{p.layer, p.patch.Zone.Name}]++
	}
	for i := range parts {
		p := &parts[i]
		at := place{p.layer, p.patch.Zone.Name}
		seen[at]++
		p.name = fmt.Sprintf("layer %d of %d: %s", p.layer, layers, at.zone)
		p.id = fmt.Sprintf("L%02d-%s", p.layer, strings.NewReplacer(", ", "-", " ", "-").Replace(at.zone))
		if count[at] > 1 {
			p.name += fmt.Sprintf(" (%d of %d)", seen[at], count[at])
			p.id += fmt.Sprintf("-%d", seen[at])
		}
	}
}

// each runs f for 0…n−1 on all processors and returns the error of the lowest number.
func each(ctx context.Context, n int, f func(i int) error) error {
	errs := make([]error, n)
	parallel.Each(n, func(i int) {
		if errs[i] = ctx.Err(); errs[i] == nil {
			errs[i] = f(i)
		}
	})
	return cmp.Or(errs...)
}
