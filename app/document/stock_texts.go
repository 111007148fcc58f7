package document

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"understructure/app/record"
)

// StockTexts lists the foam that a maker has beside the usual plank, a line for each kind, and the currency of prices.
func StockTexts() []Text {
	return []Text{
		{"mount.planks", "other planks", "5 × 240 × 120 (2); …", planksText, putPlanks},
		{"mount.offcuts", "offcuts", "5 × 60 × 30; …", offcutsText, putOffcuts},
		{"mount.prices.currency", "currency", "EUR", func(r record.Record) string { return r.Mount.Prices.Currency }, func(r *record.Record, s string) error {
			r.Mount.Prices.Currency = s
			return nil
		}},
	}
}

// foam is how a piece of foam is written: thickness, length and width, how many there are, what one costs.
var foam = regexp.MustCompile(`^([^x×*(@]+)[x×*]([^x×*(@]+)[x×*]([^x×*(@]+)(?:\(\s*(\d{1,6})\s*\))?\s*(?:@(.+))?$`)

var errFoam = errors.New("write thickness × length × width, behind it how many there are in brackets and after @ what one costs; a semicolon before the next")

func planksText(r record.Record) string {
	var all []string
	for _, k := range r.Mount.Planks {
		s := sizes(r.Unit, k.Thickness, k.Length, k.Width)
		if k.Count != nil {
			s += fmt.Sprintf(" (%g)", *k.Count)
		}
		if k.Price != nil {
			s += " @ " + Price.Format(*k.Price, "")
		}
		all = append(all, s)
	}
	return strings.Join(all, "; ")
}

func offcutsText(r record.Record) string {
	var all []string
	for _, o := range r.Mount.Offcuts {
		all = append(all, sizes(r.Unit, o.Thickness, o.Length, o.Width))
	}
	return strings.Join(all, "; ")
}

func sizes(u string, mm ...float64) string {
	var all []string
	for _, v := range mm {
		all = append(all, Length.Format(v, u))
	}
	return strings.Join(all, " × ")
}

func putPlanks(r *record.Record, text string) error {
	all, err := readFoam(text, r.Unit)
	r.Mount.Planks = all
	return err
}

func putOffcuts(r *record.Record, text string) error {
	all, err := readFoam(text, r.Unit)
	r.Mount.Offcuts = nil
	for _, k := range all {
		if k.Count != nil || k.Price != nil {
			return errors.New("an offcut is there once, and costs nothing")
		}
		r.Mount.Offcuts = append(r.Mount.Offcuts, record.Offcut{Thickness: k.Thickness, Length: k.Length, Width: k.Width})
	}
	return err
}

// readFoam reads pieces of foam in the unit u, from a text with a semicolon between two.
func readFoam(text, u string) ([]record.Sheet, error) {
	var all []record.Sheet
	for one := range strings.SplitSeq(text, ";") {
		if one = strings.TrimSpace(one); one == "" {
			continue
		}
		part := foam.FindStringSubmatch(one)
		if part == nil {
			return nil, errFoam
		}
		var k record.Sheet
		for i, into := range []*float64{&k.Thickness, &k.Length, &k.Width} {
			v, err := Length.Parse(part[1+i], u)
			if err != nil || v == nil {
				return nil, errFoam
			}
			*into = *v
		}
		if part[4] != "" {
			n, _ := strconv.ParseFloat(part[4], 64) // digits alone
			k.Count = &n
		}
		var err error
		if k.Price, err = Price.Parse(part[5], ""); err != nil {
			return nil, err
		}
		all = append(all, k)
	}
	return all, nil
}

// rolls lists the widths of what comes off a roll.
func rolls(r record.Record) []Field {
	wadding := choice("mount.wadding.width", "wadding width", "materials", "Of the roll that the first wadding is cut from.", record.RollLimit,
		func(r *record.Record) slot { return inRoll{r} })
	wadding.allow = func(v *float64) error {
		if v != nil && len(r.Mount.Wadding) == 0 {
			return errors.New("give its thickness first")
		}
		return nil
	}
	return []Field{wadding, choice("mount.cover.width", "cover width", "materials", "Of the roll that the cover is cut from.", record.RollLimit,
		func(r *record.Record) slot { return inPointer{&r.Mount.CoverWidth} })}
}

// inRoll is the width of the first wadding's roll.
type inRoll struct{ record *record.Record }

func (w inRoll) get() *float64 {
	if len(w.record.Mount.Wadding) == 0 {
		return nil
	}
	return w.record.Mount.Wadding[0].Width
}

func (w inRoll) set(v *float64) {
	if len(w.record.Mount.Wadding) > 0 {
		w.record.Mount.Wadding[0].Width = v
	}
}

// prices lists what materials cost.
func prices() []Field {
	field := func(key, label, where string, at func(*record.Prices) **float64) Field {
		f := choice("mount.prices."+key, label, "prices", where, record.PriceLimit, func(r *record.Record) slot { return inPointer{at(&r.Mount.Prices)} })
		f.Kind = Price
		return f
	}
	return []Field{
		field("plank", "a plank", "Of one plank of the usual size.", func(p *record.Prices) **float64 { return &p.Plank }),
		field("wadding", "wadding, a m²", "Of a square metre.", func(p *record.Prices) **float64 { return &p.Wadding }),
		field("cover", "cover, a m²", "Of a square metre.", func(p *record.Prices) **float64 { return &p.Cover }),
		field("calico", "calico, a m²", "Of a square metre.", func(p *record.Prices) **float64 { return &p.Calico }),
		field("net", "net, a m²", "Of a square metre.", func(p *record.Prices) **float64 { return &p.Net }),
		field("pole", "pole, a metre", "Of a metre.", func(p *record.Prices) **float64 { return &p.Pole }),
	}
}
