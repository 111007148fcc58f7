package report

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	geo "understructure/geometry/measure"
	"understructure/patterns/tapes"
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
	part         tapes.Part
	table        []geo.Measure
}{
	{"garment.bodice.", "garment", tapes.Bodice, geo.Keys},
	{"garment.skirt.", "skirt", tapes.Skirt, geo.Skirt},
	{"garment.sleeve.", "sleeve", tapes.Sleeve, geo.Sleeve},
	{"form.bodice.", "form", tapes.Form, geo.Keys},
}

// named is a value's key path in words: where it was taken and what it is; rank puts values in
// the order in which one measures.
type named struct {
	where, what string
	degrees     bool
	rank        int
	part        tapes.Part
	key         geo.Key
}

func name(key string) named {
	for i, p := range places {
		rest, ok := strings.CutPrefix(key, p.prefix)
		if !ok {
			continue
		}
		for j, m := range p.table {
			if string(m.Key) == rest {
				return named{p.name, m.Label, m.Degrees, 100*i + j, p.part, m.Key}
			}
		}
		return named{where: p.name, what: plain(rest), rank: 100*i + 99}
	}
	where, what, ok := strings.Cut(key, ".")
	if !ok {
		return named{what: plain(key), rank: 1000}
	}
	return named{where: plain(where), what: plain(what), rank: 999}
}

// plain turns a key into words; what stands in a list is counted from 1.
func plain(key string) string {
	key = place.ReplaceAllStringFunc(key, func(s string) string {
		n, _ := strconv.Atoi(s[1 : len(s)-1])
		return fmt.Sprintf(" %d", n+1)
	})
	return strings.NewReplacer("_", " ", ".", ", ").Replace(key)
}

var place = regexp.MustCompile(`\[[0-9]{1,6}\]`)

// number is a value as it is printed, in millimetres or degrees, with no more than a tenth.
func (n named) number(v float64) string {
	text := strings.Replace(strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0"), "-", "−", 1)
	if n.degrees {
		return text + "°"
	}
	return text
}
