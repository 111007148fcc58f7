package document

import (
	"errors"
	"math"

	"understructure/app/record"
)

// SkirtMountFields lists the choices about a skirt and its support that are numbers; words are chosen elsewhere.
func SkirtMountFields(record.Record) []Field {
	at := func(path, label, group, where string, l record.Limit, p func(*record.SkirtMount) **float64) Field {
		return choice("mount.skirt."+path, label, group, where, l, func(r *record.Record) slot { return inPointer{p(&r.Mount.Skirt)} })
	}
	steels := at("steels", "steels", "support", "Of a hooped petticoat, the one in its hem among them.",
		record.SteelsLimit, func(m *record.SkirtMount) **float64 { return &m.Steels })
	steels.Kind, steels.allow = Count, wholeNumber
	return []Field{
		at("stand_height", "stand height", "stand", "Of the waist above the floor. A number here takes the place of the bodice's waist height.",
			record.StandLimit, func(m *record.SkirtMount) **float64 { return &m.StandHeight }),
		at("floor_gap", "gap to the floor", "stand", "How far the hem is to hang above the floor.",
			record.GapLimit, func(m *record.SkirtMount) **float64 { return &m.FloorGap }),
		steels,
		at("net_width", "width of the net", "support", "Of the net in stock, from selvedge to selvedge.",
			record.NetWidthLimit, func(m *record.SkirtMount) **float64 { return &m.NetWidth }),
		at("pad_thickness", "bustle pad", "support", "Its thickness at centre back; empty is half of what it stands out.",
			record.PadThicknessLimit, func(m *record.SkirtMount) **float64 { return &m.PadThickness }),
		at("frame_length", "bustle frame", "support", "Its length from the waist down; empty is as long as one of about 1885, or as the skirt has room for.",
			record.FrameLengthLimit, func(m *record.SkirtMount) **float64 { return &m.FrameLength }),
	}
}

// SleeveMountFields lists the choices about what holds the sleeves, and about loose pads, that are numbers.
func SleeveMountFields(record.Record) []Field {
	bend := choice("mount.sleeves.bend_deg", "bend of the elbow", "sleeves", "How far an arm turns forward at the elbow; 0 is straight.",
		record.BendLimit, func(r *record.Record) slot { return inPointer{&r.Mount.Sleeves.BendDeg} })
	bend.Kind = Slope
	pad := func(key, label, where string, p func(*record.Pads) *record.Pad) Field {
		return choice("mount.pads."+key, label, "loose pads", where, record.PadLimit, func(r *record.Record) slot { return inPad{p(&r.Mount.Pads)} })
	}
	return []Field{
		bend,
		pad("shoulder", "shoulder pad", "How thick it is at its thick end, at the neck; empty or 0 is none.", func(p *record.Pads) *record.Pad { return &p.Shoulder }),
		pad("bust", "bust pad", "How far it stands out in its middle; empty or 0 is none.", func(p *record.Pads) *record.Pad { return &p.Bust }),
		pad("hip", "hip pad", "How far it stands out in its middle; empty or 0 is none.", func(p *record.Pads) *record.Pad { return &p.Hip }),
	}
}

func wholeNumber(v *float64) error {
	if v != nil && *v != math.Trunc(*v) {
		return errors.New("write a whole number")
	}
	return nil
}

// inPad is how far a pad stands out; nothing and 0 are no pad. One that is only asked for has no number of its own.
type inPad struct{ pad *record.Pad }

func (p inPad) get() *float64 { return p.pad.Projection }

func (p inPad) set(v *float64) {
	*p.pad = record.Pad{}
	if v != nil && *v > 0 {
		*p.pad = record.Pad{Asked: true, Projection: v}
	}
}
