package ui

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/torso"
)

// shaping is what is done to the figure by hand: one level at a time, each pull one step that can be undone.
type shaping struct {
	doc    *document.Document
	figure func(record.Record) (torso.Torso, error)

	level measure.Level // in hand, "" for none
	start torso.Level   // as it was when it was taken
	torso torso.Torso
	held  measure.Adjustment // what was set by hand before
}

// take takes a level in hand, unless it is already; false where there is no figure.
func (s *shaping) take(level measure.Level) bool {
	if s.level == level {
		return true
	}
	r := s.doc.Record()
	t, err := s.figure(r)
	if err != nil {
		return false
	}
	s.level, s.torso, s.start, s.held = level, t, t.At(level), r.Mount.Shape[level]
	return true
}

// settle ends the step.
func (s *shaping) settle() {
	s.level = ""
	s.doc.Settle()
}

// giveUp takes the step back.
func (s *shaping) giveUp() {
	if s.level != "" {
		s.settle()
		s.doc.Undo()
	}
}

// pull shapes the level in hand, the tape held, and returns the outline that it gets and what is to be
// said of it.
func (s *shaping) pull(level measure.Level, p control.Pull, unit string) (plane.Ring, string) {
	if !s.take(level) {
		return nil, ""
	}
	a := s.pulled(p)
	shaped, notices := s.torso.Reshape(level, a)
	if err := s.doc.SetShape(level, a); err != nil {
		return nil, err.Error()
	}
	now := shaped.Section.Reading(shaped.Seam)
	girth := shaped.Section.Tape()
	said := []string{lang.L("girth {{.Girth}} held · breadth {{.Breadth}} · depth {{.Depth}} {{.Unit}}", map[string]any{
		"Girth": length(&girth, unit), "Breadth": length(&now.Breadth, unit), "Depth": length(&now.Depth, unit), "Unit": unit})}
	for _, n := range notices {
		said = append(said, n.Message)
	}
	return shaped.Section.Ring(), strings.Join(said, "\n")
}

// pulled is the adjustment that a pull comes to, kept within what the tape allows.
func (s *shaping) pulled(p control.Pull) measure.Adjustment {
	a, at := s.held, s.start.Section.Reading(s.start.Seam)
	limits := s.torso.Limits(s.level, a)
	across := p.Handle == control.Left || p.Handle == control.Right
	by := p.By
	switch {
	case across && p.Balance: // half of what a side gains in front it gains behind
		if p.Handle == control.Right {
			by = -by
		}
		a.LeftArc = number(limits.LeftArc.Clamp(at.LeftArc + 2*by))
	case across:
		a.Breadth = number(limits.Breadth.Clamp(at.Breadth + 2*by))
	case p.Balance:
		if p.Handle == control.Back {
			by = -by
		}
		a.FrontArc = number(limits.FrontArc.Clamp(at.FrontArc + 2*by))
	default:
		a.Depth = number(limits.Depth.Clamp(at.Depth + by))
	}
	return a
}

// lift moves a level to a height above the waist.
func (s *shaping) lift(level measure.Level, height float64) error {
	if !s.take(level) {
		return nil
	}
	a := s.held
	a.Height = number(s.torso.Limits(level, a).Height.Clamp(height))
	return s.doc.SetShape(level, a)
}

func number(v float64) *float64 { return &v }

// taped are the keys under which the garment's girth at a level is taken.
var taped = map[measure.Level]measure.Key{
	measure.NeckBase: measure.NeckBaseGirth, measure.Underarm: measure.UnderarmGirth, measure.Bust: measure.BustGirth,
	measure.Underbust: measure.UnderbustGirth, measure.Waist: measure.WaistGirth, measure.HighHip: measure.HighHipGirth, measure.Hip: measure.HipGirth,
}

// girthField is where the garment's girth at a level is kept.
func girthField(r record.Record, level measure.Level) document.Field {
	fields, path := fieldsOf("Garment")(r), "garment.bodice."+string(taped[level])
	if _, ok := taped[level]; !ok {
		fields, path = document.ShapeFields(r, level), "mount.shape."+string(level)+".girth"
	}
	for _, f := range fields {
		if f.Path == path {
			return f
		}
	}
	panic("ui: no girth at " + string(level))
}
