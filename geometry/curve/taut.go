package curve

import "understructure/geometry/plane"

// Taut returns the path of a tape pulled tight along the outside of a profile, from its
// first point to its last. The outside lies to the left of the profile as it runs. The
// tape touches the bulges and spans the hollows; X must not decrease along the profile.
func Taut(profile []plane.Point) []plane.Point {
	var path []plane.Point
	for _, p := range profile {
		for len(path) >= 2 {
			a, b := path[len(path)-2], path[len(path)-1]
			if b.Sub(a).Cross(p.Sub(b)) < 0 {
				break
			}
			path = path[:len(path)-1]
		}
		path = append(path, p)
	}
	return path
}

// Length is the length along an open path.
func Length(path []plane.Point) float64 {
	l := 0.0
	for i := 1; i < len(path); i++ {
		l += path[i].Dist(path[i-1])
	}
	return l
}

// TautLength is the length of a tape pulled tight along a profile; see Taut.
func TautLength(profile []plane.Point) float64 { return Length(Taut(profile)) }
