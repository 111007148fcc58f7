package torso

import (
	"fmt"
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// draft is a figure in the making: sizes and slices are settled, heights still move.
type draft struct {
	sheet   measure.Sheet
	stats   statistics
	drawn   map[measure.Key]Drawn
	notices []measure.Notice
	halves  map[measure.Level]section.Halves  // slices from underarm to hip
	slices  map[measure.Level]section.Section // the same about the axis, tape exact
	girth   map[measure.Level]float64
	z       heights
	fixed   map[measure.Level]float64 // heights that a length along the skin has settled
	upper   upper
	lengths []Length
}

// taped lists the levels whose girth a tape takes below the shoulder, and their keys.
var taped = []struct {
	level                              measure.Level
	girth, breadth, depth, front, left measure.Key
}{
	{measure.Underarm, "", "", "", "", ""},
	{measure.Bust, measure.BustGirth, measure.BustBreadth, measure.BustDepth, measure.BustFrontArc, measure.BustLeftArc},
	{measure.Underbust, measure.UnderbustGirth, "", "", "", ""},
	{measure.Waist, measure.WaistGirth, measure.WaistBreadth, measure.WaistDepth, measure.WaistFrontArc, measure.WaistLeftArc},
	{measure.HighHip, measure.HighHipGirth, "", "", "", ""},
	{measure.Hip, measure.HipGirth, measure.HipBreadth, measure.HipDepth, measure.HipFrontArc, measure.HipLeftArc},
}

func newDraft(s measure.Sheet, w measure.Wearer, year int) (*draft, error) {
	for _, k := range []measure.Key{measure.BustGirth, measure.WaistGirth, measure.BackWaist} {
		if !(s[k] > 0) {
			return nil, fmt.Errorf("torso: %s is needed", k)
		}
	}
	d := &draft{
		sheet: s, stats: statisticsOf(w, year), drawn: map[measure.Key]Drawn{},
		halves: map[measure.Level]section.Halves{}, slices: map[measure.Level]section.Section{}, girth: map[measure.Level]float64{},
	}
	d.drawGirths()
	for _, t := range taped {
		if err := d.drawSlice(t.level, section.Readings{
			Girth: d.girth[t.level], Breadth: s[t.breadth], Depth: s[t.depth], FrontArc: s[t.front], LeftArc: s[t.left],
		}); err != nil {
			return nil, err
		}
	}
	d.startHeights()
	d.startUpper()
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

// drawSlice settles one slice. Readings that no outline has together are given up one by
// one, the least certain first, and said so.
func (d *draft) drawSlice(l measure.Level, r section.Readings) error {
	usual := d.stats.usual(l, d.girth, d.sheet[measure.BustPointWidth])
	all := r
	for _, give := range []func(){func() {}, func() { r.LeftArc = 0 }, func() { r.FrontArc = 0 }, func() { r.Depth = 0 }, func() { r.Breadth = 0 }} {
		give()
		h, err := section.Fit(r, usual)
		if err != nil {
			continue
		}
		d.halves[l] = h
		d.slices[l] = section.Of(h.Ring()).Grown(r.Girth)
		if r != all {
			girth, front, _ := h.Arcs()
			d.notices = append(d.notices, measure.Notice{
				Code: "section-readings-disagree", Level: l,
				Amount:  math.Max(math.Abs(h.Right+h.Left-or(all.Breadth, h.Right+h.Left)), math.Abs(h.Front+h.Back-or(all.Depth, h.Front+h.Back))),
				Message: fmt.Sprintf("At the %s no outline has girth, breadth, depth and arcs as taken; the outline drawn has girth %.0f, breadth %.0f, depth %.0f, front arc %.0f mm. Measure again.", l, girth, h.Right+h.Left, h.Front+h.Back, front),
			})
		}
		return nil
	}
	return fmt.Errorf("torso: no outline at the %s has a girth of %.0f mm", l, r.Girth)
}

// or returns v, or otherwise where v was not taken.
func or(v, otherwise float64) float64 {
	if v == 0 {
		return otherwise
	}
	return v
}
