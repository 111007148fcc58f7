package plan

import (
	"maps"
	"testing"

	"understructure/geometry/measure"
)

// What was taken outweighs what was drawn; a form, an unknown key and what no garment measures are not of the garment.
func TestWhatIsKnownOfTheGarment(t *testing.T) {
	g := Plan{
		Taken: map[string]Value{"garment.bodice.bust_girth": {Value: 840}, "garment.skirt.waist_girth": {Value: 620}, "form.bodice.bust_girth": {Value: 780}, "garment.sleeve.colour": {Value: 500}},
		Drawn: map[string]Value{"garment.bodice.bust_girth": {Value: 900}, "garment.bodice.hip_girth": {Value: 950}, "garment.skirt.hem_girth": {Value: -1}},
	}.Garment()
	if !maps.Equal(g.Bodice, measure.Sheet{measure.BustGirth: 840, measure.HipGirth: 950}) || !maps.Equal(g.Skirt, measure.Sheet{measure.WaistGirth: 620}) || len(g.Sleeve) != 0 {
		t.Errorf("%v", g)
	}
}
