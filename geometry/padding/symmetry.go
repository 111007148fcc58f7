package padding

import (
	"math"

	"understructure/geometry/section"
	"understructure/geometry/surface"
)

// alike is how nearly the two sides must agree to be cut from one template turned over,
// mm: less than a pencil line.
const alike = 0.1

// Symmetric reports whether left and right are the same, so that every piece of one side
// serves, turned over, for the other.
func (m Mount) Symmetric() bool { return mirrored(m.Base) && mirrored(m.Wanted) }

func mirrored(s surface.Surface) bool {
	for i := range s.R {
		for j := range section.Directions / 2 {
			if math.Abs(s.R[i][j]-s.R[i][(section.Directions/2-j)&(section.Directions-1)]) > alike {
				return false
			}
		}
		for j := range section.Directions / 4 {
			a, b := section.Back+j, section.Back-j
			if math.Abs(s.R[i][a]-s.R[i][b]) > alike {
				return false
			}
		}
	}
	return true
}
