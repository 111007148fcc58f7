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
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/patterns/piece"
)

// CoverAllowance is how far outside the seam line a cover is cut, mm (Museum of New Zealand
// Te Papa Tongarewa, "How to make a garment fit a mannequin": 2 cm outside the line of pins).
const CoverAllowance = 20.0

// coverStrain is the greatest strain left in a panel of the cover, as a fraction: what jersey
// gives without a pull that would be felt. Common practice, no published source for the figure.
const coverStrain = 0.028

// kept is the share of coverStrain up to which a panel may be strained before its seams are
// made as long as their neighbours', which takes the rest.
const kept = 0.95

// Cover lays the cover flat, as panels from side to middle that are divided by seams where they
// would strain. Both edges of a seam are as long as its line on the mount, between any two
// notches; the outline is the seam line. layer is its place in the order of laying.
func Cover(ctx context.Context, c cover.Cover, symmetric bool, layer int, lines []Line) ([]piece.Piece, error) {
	zones, err := panels(ctx, c, symmetric)
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
func panels(ctx context.Context, c cover.Cover, symmetric bool) ([]padding.Zone, error) {
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
		divided[i] = c.Divide(whole[i], kept*coverStrain)
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

// coverMarks draws the line to cut, the levels, the balance lines, the notches and which way is up.
func coverMarks(p part, seams [][]int, lines []Line) []piece.Mark {
	ring := p.flat.Outline()
	out := []piece.Mark{{Kind: piece.Allowance, Points: ring.Offset(CoverAllowance)}}
	for _, l := range lines {
		if l.Height <= p.patch.Zone.Lo+1e-6 || l.Height >= p.patch.Zone.Hi-1e-6 {
			continue // it is the edge itself
		}
		for _, path := range levelPaths(p.flat, l.Height) {
			out = append(out, piece.Mark{Kind: piece.LevelLine, Label: l.Name, Points: path})
		}
	}
	out = append(out, borders(p.flat, p.patch)...)
	for _, v := range notched(p.patch, seams) {
		out = append(out, notch(ring, slices.Index(p.flat.Boundary, v)))
	}
	return append(out, up(p.flat))
}

// notched are the places along the seams of a panel where both sides are held together, corners left out.
func notched(p padding.Patch, seams [][]int) []int {
	var out []int
	for i, run := range seams {
		v := run[0]
		before := seams[(i+len(seams)-1)%len(seams)]
		if b := p.Borders[v]; before[len(before)-1] == v && (b&(b-1)) == 0 {
			out = append(out, v)
		}
	}
	return out
}

// notchLength is that of a notch, mm: well inside the allowance.
const notchLength = 8.0

// notch is a short line square to the seam line, from its i-th corner outward.
func notch(ring plane.Ring, i int) piece.Mark {
	n := len(ring)
	along := ring[(i+1)%n].Sub(ring[(i+n-1)%n])
	out := plane.Point{X: along.Y, Y: -along.X}.Mul(notchLength / math.Max(along.Norm(), 1e-9))
	return piece.Mark{Kind: piece.Notch, Points: []plane.Point{ring[i], ring[i].Add(out)}}
}
