package document

import (
	"understructure/app/record"
	"understructure/geometry/measure"
)

// inEase is one ease for all levels; to set it takes the place of those for single levels.
type inEase struct{ ease *record.Ease }

func (e inEase) get() *float64 { return e.ease.All }

func (e inEase) set(v *float64) {
	e.ease.All = v
	if v != nil {
		e.ease.ByLevel = nil
	}
}

// EaseFields lists the ease of each level. One that is empty follows the one ease for all, or
// the strength of the cloth where there is none.
func EaseFields(record.Record) []Field {
	var fields []Field
	for _, l := range measure.Levels {
		fields = append(fields, choice("mount.ease."+string(l), string(l)+" ease", "ease",
			"How much larger the garment is to be than the mount at this level, all the way round; empty leaves it to the strength of the cloth.",
			record.EaseLimit, func(r *record.Record) slot { return inEaseOf{&r.Mount.Ease, l} }))
	}
	return fields
}

// inEaseOf is the ease of one level. Where there is one ease for all it is that; to set the
// level then leaves every other as it was.
type inEaseOf struct {
	ease  *record.Ease
	level measure.Level
}

func (e inEaseOf) get() *float64 {
	if v, ok := e.ease.ByLevel[e.level]; ok {
		return &v
	}
	return e.ease.All
}

func (e inEaseOf) set(v *float64) {
	all := map[measure.Level]float64{}
	for _, l := range measure.Levels {
		if x := (inEaseOf{e.ease, l}).get(); x != nil {
			all[l] = *x
		}
	}
	delete(all, e.level)
	if v != nil {
		all[e.level] = *v
	}
	*e.ease = record.Ease{ByLevel: all}
	if len(all) == 0 {
		e.ease.ByLevel = nil
	}
}

// ClearEase leaves the ease of every level to the strength of the cloth.
func (d *Document) ClearEase() {
	r := d.Record()
	if r.Mount.Ease.All == nil && r.Mount.Ease.ByLevel == nil {
		return
	}
	r.Mount.Ease = record.Ease{}
	d.Change("ease by strength", r)
}
