package record

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"understructure/geometry/measure"
	"understructure/geometry/unit"
)

// Encode writes a record as a file in its own unit, in the same order every time. What it
// would not read back it does not write: it returns Decode's refusal instead.
func Encode(w io.Writer, r Record) error { return encodeFor(Decode, w, r) }

// EncodeDraft is Encode for work in progress: what every mount needs may still be missing.
func EncodeDraft(w io.Writer, r Record) error { return encodeFor(DecodeDraft, w, r) }

func encodeFor(reader func(io.Reader) (Record, error), w io.Writer, r Record) error {
	var b bytes.Buffer
	e := encoder{unit: r.Unit}
	print(&b, e.record(r), "")
	b.WriteByte('\n')
	if _, err := reader(bytes.NewReader(b.Bytes())); err != nil {
		return err
	}
	_, err := w.Write(b.Bytes())
	return err
}

// encoder turns a record into the tree of a file.
type encoder struct{ unit string }

// put adds a key, unless there is nothing to say.
func (o *object) put(key string, n node) {
	if n == nil || n == "" {
		return
	}
	if inner, ok := n.(object); ok && len(inner.keys) == 0 {
		return
	}
	if o.values == nil {
		o.values = map[string]node{}
	}
	o.keys, o.values[key] = append(o.keys, key), n
}

func (e encoder) record(r Record) node {
	var o, taken object
	o.put("understructure", plain(Version))
	o.put("unit", r.Unit)
	o.put("object", e.object(r.Object))
	taken.put("by", r.Taken.By)
	taken.put("on", r.Taken.On)
	taken.put("side", r.Taken.Side)
	o.put("taken", taken)
	o.put("garment", e.garment(r.Garment))
	if r.Form != nil {
		form := object{keys: []string{"label"}, values: map[string]node{"label": r.Form.Label}} // even an empty form is a form
		form.put("bodice", e.sheet(r.Form.Bodice, r.Form.Readings, measure.Keys, measure.OfForm))
		o.put("form", form)
	}
	o.put("mount", e.mount(r.Mount))
	o.put("fittings", listed(r.Fittings, e.fitting))
	o.put("photographs", listed(r.Photographs, e.photograph))
	return o
}

func (e encoder) object(v Object) node {
	var o object
	o.put("number", v.Number)
	o.put("title", v.Title)
	if v.Year != 0 {
		o.put("year", plain(float64(v.Year)))
	}
	o.put("wearer", string(v.Wearer))
	o.put("notice", v.Notice)
	return o
}

func (e encoder) garment(g Garment) node {
	var o object
	o.put("strength", g.Strength)
	if g.MassKg != nil {
		o.put("mass_kg", plain(*g.MassKg))
	}
	o.put("bodice", e.sheet(g.Bodice, g.Readings.Bodice, measure.Keys, measure.OfGarment))
	o.put("skirt", e.sheet(g.Skirt, g.Readings.Skirt, measure.Skirt, measure.OfGarment))
	o.put("sleeve", e.sheet(g.Sleeve, g.Readings.Sleeve, measure.Sleeve, measure.OfGarment))
	return o
}

func (e encoder) sheet(s measure.Sheet, beside Readings, table []measure.Measure, keep Keep) node {
	var o object
	for _, m := range table {
		if v, ok := s[m.Key]; ok {
			o.put(string(m.Key), e.readings(m, v, beside[m.Key], keep))
		}
	}
	return o
}

func (e encoder) mount(m Mount) node {
	var o, cover, plank object
	o.put("build", m.Build)
	o.put("ease", e.ease(m.Ease))
	o.put("shape", e.shape(m.Shape))
	o.put("tape_error", e.optional(m.TapeError))
	o.put("height_error", e.optional(m.HeightError))
	o.put("cutting_error", e.optional(m.CuttingError))
	o.put("wadding", e.waddings(m.Wadding))
	cover.put("thickness", e.optional(m.Cover))
	cover.put("spread", e.optional(m.CoverSpread))
	cover.put("width", e.optional(m.CoverWidth))
	if m.CoverNap {
		cover.put("nap", true)
	}
	o.put("cover", cover)
	if p := m.Plank; p != nil {
		plank.put("thickness", e.optional(p.Thickness))
		plank.put("length", e.optional(p.Length))
		plank.put("width", e.optional(p.Width))
		plank.put("pole", e.optional(p.Pole))
	}
	o.put("plank", plank)
	o.put("planks", listed(m.Planks, e.sheetOfFoam))
	o.put("offcuts", listed(m.Offcuts, e.offcut))
	o.put("prices", e.prices(m.Prices))
	o.put("step", m.Step)
	o.put("skirt", e.skirtMount(m.Skirt))
	o.put("sleeves", e.sleeveMount(m.Sleeves))
	o.put("pads", e.pads(m.Pads))
	o.put("paper", e.paper(m.Paper))
	o.put("printer", e.printer(m.Printer))
	return o
}

func (e encoder) ease(v Ease) node {
	if v.All != nil {
		return e.length(*v.All)
	}
	var o object
	for _, l := range measure.Levels {
		if x, ok := v.ByLevel[l]; ok {
			o.put(string(l), e.length(x))
		}
	}
	return o
}

// waddings writes one wadding as an object and more as a list.
func (e encoder) waddings(ws []Wadding) node {
	var l list
	for _, w := range ws {
		var o object
		o.put("thickness", e.length(w.Thickness))
		o.put("spread", e.optional(w.Spread))
		o.put("width", e.optional(w.Width))
		l = append(l, o)
	}
	switch len(l) {
	case 0:
		return nil
	case 1:
		return l[0]
	}
	return l
}

func (e encoder) paper(p Paper) node {
	if p.Name != "" || p == (Paper{}) {
		return p.Name
	}
	return list{e.length(p.Width), e.length(p.Height)}
}

func (e encoder) optional(mm *float64) node {
	if mm == nil {
		return nil
	}
	return e.length(*mm)
}

func (e encoder) length(mm float64) node {
	u, ok := unit.Named(e.unit)
	if !ok {
		u = unit.Millimetre // the word itself is refused when the file is read back
	}
	return plain(mm / float64(u))
}

// plain keeps nine places: finer than the grain in any of the units.
func plain(x float64) node { return json.Number(decimal(x, 9)) }

// print writes a tree with one key a line; a list of numbers stays on its line.
func print(b *bytes.Buffer, n node, indent string) {
	deeper := indent + "  "
	switch v := n.(type) {
	case object:
		if len(v.keys) == 0 {
			b.WriteString("{}")
			return
		}
		b.WriteString("{\n")
		for i, key := range v.keys {
			b.WriteString(deeper + quoted(key) + ": ")
			print(b, v.values[key], deeper)
			if i < len(v.keys)-1 {
				b.WriteByte(',')
			}
			b.WriteByte('\n')
		}
		b.WriteString(indent + "}")
	case list:
		b.WriteString("[")
		for i, item := range v {
			print(b, item, indent)
			if i < len(v)-1 {
				b.WriteString(", ")
			}
		}
		b.WriteString("]")
	case json.Number:
		b.WriteString(v.String())
	case bool:
		fmt.Fprint(b, v)
	case string:
		b.WriteString(quoted(v))
	}
}

// quoted writes a string without the escapes for web pages that encoding/json adds.
func quoted(s string) string {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	_ = enc.Encode(s) // a string into memory cannot fail
	return strings.TrimSuffix(b.String(), "\n")
}
