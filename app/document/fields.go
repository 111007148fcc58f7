package document

import (
	"understructure/app/record"
	"understructure/geometry/measure"
)

// Place is one of the places that measurements are kept in, such as "Garment".
type Place struct {
	Name   string
	Fields []Field
}

// Places lists what of r can be typed in, in the order in which one works.
func Places(r record.Record) []Place {
	garment := table("garment.bodice.", "", measure.Keys, func(r *record.Record) measure.Sheet { return r.Garment.Bodice })
	garment = append(garment, table("garment.skirt.", "skirt", measure.Skirt, func(r *record.Record) measure.Sheet { return r.Garment.Skirt })...)
	garment = append(garment, table("garment.sleeve.", "sleeve", measure.Sleeve, func(r *record.Record) measure.Sheet { return r.Garment.Sleeve })...)
	places := []Place{{"Garment", garment}}
	if r.Form != nil {
		places = append(places, Place{"Form", table("form.bodice.", "", measure.Keys, func(r *record.Record) measure.Sheet { return r.Form.Bodice })})
	}
	return append(places, Place{"Mount", mount(r)})
}

// table makes fields of measurements; an empty group keeps the table's own.
func table(path, group string, rows []measure.Measure, sheet func(*record.Record) measure.Sheet) []Field {
	var out []Field
	for _, m := range rows {
		f := Field{
			Path: path + string(m.Key), Label: m.Label, Where: m.Where, Group: group, Min: m.Min, Max: m.Max,
			slot: func(r *record.Record) slot { return inSheet{sheet(r), m.Key} },
		}
		if group == "" {
			f.Group = m.Group
		}
		if m.Degrees {
			f.Kind = Slope
		}
		out = append(out, f)
	}
	return out
}

// choice makes a field of the mount from its limits.
func choice(path, label, group, where string, l record.Limit, slot func(*record.Record) slot) Field {
	return Field{Path: path, Label: label, Group: group, Where: where, Min: l.Least, Max: l.Most, slot: slot}
}

// mount lists the choices of the build that are numbers.
func mount(r record.Record) []Field {
	at := func(p func(*record.Record) **float64) func(*record.Record) slot {
		return func(r *record.Record) slot { return inPointer{p(r)} }
	}
	mass := choice("garment.mass_kg", "mass of the garment", "fit", "For the check whether the stand could tip over.",
		record.MassLimit, at(func(r *record.Record) **float64 { return &r.Garment.MassKg }))
	mass.Kind = Mass
	fields := []Field{
		choice("mount.ease", "ease", "fit", "How much larger the garment is to be than the mount, all the way round.",
			record.EaseLimit, at(func(r *record.Record) **float64 { return &r.Mount.Ease.All })),
		choice("mount.tape_error", "tape error", "fit", "How far two readings of one girth usually lie apart (one standard deviation).",
			record.TapeErrorLimit, at(func(r *record.Record) **float64 { return &r.Mount.TapeError })),
		mass,
		choice("mount.cover.thickness", "cover thickness", "materials", "Of the smooth jersey or silk that goes over everything; 0 is no cover.",
			record.CoverLimit, at(func(r *record.Record) **float64 { return &r.Mount.Cover })),
	}
	if r.Mount.Build == "slices" {
		return append(fields, planks()...)
	}
	return fields
}

// planks lists what is known of the foam; its slots make the plank when a first value is set.
func planks() []Field {
	field := func(key, label, where string, l record.Limit, p func(*record.Plank) **float64) Field {
		return choice("mount.plank."+key, label, "plank", where, l, func(r *record.Record) slot { return inPlank{r, p} })
	}
	return []Field{
		field("thickness", "plank thickness", "Of the foam that the slices are cut from.", record.PlankLimit, func(p *record.Plank) **float64 { return &p.Thickness }),
		field("length", "plank length", "The longer side of a plank.", record.PlankSideLimit, func(p *record.Plank) **float64 { return &p.Length }),
		field("width", "plank width", "The shorter side of a plank.", record.PlankSideLimit, func(p *record.Plank) **float64 { return &p.Width }),
		field("pole", "pole diameter", "Of the pole that goes through every slice; 0 is no pole.", record.PoleLimit, func(p *record.Plank) **float64 { return &p.Pole }),
	}
}

type inPlank struct {
	record *record.Record
	at     func(*record.Plank) **float64
}

func (p inPlank) get() *float64 {
	if p.record.Mount.Plank == nil {
		return nil
	}
	return *p.at(p.record.Mount.Plank)
}

func (p inPlank) set(v *float64) {
	if p.record.Mount.Plank == nil {
		p.record.Mount.Plank = &record.Plank{}
	}
	*p.at(p.record.Mount.Plank) = v
}
