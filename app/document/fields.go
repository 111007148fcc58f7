package document

import (
	"errors"
	"slices"

	"understructure/app/record"
	"understructure/geometry/measure"
)

// Place is one of the places that measurements are kept in, such as "Garment".
type Place struct {
	Name   string
	Fields []Field
}

// The places of bodices in a record, where there are readings that no mount can do without.
const garmentPath, formPath = "garment.bodice.", "form.bodice."

const skirtPath, sleevePath = "garment.skirt.", "garment.sleeve."

func needed(v *float64) error {
	if v == nil {
		return errors.New("no mount can be computed without this")
	}
	return nil
}

// Places lists what of r can be typed in, in the order in which one works.
func Places(r record.Record) []Place {
	garment := table(garmentPath, "", measure.Keys, bodice)
	garment = append(garment, table(skirtPath, "skirt", measure.Skirt, skirt)...)
	garment = append(garment, table(sleevePath, "sleeve", measure.Sleeve, sleeve)...)
	places := []Place{{"Garment", garment}}
	if r.Form != nil || r.Mount.Build == "padded" {
		places = append(places, Place{"Form", table(formPath, "", measure.Keys, form)})
	}
	return append(places, Place{"Mount", mount(r)})
}

// SkirtFields lists the measurements of a skirt in the groups in which they are taken. The
// same fields stand in Places, in one group.
func SkirtFields(record.Record) []Field { return table(skirtPath, "", measure.Skirt, skirt) }

// SleeveFields lists the measurements of a sleeve, as SkirtFields does those of a skirt.
func SleeveFields(record.Record) []Field { return table(sleevePath, "", measure.Sleeve, sleeve) }

// Missing lists what must still be given before a mount can be computed, by place.
func Missing(r record.Record) []Place {
	var out []Place
	for _, place := range Places(r) {
		if place.Name == "Form" && r.Mount.Build != "padded" {
			continue
		}
		place.Fields = slices.DeleteFunc(place.Fields, func(f Field) bool {
			return f.Get(r) != nil || f.allow == nil || f.allow(nil) == nil
		})
		if len(place.Fields) > 0 {
			out = append(out, place)
		}
	}
	return out
}

// sheet is where measurements are kept, and beside them what else was read.
type sheet func(*record.Record) (measure.Sheet, *record.Readings)

func bodice(r *record.Record) (measure.Sheet, *record.Readings) {
	return r.Garment.Bodice, &r.Garment.Readings.Bodice
}

func skirt(r *record.Record) (measure.Sheet, *record.Readings) {
	return r.Garment.Skirt, &r.Garment.Readings.Skirt
}

func sleeve(r *record.Record) (measure.Sheet, *record.Readings) {
	return r.Garment.Sleeve, &r.Garment.Readings.Sleeve
}

// form is the sheet of the form; a record that had no form gets one.
func form(r *record.Record) (measure.Sheet, *record.Readings) {
	if r.Form == nil {
		r.Form = &record.Form{Bodice: measure.Sheet{}}
	}
	return r.Form.Bodice, &r.Form.Readings
}

// table makes fields of measurements; an empty group keeps the table's own.
func table(path, group string, rows []measure.Measure, in sheet) []Field {
	keep := record.Keep(measure.OfGarment)
	if path == formPath {
		keep = measure.OfForm
	}
	var out []Field
	for _, m := range rows {
		f := Field{
			Path: path + string(m.Key), Label: m.Label, Where: m.Where, Group: group, Min: m.Min, Max: m.Max,
			slot: func(r *record.Record) slot {
				values, beside := in(r)
				return inSheet{values, beside, m, keep}
			},
		}
		if group == "" {
			f.Group = m.Group
		}
		if m.Degrees {
			f.Kind = Slope
		}
		if bodice := path == garmentPath || path == formPath; bodice && slices.Contains(record.Required, m.Key) {
			f.allow = needed
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
		choice("mount.ease", "ease", "fit", "How much larger the garment is to be than the mount, all the way round. A number here takes the place of an ease for each level.",
			record.EaseLimit, func(r *record.Record) slot { return inEase{&r.Mount.Ease} }),
		choice("mount.tape_error", "tape error", "fit", "How far two readings of one girth usually lie apart (one standard deviation).",
			record.TapeErrorLimit, at(func(r *record.Record) **float64 { return &r.Mount.TapeError })),
		choice("mount.height_error", "height error", "fit", "How far a tape lies off its level (one standard deviation).",
			record.HeightErrorLimit, at(func(r *record.Record) **float64 { return &r.Mount.HeightError })),
		choice("mount.cutting_error", "cutting error", "fit", "How far a knife strays from its line (one standard deviation).",
			record.CuttingErrorLimit, at(func(r *record.Record) **float64 { return &r.Mount.CuttingError })),
		mass,
	}
	fields = append(fields, waddings(r)...)
	fields = append(fields, choice("mount.cover.thickness", "cover thickness", "materials", "Of the smooth jersey or silk that goes over everything; 0 is no cover.",
		record.CoverLimit, at(func(r *record.Record) **float64 { return &r.Mount.Cover })))
	fields = append(fields, rolls(r)...)
	if r.Mount.Build == "slices" {
		fields = append(fields, planks()...)
	}
	return append(fields, prices()...)
}
