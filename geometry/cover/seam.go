package cover

import (
	"cmp"
	"slices"

	"understructure/geometry/padding"
)

// Seams returns, for every panel, the runs of its vertices that are sewn to other panels, each from
// one place to the next where both sides are held together: a corner of a panel, or a
// level. Where nothing is sewn there is no run.
func (c Cover) Seams(panels []padding.Patch) [][][]int {
	owners, held := map[[2]padding.Key]int{}, map[padding.Key]bool{}
	for _, p := range panels {
		for _, e := range edges(p) {
			owners[named(p, e)]++
		}
		for v, b := range p.Borders {
			if sides := b & (padding.First | padding.Last); sides != 0 && (c.level(p.Keys[v][0]) || b != sides) {
				held[p.Keys[v]] = true
			}
		}
	}
	out := make([][][]int, len(panels))
	for i, p := range panels {
		out[i] = runs(p, func(e [2]int) bool { return owners[named(p, e)] > 1 }, held)
	}
	return out
}

// edges are those round a panel, counter-clockwise, the first after a corner.
func edges(p padding.Patch) [][2]int {
	loop, err := p.Mesh.Boundary()
	if err != nil {
		panic("cover: a panel is no disk") // panel makes none
	}
	out := make([][2]int, len(loop))
	for i, v := range loop { // it begins with the lowest number, a corner
		out[i] = [2]int{v, loop[(i+1)%len(loop)]}
	}
	return out
}

// named is an edge by its keys, the same from both sides.
func named(p padding.Patch, e [2]int) [2]padding.Key {
	k := [2]padding.Key{p.Keys[e[0]], p.Keys[e[1]]}
	slices.SortFunc(k[:], func(a, b padding.Key) int { return slices.CompareFunc(a[:], b[:], cmp.Compare[int]) })
	return k
}

// runs gathers the edges that are sewn from one held vertex to the next.
func runs(p padding.Patch, sewn func([2]int) bool, held map[padding.Key]bool) [][]int {
	var out [][]int
	for _, e := range edges(p) {
		if !sewn(e) {
			continue
		}
		if n := len(out); n > 0 && out[n-1][len(out[n-1])-1] == e[0] && !held[p.Keys[e[0]]] {
			out[n-1] = append(out[n-1], e[1])
			continue
		}
		out = append(out, []int{e[0], e[1]})
	}
	return out
}
