package table

import (
	"fmt"
	"slices"
	"strings"

	"understructure/app/record"
	"understructure/geometry/measure"
)

// name is the column that names a record's file, without the ending.
const name = "record"

// column is one column: the path of its value in a record, and what a person is told of it.
type column struct {
	path           string
	text           bool // else numbers
	label          string
	where, allowed string
}

// columns lists every column, in the order of a record.
var columns = slices.Concat(
	[]column{
		{name, true, "file name", "Names the record's file; without one it is the number.", "letters, digits, - _ ."},
		{"unit", true, "unit", "Of every length in the row.", strings.Join(record.Units, ", ")},
		{"object.number", true, "number", "", ""},
		{"object.title", true, "title", "", ""},
		{"object.year", false, "year", "", fmt.Sprintf("%g–%g", record.YearLimit.Least, record.YearLimit.Most)},
		{"object.wearer", true, "wearer", "Whom it was made for.", strings.Join(record.Wearers, ", ")},
		{"object.notice", true, "notice", "", ""},
		{"taken.by", true, "measured by", "", ""},
		{"taken.on", true, "measured on", "", "yyyy-mm-dd"},
		{"taken.side", true, "side", "The side of the cloth on which the tape lay.", strings.Join(record.SidesOf, ", ")},
		{"garment.strength", true, "strength", "Of the cloth.", strings.Join(record.Strengths, ", ")},
		{"garment.mass_kg", false, "mass", "", fmt.Sprintf("%g–%g kg", record.MassLimit.Least, record.MassLimit.Most)},
	},
	of("garment.bodice.", "", measure.Keys),
	of("garment.skirt.", "", measure.Skirt),
	of("garment.sleeve.", "", measure.Sleeve),
	[]column{{"form.label", true, "form", "The name of the bare form.", ""}},
	of("form.bodice.", "form: ", measure.Keys),
)

// of makes the columns of the measurements under a path.
func of(path, before string, keys []measure.Measure) []column {
	var out []column
	for _, m := range keys {
		allowed := fmt.Sprintf("%g–%g mm", m.Min, m.Max)
		if m.Degrees {
			allowed = fmt.Sprintf("%g–%g degrees", m.Min, m.Max)
		}
		out = append(out, column{path + string(m.Key), false, before + m.Label, m.Where, allowed})
	}
	return out
}

// find returns the column of a heading, however it is written.
func find(heading string) (column, bool) {
	path := strings.ToLower(strings.TrimSpace(heading))
	i := slices.IndexFunc(columns, func(c column) bool { return c.path == path })
	if i < 0 {
		return column{}, false
	}
	return columns[i], true
}
