package pipeline

import (
	"math"

	"understructure/app/record"
	"understructure/geometry/curve"
	"understructure/geometry/fit"
	"understructure/geometry/measure"
	"understructure/geometry/torso"
	"understructure/patterns/plan"
)

// onePercent is the chance of strain that an ease is named for.
const onePercent = 0.01

// mostAgain is how many readings are named that would help.
const mostAgain = 5

// doubt says how far the fit can be relied on, and writes what is to be said of each level into its row.
func (j *job) doubt(rows []plan.Level) plan.Doubt {
	d := fit.Doubt{Sources: j.sources()}
	for _, row := range rows {
		d.Clearance = append(d.Clearance, *row.Clearance)
	}
	for l := range rows {
		rows[l].ClearanceSD = number(d.SD(l))
		rows[l].StrainChance = number(d.Chance(l))
		rows[l].EaseForOnePercent = number(d.EaseFor(l, onePercent))
	}
	out := plan.Doubt{ChanceAnywhere: d.Anywhere(), EaseForAll: d.EaseForAll(onePercent)}
	for _, a := range d.Remeasure(mostAgain) {
		s := d.Sources[a.Source]
		out.Remeasure = append(out.Remeasure, plan.Remeasure{Key: s.Key, Taken: s.Taken, Share: a.Share, ChanceAfter: a.Chance})
	}
	return out
}

// sources are all that the clearances hang on. The garment is compared with the mount at the height of each level of the
// garment; the mount's own levels may lie elsewhere.
func (j *job) sources() []fit.Source {
	var out []fit.Source
	for _, s := range j.garment.Sensitivities() {
		out = append(out, j.told("garment.bodice.", s, j.record.Garment.Readings.Bodice, s.Tape))
	}
	if j.form != nil {
		for _, s := range j.form.Sensitivities() {
			out = append(out, j.told("form.bodice.", s, j.record.Form.Readings, j.underneath(s.Tape)))
		}
	}
	return append(out, j.made()...)
}

// slopeError is that of one reading of a slope, degrees, one standard deviation. From memory, no published source.
const slopeError = 2.0

// told is one value that a tape tells, or could.
func (j *job) told(path string, s torso.Sensitivity, readings record.Readings, effect []float64) fit.Source {
	out := fit.Source{Taken: s.Taken, Effect: effect}
	m, measured := measure.Find(measure.Keys, s.Key)
	if measured {
		out.Key, out.Mean = path+string(s.Key), m.Degrees
	}
	error := j.tapeError(m, s)
	if !s.Taken {
		out.Known = fit.Known{SD: s.SD, Once: error}
		return out
	}
	all := readings[s.Key]
	if record.Kept(m, all) != s.Value { // they are of a value that another has taken the place of
		all = nil
	}
	out.Known = fit.Read(s.Value, error, all...)
	return out
}

// tapeError is the error of one reading, a tape's slip from its level included.
func (j *job) tapeError(m measure.Measure, s torso.Sensitivity) float64 {
	if m.Degrees {
		return slopeError
	}
	return math.Hypot(j.stock.TapeError, s.Steep*j.stock.HeightError)
}

// underneath is what a change of the form does to the clearance at the garment's levels: as much as to its tape there, the
// other way. Between two levels of the form both count, by how near they lie; where there is no form, nothing does.
func (j *job) underneath(tape []float64) []float64 {
	ls := j.form.Levels
	var z, t []float64
	for i := len(ls) - 1; i >= 0; i-- {
		z, t = append(z, ls[i].Height+j.raised), append(t, tape[i])
	}
	along := curve.Through(z, t)
	out := make([]float64, len(j.garment.Levels))
	for i, l := range j.garment.Levels {
		if reaches(j.bare, l.Height) {
			out[i] = -along.At(l.Height)
		}
	}
	return out
}
