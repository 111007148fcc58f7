package record

import (
	"fmt"
	"maps"
	"slices"

	"understructure/geometry/measure"
)

// Readings keeps every reading of the measures that were taken more than once, in the order
// in which they were taken, in millimetres or degrees. The value that counts stands in the
// sheet beside it, and is what Keep makes of the readings. A measure taken once stands in the sheet only.
type Readings map[measure.Key][]float64

// GarmentReadings are the readings beside each sheet of a garment.
type GarmentReadings struct{ Bodice, Skirt, Sleeve Readings }

// Keep says which of several readings of a measure counts: measure.OfGarment or measure.OfForm.
type Keep func(m measure.Measure) measure.Kept

// Of is the one value that stands for several readings of a measure, as fine as a record writes it; 0 without readings.
func (k Keep) Of(m measure.Measure, readings []float64) float64 {
	kept := k(m)
	v := kept.Of(readings)
	if kept == measure.Mean {
		return toGrain(v)
	}
	return v
}

// Clone returns a copy that shares nothing with r.
func (r Readings) Clone() Readings {
	c := maps.Clone(r)
	for k, v := range c {
		c[k] = slices.Clone(v)
	}
	return c
}

// readings reads one measurement: a number, or a list of those that were read.
func (d *decoder) readings(path string, n node, m measure.Measure) []float64 {
	limit := Limit{m.Min, m.Max}
	l, ok := n.(list)
	if !ok {
		v, _ := d.number(path, n, d.of(m), limit)
		return []float64{v}
	}
	if len(l) == 0 || !d.atMost(path, l, MostReadings, "readings") {
		d.refuse(path, "a list of 0", "is not possible", fmt.Sprintf("a number, or a list of 1–%d", MostReadings))
		return nil
	}
	var all []float64
	for i, n := range l {
		v, _ := d.number(fmt.Sprintf("%s[%d]", path, i), n, d.of(m), limit)
		all = append(all, v)
	}
	return all
}

// readings writes all that was read of a measure. Where the sheet holds another value than the
// one kept of them, they are of a value since replaced, and only the sheet's is written.
func (e encoder) readings(m measure.Measure, value float64, all []float64, keep Keep) node {
	if len(all) < 2 || keep.Of(m, all) != value {
		return e.value(m, value)
	}
	var l list
	for _, v := range all {
		l = append(l, e.value(m, v))
	}
	return l
}

func (e encoder) value(m measure.Measure, v float64) node {
	if m.Degrees {
		return plain(v)
	}
	return e.length(v)
}
