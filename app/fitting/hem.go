package fitting

import (
	"understructure/app/record"
	"understructure/geometry/measure"
)

// hem lets a skirt hang as if it were shorter, or longer, by what was seen: all round with the stand,
// or on one side.
func (f *fitter) hem(s record.Seen) {
	by := amount(s, unsaid)
	if s.What == record.HemShort {
		by = -by
	}
	switch s.Where {
	case "left", "right":
		f.say("fitting-side", "", f.skirt().path+string(measure.SideLength), amount(s, unsaid),
			"At %s the hem was %s by %.0f mm on the %s, and both sides are computed alike: look for a hip or a waistband that is higher or fuller on that side before anything is cut.", f.when, length(s), amount(s, unsaid), s.Where)
	case "front":
		f.side(measure.FrontLength, by, s)
	case "back":
		f.side(measure.BackLength, by, s)
	default:
		f.allRound(by, s)
	}
}

func length(s record.Seen) string {
	if s.What == record.HemShort {
		return "too short"
	}
	return "too long"
}

// side changes the length of one side; the skirt's own support follows it.
func (f *fitter) side(k measure.Key, by float64, s record.Seen) {
	before, taken := f.out.Record.Garment.Skirt[k]
	m, _ := measure.Find(measure.Skirt, k)
	path := f.skirt().path + string(k)
	if !taken {
		f.say("fitting-unknown", "", path, amount(s, unsaid),
			"At %s the hem was %s by %.0f mm at the %s, but the %s was not taken; take it, and what was seen can be used.", f.when, length(s), amount(s, unsaid), s.Where, m.Label)
		return
	}
	f.lengthen(k, by)
	f.say("fitting-hem", "", path, amount(s, unsaid),
		"At %s the hem was %s by %.0f mm at the %s: the %s counts as %.0f mm, where %.0f mm stood before. Is the support too %s there, or the waist too %s?",
		f.when, length(s), amount(s, unsaid), s.Where, m.Label, before+by, before, fuller(by), higher(by))
}

func fuller(by float64) string {
	if by < 0 {
		return "full"
	}
	return "flat"
}

func higher(by float64) string {
	if by < 0 {
		return "high"
	}
	return "low"
}

// lengthen changes one length of the skirt that was taken, and with the back the length from the nape
// of which it is a part.
func (f *fitter) lengthen(k measure.Key, by float64) {
	v, taken := f.out.Record.Garment.Skirt[k]
	if !taken {
		return
	}
	f.set(f.skirt(), k, v+by)
	if whole, ok := f.out.Record.Garment.Bodice[measure.NapeToHem]; ok && k == measure.BackLength {
		f.set(f.bodice(), measure.NapeToHem, whole+by)
	}
}

// allRound lowers or raises the stand with all lengths of the skirt. A stand whose height follows from
// the skirt's lengths goes with these.
func (f *fitter) allRound(by float64, s record.Seen) {
	k := f.out.Record.Garment.Skirt
	lengths := []measure.Key{measure.FrontLength, measure.SideLength, measure.BackLength}
	some := false
	for _, l := range lengths {
		_, taken := k[l]
		some = some || taken
		f.lengthen(l, by)
	}
	height, known := f.out.Record.Garment.Bodice[measure.WaistHeight]
	if t, ok := f.figure(); !known && !some && ok {
		height, known = t.WaistHeight(), true
	}
	if known {
		f.set(f.bodice(), measure.WaistHeight, height+by)
	}
	if h := f.out.Record.Mount.Skirt.StandHeight; h != nil { // it takes the place of the waist height
		v := f.within(*h+by, record.StandLimit, "", "mount.skirt.stand_height", "stand height")
		f.out.Record.Mount.Skirt.StandHeight = &v
		f.gave("mount.skirt.stand_height", v)
	}
	way := "higher"
	if by < 0 {
		way = "lower"
	}
	f.say("fitting-hem", "", f.bodice().path+string(measure.WaistHeight), amount(s, unsaid),
		"At %s the hem was %s by %.0f mm: the stand is to be %.0f mm %s. Set it before the garment is on; a form that is moved when dressed crushes the skirt.", f.when, length(s), amount(s, unsaid), amount(s, unsaid), way)
}
