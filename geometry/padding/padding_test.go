package padding

import (
	"math"
	"testing"

	"understructure/geometry/section"
	"understructure/geometry/surface"
)

// barrel is a round skin whose radius is r(z), from 0 to 400 mm up.
func barrel(r func(z float64) float64, squash float64) surface.Surface {
	s := surface.Surface{Z: surface.Rows(0, 400, 4)}
	for _, z := range s.Z {
		h := section.Halves{Right: r(z), Left: r(z), Front: r(z) * squash, Back: r(z) * squash, FrontFullness: 2, BackFullness: 2}
		s.R = append(s.R, section.Of(h.Ring()))
	}
	return s
}

func steady(r float64) func(float64) float64 { return func(float64) float64 { return r } }

func waisted(r, nip float64) func(float64) float64 {
	return func(z float64) float64 { return r - nip*math.Exp(-(z-200)*(z-200)/(2*70*70)) }
}

// worst returns how far the built tape rises above and falls below the wanted one.
func worst(m Mount, lo, hi float64) (above, under float64) {
	for i, z := range m.Wanted.Z {
		if z < lo || z > hi {
			continue
		}
		d := m.Built.R[i].Tape() - m.Wanted.R[i].Tape()
		above, under = math.Max(above, d), math.Max(under, -d)
	}
	return above, under
}

func TestBuiltTapeStaysJustBelowTheWanted(t *testing.T) {
	for _, c := range []struct {
		name         string
		base, wanted surface.Surface
		sheet        []Sheet
	}{
		{"cylinder in a cylinder, two and a half sheets", barrel(steady(110), 1), barrel(steady(125), 1), []Sheet{{6}}},
		{"oval form in a round waist", barrel(waisted(120, 15), 0.8), barrel(waisted(140, 25), 1), []Sheet{{6}}},
		{"two thicknesses", barrel(waisted(120, 15), 0.8), barrel(waisted(140, 25), 0.9), []Sheet{{6}, {3}}},
		{"thick sheets", barrel(steady(100), 0.9), barrel(waisted(140, 20), 0.9), []Sheet{{10}}},
		{"exactly one sheet", barrel(steady(110), 1), barrel(steady(117), 1), []Sheet{{6}}},
	} {
		m := Lay(Job{Base: c.base, Wanted: c.wanted, Stock: c.sheet, Cover: 1, From: 0, To: 400})
		above, under := worst(m, 5, 395)
		t.Logf("%s: %d layers, above %.2f, under %.2f", c.name, len(m.Layers), above, under)
		if above > 0.05 || under > 5 {
			t.Errorf("%s: built tape up to %.2f mm above and %.2f below", c.name, above, under)
		}
	}
}

func BenchmarkLay(b *testing.B) {
	base, wanted := barrel(waisted(120, 15), 0.8), barrel(waisted(140, 25), 0.9)
	for b.Loop() {
		Lay(Job{Base: base, Wanted: wanted, Stock: []Sheet{{6}}, Cover: 1, From: 0, To: 400})
	}
}

// The sheets, cut at the middle of their thickness, fill the space between base and mount:
// Σ area × thickness within 2 %.
func TestSheetsFillTheSpace(t *testing.T) {
	m := Lay(Job{Base: barrel(waisted(120, 15), 0.8), Wanted: barrel(waisted(140, 25), 0.9), Stock: []Sheet{{6}}, From: 0, To: 400})
	zones := []Zone{{"right front", 0, 64, 0, 400}, {"left front", 64, 128, 0, 400}, {"left back", 128, 192, 0, 400}, {"right back", 192, 256, 0, 400}}
	sheets := 0.0
	for _, l := range m.Layers {
		for _, p := range m.Patches(l, zones) {
			if _, err := p.Mesh.Boundary(); err != nil {
				t.Errorf("%s: %v", p.Zone.Name, err)
			}
			sheets += p.Mesh.Area() * l.Thickness
		}
	}
	space := m.Built.Volume(0, 400) - m.Base.Volume(0, 400)
	t.Logf("sheets %.0f cm³ in a space of %.0f cm³: %+.2f %%", sheets/1e3, space/1e3, 100*(sheets/space-1))
	if math.Abs(sheets/space-1) > 0.02 {
		t.Errorf("sheets of %.0f mm³ in a space of %.0f mm³", sheets, space)
	}
}
