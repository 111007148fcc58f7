package record

import (
	"understructure/patterns/draft"
	"understructure/patterns/plan"
)

// SkirtStock is a SkirtMount with nothing left open. Lengths are millimetres; 0 leaves one to what
// the skirt has room for.
type SkirtStock struct {
	Support, Hold string
	Stand         float64 // height of the waist above the floor, 0 to be found
	Gap           float64
	Cut           string // "" for the usual one of the year
	Train         string
	BandFastens   bool
	Steels        int
	NetWidth      float64
	PadThickness  float64
	FrameLength   float64
}

// floorGap is how far a hem should hang above the floor, mm; workshop habit, from memory.
const floorGap = 10.0

// Stocked fills what a SkirtMount leaves open; waistHeight is the bodice's, nil where it was not taken. The
// map says, by key path, what was filled and why.
func (m SkirtMount) Stocked(waistHeight *float64) (SkirtStock, map[string]plan.Value) {
	f := filler{filled: map[string]plan.Value{}}
	s := SkirtStock{
		Support: f.word("mount.skirt.support", m.Support, AsDated, "what the year wants"),
		Gap:     f.length("mount.skirt.floor_gap", m.FloorGap, floorGap, habit), Cut: m.Cut,
		Train:       f.word("mount.skirt.train", m.Train, ByLength, "a back longer than the front by 150 mm or more is a train"),
		BandFastens: m.BandFastens == nil || *m.BandFastens,
		Steels:      int(f.length("mount.skirt.steels", m.Steels, draft.DefaultHoops, "a hem steel and four more (Interpret and Display Historic Dress, chapter 8)")),
		NetWidth:    f.length("mount.skirt.net_width", m.NetWidth, draft.DefaultNetWidth, "net is sold 1370 to 1500 mm wide; from memory"),
	}
	if m.BandFastens == nil {
		f.filled["mount.skirt.band_fastens"] = plan.Value{Text: "true", Source: "most waistbands close by themselves; from memory"}
	}
	stand := m.StandHeight
	if stand == nil {
		stand = waistHeight
	}
	s.Hold = m.hold(f, stand)
	if s.Hold == HoldStand {
		s.Stand = *stand
	}
	for _, v := range []struct{ into, chosen *float64 }{{&s.PadThickness, m.PadThickness}, {&s.FrameLength, m.FrameLength}} {
		if v.chosen != nil {
			*v.into = *v.chosen
		}
	}
	return s, f.filled
}

// hold is what is fixed; a stand whose height nobody gave cannot be.
func (m SkirtMount) hold(f filler, stand *float64) string {
	if stand == nil {
		f.filled["mount.skirt.hold"] = plan.Value{Text: HoldSilhouette, Source: "neither a stand height nor a waist height was given"}
		return HoldSilhouette
	}
	return f.word("mount.skirt.hold", m.Hold, HoldStand, "the height of the waist above the floor is known")
}

// SleeveStock is a SleeveMount with nothing left open.
type SleeveStock struct {
	Support string
	BendDeg float64
}

// usualBend is how far an arm bends that hangs at ease, degrees; common practice, no published source.
const usualBend = 20.0

// Stocked fills what a SleeveMount leaves open, like SkirtMount.Stocked.
func (m SleeveMount) Stocked() (SleeveStock, map[string]plan.Value) {
	f := filler{filled: map[string]plan.Value{}}
	return SleeveStock{
		Support: f.word("mount.sleeves.support", m.Support, AsTaken, "what the sleeve's readings want"),
		BendDeg: f.length("mount.sleeves.bend_deg", m.BendDeg, usualBend, "an arm that hangs at ease; common practice, no published source"),
	}, f.filled
}

// PadStock is how far each pad stands out at its thickest, mm; 0 for none.
type PadStock struct {
	Shoulder, Bust, Hip float64
	FoundShoulder       bool // the shoulder's is to be found from form and garment
	Fill                bool
}

// The pads that stand in for one that is only asked for, mm; workshop habit, from memory.
const usualBustPad, usualHipPad = 12.0, 18.0

// Stocked fills what Pads leave open, like SkirtMount.Stocked.
func (p Pads) Stocked() (PadStock, map[string]plan.Value) {
	f := filler{filled: map[string]plan.Value{}}
	s := PadStock{Fill: p.Fill, FoundShoulder: p.Shoulder.Asked && p.Shoulder.Projection == nil}
	if v := p.Shoulder.Projection; v != nil {
		s.Shoulder = *v
	}
	if p.Bust.Asked {
		s.Bust = f.length("mount.pads.bust", p.Bust.Projection, usualBustPad, habit)
	}
	if p.Hip.Asked {
		s.Hip = f.length("mount.pads.hip", p.Hip.Projection, usualHipPad, habit)
	}
	return s, f.filled
}
