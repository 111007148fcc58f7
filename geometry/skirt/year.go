package skirt

import (
	"math"

	"understructure/geometry/measure"
)

// Worn is the garment that a wearer's rows are about when no other is named.
func Worn(w measure.Wearer) string {
	switch w {
	case measure.Man:
		return "coat"
	case measure.Child:
		return "frock"
	}
	return "dress"
}

// Of returns the rows of one wearer's garment, in order of years.
func (t Table) Of(w measure.Wearer, garment string) Table {
	var out Table
	for _, r := range t {
		if r.Wearer == w && r.Garment == garment {
			out = append(out, r)
		}
	}
	return out
}

// At returns the silhouette of a year: a row's own in the middle of its years, and between
// two rows' middles a blend of both, in proportion to the years. Before the first and after the
// last it is theirs. The row returned is the one whose middle is nearest; false where the table has none.
func (t Table) At(w measure.Wearer, garment string, year int) (Silhouette, Row, bool) {
	rows := t.Of(w, garment)
	if len(rows) == 0 {
		return Silhouette{}, Row{}, false
	}
	y := float64(year)
	next := 0
	for next < len(rows) && rows[next].MidYear() < y {
		next++
	}
	if next == 0 || next == len(rows) {
		r := rows[min(next, len(rows)-1)]
		return r.Silhouette, r, true
	}
	a, b := rows[next-1], rows[next]
	part := (y - a.MidYear()) / (b.MidYear() - a.MidYear())
	nearest := a
	if math.Abs(b.MidYear()-y) < math.Abs(y-a.MidYear()) {
		nearest = b
	}
	return a.Silhouette.blend(b.Silhouette, part), nearest, true
}
