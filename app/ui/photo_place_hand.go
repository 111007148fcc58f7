package ui

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"strings"

	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/trace"
)

// change changes the photograph in hand; until it is settled that is one step.
func (p *photoPlace) change(do func(*record.Photograph)) error {
	f, ok := p.inHand()
	if !ok {
		return nil
	}
	f = f.Clone()
	do(&f)
	return p.doc.ChangePhotograph(p.at, f)
}

func (p *photoPlace) tell(err error) {
	if err != nil {
		set(p.notice, err.Error())
	}
}

// errLength says what a length between two points may be.
var errLength = errors.New("give the distance between the two points")

func (p *photoPlace) setLength(text string) error {
	v, err := document.Length.Parse(text, p.doc.Record().Unit)
	if err != nil {
		return err
	}
	if v == nil || *v <= 0 {
		return errLength
	}
	return p.change(func(f *record.Photograph) { f.Length = *v })
}

func (p *photoPlace) setAllowance(text string) error {
	v, err := document.Length.Parse(text, p.doc.Record().Unit)
	if err != nil {
		return err
	}
	if p.room = 0; v != nil {
		p.room = max(*v, 0)
	}
	p.propose()
	return nil
}

// moved moves what is held: the photograph, one of its two points, or a point of the trace.
func (p *photoPlace) moved(g control.Grip, by plane.Point) {
	f, _ := p.inHand()
	placed, ok := document.Placed(f)
	if !ok {
		return
	}
	onto := func(pixel plane.Point) plane.Point { return placed.Pixel(placed.View(pixel).Add(by)) }
	p.tell(p.change(func(f *record.Photograph) {
		switch {
		case g == control.GripWhole:
			f.At = f.At.Add(by)
		case g == control.GripLow: // the photograph stays, and with it the place of the point in the view
			f.At = f.At.Add(by)
			f.Low = onto(f.Low)
		case g == control.GripHigh:
			f.High = onto(f.High)
		case int(g-control.GripTrace) < len(f.Trace):
			f.Trace[g-control.GripTrace] = onto(f.Trace[g-control.GripTrace])
		}
	}))
}

func (p *photoPlace) traced(at plane.Point) {
	f, _ := p.inHand()
	if placed, ok := document.Placed(f); ok {
		p.tell(p.change(func(f *record.Photograph) { f.Trace = append(f.Trace, placed.Pixel(at)) }))
		p.doc.Settle()
	}
}

func (p *photoPlace) erased() {
	p.tell(p.change(func(f *record.Photograph) {
		if n := len(f.Trace); n > 0 {
			f.Trace = f.Trace[:n-1]
		}
	}))
	p.doc.Settle()
}

// proposal is a breadth or a depth that the silhouette has and the figure has not.
type proposal struct {
	level    measure.Level
	what     string // "breadth" or "depth"
	now      float64
	then     float64
	measured bool // a tape says otherwise, and is left
}

// acrossWords are what a photograph from each side shows.
var acrossWords = map[string]string{"front": "breadth", "back": "breadth", "side": "depth"}

// proposed compares the silhouette with the figure, level by level.
func (p *photoPlace) proposed() []proposal {
	f, ok := p.inHand()
	placed, lies := document.Placed(f)
	if !ok || !lies || len(f.Trace) < 3 {
		return nil
	}
	var line []plane.Point
	for _, q := range f.Trace {
		line = append(line, placed.View(q))
	}
	now, err := p.window.options.Figure(p.doc.Record())
	if err != nil {
		return nil
	}
	pl, _ := p.doc.Plan()
	var out []proposal
	for _, l := range now.Levels {
		left, right, ok := trace.Extent(line, l.Height+pl.StandHeight)
		if !ok {
			continue
		}
		at := l.Section.Reading(l.Seam)
		x := proposal{level: l.Name, what: acrossWords[f.View], now: at.Breadth, then: right - left - 2*p.room}
		if x.what == "depth" {
			x.now = at.Depth
		}
		_, x.measured = p.doc.Record().Garment.Bodice[measure.Key(strings.ReplaceAll(string(l.Name), " ", "_")+"_"+x.what)]
		out = append(out, x)
	}
	return out
}

// propose says what fitting the figure to the silhouette would change.
func (p *photoPlace) propose() {
	all, u := p.proposed(), p.doc.Record().Unit
	var lines []string
	for _, x := range all {
		text := fmt.Sprintf("%s: %s → %s %s", lang.L(string(x.level)), length(&x.now, u), length(&x.then, u), u)
		if x.measured {
			text += " – " + lang.L("measured, stays")
		}
		lines = append(lines, text)
	}
	if len(all) == 0 {
		lines = []string{lang.L("Tick the box and click along the outline, up one side and down the other. Backspace takes the last point away.")}
	} else {
		lines = append([]string{control.Sentence(lang.L(all[0].what))}, lines...)
	}
	set(p.proposals, strings.Join(lines, "\n"))
	if p.apply.Disable(); len(all) > 0 {
		p.apply.Enable()
	}
}

// fit shapes every level that no tape speaks for like the silhouette, as one step. The girths stay; what they
// do not allow is left at the nearest that they do.
func (p *photoPlace) fit() {
	r := p.doc.Record()
	now, err := p.window.options.Figure(r)
	if err != nil {
		p.window.failed(err)
		return
	}
	shape := maps.Clone(r.Mount.Shape)
	if shape == nil {
		shape = measure.Shape{}
	}
	for _, x := range p.proposed() {
		if x.measured || math.Abs(x.then-x.now) < 1 {
			continue
		}
		a := shape[x.level]
		limits := now.Limits(x.level, a)
		if x.what == "depth" {
			a.Depth = number(limits.Depth.Clamp(x.then))
		} else {
			a.Breadth = number(limits.Breadth.Clamp(x.then))
		}
		shape[x.level] = a
	}
	r.Mount.Shape = shape
	p.doc.Change("silhouette of the photograph", r)
}
