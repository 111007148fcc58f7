package record

// Sheet is a size of plank that can be had beside Mount.Plank.
type Sheet struct {
	Thickness, Length, Width float64
	Count                    *float64 // how many are in store, a whole number; nil for as many as are wanted
	Price                    *float64 // of one
}

// Offcut is a rest of a plank, to be used before any whole one.
type Offcut struct{ Thickness, Length, Width float64 }

// Prices are what materials cost, in one currency; nil where it is not known.
type Prices struct {
	Currency string   // three letters (ISO 4217), "" where it goes without saying
	Plank    *float64 // one of Mount.Plank
	Wadding  *float64 // a square metre, as the others
	Cover    *float64
	Calico   *float64
	Net      *float64
	Pole     *float64 // a metre
}

// Printer is what the 100 mm rules of a printed test page measure, across and up the page; nil where
// that was not measured.
type Printer struct{ X, Y *float64 }

func (d *decoder) sheetOfFoam(path string, n node) Sheet {
	var s Sheet
	f := d.sides(&s.Thickness, &s.Length, &s.Width)
	d.object(path, n, append(f.fields, field{"count", d.whole(&s.Count, CountLimit)}, field{"price", d.optional(&s.Price, pieces, PriceLimit)})...)
	f.given(path)
	return s
}

func (d *decoder) offcut(path string, n node) Offcut {
	var o Offcut
	f := d.sides(&o.Thickness, &o.Length, &o.Width)
	d.object(path, n, f.fields...)
	f.given(path)
	return o
}

// sides are the three sizes of a piece of foam, all of which must be given.
type sides struct {
	d      *decoder
	fields []field
	seen   map[string]bool
}

var sidesOfFoam = []struct {
	key   string
	limit Limit
}{{"thickness", PlankLimit}, {"length", PlankSideLimit}, {"width", PlankSideLimit}}

func (d *decoder) sides(into ...*float64) sides {
	s := sides{d: d, seen: map[string]bool{}}
	for i, side := range sidesOfFoam {
		s.fields = append(s.fields, field{side.key, func(path string, n node) {
			*into[i], _ = d.number(path, n, d.lengths(), side.limit)
			s.seen[side.key] = true
		}})
	}
	return s
}

func (s sides) given(path string) {
	for _, side := range sidesOfFoam {
		if !s.seen[side.key] {
			s.d.refuse(join(path, side.key), "", "must be given", s.d.lengths().allowed(side.limit))
		}
	}
}

func (d *decoder) prices(path string, n node) Prices {
	var p Prices
	fields := []field{{"currency", d.currency(&p.Currency)}}
	for _, row := range p.rows() {
		fields = append(fields, field{row.key, d.optional(row.price, pieces, PriceLimit)})
	}
	d.object(path, n, fields...)
	return p
}

// priced is one price by its key.
type priced struct {
	key   string
	price **float64
}

func (p *Prices) rows() []priced {
	return []priced{{"plank", &p.Plank}, {"wadding", &p.Wadding}, {"cover", &p.Cover}, {"calico", &p.Calico}, {"net", &p.Net}, {"pole", &p.Pole}}
}

func (d *decoder) currency(into *string) func(string, node) {
	return func(path string, n node) {
		s, ok := n.(string)
		if !ok || s != "" && !threeCapitals(s) {
			d.refuse(path, written(n), "is not possible", "three capital letters, such as EUR")
			return
		}
		*into = s
	}
}

func threeCapitals(s string) bool {
	for _, r := range s {
		if r < 'A' || r > 'Z' {
			return false
		}
	}
	return len(s) == 3
}

func (d *decoder) printer(path string, n node) Printer {
	var p Printer
	d.object(path, n, field{"x", d.rule(&p.X)}, field{"y", d.rule(&p.Y)})
	return p
}

// rule reads what a rule of 100 mm measures when printed. A printer that is farther off fits pages to the paper.
func (d *decoder) rule(into **float64) func(string, node) {
	return func(path string, n node) {
		before := d.err
		d.optional(into, d.lengths(), RuleLimit)(path, n)
		if r, ok := d.err.(*Refusal); ok && before == nil {
			r.Allowed += "; print at 100 %, not fitted to the page"
		}
	}
}

func (e encoder) sides(thickness, length, width float64) object {
	var o object
	for i, v := range []float64{thickness, length, width} {
		o.put(sidesOfFoam[i].key, e.length(v))
	}
	return o
}

func (e encoder) sheetOfFoam(s Sheet) node {
	o := e.sides(s.Thickness, s.Length, s.Width)
	o.put("count", amount(s.Count))
	o.put("price", amount(s.Price))
	return o
}

func (e encoder) offcut(c Offcut) node { return e.sides(c.Thickness, c.Length, c.Width) }

func (e encoder) prices(p Prices) node {
	var o object
	o.put("currency", p.Currency)
	for _, row := range p.rows() {
		o.put(row.key, amount(*row.price))
	}
	return o
}

func (e encoder) printer(p Printer) node {
	var o object
	o.put("x", e.optional(p.X))
	o.put("y", e.optional(p.Y))
	return o
}

// amount writes a number that is no length.
func amount(v *float64) node {
	if v == nil {
		return nil
	}
	return plain(*v)
}
