package skirt

import (
	"fmt"
	"math"

	"understructure/geometry/section"
)

// Body is the mount's own outline where the skirt starts and, where it is known, the lower one
// that the skirt falls over. Both are about the mount's axis.
type Body struct {
	Waist    section.Section
	Hip      section.Section
	HipDepth float64 // how far the hip lies below the waist, mm; 0 for no hip
}

// slightest and widest bound the body, mm: half a doll's thin neck, and the half breadth of
// the greatest girth that measure admits.
const slightest, widest = 5.0, 1000.0

func (b Body) check() error {
	if !(b.HipDepth >= 0 && b.HipDepth <= mostHipDepth) {
		return fmt.Errorf("skirt: the body's hip depth is %.6g mm, want 0 to %g", b.HipDepth, mostHipDepth)
	}
	if err := sound("waist", b.Waist); err != nil || b.HipDepth == 0 {
		return err
	}
	return sound("hip", b.Hip)
}

func sound(name string, s section.Section) error {
	for _, r := range s {
		if !(r >= slightest && r <= widest) {
			return fmt.Errorf("skirt: the body's %s lies %.6g mm from the axis, want %g to %g in every direction", name, r, slightest, widest)
		}
	}
	return nil
}

// at is the body's outline at a depth below the waist; below the hip it is the hip.
func (b Body) at(depth float64) section.Section {
	out := b.Waist
	if b.HipDepth > 0 {
		t := math.Max(0, math.Min(1, depth/b.HipDepth))
		for j := range out {
			out[j] += (b.Hip[j] - out[j]) * t
		}
	}
	return out
}

// above cuts the body off where its cloth is longer than most, as a short skirt does.
func (b Body) above(most float64) Body {
	longest := 0.0
	for j := range b.Hip {
		longest = math.Max(longest, math.Hypot(b.HipDepth, b.Hip[j]-b.Waist[j]))
	}
	if b.HipDepth == 0 || longest <= most {
		return b
	}
	depth := b.HipDepth * most / longest
	return Body{Waist: b.Waist, Hip: b.at(depth), HipDepth: depth}
}

// even reports whether left and right are alike.
func (b Body) even() bool {
	for j := range b.Waist {
		like := (section.Directions/2 - j + section.Directions) % section.Directions
		if math.Abs(b.Waist[j]-b.Waist[like]) > 1e-9 || math.Abs(b.Hip[j]-b.Hip[like]) > 1e-9 {
			return false
		}
	}
	return true
}
