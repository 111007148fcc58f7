package record

import (
	"fmt"
	"strings"

	"understructure/geometry/measure"
)

// record reads the whole, the unit first, since every length depends on it.
func (d *decoder) record(n node) Record {
	var r Record
	if o, ok := n.(object); ok {
		d.head(o)
	}
	if d.err != nil {
		return r
	}
	r.Unit = d.unit
	seen := func(string, node) {} // read by head
	d.object("", n,
		field{"understructure", seen},
		field{"unit", seen},
		field{"object", func(p string, n node) { d.theObject(p, n, &r.Object) }},
		field{"taken", func(p string, n node) {
			d.object(p, n, field{"by", d.text(&r.Taken.By, longestName)}, field{"on", d.date(&r.Taken.On)}, field{"side", d.word(&r.Taken.Side, SidesOf)})
		}},
		field{"garment", func(p string, n node) { d.garment(p, n, &r.Garment) }},
		field{"form", func(p string, n node) { r.Form = d.form(p, n) }},
		field{"mount", func(p string, n node) { d.mount(p, n, &r.Mount) }},
		field{"fittings", items(d, &r.Fittings, MostFittings, "fittings", d.fitting)},
		field{"photographs", items(d, &r.Photographs, MostPhotographs, "photographs", d.photograph)},
	)
	d.complete(&r)
	return r
}

func (d *decoder) head(o object) {
	if v, ok := o.values["understructure"]; !ok || written(v) != fmt.Sprint(Version) {
		d.refuse("understructure", writtenIf(v, ok), "is not the version of a record that can be read", fmt.Sprint(Version))
	}
	if v, ok := o.values["unit"]; ok {
		d.word(&d.unit, Units)("unit", v)
	} else {
		d.refuse("unit", "", "must be given", strings.Join(Units, ", "))
	}
}

func writtenIf(n node, there bool) string {
	if !there {
		return "an absent number"
	}
	return written(n)
}

func (d *decoder) theObject(path string, n node, o *Object) {
	d.object(path, n,
		field{"number", d.text(&o.Number, longestNumber)},
		field{"title", d.text(&o.Title, longestTitle)},
		field{"year", d.year(&o.Year)},
		field{"wearer", d.word((*string)(&o.Wearer), Wearers)},
		field{"notice", d.text(&o.Notice, longestTitle)},
	)
}

func (d *decoder) garment(path string, n node, g *Garment) {
	d.object(path, n,
		field{"strength", d.word(&g.Strength, Strengths)},
		field{"mass_kg", d.optional(&g.MassKg, kilograms, MassLimit)},
		field{"bodice", d.sheet(&g.Bodice, &g.Readings.Bodice, measure.Keys, measure.OfGarment)},
		field{"skirt", d.sheet(&g.Skirt, &g.Readings.Skirt, measure.Skirt, measure.OfGarment)},
		field{"sleeve", d.sheet(&g.Sleeve, &g.Readings.Sleeve, measure.Sleeve, measure.OfGarment)},
	)
}

func (d *decoder) form(path string, n node) *Form {
	f := &Form{}
	d.object(path, n,
		field{"label", d.text(&f.Label, longestName)},
		field{"bodice", d.sheet(&f.Bodice, &f.Readings, measure.Keys, measure.OfForm)},
	)
	return f
}

// sheet reads the measurements that a table lists; a sheet without a value stays nil, and so do
// readings where nothing was taken twice.
func (d *decoder) sheet(into *measure.Sheet, beside *Readings, table []measure.Measure, keep Keep) func(string, node) {
	var fields []field
	for _, m := range table {
		fields = append(fields, field{string(m.Key), func(path string, n node) {
			all := d.readings(path, n, m)
			if d.err != nil {
				return
			}
			if *into == nil {
				*into = measure.Sheet{}
			}
			(*into)[m.Key] = keep.Of(m, all)
			if len(all) > 1 {
				if *beside == nil {
					*beside = Readings{}
				}
				(*beside)[m.Key] = all
			}
		}})
	}
	return func(path string, n node) { d.object(path, n, fields...) }
}

func (d *decoder) of(m measure.Measure) quantity {
	if m.Degrees {
		return degrees
	}
	return d.lengths()
}

func (d *decoder) mount(path string, n node, m *Mount) {
	q := d.lengths()
	d.object(path, n,
		field{"build", d.word(&m.Build, Builds)},
		field{"ease", func(p string, n node) { d.ease(p, n, &m.Ease) }},
		field{"shape", func(p string, n node) { d.shape(p, n, &m.Shape) }},
		field{"tape_error", d.optional(&m.TapeError, q, TapeErrorLimit)},
		field{"height_error", d.optional(&m.HeightError, q, HeightErrorLimit)},
		field{"cutting_error", d.optional(&m.CuttingError, q, CuttingErrorLimit)},
		field{"wadding", func(p string, n node) { m.Wadding = d.waddings(p, n) }},
		field{"cover", func(p string, n node) {
			d.object(p, n, field{"thickness", d.optional(&m.Cover, q, CoverLimit)}, field{"spread", d.optional(&m.CoverSpread, q, SpreadLimit)},
				field{"width", d.optional(&m.CoverWidth, q, RollLimit)}, field{"nap", d.truth(func(b bool) { m.CoverNap = b })})
		}},
		field{"plank", func(p string, n node) { m.Plank = d.plank(p, n) }},
		field{"planks", items(d, &m.Planks, mostPlanks, "planks", d.sheetOfFoam)},
		field{"offcuts", items(d, &m.Offcuts, mostPlanks, "offcuts", d.offcut)},
		field{"prices", func(p string, n node) { m.Prices = d.prices(p, n) }},
		field{"step", d.word(&m.Step, Steps)},
		field{"skirt", d.skirtMount(&m.Skirt)},
		field{"sleeves", d.sleeveMount(&m.Sleeves)},
		field{"pads", d.pads(&m.Pads)},
		field{"paper", func(p string, n node) { d.paper(p, n, &m.Paper) }},
		field{"printer", func(p string, n node) { m.Printer = d.printer(p, n) }},
	)
}

// ease is one number for all levels, or an object with a number a level.
func (d *decoder) ease(path string, n node, e *Ease) {
	if _, byLevel := n.(object); !byLevel {
		d.optional(&e.All, d.lengths(), EaseLimit)(path, n)
		return
	}
	var fields []field
	for _, l := range measure.Levels {
		fields = append(fields, field{string(l), func(path string, n node) {
			if v, ok := d.number(path, n, d.lengths(), EaseLimit); ok {
				if e.ByLevel == nil {
					e.ByLevel = map[measure.Level]float64{}
				}
				e.ByLevel[l] = v
			}
		}})
	}
	d.object(path, n, fields...)
}

// waddings reads one wadding, or a list of those that the maker has.
func (d *decoder) waddings(path string, n node) []Wadding {
	l, ok := n.(list)
	if !ok {
		return []Wadding{d.wadding(path, n)}
	}
	if !d.atMost(path, l, mostWaddings, "waddings") {
		return nil
	}
	var w []Wadding
	for i, n := range l {
		w = append(w, d.wadding(fmt.Sprintf("%s[%d]", path, i), n))
	}
	return w
}

func (d *decoder) wadding(path string, n node) Wadding {
	var thickness *float64
	var w Wadding
	q := d.lengths()
	d.object(path, n, field{"thickness", d.optional(&thickness, q, WaddingLimit)}, field{"spread", d.optional(&w.Spread, q, SpreadLimit)},
		field{"width", d.optional(&w.Width, q, RollLimit)})
	if thickness == nil {
		d.refuse(join(path, "thickness"), "", "must be given", q.allowed(WaddingLimit))
		return w
	}
	w.Thickness = *thickness
	return w
}

// plank returns nil where the object says nothing.
func (d *decoder) plank(path string, n node) *Plank {
	var p Plank
	q := d.lengths()
	d.object(path, n,
		field{"thickness", d.optional(&p.Thickness, q, PlankLimit)},
		field{"length", d.optional(&p.Length, q, PlankSideLimit)},
		field{"width", d.optional(&p.Width, q, PlankSideLimit)},
		field{"pole", d.optional(&p.Pole, q, PoleLimit)},
	)
	if p == (Plank{}) {
		return nil
	}
	return &p
}

// paper is a name, or a width and a height.
func (d *decoder) paper(path string, n node, p *Paper) {
	sides, ok := n.(list)
	if !ok {
		d.word(&p.Name, Papers)(path, n)
		return
	}
	if len(sides) != 2 {
		d.refuse(path, fmt.Sprintf("a list of %d", len(sides)), "is not possible", "[width, height] or a name: "+strings.Join(Papers, ", "))
		return
	}
	p.Width, _ = d.number(path+"[0]", sides[0], d.lengths(), PaperWidthLimit)
	p.Height, _ = d.number(path+"[1]", sides[1], d.lengths(), PaperHeightLimit)
}

// complete fills the choices that every record has, and refuses a record from which no mount can be
// made unless it is a draft.
func (d *decoder) complete(r *Record) {
	if r.Object.Wearer == "" {
		r.Object.Wearer = measure.Woman
	}
	if r.Mount.Build == "" {
		r.Mount.Build = "slices"
		if r.Form != nil {
			r.Mount.Build = "padded"
		}
	}
	if d.draft {
		return
	}
	d.required("garment.bodice.", r.Garment.Bodice)
	if r.Mount.Build != "padded" {
		return
	}
	if r.Form == nil {
		d.refuse("form", "", "must be given where the build is padded", "the form's own measurements, or the build slices")
		return
	}
	d.required("form.bodice.", r.Form.Bodice)
}

func (d *decoder) required(path string, s measure.Sheet) {
	for _, k := range Required {
		if _, ok := s[k]; !ok {
			m, _ := measure.Find(measure.Keys, k)
			d.refuse(path+string(k), "", "must be given", d.of(m).allowed(Limit{m.Min, m.Max}))
		}
	}
}
