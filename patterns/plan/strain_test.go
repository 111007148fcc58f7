package plan

import (
	"testing"

	"understructure/geometry/plane"
)

// square is an outline with a tape of four sides.
func square(side float64) plane.Ring {
	return plane.Ring{{X: 0, Y: 0}, {X: side, Y: 0}, {X: side, Y: side}, {X: 0, Y: side}}
}

func TestStrains(t *testing.T) {
	clear := func(mm float64) Plan {
		return Plan{Levels: []Level{{Name: "shoulder"}, {Name: "waist", Clearance: &mm}}}
	}
	between := func(garment, built plane.Ring) Plan {
		return Plan{Surface: Surface{Garment: []plane.Ring{nil, garment}, Built: []plane.Ring{square(999), built}}}
	}
	for _, c := range []struct {
		name string
		plan Plan
		want bool
	}{
		{"empty", Plan{}, false},
		{"15 mm clear", clear(15), false},
		{"30 mm too big", clear(-30), true},
		{"the rounding of a tape", clear(-0.05), false},
		{"clear between the levels", between(square(200), square(199)), false},
		{"strained between the levels", between(square(200), square(200.1)), true},
		{"no garment there", between(nil, square(200)), false},
		{"a skirt over its support", Plan{Skirt: &Skirt{}}, false},
		{"a skirt too narrow for the hip", Plan{Skirt: &Skirt{Strain: 4}}, true},
	} {
		if got := c.plan.Strains(); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}
