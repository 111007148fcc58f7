package pipeline

import (
	"strings"

	"understructure/app/record"
	"understructure/geometry/fit"
)

// matter is what is known of a kind of material.
type matter struct {
	word  string // in its name
	stuff fit.Stuff
	asks  string // what conservation asks of it
	price func(record.Prices) *float64
}

// The usual tests. Oddy: W. A. Oddy, "An unsuspected danger in display", Museums Journal 73 (1973); metal strips beside a sample,
// warm and damp for 28 days. Beilstein: F. Beilstein, Berichte der deutschen chemischen Gesellschaft 5 (1872), green flame of copper
// where there is chlorine. pH of the aqueous extract: ISO 3071 for textiles, ISO 6588-1 for paper and board. Photographic
// activity test: ISO 18916. Colour fast to rubbing: ISO 105-X12. What is asked beyond the tests is common practice, no published source.
const (
	oddy = "Oddy test of the batch"
	free = "; a batch that passed says nothing of the next"
)

// matters are looked through from the first; what none of them names is asked nothing.
var matters = []matter{
	{"polyethylene plank", fit.Foam, "inert and undyed, never polyurethane or PVC; " + oddy + free + "; Beilstein test for chlorides, in a fume hood only", func(p record.Prices) *float64 { return p.Plank }},
	{"wadding", fit.Wadding, "polyester without resin, flame retardant or dye; " + oddy + free + "; pH of the extract near neutral (ISO 3071)", func(p record.Prices) *float64 { return p.Wadding }},
	{"smooth cover", fit.Jersey, "washed hot to remove size and softener; undyed, or fast to rubbing (ISO 105-X12); pH of the extract near neutral (ISO 3071); " + oddy + free, func(p record.Prices) *float64 { return p.Cover }},
	{"calico", fit.Cotton, "washed hot to remove size; unbleached or rinsed until neutral (pH of the extract, ISO 3071)", func(p record.Prices) *float64 { return p.Calico }},
	{"cotton", fit.Cotton, "washed hot to remove size; unbleached or rinsed until neutral (pH of the extract, ISO 3071)", nil},
	{"net", fit.Net, "without stiffening that washes out; undyed, or fast to rubbing (ISO 105-X12); " + oddy + free, func(p record.Prices) *float64 { return p.Net }},
	{"card", fit.Card, "without acid and lignin; photographic activity test (ISO 18916); pH of the cold extract (ISO 6588-1)", nil},
	{"pole", fit.Stuff{}, "metal, or plastic that passes the Oddy test; bare wood gives off acids", func(p record.Prices) *float64 { return p.Pole }},
	{"boning", fit.Stuff{}, "no PVC: Beilstein test for chlorides, in a fume hood only; " + oddy + free, nil},
	{"steel", fit.Stuff{}, "covered, ends dipped, no bare metal near the garment: it rusts", nil},
	{"wire", fit.Stuff{}, "covered, ends bound, no bare metal near the garment: it rusts", nil},
}

func matterOf(name string) matter {
	for _, k := range matters {
		if strings.Contains(name, k.word) {
			return k
		}
	}
	return matter{}
}

// mass is that of a sheet, its area in mm² and its thickness in mm; 0 where nothing is known of either.
func (k matter) mass(area, thickness float64) float64 {
	if k.stuff.Solid > 0 {
		return k.stuff.OfVolume(area * thickness)
	}
	return k.stuff.OfArea(area)
}
