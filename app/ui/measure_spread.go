package ui

import (
	"math"

	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
)

// How far readings of one measure may lie apart before it is taken anew: two of the same tape by the same
// hand differ by less than a centimetre, and by less than three times the tape's error, in all but a few
// of a hundred cases (the second is derived: the difference of two readings spreads √2 times as far as one).
// Slopes are read to some degrees. Common practice, no published source.
const (
	mostApart  = 10.0 // millimetres
	mostErrors = 3.0
	mostSlopes = 5.0 // degrees
)

// hundredth of an inch, in millimetres: as finely as a spread is worth saying.
const hundredth = 0.254

// tooWide returns how far the readings of each kind may lie apart in a record.
func tooWide(r record.Record) map[document.Kind]float64 {
	stock, _ := r.Mount.Stocked(r.Garment.Strength)
	return map[document.Kind]float64{document.Length: min(mostApart, mostErrors*stock.TapeError), document.Slope: mostSlopes}
}

// readings says of a measure what was read of it, where it was taken more than once.
func (s said) readings(m *control.Measure, f document.Field, r record.Record, wide map[document.Kind]float64) {
	if m.Readings = f.Readings(r); len(m.Readings) < 2 {
		m.Readings = nil
		return
	}
	spread := f.Spread(r)
	m.Wide = spread > wide[f.Kind]
	if r.Unit == "in" {
		spread = math.Round(spread/hundredth) * hundredth
	}
	words := map[string]any{"Spread": f.Kind.Format(spread, r.Unit) + " " + m.Unit}
	switch {
	case m.Wide:
		m.Spread = lang.L("spread {{.Spread}}: take it again", words)
	case f.Kind == document.Slope:
		m.Spread = lang.L("spread {{.Spread}}; the mean counts", words)
	default:
		m.Spread = lang.L("spread {{.Spread}}", words)
	}
}
