package torso

import (
	"fmt"
	"maps"
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// draft is a figure in the making: sizes and slices are settled, heights still move.
type draft struct {
	sheet   measure.Sheet
	hand    measure.Shape
	stats   statistics
	drawn   map[measure.Key]Drawn
	notices []measure.Notice
	bodies  map[measure.Level]section.Body    // slices from underarm to hip
	shaped  map[measure.Level]*shaping        // of these, and of the upper figure, what the hand shapes
	slices  map[measure.Level]section.Section // the bodies about the axis, tape exact
	seam    map[measure.Level]float64         // y of their side seams
	girth   map[measure.Level]float64
	z       heights
	fixed   map[measure.Level]float64 // heights that a length along the skin has settled
	upper   upper
	kept    loft       // the slices of the upper figure last drawn,
	keptAt  [5]float64 // and for which heights; see top
	lengths []Length
}

// taped lists the levels whose girth a tape takes below the shoulder, and their keys.
var taped = []struct {
	level                              measure.Level
	girth, breadth, depth, front, left measure.Key
}{
	{measure.Underarm, measure.UnderarmGirth, "", "", "", ""},
	{measure.Bust, measure.BustGirth, measure.BustBreadth, measure.BustDepth, measure.BustFrontArc, measure.BustLeftArc},
	{measure.Underbust, measure.UnderbustGirth, measure.UnderbustBreadth, measure.UnderbustDepth, "", ""},
	{measure.Waist, measure.WaistGirth, measure.WaistBreadth, measure.WaistDepth, measure.WaistFrontArc, measure.WaistLeftArc},
	{measure.HighHip, measure.HighHipGirth, measure.HighHipBreadth, measure.HighHipDepth, "", ""},
	{measure.Hip, measure.HipGirth, measure.HipBreadth, measure.HipDepth, measure.HipFrontArc, measure.HipLeftArc},
}

func newDraft(s measure.Sheet, w measure.Wearer, year int, hand measure.Shape) (*draft, error) {
	if err := sound(hand); err != nil {
		return nil, err
	}
	s = overruled(s, hand)
	for _, k := range []measure.Key{measure.BustGirth, measure.WaistGirth, measure.BackWaist} {
		if !(s[k] > 0) {
			return nil, fmt.Errorf("torso: %s is needed", k)
		}
	}
	d := &draft{
		sheet: s, hand: hand, stats: statisticsOf(w, year), drawn: map[measure.Key]Drawn{},
		bodies: map[measure.Level]section.Body{}, shaped: map[measure.Level]*shaping{},
		slices: map[measure.Level]section.Section{}, seam: map[measure.Level]float64{}, girth: map[measure.Level]float64{},
	}
	d.drawGirths()
	if err := d.drawSlices(); err != nil {
		return nil, err
	}
	d.startUpper()
	d.centre()
	d.startHeights()
	return d, nil
}

// take returns the reading of a key, or draws it and keeps note of that.
func (d *draft) take(k measure.Key, value float64, source string) float64 {
	if v, ok := d.sheet[k]; ok {
		return v
	}
	d.drawn[k] = Drawn{value, source}
	return value
}

// note adds a notice that a reading could not be honoured.
func (d *draft) note(code string, k measure.Key, amount float64, format string, args ...any) {
	d.notices = append(d.notices, measure.Notice{Code: code, Key: k, Amount: amount, Message: fmt.Sprintf(format, args...)})
}

// drawSlices settles every slice: those first whose breadth over depth a tape or the hand
// has settled, because they say what the others are likely to be.
func (d *draft) drawSlices() error {
	known := map[measure.Level]float64{}
	for _, firm := range []firmness{takenBoth, setByHand, drawn} {
		for i, t := range taped {
			if d.firmness(i) != firm {
				continue
			}
			s := d.sheet
			err := d.drawSlice(t.level, d.stats.expected(t.level, known), section.Readings{
				Girth: d.girth[t.level], Breadth: s[t.breadth], Depth: s[t.depth], FrontArc: s[t.front], LeftArc: s[t.left],
			})
			if err != nil {
				return err
			}
			d.shape(i)
		}
		d.learn(known, firm)
	}
	for _, t := range taped {
		if t.breadth != "" {
			b, a := d.bodies[t.level], d.hand[t.level]
			if a.Breadth == nil {
				d.take(t.breadth, b.Breadth, d.stats.sources.body)
			}
			if a.Depth == nil {
				d.take(t.depth, b.Depth, d.stats.sources.body)
			}
		}
	}
	d.setBehind()
	return nil
}

// learn adds what the levels of a firmness tell of breadth over depth. What the hand did tells
// by how much the figure differs there from what was expected of it.
func (d *draft) learn(known map[measure.Level]float64, firm firmness) {
	told := map[measure.Level]float64{}
	for i, t := range taped {
		if d.firmness(i) != firm {
			continue
		}
		b := d.bodies[t.level]
		told[t.level] = b.Breadth / b.Depth
		if firm == setByHand {
			was := d.shaped[t.level].before
			told[t.level] *= d.stats.expected(t.level, known) * was.Depth / was.Breadth
		}
	}
	maps.Copy(known, told)
}

// firmness is how well breadth over depth is known at a level.
type firmness int

const (
	takenBoth firmness = iota
	setByHand
	drawn
)

// firmness is that of the taped level i.
func (d *draft) firmness(i int) firmness {
	t := taped[i]
	switch a := d.hand[t.level]; {
	case d.sheet[t.breadth] > 0 && d.sheet[t.depth] > 0:
		return takenBoth
	case a.Breadth != nil || a.Depth != nil:
		return setByHand
	}
	return drawn
}

// shape lets the hand shape the slice of the taped level i, once it is drawn without.
func (d *draft) shape(i int) {
	t := taped[i]
	if shapes(d.hand[t.level]) {
		s := d.shaping(i, d.hand[t.level])
		d.bodies[t.level] = s.settle()
		d.shaped[t.level] = s
	}
}

// shaping is what the hand does to the taped level i, as it was drawn without.
func (d *draft) shaping(i int, hand measure.Adjustment) *shaping {
	t, b := taped[i], d.bodies[taped[i].level]
	_, front, left := b.Arcs()
	s := &shaping{before: b, ratio: d.stats.shape[t.level].spread, hand: hand}
	kept := func(k measure.Key, built float64) float64 {
		if taken := d.sheet[k]; math.Abs(taken-built) < near {
			return taken
		}
		return 0 // not taken, or given up for another reading
	}
	s.taken = section.Readings{
		Girth: d.girth[t.level], Breadth: kept(t.breadth, b.Breadth), Depth: kept(t.depth, b.Depth),
		FrontArc: kept(t.front, front), LeftArc: kept(t.left, left),
	}
	return s
}

// drawSlice settles one slice. Readings that no outline has together are given up, the
// least certain first, and said so: the arcs, whose seams may lie anywhere, then
// whichever of breadth and depth is missed by less.
func (d *draft) drawSlice(l measure.Level, ratio float64, all section.Readings) error {
	usual := d.stats.usual(l, ratio, d.bustShare(all.Breadth))
	noLeft, noArcs := all, all
	noLeft.LeftArc = 0
	noArcs.LeftArc, noArcs.FrontArc = 0, 0
	noDepth, noBreadth := noArcs, noArcs
	noDepth.Depth, noBreadth.Breadth = 0, 0
	for _, readings := range [][]section.Readings{{all}, {noLeft}, {noArcs}, {noDepth, noBreadth}, {{Girth: all.Girth}}} {
		best := math.Inf(1)
		for _, r := range readings {
			b, err := section.Fit(r, usual)
			if m := math.Abs(math.Log(b.Breadth/or(all.Breadth, b.Breadth))) + math.Abs(math.Log(b.Depth/or(all.Depth, b.Depth))); err == nil && m < best {
				best = m
				d.bodies[l] = b
			}
		}
		if math.IsInf(best, 1) {
			continue
		}
		if readings[0] != all {
			d.notices = append(d.notices, unlike(l, all, d.bodies[l]))
		}
		return nil
	}
	return fmt.Errorf("torso: no outline at the %s has a girth of %.0f mm", l, all.Girth)
}

// unlike says that an outline could not have all the readings.
func unlike(l measure.Level, taken section.Readings, b section.Body) measure.Notice {
	girth, front, _ := b.Arcs()
	return measure.Notice{
		Code: "section-readings-disagree", Level: l,
		Amount: math.Max(math.Abs(b.Breadth-or(taken.Breadth, b.Breadth)), math.Max(math.Abs(b.Depth-or(taken.Depth, b.Depth)), math.Abs(front-or(taken.FrontArc, front)))),
		Message: fmt.Sprintf("At the %s no outline has girth, breadth, depth and arcs as taken; the outline drawn has girth %.0f, breadth %.0f, depth %.0f, front arc %.0f mm. Measure again.",
			l, girth, b.Breadth, b.Depth, front),
	}
}

// bustShare is the distance of the bust points over the breadth at the bust.
func (d *draft) bustShare(breadth float64) float64 {
	width, ok := d.sheet[measure.BustPointWidth]
	if !ok {
		return usualBustShare
	}
	const breadthPerGirth = 0.38 // at the bust, mesh
	return width / or(breadth, breadthPerGirth*d.sheet[measure.BustGirth])
}

// setBehind sets every slice forward or back of the waist's and gives the bust its lobes.
func (d *draft) setBehind() {
	depth := d.bodies[measure.Waist].Depth
	for _, t := range taped {
		b := d.lobed(t.level, d.bodies[t.level])
		b.Y = d.stats.shape[t.level].y * depth
		d.bodies[t.level] = b
	}
}

// lobed gives a woman's bust its two lobes, and leaves other slices as they are.
func (d *draft) lobed(l measure.Level, b section.Body) section.Body {
	if l == measure.Bust && d.stats.wearer == measure.Woman {
		width := or(d.sheet[measure.BustPointWidth], usualBustShare*b.Breadth)
		b.Lobe, b.Valley = width/2, d.stats.valley*width
	}
	return b
}

// nearNeck is where the axis runs between the middles of waist (0) and neck (1): near the
// neck's, because the slices there and through the shoulders are the slender ones.
const nearNeck = 0.8

// centre moves the whole figure so that the axis runs well inside every slice, and draws
// the slices about it.
func (d *draft) centre() {
	dy := d.axisRoom().Clamp(-nearNeck * (d.upper.nape + d.upper.neckDepth))
	d.upper.move(dy)
	for _, t := range taped {
		b := d.bodies[t.level]
		b.Y += dy
		drawn := drawing{}
		if s := d.shaped[t.level]; s != nil {
			s.before.Y, s.before.Lobe, s.before.Valley = b.Y, b.Lobe, b.Valley
			b, drawn = s.correct(b, drawBody)
		} else {
			drawn = drawBody(b).grown(d.girth[t.level])
		}
		d.bodies[t.level], d.slices[t.level], d.seam[t.level] = b, drawn.Section, drawn.seam
	}
}

// wellInside is how far inside every taped slice the axis runs at least, as a part of its depth:
// nearer to the skin, directions from the axis would draw it coarsely. Only a hand asks for such figures.
const wellInside = 0.1

// axisRoom is how far the slices may move for the axis to run well inside all of them.
func (d *draft) axisRoom() section.Span {
	room := section.Span{Least: math.Inf(-1), Most: math.Inf(1)}
	for _, t := range taped {
		b := d.bodies[t.level]
		if s := d.shaped[t.level]; s != nil {
			s.before.Y = b.Y
			b = s.seamed(b, s.aim)
		}
		inner := (0.5 - wellInside) * b.Depth
		room.Least, room.Most = math.Max(room.Least, -inner-b.Y), math.Min(room.Most, inner-b.Y)
	}
	return room
}

// drawBody draws a body about the axis.
func drawBody(b section.Body) drawing { return drawing{section.Of(b.Ring()), b.Y + b.Seam} }

// or returns v, or otherwise where v was not taken.
func or(v, otherwise float64) float64 {
	if v == 0 {
		return otherwise
	}
	return v
}
