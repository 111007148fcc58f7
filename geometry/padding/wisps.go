package padding

import "understructure/geometry/section"

// leaveWisps takes out of every layer the places where it would be nothing but a wisp:
// patches, feathered edges included, whose part inside the edge is too small to be cut as a
// piece. What is built then is what the pieces make.
func (s *solver) leaveWisps() {
	s.left = make([][][section.Directions]bool, len(s.seq))
	for k := range s.seq {
		s.left[k] = make([][section.Directions]bool, len(s.m.Base.Z))
		seen := make([][section.Directions]bool, len(s.m.Base.Z))
		for i := range seen {
			for j := range section.Directions {
				if patch, area := s.gather(k, i, j, seen); len(patch) > 0 && area < least {
					for _, p := range patch {
						s.left[k][p[0]][p[1]] = true
					}
				}
			}
		}
	}
}

// gather returns the places that hang together with one in layer k, and the area of the
// base that they cover inside the layer's edge.
func (s *solver) gather(k, i, j int, seen [][section.Directions]bool) (patch [][2]int, area float64) {
	todo := [][2]int{{i, j}}
	for len(todo) > 0 {
		p := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		i, j := p[0], p[1]&(section.Directions-1)
		if i < 0 || i >= len(seen) || seen[i][j] || !s.m.open(i, j) {
			continue
		}
		φ := s.rounding(i, j)
		if s.share(k, i, j, φ) == 0 {
			continue
		}
		seen[i][j] = true
		patch = append(patch, [2]int{i, j})
		if s.inside(k, i, j, φ) > 0 {
			area += s.patchAt(i, j)
		}
		todo = append(todo, [2]int{i + 1, j}, [2]int{i - 1, j}, [2]int{i, j + 1}, [2]int{i, j - 1})
	}
	return patch, area
}

// patchAt is the area of the base that a point stands for, mm².
func (s *solver) patchAt(i, j int) float64 {
	lo, hi := max(i-1, 0), min(i+1, len(s.m.Base.Z)-1)
	up := s.m.Base.Point(hi, j).Dist(s.m.Base.Point(lo, j)) / 2
	round := s.m.Base.Point(i, (j+1)&(section.Directions-1)).Dist(s.m.Base.Point(i, j))
	return up * round
}
