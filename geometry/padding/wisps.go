package padding

import "understructure/geometry/section"

// leaveWisps takes out of every layer the places where it would be nothing but a wisp:
// patches, feathered edges included, whose part inside the edge is too small to be cut as a
// piece. What is built then is what the pieces make.
func (s *solver) leaveWisps() {
	s.left = make([][][section.Directions]bool, len(s.seq))
	round := s.roundings()
	var g gathering
	for k := range s.seq {
		s.left[k] = make([][section.Directions]bool, len(s.m.Base.Z))
		g.seen = make([][section.Directions]bool, len(s.m.Base.Z))
		for i := range g.seen {
			for j := range section.Directions {
				if s.gather(&g, k, i, j, round); g.area < least {
					for _, p := range g.patch {
						s.left[k][p[0]][p[1]] = true
					}
				}
			}
		}
	}
}

// gathering is what gather finds, and its room to work.
type gathering struct {
	seen  [][section.Directions]bool
	patch [][2]int
	area  float64
}

// gather finds the places that hang together with one in layer k and have not been seen, and the area of the
// base that they cover inside the layer's edge, counted no further than to the least that is cut.
func (s *solver) gather(g *gathering, k, i, j int, round Field) {
	g.patch, g.area = g.patch[:0], 0
	visit := func(i, j int) {
		j &= section.Directions - 1
		if i < 0 || i >= len(g.seen) || g.seen[i][j] || !s.open[i][j] || s.share(k, i, j, round[i][j]) == 0 {
			return
		}
		g.seen[i][j] = true
		g.patch = append(g.patch, [2]int{i, j})
	}
	visit(i, j)
	for n := 0; n < len(g.patch); n++ {
		i, j := g.patch[n][0], g.patch[n][1]
		if g.area < least && s.inside(k, s.bias[i][j], round[i][j]) > 0 {
			g.area += s.patchAt(i, j)
		}
		visit(i+1, j)
		visit(i-1, j)
		visit(i, j+1)
		visit(i, j-1)
	}
}

// patchAt is the area of the base that a point stands for, mm².
func (s *solver) patchAt(i, j int) float64 {
	lo, hi := max(i-1, 0), min(i+1, len(s.m.Base.Z)-1)
	up := s.m.Base.Point(hi, j).Dist(s.m.Base.Point(lo, j)) / 2
	round := s.m.Base.Point(i, (j+1)&(section.Directions-1)).Dist(s.m.Base.Point(i, j))
	return up * round
}
