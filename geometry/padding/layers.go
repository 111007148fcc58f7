package padding

import (
	"math"

	"understructure/geometry/section"
)

// layers lists the sheets in order of laying, the innermost and smallest first.
func (s *solver) layers() []Layer {
	var out []Layer
	rows := len(s.m.Base.Z)
	round := s.roundings()
	for k := len(s.seq) - 1; k >= 0; k-- {
		l := Layer{Thickness: s.seq[k], Inside: make(Field, rows), Under: make(Field, rows)}
		any := false
		for i := range rows {
			for j := range section.Directions {
				φ := round[i][j]
				l.Inside[i][j] = s.inside(k, s.bias[i][j], φ)
				l.Inside[i][j] = math.Min(l.Inside[i][j], s.m.within(i, j))
				if s.left[k][i][j] {
					l.Inside[i][j] = math.Min(l.Inside[i][j], -flattest)
				}
				any = any || l.Inside[i][j] > 0
				for under := k + 1; under < len(s.seq); under++ {
					if !s.left[under][i][j] {
						l.Under[i][j] += s.seq[under] * s.share(under, i, j, φ)
					}
				}
			}
		}
		if any {
			out = append(out, l)
		}
	}
	return out
}
