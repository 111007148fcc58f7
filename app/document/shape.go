package document

import (
	"strings"

	"understructure/app/record"
	"understructure/geometry/measure"
)

// SetShape sets by hand what is wanted of the mount at a level, all of it: what is nil in a
// follows the measurements again. Until Settle, setting the same level again belongs to the
// same step, which is named for what has changed ("waist breadth"). It refuses what a record cannot hold.
func (d *Document) SetShape(l measure.Level, a measure.Adjustment) error {
	r := d.Record()
	if err := record.CheckAdjustment(l, a, r.Unit); err != nil {
		return err
	}
	if len(differences(r.Mount.Shape[l], a)) == 0 {
		return nil
	}
	r = clone(r)
	shaped(&r, l, copied(a))
	d.history.AmendNamed("shape of "+string(l), r, func(from, to record.Record) string {
		if changed := differences(from.Mount.Shape[l], to.Mount.Shape[l]); len(changed) == 1 {
			return string(l) + " " + changed[0]
		}
		return string(l) + " shape"
	})
	d.changed()
	return nil
}

// ShapeFields lists what can be set by hand at a level.
func ShapeFields(_ record.Record, l measure.Level) []Field {
	var fields []Field
	for _, p := range record.Parts {
		fields = append(fields, choice("mount.shape."+string(l)+"."+p.Key, string(l)+" "+words(p), "shape",
			shapeWhere[p.Key], p.Limit, func(r *record.Record) slot { return inShape{r, l, p} }))
	}
	return fields
}

var shapeWhere = map[string]string{
	"height":    "Of the level above the waist; less than nought is below it.",
	"girth":     "Of the mount at this level, all the way round.",
	"breadth":   "Of the mount at this level, straight across.",
	"depth":     "Of the mount at this level, from front to back.",
	"front_arc": "Of the mount at this level, from side seam to side seam over the front.",
	"left_arc":  "Of the mount at this level, from centre front round the left side to centre back.",
}

// words is the part's key as one says it.
func words(p record.Part) string { return strings.ReplaceAll(p.Key, "_", " ") }

// inShape is one length that was set by hand at a level.
type inShape struct {
	record *record.Record
	level  measure.Level
	part   record.Part
}

func (s inShape) get() *float64 {
	a := s.record.Mount.Shape[s.level]
	return *s.part.At(&a)
}

func (s inShape) set(v *float64) {
	a := s.record.Mount.Shape[s.level]
	*s.part.At(&a) = v
	shaped(s.record, s.level, a)
}

// shaped puts an adjustment into a record that may be written to; one of which nothing is set is taken out.
func shaped(r *record.Record, l measure.Level, a measure.Adjustment) {
	if r.Mount.Shape == nil {
		r.Mount.Shape = measure.Shape{}
	}
	r.Mount.Shape[l] = a
	if a == (measure.Adjustment{}) {
		delete(r.Mount.Shape, l)
	}
	if len(r.Mount.Shape) == 0 {
		r.Mount.Shape = nil // as in a record that never had one
	}
}

// ClearShape lets every level follow the measurements again.
func (d *Document) ClearShape() {
	r := d.Record()
	if len(r.Mount.Shape) > 0 {
		r.Mount.Shape = nil
		d.Change("shape by measurements", r)
	}
}

// differences names the parts in which two adjustments differ.
func differences(a, b measure.Adjustment) []string {
	var names []string
	for _, p := range record.Parts {
		if !same(*p.At(&a), *p.At(&b)) {
			names = append(names, words(p))
		}
	}
	return names
}

// copied keeps an adjustment from being written to through the pointers of whoever gave it.
func copied(a measure.Adjustment) measure.Adjustment {
	for _, p := range record.Parts {
		if v := *p.At(&a); v != nil {
			x := *v
			*p.At(&a) = &x
		}
	}
	return a
}
