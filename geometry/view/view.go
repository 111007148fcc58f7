// Package view looks at an upright figure from any side, from so far away that nothing is
// foreshortened: what lies across the line of sight is true to scale, so that a tape can be
// read off the picture.
//
// What is seen has axes of its own: X to the viewer's right, Y toward the viewer, Z up in the
// picture, in millimetres from where the figure's axis stands on the floor.
// It does not know pixels, colours or light.
package view

import (
	"math"

	"understructure/geometry/space"
	"understructure/geometry/unit"
)

// How far the viewer has walked round the figure, counter-clockwise seen from above: from its
// front to its left side, as a draughtsman lays out views from left to right.
const (
	Front        unit.Angle = 0
	ThreeQuarter            = 45 * unit.Degree
	LeftSide                = 90 * unit.Degree
	Back                    = 180 * unit.Degree
	RightSide               = 270 * unit.Degree
)

// MostPitch is how far above or below the figure's height a viewer may stand. From higher up one
// would look into the shoulders, and heights could no longer be compared.
const MostPitch = 30 * unit.Degree

// Camera is where one looks from. It is not changed once made. The zero Camera sees nothing.
type Camera struct{ right, toward, up space.Point }

// From returns the camera that has gone round by yaw, any angle, and looks down on the figure by
// pitch, which is held within MostPitch. Without pitch heights are true.
func From(yaw, pitch unit.Angle) Camera {
	s, c := sincos(yaw)
	v, h := sincos(max(-MostPitch, min(MostPitch, pitch)))
	return Camera{
		right:  space.Point{X: -c, Y: -s},
		toward: space.Point{X: -s * h, Y: c * h, Z: v},
		up:     space.Point{X: s * v, Y: -c * v, Z: h},
	}
}

// sincos is exact at quarter turns, so that a symmetric figure stays symmetric.
func sincos(a unit.Angle) (sin, cos float64) {
	const quarter = 90 * unit.Degree
	if q := float64(a / quarter); q == math.Round(q) {
		k := int(math.Mod(q, 4)+4) % 4
		return [4]float64{0, 1, 0, -1}[k], [4]float64{1, 0, -1, 0}[k]
	}
	return math.Sincos(float64(a))
}

// See returns where a point of the figure is seen: X right, Y toward the viewer, Z up.
func (c Camera) See(p space.Point) space.Point {
	return space.Point{X: c.right.Dot(p), Y: c.toward.Dot(p), Z: c.up.Dot(p)}
}

// Axes are the viewer's axes in those of the figure, three unit vectors: See is the three products with them.
func (c Camera) Axes() (right, toward, up space.Point) { return c.right, c.toward, c.up }

// Faces reports whether a face with this outward normal is turned to the viewer. One that is seen
// edge on is not.
func (c Camera) Faces(normal space.Point) bool { return c.toward.Dot(normal) > 0 }

// Yaw is how far the viewer has gone round, from -π to π.
func (c Camera) Yaw() float64 { return math.Atan2(-c.right.Y, -c.right.X) }

// Level reports whether one looks neither down nor up, so that level lines are seen straight.
func (c Camera) Level() bool { return c.toward.Z == 0 }
