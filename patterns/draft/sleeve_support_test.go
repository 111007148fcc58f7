package draft

import (
	"strings"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/sleeve"
)

func TestSleeveSupport(t *testing.T) {
	short, err := sleeve.Of(sleeve.Taken{Sheet: measure.Sheet{measure.SleeveLength: 220, measure.UpperGirth: 300}, Armscye: 345})
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		s    sleeve.Sleeve
		hold sleeve.Support
		want []string // beginnings of IDs that must be there
		not  string
	}{
		"a plain sleeve": {inside(t, false), "", []string{"A01", "A02", "A03"}, "frill"},
		"a full sleeve":  {inside(t, true), "", []string{"A01", "A02", "A03", "A21"}, "tube"},
		"a short sleeve": {short, "", []string{"A11"}, "arm"},
		"as asked":       {inside(t, false), sleeve.PlainTube, []string{"A11"}, "arm"},
	} {
		s, _, err := SleeveSupport(c.s, SleeveStock{Hold: c.hold, Options: sleeve.Usual(15)})
		if err != nil {
			t.Fatal(err)
		}
		sound(t, s.Pieces)
		seamsMatch(t, s.Pieces)
		ids := ""
		for _, p := range s.Pieces {
			ids += p.ID + " "
		}
		for _, w := range c.want {
			if !strings.Contains(ids, w) {
				t.Errorf("%s: %s, want %s", name, ids, w)
			}
		}
		if strings.Contains(ids, c.not) {
			t.Errorf("%s: %s", name, ids)
		}
		// Two arms of some 2.5 litres of stuffing each weigh little; a mass outside this is a slip of the unit.
		if s.MassKg < 0.01 || s.MassKg > 0.5 || len(s.Cautions) == 0 {
			t.Errorf("%s: %.3f kg, %d cautions", name, s.MassKg, len(s.Cautions))
		}
	}
	if _, _, err := SleeveSupport(short, SleeveStock{Hold: "glove"}); err == nil || !strings.Contains(err.Error(), "glove") {
		t.Errorf("got %v", err)
	}
}
