package document

import (
	"errors"
	"math"

	"understructure/app/record"
)

// SkirtSupportFields lists the numbers of what holds the skirt.
func SkirtSupportFields(record.Record) []Field {
	field := func(key, label, where string, l record.Limit, at func(*record.SkirtMount) **float64) Field {
		return choice("mount.skirt."+key, label, "sizes", where, l, func(r *record.Record) slot { return inPointer{at(&r.Mount.Skirt)} })
	}
	steels := field("steels", "steels", "Of a hooped petticoat, the one in its hem among them.", record.SteelsLimit, func(m *record.SkirtMount) **float64 { return &m.Steels })
	steels.Kind, steels.allow = Count, wholeNumber
	return []Field{
		field("stand_height", "stand height", "Of the waist above the floor; empty is found from the skirt.", record.StandLimit, func(m *record.SkirtMount) **float64 { return &m.StandHeight }),
		field("floor_gap", "hem above the floor", "How far the shortest part of the hem hangs above the floor.", record.GapLimit, func(m *record.SkirtMount) **float64 { return &m.FloorGap }),
		steels,
		field("net_width", "width of the net", "Of the net in stock.", record.NetWidthLimit, func(m *record.SkirtMount) **float64 { return &m.NetWidth }),
		field("pad_thickness", "bustle pad", "How thick a stuffed pad is at centre back; empty is half of what it stands out.", record.PadThicknessLimit, func(m *record.SkirtMount) **float64 { return &m.PadThickness }),
		field("frame_length", "bustle frame", "Of a boned frame, from the waist down.", record.FrameLengthLimit, func(m *record.SkirtMount) **float64 { return &m.FrameLength }),
	}
}

// SleeveSupportFields lists the numbers of what fills the sleeves, and of loose pads.
func SleeveSupportFields(record.Record) []Field {
	bend := choice("mount.sleeves.bend_deg", "elbow bend", "sizes", "How far the elbow of a soft arm is bent.", record.BendLimit,
		func(r *record.Record) slot { return inPointer{&r.Mount.Sleeves.BendDeg} })
	bend.Kind = Slope
	pad := func(key, label, where string, at func(*record.Pads) *record.Pad) Field {
		return choice("mount.pads."+key, label, "loose pads", where, record.PadLimit, func(r *record.Record) slot { return inPad{at(&r.Mount.Pads)} })
	}
	return []Field{
		bend,
		pad("shoulder", "shoulder pad", "How thick it is at the neck; 0 is none.", func(p *record.Pads) *record.Pad { return &p.Shoulder }),
		pad("bust", "bust pad", "How far it stands out in its middle; 0 is none.", func(p *record.Pads) *record.Pad { return &p.Bust }),
		pad("hip", "hip pad", "How far it stands out in its middle; 0 is none.", func(p *record.Pads) *record.Pad { return &p.Hip }),
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
