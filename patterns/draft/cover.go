package draft

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"understructure/geometry/cover"
	"understructure/geometry/flatten"
	"understructure/geometry/padding"
	"understructure/geometry/section"
	"understructure/patterns/piece"
)

// CoverAllowance is how far outside the seam line a cover is cut, mm (Museum of New Zealand
// Te Papa Tongarewa, "How to make a garment fit a mannequin": 2 cm outside the line of pins).
const CoverAllowance = 20.0

// coverStrain is the greatest strain left in a panel of the cover, as a fraction: what jersey
// gives without a pull that would be felt. Common practice, no published source for the figure.
const coverStrain = 0.028

// kept are the shares of coverStrain up to which a panel may be strained before its seams are
// made as long as their neighbours', which takes the rest; the second where the first has not been enough.
var kept = [...]float64{0.95, 0.8}

// Cover lays the cover flat, as panels from side to middle that are divided by seams where they
// would strain. Both edges of a seam are as long as its line on the mount, between any two
// notches; the outline is the seam line. layer is its place in the order of laying.
func Cover(ctx context.Context, c cover.Cover, symmetric bool, layer int, lines []Line) ([]piece.Piece, error) {
	var best []piece.Piece
	for _, share := range kept {
		pieces, err := coverIn(ctx, c, share*coverStrain, symmetric, layer, lines)
		if err != nil {
			return nil, err
		}
		if best == nil || mostStrained(pieces) < mostStrained(best) {
			best = pieces
		}
		if mostStrained(best) <= coverStrain {
			break
		}
	}
	return best, nil
}

func mostStrained(pieces []piece.Piece) float64 {
	most := 0.0
	for _, p := range pieces {
		most = math.Max(most, p.Strain)
	}
	return most
}

// coverIn lays a cover divided so that no panel strains more than the greatest given before it is sewn.
func coverIn(ctx context.Context, c cover.Cover, greatest float64, symmetric bool, layer int, lines []Line) ([]piece.Piece, error) {
	zones, err := panels(ctx, c, greatest, symmetric)
	if err != nil {
		return nil, err
	}
	patches := c.Panels(zones)
	seams := c.Seams(patches)
	flats, err := laidToSew(ctx, patches, seams)
	if err != nil {
		return nil, err
	}
	parts, pieces := make([]part, len(patches)), make([]piece.Piece, len(patches))
	for i := range parts {
		p := &parts[i]
		*p = part{layer: layer, thickness: c.Thickness, patch: patches[i], flat: flats[i]}
		p.id, p.name = coverName(i, zones)
		pieces[i] = piece.Piece{
			ID: p.id, Name: p.name, Material: "cover", Count: 1, Layer: layer, Thickness: c.Thickness,
			Outline: p.flat.Outline(), Strain: p.flat.Strain.Greatest, Marks: coverMarks(*p, seams[i], lines), Position: p.position(),
		}
	}
	join(pieces, parts, "sewn", symmetric)
	if symmetric {
		pieces = both(pieces)
	}
	return pieces, nil
}

// laidToSew lays panels flat with every seam as long as its line on the mount.
func laidToSew(ctx context.Context, patches []padding.Patch, seams [][][]int) ([]flatten.Flat, error) {
	flats := make([]flatten.Flat, len(patches))
	err := each(ctx, len(patches), func(i int) (err error) {
		if flats[i], err = flatten.Lay(patches[i].Mesh, flatten.Options{Keep: seams[i]}); err != nil {
			return fmt.Errorf("draft: cover, %s: %w", patches[i].Zone.Name, err)
		}
		return nil
	})
	return flats, err
}

// panels divides the cover, a quarter at a time.
func panels(ctx context.Context, c cover.Cover, greatest float64, symmetric bool) ([]padding.Zone, error) {
	var whole []padding.Zone
	for _, q := range quarters {
		name := "front, " + q.name
		if q.back {
			name = "back, " + q.name
		}
		whole = append(whole, c.Zone(name, q.from, q.from+section.Directions/4))
	}
	if symmetric {
		whole = oneSide(whole)
	}
	divided := make([][]padding.Zone, len(whole))
	err := each(ctx, len(whole), func(i int) error {
		divided[i] = c.Divide(whole[i], greatest)
		return nil
	})
	return slices.Concat(divided...), err
}

// coverName is the name of the i-th panel, and in words where it is one of several.
func coverName(i int, zones []padding.Zone) (id, name string) {
	z := zones[i]
	id = fmt.Sprintf("C%02d-%s", i+1, strings.ReplaceAll(z.Name, ", ", "-"))
	of, number := 0, 0
	for k := range zones {
		if zones[k].Name == z.Name {
			of++
			if k <= i {
				number++
			}
		}
	}
	if of == 1 {
		return id, "cover: " + z.Name
	}
	return id, fmt.Sprintf("cover: %s (%d of %d)", z.Name, number, of)
}
