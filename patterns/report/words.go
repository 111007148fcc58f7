package report

import (
	"fmt"
	"math"
	"strings"

	geo "understructure/geometry/measure"
)

// millimetres is a length as it is printed: whole millimetres, or a dash where there is none.
func millimetres(v *float64) string {
	if v == nil {
		return "–"
	}
	return signed(*v)
}

// signed is a whole number with a true minus sign.
func signed(v float64) string {
	s := fmt.Sprintf("%.0f", math.Abs(v))
	if v < 0 && s != "0" {
		return "−" + s
	}
	return s
}

// chance is a probability as a percentage that does not pretend to more than it knows.
func chance(v *float64) string {
	switch {
	case v == nil:
		return "–"
	case *v < 0.001:
		return "under 0.1 %"
	case *v > 0.999:
		return "over 99.9 %"
	}
	return fmt.Sprintf("%.1f %%", 100**v)
}

// places are the parts of a record that hold measurements, as they are printed, and their tables.
var places = []struct {
	prefix, name string
	table        []geo.Measure
}{
	{"garment.bodice.", "garment", geo.Keys},
	{"garment.skirt.", "skirt", geo.Skirt},
	{"garment.sleeve.", "sleeve", geo.Sleeve},
	{"form.bodice.", "form", geo.Keys},
}

// named is a value's key path in words: where it was taken and what it is; rank puts values in
// the order in which one measures.
type named struct {
	where, what string
	degrees     bool
	rank        int
}

func name(key string) named {
	for i, p := range places {
		rest, ok := strings.CutPrefix(key, p.prefix)
		if !ok {
			continue
		}
		for j, m := range p.table {
			if string(m.Key) == rest {
				return named{p.name, m.Label, m.Degrees, 100*i + j}
			}
		}
		return named{p.name, plain(rest), false, 100*i + 99}
	}
	where, what, ok := strings.Cut(key, ".")
	if !ok {
		return named{"", plain(key), false, 1000}
	}
	return named{plain(where), plain(what), false, 999}
}

// plain turns a key into words.
func plain(key string) string {
	return strings.NewReplacer("_", " ", ".", ", ").Replace(key)
}

// number is a value with its unit.
func (n named) number(v float64) string {
	if n.degrees {
		return fmt.Sprintf("%.1f°", v)
	}
	return fmt.Sprintf("%.1f mm", v)
}
