package fitting

import (
	"math"

	"understructure/app/record"
	"understructure/geometry/measure"
)

// shoulder turns the shoulders by the angle that closes the gap seen at the shoulder point. The
// figure's shoulders are alike, so one shoulder that is too square turns both, which strains nothing,
// and one that is too sloping turns neither.
func (f *fitter) shoulder(s record.Seen) {
	b := f.bodice()
	path, gap := b.path+string(measure.ShoulderSlope), amount(s, unsaid)
	if oneSided := s.Where == "left" || s.Where == "right"; oneSided {
		if s.What == record.TooSloping {
			f.say("fitting-side", measure.Shoulder, path, gap,
				"Only the %s shoulder was too sloping at %s, and both are computed alike: lay a wedge of %.0f mm under that one, thick end to the arm.", s.Where, f.when, gap)
			return
		}
		f.say("fitting-side", measure.Shoulder, path, gap,
			"Only the %s shoulder was too square at %s, and both are computed alike: lay a wedge of %.0f mm under the other one, thick end to the arm.", s.Where, f.when, gap)
	}
	slope, known := f.bodiceValue(measure.ShoulderSlope)
	length, also := f.bodiceValue(measure.ShoulderLength)
	if !known || !also || length <= 0 {
		return
	}
	turn := math.Atan(gap/length) * 180 / math.Pi
	if s.What == record.TooSloping {
		turn = -turn
	}
	f.set(b, measure.ShoulderSlope, slope+turn)
	f.say("fitting-slope", measure.Shoulder, path, gap,
		"By %s the shoulder was %s by %.0f mm at its point: it falls by %.1f degrees, where it fell by %.1f before.", f.when, s.What, gap, slope+turn, slope)
}

// bodiceValue is a reading of the bodice, or what is drawn where it was not taken.
func (f *fitter) bodiceValue(k measure.Key) (float64, bool) {
	if v, ok := f.out.Record.Garment.Bodice[k]; ok {
		return v, true
	}
	t, _ := f.figure()
	d, ok := t.Drawn[k]
	return d.Value, ok
}
