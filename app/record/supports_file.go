package record

import "math"

func (d *decoder) skirtMount(into *SkirtMount) func(string, node) {
	q := d.lengths()
	return func(path string, n node) {
		d.object(path, n,
			field{"support", d.word(&into.Support, SkirtSupports)},
			field{"hold", d.word(&into.Hold, Holds)},
			field{"stand_height", d.optional(&into.StandHeight, q, StandLimit)},
			field{"floor_gap", d.optional(&into.FloorGap, q, GapLimit)},
			field{"cut", d.word(&into.Cut, Cuts)},
			field{"train", d.word(&into.Train, Trains)},
			field{"band_fastens", d.truth(func(b bool) { into.BandFastens = &b })},
			field{"steels", d.whole(&into.Steels, SteelsLimit)},
			field{"net_width", d.optional(&into.NetWidth, q, NetWidthLimit)},
			field{"pad_thickness", d.optional(&into.PadThickness, q, PadThicknessLimit)},
			field{"frame_length", d.optional(&into.FrameLength, q, FrameLengthLimit)},
		)
	}
}

func (d *decoder) sleeveMount(into *SleeveMount) func(string, node) {
	return func(path string, n node) {
		d.object(path, n, field{"support", d.word(&into.Support, SleeveSupports)}, field{"bend_deg", d.optional(&into.BendDeg, degrees, BendLimit)})
	}
}

func (d *decoder) pads(into *Pads) func(string, node) {
	return func(path string, n node) {
		d.object(path, n,
			field{"shoulder", d.pad(&into.Shoulder)}, field{"bust", d.pad(&into.Bust)}, field{"hip", d.pad(&into.Hip)},
			field{"fill", d.truth(func(b bool) { into.Fill = b })},
		)
	}
}

// pad is true or false, or how far it stands out; 0 is none.
func (d *decoder) pad(into *Pad) func(string, node) {
	return func(path string, n node) {
		if asked, ok := n.(bool); ok {
			into.Asked = asked
			return
		}
		if v, ok := d.number(path, n, d.lengths(), PadLimit); ok && v > 0 {
			*into = Pad{Asked: true, Projection: &v}
		}
	}
}

func (d *decoder) truth(take func(bool)) func(string, node) {
	return func(path string, n node) {
		b, ok := n.(bool)
		if !ok {
			d.refuse(path, written(n), "is not possible", "true, false")
			return
		}
		take(b)
	}
}

// whole reads a whole number that may be absent.
func (d *decoder) whole(into **float64, l Limit) func(string, node) {
	return func(path string, n node) {
		v, ok := d.number(path, n, pieces, l)
		switch {
		case ok && v != math.Trunc(v):
			d.refuse(path, written(n), "is not possible", "a whole number, "+pieces.allowed(l))
		case ok:
			*into = &v
		}
	}
}

func (e encoder) skirtMount(m SkirtMount) node {
	var o object
	o.put("support", m.Support)
	o.put("hold", m.Hold)
	o.put("stand_height", e.optional(m.StandHeight))
	o.put("floor_gap", e.optional(m.FloorGap))
	o.put("cut", m.Cut)
	o.put("train", m.Train)
	if m.BandFastens != nil {
		o.put("band_fastens", *m.BandFastens)
	}
	if m.Steels != nil {
		o.put("steels", plain(*m.Steels))
	}
	o.put("net_width", e.optional(m.NetWidth))
	o.put("pad_thickness", e.optional(m.PadThickness))
	o.put("frame_length", e.optional(m.FrameLength))
	return o
}

func (e encoder) sleeveMount(m SleeveMount) node {
	var o object
	o.put("support", m.Support)
	if m.BendDeg != nil {
		o.put("bend_deg", plain(*m.BendDeg))
	}
	return o
}

func (e encoder) pads(p Pads) node {
	var o object
	o.put("shoulder", e.pad(p.Shoulder))
	o.put("bust", e.pad(p.Bust))
	o.put("hip", e.pad(p.Hip))
	if p.Fill {
		o.put("fill", true)
	}
	return o
}

func (e encoder) pad(p Pad) node {
	switch {
	case !p.Asked:
		return nil
	case p.Projection == nil:
		return true
	}
	return e.length(*p.Projection)
}
