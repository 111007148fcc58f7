package document

import "understructure/app/record"

// SkirtSupportFields lists the numbers of what holds the skirt.
func SkirtSupportFields(record.Record) []Field {
	field := func(key, label, where string, l record.Limit, at func(*record.SkirtMount) **float64) Field {
		return choice("mount.skirt."+key, label, "support", where, l, func(r *record.Record) slot { return inPointer{at(&r.Mount.Skirt)} })
	}
	return []Field{
		field("stand_height", "stand height", "Of the waist above the floor; empty is found from the skirt.", record.StandLimit, func(m *record.SkirtMount) **float64 { return &m.StandHeight }),
		field("floor_gap", "hem above the floor", "How far the shortest part of the hem hangs above the floor.", record.GapLimit, func(m *record.SkirtMount) **float64 { return &m.FloorGap }),
		field("net_width", "width of the net", "Of the net in stock.", record.NetWidthLimit, func(m *record.SkirtMount) **float64 { return &m.NetWidth }),
		field("pad_thickness", "bustle pad", "How far a stuffed pad stands out; empty is what the skirt has room for.", record.PadThicknessLimit, func(m *record.SkirtMount) **float64 { return &m.PadThickness }),
		field("frame_length", "bustle frame", "Of a boned frame, from the waist down.", record.FrameLengthLimit, func(m *record.SkirtMount) **float64 { return &m.FrameLength }),
	}
}

// SleeveSupportFields lists the numbers of what fills the sleeves.
func SleeveSupportFields(record.Record) []Field {
	f := choice("mount.sleeves.bend_deg", "elbow bend", "support", "How far the elbow of a soft arm is bent.", record.BendLimit,
		func(r *record.Record) slot { return inPointer{&r.Mount.Sleeves.BendDeg} })
	f.Kind = Slope
	return []Field{f}
}
