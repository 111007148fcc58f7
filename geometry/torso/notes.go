package torso

import (
	"fmt"
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// exact is how nearly what was set by hand must come out, mm, not to be spoken of.
const exact = 0.1

// noteHand says what the hand asked for and could not have, and what it overruled.
func (d *draft) noteHand(levels []Level) {
	for _, l := range levels {
		a := d.hand[l.Name]
		if a.Empty() {
			continue
		}
		d.noteHeight(l, a)
		d.notices = append(d.notices, unmet(l, a)...)
		if i := levelIndex(l.Name); i >= 0 && shapes(a) {
			d.noteReadings(i, l)
		}
	}
	d.noteShoulders()
}

func (d *draft) noteHeight(l Level, a measure.Adjustment) {
	if a.Height == nil || math.Abs(*a.Height-l.Height) <= exact {
		return
	}
	n := measure.Notice{Code: "hand-beyond-neighbours", Level: l.Name, Amount: math.Abs(*a.Height - l.Height), Message: fmt.Sprintf(
		"The %s was set by hand %.0f mm above the waist, but between its neighbours it can stand no nearer than at %.0f mm.", l.Name, *a.Height, l.Height)}
	if l.Name == measure.Waist {
		n.Message = "Heights are counted from the waist, so the waist itself stays; move the other levels, or take the lengths to it again."
	}
	d.notices = append(d.notices, n)
}

// unmet says by how much a slice misses what the hand asked for.
func unmet(l Level, a measure.Adjustment) []measure.Notice {
	var asked, has string
	amount := 0.0
	for _, p := range [...]struct {
		name string
		hand *float64
		got  float64
	}{
		{"girth", a.Girth, l.Reading.Girth}, {"breadth", a.Breadth, l.Reading.Breadth}, {"depth", a.Depth, l.Reading.Depth},
		{"front arc", a.FrontArc, l.Reading.FrontArc}, {"left arc", a.LeftArc, l.Reading.LeftArc},
	} {
		if p.hand == nil || math.Abs(*p.hand-p.got) <= exact {
			continue
		}
		if asked != "" {
			asked, has = asked+", ", has+", "
		}
		asked += fmt.Sprintf("%s %.1f mm", p.name, *p.hand)
		has += fmt.Sprintf("%.1f mm", p.got)
		amount = math.Max(amount, math.Abs(*p.hand-p.got))
	}
	if asked == "" {
		return nil
	}
	return []measure.Notice{{Code: "hand-beyond-girth", Level: l.Name, Amount: amount, Message: fmt.Sprintf(
		"The %s was set by hand to %s; a girth of %.0f mm does not allow that, and the nearest that it allows is built: %s.", l.Name, asked, l.Girth, has)}}
}

// noteReadings says which breadth, depth or arc taken at the taped level i had to give way.
func (d *draft) noteReadings(i int, l Level) {
	t, a := taped[i], d.hand[l.Name]
	for _, r := range [...]struct {
		key  measure.Key
		hand *float64
		got  float64
	}{
		{t.breadth, a.Breadth, l.Reading.Breadth}, {t.depth, a.Depth, l.Reading.Depth},
		{t.front, a.FrontArc, l.Reading.FrontArc}, {t.left, a.LeftArc, l.Reading.LeftArc},
	} {
		if taken, ok := d.sheet[r.key]; ok && r.hand == nil {
			d.noteOverruled("hand-overrules-reading", l.Name, r.key, taken, r.got)
		}
	}
}

// noteOverruled says by how much the figure misses a value taken because the hand set the level otherwise.
func (d *draft) noteOverruled(code string, l measure.Level, k measure.Key, taken, built float64) {
	if diff := math.Abs(taken - built); diff > believable {
		d.notices = append(d.notices, measure.Notice{Code: code, Level: l, Key: k, Amount: diff, Message: fmt.Sprintf(
			"The %s was taken as %.0f mm; as the %s is set by hand, the figure has %.0f mm there, %.0f mm %s.",
			label(k), taken, l, built, diff, map[bool]string{true: "more", false: "less"}[built > taken])})
	}
}

// movers are the levels whose height, set by hand, overrules a length along the skin.
var movers = map[measure.Key]measure.Level{
	measure.BackWaist: measure.NeckBase, measure.NeckToBustPoint: measure.Bust, measure.SideLength: measure.Underarm,
	measure.ArmscyeGirth: measure.Underarm, measure.WaistToHighHip: measure.HighHip, measure.WaistToHip: measure.Hip,
}

// movedBy returns the level whose height was set by hand and overrules the length.
func (d *draft) movedBy(k measure.Key) (measure.Level, bool) {
	l, ok := movers[k]
	return l, ok && d.hand[l].Height != nil
}

// noteShoulders says which length over chest and shoulders taken the hand overruled there.
func (d *draft) noteShoulders() {
	u := &d.upper
	if !d.hand[measure.AcrossChest].Empty() {
		for _, c := range [...]struct {
			key    measure.Key
			cut    plane.Point
			middle int
		}{{measure.AcrossFront, u.cutFront, section.Front}, {measure.AcrossBack, u.cutBack, section.Back}} {
			if taken, ok := d.sheet[c.key]; ok {
				d.noteOverruled("hand-overrules-length", measure.AcrossChest, c.key, taken, 2*d.across(u.bentChest.moved(c.cut), c.middle))
			}
		}
	}
	for _, l := range [...]measure.Level{measure.NeckBase, measure.Shoulder} {
		if d.hand[l].Empty() {
			continue
		}
		out, fall := u.tip().X-u.neck.Right, d.z.neck-d.z.shoulder
		if taken, ok := d.sheet[measure.ShoulderLength]; ok {
			d.noteOverruled("hand-overrules-length", l, measure.ShoulderLength, taken, math.Hypot(out, fall))
		}
		d.noteSlope(l, math.Hypot(out, fall), math.Atan2(fall, out))
		return
	}
}

// noteSlope says that the shoulders slope otherwise than taken; the amount is by how much
// higher or lower the shoulder point lies.
func (d *draft) noteSlope(l measure.Level, length, slope float64) {
	degrees, ok := d.sheet[measure.ShoulderSlope]
	amount := length * math.Abs(math.Sin(slope)-math.Sin(degrees*math.Pi/180))
	if !ok || amount <= believable {
		return
	}
	d.notices = append(d.notices, measure.Notice{
		Code: "hand-overrules-length", Level: l, Key: measure.ShoulderSlope, Amount: amount, Message: fmt.Sprintf(
			"The %s was taken as %.0f degrees; as the %s is set by hand, the figure has %.0f degrees.", label(measure.ShoulderSlope), degrees, l, slope*180/math.Pi),
	})
}

// across is the length of a tape on the across-chest slice from the middle of the front or back to a
// point on the right.
func (d *draft) across(to plane.Point, middle int) float64 {
	s := d.upper.slice(d.upper.frame(d.z).rib(d.z.at(measure.AcrossChest)))
	way := 1 // from the back counter-clockwise to the right
	if middle == section.Front {
		way = -1
	}
	length, prev := 0.0, section.Direction(middle).Mul(s[middle])
	for j := middle; ; j += way {
		k := j & (section.Directions - 1)
		p := section.Direction(k).Mul(s[k])
		if float64(way)*section.Direction(k).Cross(to) <= 0 && j != middle {
			return length + prev.Dist(to)
		}
		length += prev.Dist(p)
		prev = p
	}
}
