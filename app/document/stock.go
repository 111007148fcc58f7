package document

import (
	"fmt"
	"slices"

	"understructure/app/record"
)

// waddings lists the thicknesses that the maker has, and always room for a second one.
func waddings(r record.Record) []Field {
	var fields []Field
	for i := range max(2, len(r.Mount.Wadding)) {
		path, label, where := "mount.wadding.thickness", "wadding thickness", "Of the wadding as it lies under the cover, not as it is sold."
		if i > 0 {
			path, label, where = fmt.Sprintf("mount.wadding[%d].thickness", i), fmt.Sprintf("wadding no. %d", i+1), "Of another wadding that may be used together with the first; empty where there is none."
		}
		f := choice(path, label, "materials", where, record.WaddingLimit, func(r *record.Record) slot { return inWadding{r, i} })
		f.allow = inOrder(i, len(r.Mount.Wadding))
		fields = append(fields, f)
	}
	return fields
}

// inOrder keeps a list without gaps: its last can be taken away, and the next be added.
func inOrder(i, length int) func(*float64) error {
	return func(v *float64) error {
		switch {
		case v == nil && i+1 < length:
			return fmt.Errorf("give a thickness, or clear no. %d first", length)
		case v != nil && i > length:
			return fmt.Errorf("give no. %d first", length+1)
		}
		return nil
	}
}

// inWadding is the thickness of one wadding.
type inWadding struct {
	record *record.Record
	i      int
}

func (w inWadding) get() *float64 {
	if w.i < len(w.record.Mount.Wadding) {
		return &w.record.Mount.Wadding[w.i].Thickness
	}
	return nil
}

func (w inWadding) set(v *float64) {
	all := &w.record.Mount.Wadding
	switch {
	case v == nil:
		*all = slices.Delete(*all, min(w.i, len(*all)), len(*all))
	case w.i < len(*all):
		(*all)[w.i].Thickness = *v
	default:
		*all = append(*all, record.Wadding{Thickness: *v})
	}
}

// planks lists what is known of the foam; its slots make the plank when a first value is set.
func planks() []Field {
	field := func(key, label, where string, l record.Limit, p func(*record.Plank) **float64) Field {
		return choice("mount.plank."+key, label, "plank", where, l, func(r *record.Record) slot { return inPlank{r, p} })
	}
	return []Field{
		field("thickness", "plank thickness", "Of the foam that the slices are cut from.", record.PlankLimit, func(p *record.Plank) **float64 { return &p.Thickness }),
		field("length", "plank length", "The longer side of a plank.", record.PlankSideLimit, func(p *record.Plank) **float64 { return &p.Length }),
		field("width", "plank width", "The shorter side of a plank.", record.PlankSideLimit, func(p *record.Plank) **float64 { return &p.Width }),
		field("pole", "pole diameter", "Of the pole that goes through every slice; 0 is no pole.", record.PoleLimit, func(p *record.Plank) **float64 { return &p.Pole }),
	}
}

type inPlank struct {
	record *record.Record
	at     func(*record.Plank) **float64
}

func (p inPlank) get() *float64 {
	if p.record.Mount.Plank == nil {
		return nil
	}
	return *p.at(p.record.Mount.Plank)
}

func (p inPlank) set(v *float64) {
	if p.record.Mount.Plank == nil {
		p.record.Mount.Plank = &record.Plank{}
	}
	*p.at(p.record.Mount.Plank) = v
}
