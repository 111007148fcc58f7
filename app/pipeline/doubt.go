package pipeline

import (
	"math"

	"understructure/app/record"
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
	out := j.figureSources("garment.bodice.", j.garment, j.record.Garment.Readings.Bodice, 0, 1)
	if j.form != nil {
		out = append(out, j.figureSources(formPath, *j.form, j.record.Form.Readings, j.raised, -1)...)
	}
	return append(out, j.made()...)
}

// figureSources are those of a figure, the garment's or the form's, that is raised by so much: what makes its tapes longer
// makes the clearance larger (sign 1) or smaller (−1). Where there is no form, it does nothing.
func (j *job) figureSources(path string, f torso.Torso, readings record.Readings, raised, sign float64) []fit.Source {
	at, counts := make([]float64, len(f.Levels)), make([]float64, len(f.Levels))
	for i, l := range j.garment.Levels {
		if at[i] = l.Height - raised; sign > 0 || reaches(j.bare, l.Height) {
			counts[i] = sign
		}
	}
	all, slopes := f.Sensitivities(at)
	var out []fit.Source
	moves := make([]float64, len(f.Levels)) // variance of what lies at each height
	for _, s := range all {
		told := j.told(path, s, readings)
		for i := range counts {
			told.Effect = append(told.Effect, counts[i]*s.Tape[i])
			moves[i] += math.Pow(s.Rise[i]*told.Known.SD, 2)
		}
		out = append(out, told)
	}
	return append(out, turning(slopes, moves, counts)...)
}

// turning is what errors of height cost beyond the first order where a figure is steeper above than below, or the other way:
// at a level that is fullest, whichever way it is missed the tape is shorter. Of a normal error z with slopes a and b on
// either side the mean is (a−b)·σ/√2π and the mean square (a²+b²)·σ²/2 (derived).
func turning(slopes []torso.Slope, moves, counts []float64) []fit.Source {
	var out []fit.Source
	for i, s := range slopes {
		off := (s.Above - s.Below) * math.Sqrt(moves[i]/(2*math.Pi))
		first := (s.Above + s.Below) / 2
		more := (s.Above*s.Above+s.Below*s.Below)/2*moves[i] - off*off - first*first*moves[i]
		one := fit.Source{Known: fit.Known{Off: off, SD: math.Sqrt(math.Max(0, more))}, Effect: make([]float64, len(slopes))}
		one.Effect[i] = counts[i]
		out = append(out, one)
	}
	return out
}

// slopeError is that of one reading of a slope, degrees, one standard deviation. From memory, no published source.
const slopeError = 2.0

// told is one value that a tape tells, or could.
func (j *job) told(path string, s torso.Sensitivity, readings record.Readings) fit.Source {
	out := fit.Source{Taken: s.Taken}
	m, measured := measure.Find(measure.Keys, s.Key)
	if measured {
		out.Key, out.Kept = path+string(s.Key), keepIn(path)(m)
	}
	once := j.tapeError(m, s)
	if !s.Taken {
		out.Known = fit.Known{SD: s.SD, Once: once}
		j.noteSpread(out.Key, s)
		return out
	}
	all := readings[s.Key]
	if keepIn(path).Of(m, all) != s.Value { // they are of a value that another has taken the place of
		all = nil
	}
	out.Known = fit.Read(s.Value, once, all...)
	return out
}

// formPath is where what was taken of the form stands.
const formPath = "form.bodice."

// keepIn says how several readings of a sheet count.
func keepIn(path string) record.Keep {
	if path == formPath {
		return measure.OfForm
	}
	return measure.OfGarment
}

// noteSpread adds to what is said of a value that was drawn how far people spread about it.
func (j *job) noteSpread(key string, s torso.Sensitivity) {
	if s.Value == 0 {
		return
	}
	source := ""
	if s.Guessed {
		source = "; its spread from memory"
	}
	j.spreads[key] = plan.Value{Spread: s.SD, Source: source}
}

// tapeError is the error of one reading, a tape's slip from its level included.
func (j *job) tapeError(m measure.Measure, s torso.Sensitivity) float64 {
	if m.Degrees {
		return slopeError
	}
	return math.Hypot(j.stock.TapeError, s.Steep*j.stock.HeightError)
}
