package plan

import (
	"strings"

	"understructure/geometry/measure"
	"understructure/geometry/rest"
)

// Garment is what is known of the garment that the mount is for: what was taken, and where it was not what was drawn.
func (p Plan) Garment() rest.Garment {
	return rest.Garment{
		Bodice: p.readings("garment.bodice.", measure.Keys),
		Skirt:  p.readings("garment.skirt.", measure.Skirt),
		Sleeve: p.readings("garment.sleeve.", measure.Sleeve),
	}
}

// readings are those of one part, by the beginning of their key paths, that its table has and allows.
func (p Plan) readings(part string, table []measure.Measure) measure.Sheet {
	s := measure.Sheet{}
	for _, values := range []map[string]Value{p.Drawn, p.Taken} { // taken outweighs drawn
		for path, v := range values {
			key, ok := strings.CutPrefix(path, part)
			if m, known := measure.Find(table, measure.Key(key)); ok && known && m.Possible(v.Value) {
				s[m.Key] = v.Value
			}
		}
	}
	return s
}
