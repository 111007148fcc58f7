package padding

import (
	"understructure/geometry/flatten"
)

// Zone is a part of the body that is padded for itself: from one column to another,
// counter-clockwise, and from one height to another.
type Zone struct {
	Name     string
	From, To int // columns, From < To ≤ From + section.Directions
	Lo, Hi   float64
}

// Border says on which edges of its zone a point lies, and whether on the edge of the layer.
type Border uint8

// The borders of a zone. East is the first column, West the last: seen from outside, the
// first column lies on the left hand.
const (
	First Border = 1 << iota
	Last
	Bottom
	Top
	Edge // the sheet itself ends here
	Step // it ends against a step of the core
)

// Patch is the part of one layer that lies in one zone, in one piece.
type Patch struct {
	Zone    Zone
	Mesh    flatten.Patch // half a sheet above what lies beneath, where a bent sheet keeps its length
	Borders []Border      // one a point
	Keys    []Key         // one a point: the same place in a neighbouring zone has the same key
}

// Key names a point of a layer: a crossing of row and column, or a place between two.
type Key [4]int

// Less orders keys, so that what lies between two has one name from both sides.
func (k Key) Less(other Key) bool {
	for i := range k {
		if k[i] != other[i] {
			return k[i] < other[i]
		}
	}
	return false
}

// least is the smallest piece worth cutting, in square millimetres: a thumbnail.
// From memory; smaller ones are left off.
const least = 150.0

// cell is how finely a piece is drawn: every second column, rows about 8 mm apart.
const columnStep, rowGap = 2, 8.0

// Patches cuts a layer along the zones' borders, in the order of the zones.
func (m *Mount) Patches(l Layer, zones []Zone) []Patch {
	var out []Patch
	for _, z := range zones {
		out = append(out, m.disks(l, z, 0)...)
	}
	return out
}

// disks returns the pieces of a zone; a piece with a hole in it is divided until it has none.
func (m *Mount) disks(l Layer, z Zone, depth int) []Patch {
	var out []Patch
	for _, p := range m.clip(l, z).parts() {
		if p.Mesh.Area() < least {
			continue
		}
		if _, err := p.Mesh.Boundary(); err != nil && depth < 4 && z.To-z.From > 2*columnStep {
			a, b := z, z
			middle := (z.From + z.To) / 2 / columnStep * columnStep
			a.To, b.From = middle, middle
			return append(m.disks(l, a, depth+1), m.disks(l, b, depth+1)...)
		}
		out = append(out, p)
	}
	return out
}
