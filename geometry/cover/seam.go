package cover

import (
	"cmp"
	"slices"

	"understructure/geometry/flatten"
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

// Shared returns, for every run of every panel's seams, the length in which both its edges are to be laid: the mean
// of those that they have when every panel lies as it likes best. seams are those of Seams, free the panels laid without.
func Shared(panels []padding.Patch, seams [][][]int, free []flatten.Flat) [][]float64 {
	sum, count := map[[3]padding.Key]float64{}, map[[3]padding.Key]float64{}
	each := func(do func(i int, name [3]padding.Key, run []int)) {
		for i, p := range panels {
			for _, run := range seams[i] {
				ends := named(p, [2]int{run[0], run[len(run)-1]})
				first := named(p, [2]int{run[1], run[len(run)-2]}) // two runs may have the same ends
				do(i, [3]padding.Key{ends[0], ends[1], first[0]}, run)
			}
		}
	}
	each(func(i int, name [3]padding.Key, run []int) {
		for v := 1; v < len(run); v++ {
			sum[name] += free[i].Points[run[v]].Dist(free[i].Points[run[v-1]])
		}
		count[name]++
	})
	out := make([][]float64, len(panels))
	each(func(i int, name [3]padding.Key, _ []int) { out[i] = append(out[i], sum[name]/count[name]) })
	return out
}
