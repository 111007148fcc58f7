// Package pads shapes the loose pads that a maker adds by eye: wedges on the shoulders, mounds at bust and
// hips, small soft fills, and the disc that closes the neck.
//
// They are extras: package padding already builds a form out to the figure everywhere. Every pad stays inside the shape
// asked for, so that it never makes a mount larger than that.
// It does not know forms, layers already laid, or paper.
package pads

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
)

// Pad is a stack of sheets, in the order in which they are laid: the smallest first, so that its edge does not
// print through.
type Pad struct {
	Sheets []plane.Ring
	Left   float64 // by how much the stack stays below what was asked for at its thickest, mm
}

// sheets is how many sheets of a thickness stay inside a height.
func sheets(height, thickness float64) int { return int(math.Floor(height/thickness + 1e-9)) }

// shortest is the smallest sheet worth cutting, from end to end, mm. From memory.
const shortest = 15.0

// mostSheets is a height that no one stacks by hand.
const mostSheets = 200

// check refuses what no pad can have.
func check(what string, value, lo, hi float64) error {
	if !(value >= lo && value <= hi) {
		return fmt.Errorf("pads: %s %.4g, want %g–%g", what, value, lo, hi)
	}
	return nil
}
