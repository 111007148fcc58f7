package pipeline

import (
	"maps"
	"math"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/geometry/sleeve"
	"understructure/geometry/space"
	"understructure/geometry/surface"
	"understructure/geometry/unit"
	"understructure/patterns/draft"
	"understructure/patterns/plan"
)

// filled is a sleeve and what is to hold it.
type filled struct {
	sleeve.Sleeve
	stock   record.SleeveStock // its support is the one that is made: never as taken
	options sleeve.Options
	arm     sleeve.Arm
	support draft.Support
}

// fill finds the inside of the sleeves. What cannot be is said, and leaves the mount as it is.
func (j *job) fill() {
	g := j.record.Garment
	if len(g.Sleeve) == 0 {
		return
	}
	stock, filledIn := j.record.Mount.Sleeves.Stocked()
	maps.Copy(j.filled, filledIn)
	f := filled{stock: stock, options: sleeve.Usual(j.stock.Ease[measure.Underarm])}
	f.options.Bend = stock.BendDeg * float64(unit.Degree)
	var err error
	f.Sleeve, err = sleeve.Of(sleeve.Taken{
		Sheet: measure.TrustedSleeve(g.Sleeve), Armscye: j.armscye(), Bust: j.garment.At(measure.Bust).Girth, Wearer: j.record.Object.Wearer, Year: j.record.Object.Year,
	})
	if err == nil {
		f.arm, err = f.Arm(f.options)
	}
	if err != nil {
		j.notices = append(j.notices, measure.Notice{Code: "sleeve-cannot-be-filled", Key: "garment.sleeve", Message: "Nothing is made for the sleeves: " + err.Error() + "."})
		return
	}
	if f.stock.Support == record.AsTaken {
		f.stock.Support = string(f.Suggested())
	}
	j.sleeve = &f
	for k, d := range f.Drawn {
		j.drawn[sleevePath+string(k)] = plan.Value{Value: d.Value, Source: d.Source}
	}
	if _, taken := j.bodice[measure.ArmscyeGirth]; !taken {
		j.drawn["garment.bodice."+string(measure.ArmscyeGirth)] = plan.Value{Value: f.Armscye, Source: "the way round the figure's armhole"}
	}
}

// armscye is the girth of the armhole: as taken, or as the figure has it.
func (j *job) armscye() float64 {
	if v, ok := j.bodice[measure.ArmscyeGirth]; ok {
		return v
	}
	return around(j.garment.Armscye)
}

// around is the length of a closed line.
func around(loop []space.Point) float64 {
	l := 0.0
	for i, p := range loop {
		l += p.Dist(loop[(i+1)%len(loop)])
	}
	return l
}

// draftSleeves draws what holds the sleeves; layer is its place in the order of making.
func (j *job) draftSleeves(layer int) error {
	f := j.sleeve
	if f == nil || f.stock.Support == record.NoSupport {
		return nil
	}
	if f.stock.Support == record.Puff {
		puff := f.Puff(f.arm, f.options)
		f.support.Pieces = draft.Puff(puff, layer)
		j.take("sleeves", f.support)
		j.notices = append(j.notices, under(sleevePath, puff.Notices)...)
		if len(puff.Frills) == 0 {
			j.notices = append(j.notices, measure.Notice{Code: "puff-without-room", Key: "mount.sleeves.support", Message: "The sleeves leave no room for a puff round an arm; choose an arm or a tube."})
		}
		return nil
	}
	s, notices, err := draft.SleeveSupport(f.Sleeve, draft.SleeveStock{Hold: sleeve.Support(f.stock.Support), Options: f.options, Layer: layer})
	if err != nil {
		return err
	}
	f.support = s
	j.take("sleeves", s)
	j.notices = append(j.notices, under(sleevePath, notices)...)
	return nil
}

// placeGap is how far apart the places of a sleeve are written down, mm.
const placeGap = 20.0

// sleevesPlan writes the sleeves down; nil where there are none.
func (j *job) sleevesPlan() *plan.Sleeves {
	f := j.sleeve
	if f == nil {
		return nil
	}
	out := &plan.Sleeves{
		Support: f.stock.Support, BendDeg: f.stock.BendDeg, Length: f.Length, Under: f.Under, Armscye: f.Armscye,
		MassKg: f.support.MassKg, Cautions: orEmpty(f.support.Cautions), Frills: []plan.Frill{},
	}
	fixed := []float64{0}
	if f.Bends() {
		out.Elbow = number(f.Elbow)
		fixed = append(fixed, f.Elbow)
	}
	for _, at := range surface.Rows(-f.Cap(), f.Under, placeGap, fixed...) {
		out.Places = append(out.Places, plan.SleevePlace{At: at, Garment: f.Girth(at), Passage: f.Passage(at), Support: f.girthAt(at)})
	}
	if f.stock.Support != record.NoSupport {
		for _, r := range f.Puff(f.arm, f.options).Frills {
			out.Frills = append(out.Frills, plan.Frill{At: r.At, Gather: r.Gather, Deep: r.Deep, Length: r.Length})
		}
	}
	return out
}

// girthAt is the girth of arm or tube at a place; nil where there is none. Above the armhole it is that at it.
func (f *filled) girthAt(at float64) *float64 {
	places, girths := f.arm.At, f.arm.Girth
	switch f.stock.Support {
	case record.Tube:
		t := f.Tube(f.options)
		places, girths = []float64{t.Under, 0}, []float64{t.End, t.Upper}
	case record.Arm:
	default:
		return nil
	}
	at = math.Max(at, 0)
	for i := 1; i < len(places); i++ {
		if a, b := places[i-1], places[i]; at <= a && at >= b {
			return number(girths[i] + (girths[i-1]-girths[i])*(at-b)/(a-b))
		}
	}
	return nil
}
