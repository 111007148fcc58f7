package cover

import (
	"understructure/geometry/padding"
	"understructure/geometry/section"
)

// Panels gathers the cover's skin in every zone, one panel each. Zones begin and end at
// columns that columnStep divides and at levels.
func (c Cover) Panels(zones []padding.Zone) []padding.Patch {
	out := make([]padding.Patch, len(zones))
	for i, z := range zones {
		out[i] = c.panel(z, 1)
	}
	return out
}

// panel gathers the triangles of a zone, every so many rows and columns; a level is never left out, nor an end.
func (c Cover) panel(z padding.Zone, every int) padding.Patch {
	p := padding.Patch{Zone: z}
	rows, columns := c.rows(z, every), columns(z, every)
	n := len(columns)
	for a, i := range rows {
		for b, j := range columns {
			j %= section.Directions
			v := len(p.Mesh.Points)
			p.Mesh.Points = append(p.Mesh.Points, c.shell[i][j])
			p.Keys = append(p.Keys, padding.Key{i, j, i, j})
			p.Borders = append(p.Borders, border(a, len(rows), padding.Bottom, padding.Top)|border(b, n, padding.First, padding.Last))
			if a > 0 && b > 0 {
				p.Mesh.Triangles = append(p.Mesh.Triangles, [3]int{v - n - 1, v - n, v}, [3]int{v - n - 1, v, v - 1})
			}
		}
	}
	return p
}

// rows of a zone.
func (c Cover) rows(z padding.Zone, every int) []int {
	var rows []int
	for i, h := range c.z {
		if h < z.Lo-1e-6 || h > z.Hi+1e-6 {
			continue
		}
		if n := len(rows); n == 0 || i-rows[n-1] >= every || c.level(i) || h > z.Hi-1e-6 {
			rows = append(rows, i)
		}
	}
	return rows
}

// columns of a zone.
func columns(z padding.Zone, every int) []int {
	var all []int
	for j := z.From; j < z.To; j += every * columnStep {
		all = append(all, j)
	}
	return append(all, z.To)
}

// border is the border of the k-th of n.
func border(k, n int, first, last padding.Border) padding.Border {
	switch k {
	case 0:
		return first
	case n - 1:
		return last
	}
	return 0
}
