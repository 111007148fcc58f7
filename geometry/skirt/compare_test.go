package skirt

import (
	"strings"
	"testing"

	"understructure/geometry/measure"
)

// A skirt of a year, hung by that year's silhouette, compared with the table.
func compared(t *testing.T, year int, cm ...float64) (Skirt, Comparison) {
	t.Helper()
	table := Silhouettes()
	sil, _, _ := table.At(measure.Woman, "dress", year)
	s := hung(t, Garment{Readings: readings(cm...)}, torso(), Wish{Gap: 10, Silhouette: sil})
	return s, table.Compare(s, measure.Woman, "dress")
}

// rank is the place of the row with a year in a list, from 1.
func rank(list []Match, year int) int {
	for i, m := range list {
		if m.Row.From <= year && year <= m.Row.To {
			return i + 1
		}
	}
	return 0
}

// Published skirts whose front, back and hem are known lie near the front of the list at their own
// years: the list has 18 rows.
func TestPublishedSkirtsNearTheirYears(t *testing.T) {
	for _, c := range []struct {
		name string
		year int
		cm   []float64
		most int
	}{
		{"Connecticut Historical Society 1258, about 1873", 1873, []float64{62, 0, 242.6, 99.1, 0, 102.9}, 4},
		{"Museum of the City of New York 62.190.1, 1866–67", 1866, []float64{62, 0, 518, 106.7, 0, 180.3}, 1},
	} {
		_, got := compared(t, c.year, c.cm...)
		if r := rank(got.Together, c.year); r == 0 || r > c.most {
			t.Errorf("%s: its years come at place %d, want %d at most", c.name, r, c.most)
		}
	}
}

func TestComparisonIsNoVerdict(t *testing.T) {
	_, c := compared(t, 1872, 62, 0, 243, 99, 0, 103)
	for _, says := range []string{"The front/back distribution fits ", "The hem girth fits ", "(read)", "never a verdict"} {
		if !strings.Contains(c.Sentence, says) {
			t.Errorf("%q does not say %q", c.Sentence, says)
		}
	}
	for _, list := range [][]Match{c.Distribution, c.Hem, c.Together} {
		for i := 1; i < len(list); i++ {
			if list[i].Off < list[i-1].Off {
				t.Errorf("%s comes after %s", list[i].Row.Years(), list[i-1].Row.Years())
			}
		}
	}
}

func TestComparisonWithoutReadings(t *testing.T) {
	_, c := compared(t, 1872, 62, 0, 0, 99)
	if len(c.Distribution)+len(c.Hem)+len(c.Together) > 0 || !strings.Contains(c.Sentence, "cannot be compared") {
		t.Errorf("%+v", c)
	}
}

// What common practice looks for, in skirts made to do it or not. Common practice, no published source.
func TestPractices(t *testing.T) {
	round := []float64{62, 0, 366, 102, 102, 102}
	back := []float64{62, 0, 366, 100, 101, 108}
	straight := []float64{62, 110, 220, 100, 101.5, 110}
	for _, c := range []struct {
		name string
		year int
		cm   []float64
		bod  measure.Sheet
		want Finding
	}{
		{"1851, alike all round", 1851, round, nil, Agrees},
		{"1851, and drooping", 1851, round, measure.Sheet{measure.ShoulderSlope: 30}, Agrees},
		{"1851, square shoulders", 1851, round, measure.Sheet{measure.ShoulderSlope: 15}, Differs},
		{"1851, drawn back", 1851, back, nil, Differs},
		{"1872, drawn back", 1872, back, nil, Agrees},
		{"1872, alike all round", 1872, round, nil, Differs},
		{"1885, straight in front", 1885, straight, nil, Agrees},
		{"1885, alike all round", 1885, round, nil, Differs},
	} {
		s, _ := compared(t, c.year, c.cm...)
		got := Practices(c.year, s, c.bod)
		if len(got) != 1 || got[0].Finding != c.want || got[0].Source != "common practice, no published source" || got[0].Seen == "" {
			t.Errorf("%s: %+v, want %s", c.name, got, c.want)
		}
	}
	s, _ := compared(t, 1851, round...)
	if got := Practices(1815, s, nil); got != nil {
		t.Errorf("1815: %+v", got)
	}
}
