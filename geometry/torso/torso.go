// Package torso turns what a tape said into a figure: the slices at every level, the skin
// through them, the shoulders, the neck and the armscye.
//
// Readings are honoured exactly; what was not taken is drawn from statistics for the
// wearer and the year, and is listed as drawn. Heights are counted from the waist level up.
// It does not know forms, padding or files.
package torso

import (
	"fmt"

	"understructure/geometry/measure"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/geometry/surface"
)

// Torso is a figure as measurements describe it. It is not changed once made.
type Torso struct {
	Levels    []Level         // from the neck down
	Skin      surface.Surface // z = 0 at the waist level
	Armscye   []space.Point   // the right opening, a closed loop from the shoulder point forwards
	Neck      space.Point     // side neck point, right
	Shoulder  space.Point     // shoulder point, right
	BustPoint space.Point     // right
	Nape      space.Point     // centre back of the neck base
	NeckFront space.Point     // centre front of the neck base
	Drawn     map[measure.Key]Drawn
	Lengths   []Length
	Notices   []measure.Notice

	draft *draft // what it was made from, for Reshape and Limits; not written to any more
}

// Level is one named slice.
type Level struct {
	Name    measure.Level
	Height  float64 // above the waist, mm
	Girth   float64 // tape round Section, mm
	Taken   bool    // the girth was taken, or set by hand; otherwise it was drawn
	Section section.Section
	Seam    float64          // y of the side seams, mm; at the neck base and the shoulder, of the neck and shoulder points
	Reading section.Readings // what tape and callipers say of Section
}

// Drawn is a value that was not taken, and where it came from.
type Drawn struct {
	Value  float64
	Source string
}

// Length is a tape length along the skin: as taken, and as the figure has it.
type Length struct {
	Key          measure.Key
	Taken, Built float64
}

// At returns the level of that name.
func (t Torso) At(name measure.Level) Level {
	for _, l := range t.Levels {
		if l.Name == name {
			return l
		}
	}
	return Level{}
}

// Build returns the figure that the sheet describes and the hand shapes; the empty shape leaves
// everything to the sheet. The sheet must hold bust girth, waist girth and back waist length;
// the error names a value that no figure can have.
//
// What is set by hand overrules what was taken or drawn at its level, and comes out exactly
// where the girth allows it; the other levels follow it as they would follow a reading. What
// could not be had, and every length taken that the hand overrules, is among the notices.
func Build(s measure.Sheet, w measure.Wearer, year int, hand measure.Shape) (Torso, error) {
	d, err := newDraft(s, w, year, hand)
	if err != nil {
		return Torso{}, err
	}
	d.solveHeights()
	t := d.torso()
	if !t.Skin.Sound(slightest) {
		return Torso{}, fmt.Errorf("torso: bust girth %.0f, waist girth %.0f and back waist length %.0f mm make no figure together", s[measure.BustGirth], s[measure.WaistGirth], s[measure.BackWaist])
	}
	return t, nil
}

// slightest is the least distance of a figure's skin from its axis, mm: half a thin neck of a doll.
const slightest = 5.0

// WaistHeight is where the waist of a standing figure usually is above the floor, from its
// back: 2.6 times the nape's height above the waist (from memory; a bodice alone does not tell).
func (t Torso) WaistHeight() float64 { return 2.6 * t.Nape.Z }
