package ui

import (
	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/torso"
)

// shaping is what is done to the figure by hand: one level at a time, each pull one step that can be undone.
// While one pulls, the record gets the newest of it whenever the figure has followed what it got before.
type shaping struct {
	doc    *document.Document
	figure func(record.Record) (torso.Torso, error)

	level measure.Level // in hand, "" for none
	start torso.Level   // as it was when it was taken
	torso torso.Torso
	held  measure.Adjustment  // what was set by hand before
	moved bool                // the record has been changed since
	waits bool                // for the figure to follow
	next  *measure.Adjustment // what is set then; nil for nothing new
}

// busy reports whether a level is in hand.
func (s *shaping) busy() bool { return s.level != "" }

// take takes a level in hand, unless it is already. It fails where there is no figure.
func (s *shaping) take(level measure.Level) error {
	if s.level == level {
		return nil
	}
	if err := s.settle(); err != nil {
		return err
	}
	r := s.doc.Record()
	t, err := s.figure(r)
	if err != nil {
		return err
	}
	*s = shaping{doc: s.doc, figure: s.figure, level: level, torso: t, start: t.At(level), held: r.Mount.Shape[level]}
	return nil
}

// set changes the level in hand, or keeps the change until the figure has followed the one before.
func (s *shaping) set(a measure.Adjustment) error {
	if s.waits {
		s.next = &a
		return nil
	}
	s.next = nil
	before := s.doc.Record().Mount.Shape[s.level]
	if err := s.doc.SetShape(s.level, a); err != nil {
		return err
	}
	if s.doc.Record().Mount.Shape[s.level] != before {
		s.moved, s.waits = true, true
	}
	return nil
}

// follow sets what was kept, now that the figure has followed.
func (s *shaping) follow() error {
	s.waits = false
	if s.next == nil {
		return nil
	}
	return s.set(*s.next)
}

// settle lets the level go and ends the step.
func (s *shaping) settle() error {
	if !s.busy() {
		return nil
	}
	err := s.follow()
	*s = shaping{doc: s.doc, figure: s.figure}
	s.doc.Settle()
	return err
}

// giveUp lets the level go and takes the step back.
func (s *shaping) giveUp() {
	moved := s.moved
	*s = shaping{doc: s.doc, figure: s.figure}
	if s.doc.Settle(); moved {
		s.doc.Undo()
	}
}

// pull shapes the level in hand, the tape held, and returns the outline that it gets and what is to be
// said of it.
func (s *shaping) pull(level measure.Level, p control.Pull, unit string) (plane.Ring, []string) {
	if err := s.take(level); err != nil {
		return nil, []string{err.Error()}
	}
	a := s.pulled(p)
	shaped, notices := s.torso.Reshape(level, a)
	if err := s.set(a); err != nil {
		return nil, []string{err.Error()}
	}
	now := shaped.Section.Reading(shaped.Seam)
	girth := shaped.Section.Tape()
	said := []string{
		lang.L("girth {{.Girth}} held", map[string]any{"Girth": length(&girth, unit) + " " + unit}),
		lang.L("breadth {{.Breadth}} · depth {{.Depth}}", map[string]any{"Breadth": length(&now.Breadth, unit), "Depth": length(&now.Depth, unit)}),
	}
	if p.Balance {
		said[1] = lang.L("front arc {{.Front}} · left arc {{.Left}}", map[string]any{"Front": length(&now.FrontArc, unit), "Left": length(&now.LeftArc, unit)})
	}
	for _, n := range notices {
		said = append(said, n.Message)
	}
	return shaped.Section.Ring(), said
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

// lift moves a level to a height above the waist, and returns how far it got.
func (s *shaping) lift(level measure.Level, height float64) (float64, error) {
	if err := s.take(level); err != nil {
		return height, err
	}
	a := s.held
	height = s.torso.Limits(level, a).Height.Clamp(height)
	a.Height = &height
	return height, s.set(a)
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
