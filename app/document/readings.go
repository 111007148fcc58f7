package document

import (
	"fmt"
	"slices"

	"understructure/app/record"
	"understructure/geometry/measure"
)

// inSheet is the place of one measurement, with whatever else was read of it.
type inSheet struct {
	sheet  measure.Sheet
	beside *record.Readings
	of     measure.Measure
	keep   record.Keep
}

func (s inSheet) get() *float64 {
	if v, ok := s.sheet[s.of.Key]; ok {
		return &v
	}
	return nil
}

func (s inSheet) set(v *float64) {
	if delete(*s.beside, s.of.Key); len(*s.beside) == 0 {
		*s.beside = nil // as in a record where nothing was taken twice
	}
	if v == nil {
		delete(s.sheet, s.of.Key)
		return
	}
	s.sheet[s.of.Key] = *v
}

func (s inSheet) readings() []float64 {
	v, taken := s.sheet[s.of.Key]
	all := (*s.beside)[s.of.Key]
	switch {
	case !taken:
		return nil
	case len(all) == 0 || s.keep.Of(s.of, all) != v: // of a value since replaced
		return []float64{v}
	}
	return slices.Clone(all)
}

func (s inSheet) setReadings(all []float64) {
	if len(all) == 0 {
		s.set(nil)
		return
	}
	kept := s.keep.Of(s.of, all)
	s.set(&kept)
	if len(all) == 1 {
		return
	}
	if *s.beside == nil {
		*s.beside = record.Readings{}
	}
	(*s.beside)[s.of.Key] = slices.Clone(all)
}

// Repeats reports whether several readings of f can be kept; of what is chosen there is only one.
func (f Field) Repeats() bool {
	var r record.Record
	r = clone(r)
	_, ok := f.slot(&r).(inSheet)
	return ok
}

// Readings returns all that was read of f in r, in the order taken, in millimetres or degrees: none where it was
// not taken, one where it was taken once. Get returns the one that counts, by record.Keep.
func (f Field) Readings(r record.Record) []float64 {
	r = clone(r)
	at := f.slot(&r)
	if s, ok := at.(inSheet); ok {
		return s.readings()
	}
	if v := at.get(); v != nil {
		return []float64{*v}
	}
	return nil
}

// Spread is how far the readings of f in r lie apart: the largest less the smallest, 0 for fewer than two.
func (f Field) Spread(r record.Record) float64 {
	all := f.Readings(r)
	if len(all) < 2 {
		return 0
	}
	return slices.Max(all) - slices.Min(all)
}

// SetReadings gives a field all that was read of it; none is not taken. Until Settle, setting
// the same field again belongs to the same step. It refuses what Field.Read would, more than
// record.MostReadings, and more than one of a field that does not repeat.
func (d *Document) SetReadings(f Field, all []float64) error {
	if err := f.judge(all); err != nil {
		return err
	}
	r := d.Record()
	if slices.Equal(f.Readings(r), all) {
		return nil
	}
	r = clone(r)
	switch at := f.slot(&r).(type) {
	case inSheet:
		at.setReadings(all)
	default:
		at.set(first(all))
	}
	d.history.Amend(f.Label, r)
	d.changed()
	return nil
}

func (f Field) judge(all []float64) error {
	most := 1
	if f.Repeats() {
		most = record.MostReadings
	}
	if len(all) > most {
		return fmt.Errorf("%s: %d readings, at most %d can be kept", f.Label, len(all), most)
	}
	if f.allow != nil {
		if err := f.allow(first(all)); err != nil {
			return err
		}
	}
	for _, v := range all {
		if !(v >= f.Min && v <= f.Max) {
			return fmt.Errorf("%s: %g, from %g to %g is possible", f.Label, v, f.Min, f.Max)
		}
	}
	return nil
}

func first(all []float64) *float64 {
	if len(all) == 0 {
		return nil
	}
	return &all[0]
}
