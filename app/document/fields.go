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

// mount lists the choices of the build that are numbers.
func mount(r record.Record) []Field {
	at := func(p func(*record.Record) **float64) func(*record.Record) slot {
		return func(r *record.Record) slot { return inPointer{p(r)} }
	}
	fields := []Field{
		{Path: "mount.ease", Label: "ease", Group: "fit", Min: 0, Max: 300,
			Where: "How much larger the garment is to be than the mount, all the way round.",
			slot:  at(func(r *record.Record) **float64 { return &r.Mount.Ease.All })},
		{Path: "mount.tape_error", Label: "tape error", Group: "fit", Min: 0, Max: 50,
			Where: "By how much a girth may have been misread, more often than not.",
			slot:  at(func(r *record.Record) **float64 { return &r.Mount.TapeError })},
		{Path: "garment.mass_kg", Label: "mass of the garment", Group: "fit", Kind: Mass, Min: 0, Max: 60,
			Where: "For the check whether the stand could tip over.",
			slot:  at(func(r *record.Record) **float64 { return &r.Garment.MassKg })},
		{Path: "mount.cover.thickness", Label: "cover thickness", Group: "materials", Min: 0, Max: 20,
			Where: "Of the smooth jersey or silk that goes over everything.",
			slot:  at(func(r *record.Record) **float64 { return &r.Mount.Cover })},
	}
	if r.Mount.Build == "slices" {
		return append(fields, planks()...)
	}
	return fields
}

// planks lists what is known of the foam; its slots make the plank when a first value is set.
func planks() []Field {
	field := func(key, label, where string, least, most float64, p func(*record.Plank) **float64) Field {
		return Field{
			Path: "mount.plank." + key, Label: label, Where: where, Group: "plank", Min: least, Max: most,
			slot: func(r *record.Record) slot { return inPlank{r, p} },
		}
	}
	return []Field{
		field("thickness", "plank thickness", "Of the foam that the slices are cut from.", 5, 200, func(p *record.Plank) **float64 { return &p.Thickness }),
		field("length", "plank length", "The longer side of a plank.", 100, 5000, func(p *record.Plank) **float64 { return &p.Length }),
		field("width", "plank width", "The shorter side of a plank.", 100, 3000, func(p *record.Plank) **float64 { return &p.Width }),
		field("pole", "pole diameter", "Of the pole that goes through every slice.", 5, 120, func(p *record.Plank) **float64 { return &p.Pole }),
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
