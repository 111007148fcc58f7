package fitting

import (
	"math"

	"understructure/app/record"
	"understructure/geometry/measure"
)

// fill is what is added round the mount where a bodice looks limp, mm, and leastEase the share of the
// ease that stays whatever is asked for. Common practice, no published source.
const (
	fill      = 5.0
	leastEase = 0.5
)

// limp fills the mount a little out of the ease: at the level named, else under shoulders and bust.
func (f *fitter) limp(s record.Seen) {
	levels := []measure.Level{s.Level}
	if s.Level == "" {
		levels = []measure.Level{measure.Shoulder, measure.Bust}
	}
	for _, l := range levels {
		before := f.ease(l)
		now := math.Max(before-amount(s, fill), math.Min(before, leastEase*f.stock.Ease[l]))
		if now == before {
			f.say("fitting-limp", l, easePath(l), 0,
				"At the %s the bodice looked limp at %s, but no more than half of the ease is filled, and that is: %.0f mm are left.", l, f.when, now)
			continue
		}
		f.setEase(l, now)
		f.say("fitting-limp", l, easePath(l), before-now,
			"At the %s the bodice looked limp at %s: it is filled by %.0f mm of girth, and %.0f mm of ease are left.", l, f.when, before-now, now)
	}
}

// unfill gives a level back the ease that was asked for: what pulls is not limp.
func (f *fitter) unfill(l measure.Level) {
	if f.ease(l) != f.stock.Ease[l] {
		f.setEase(l, f.stock.Ease[l])
	}
}

// ease is that of a level, as the fittings so far have left it.
func (f *fitter) ease(l measure.Level) float64 {
	if v, ok := f.out.Record.Mount.Ease.ByLevel[l]; ok {
		return v
	}
	return f.stock.Ease[l]
}

func (f *fitter) setEase(l measure.Level, v float64) {
	e := &f.out.Record.Mount.Ease
	if e.ByLevel == nil {
		e.ByLevel = map[measure.Level]float64{}
	}
	e.ByLevel[l] = v
	f.gave(easePath(l), v)
}

func easePath(l measure.Level) string { return "mount.ease." + string(l) }
