// Package plantest makes a mount of our own invention, for tests: elliptic outlines, and pieces
// that carry every kind of mark. Its numbers hang together, but no garment stands behind them.
// It does not compute a figure.
package plantest

import (
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/plan"
)

// Plan is a padded mount on A4.
func Plan() plan.Plan {
	heights, form, garment, target, built := bodies()
	return plan.Plan{
		Understructure: plan.Version,
		Object: plan.Object{
			Number: "INV.1872.4", Title: "Day bodice of striped silk taffeta", Year: 1872, Wearer: "woman",
			Notice: "invented for demonstration",
		},
		Measured:    plan.Measured{By: "A. Example", On: "2026-03-02", Side: "inside"},
		Build:       "padded",
		StandHeight: 1052,
		Levels:      levels(),
		Surface:     plan.Surface{Heights: heights, Form: form, Garment: garment, Target: target, Built: built},
		Pieces:      Pieces(),
		Warnings: []plan.Warning{
			{Code: "lengths-disagree", Level: "waist", Key: "garment.bodice.back_waist_length", Amount: 30,
				Message: "Nape to waist, 330 mm, and waist to hem, 1040 mm, make 1370 mm, but nape to hem is 1340 mm: 30 mm less. The smaller is trusted, so the skirt's back is taken as 1010 mm."},
			{Code: "form-too-big", Level: "underbust", Amount: 6,
				Message: "At the underbust the form leaves room for one layer only; it is 3 mm too big at each side for two."},
		},
		Taken: map[string]plan.Value{
			"garment.bodice.bust_girth":        {Value: 880, Source: "taken"},
			"garment.bodice.waist_girth":       {Value: 620, Source: "taken"},
			"garment.bodice.back_waist_length": {Value: 330, Source: "taken"},
			"form.bodice.bust_girth":           {Value: 800, Source: "taken"},
			"form.bodice.waist_girth":          {Value: 560, Source: "taken"},
		},
		Drawn: map[string]plan.Value{
			"garment.bodice.hip_girth":          {Value: 930, Source: "women of the same waist, ANSUR II (2012)"},
			"garment.bodice.bust_depth":         {Value: 236, Source: "women of the same bust, ANSUR II (2012)"},
			"garment.bodice.shoulder_slope_deg": {Value: 24.3, Source: "600 women, mean"},
		},
		Stock: map[string]plan.Value{"mount.ease": {Value: 15, Source: "stock"}, "mount.cover.thickness": {Value: 1, Source: "stock"}},
		Layers: []plan.Layer{
			{Number: 1, Material: "wadding 6 mm", Thickness: 6, Area: 92000, Pieces: 4},
			{Number: 2, Material: "wadding 6 mm", Thickness: 6, Area: 214000, Pieces: 6},
			{Number: 3, Material: "jersey cover", Thickness: 1, Area: 431000, Pieces: 2},
		},
		Lengths:  []plan.Length{{Key: "garment.bodice.back_waist_length", Taken: 330, Built: 330.2}, {Key: "garment.bodice.front_waist_length", Taken: 310, Built: 309.8}},
		Standing: plan.Standing{MassKg: 7.4, CentreHeight: 1010, TiltBase: 178, PushBase: 196, Base: 196, Note: "With the garment, without train."},
		Materials: []plan.Material{
			{Name: "wadding 6 mm", Quantity: 0.9, Unit: "m²", Note: "polyester, needle-punched"},
			{Name: "cotton jersey", Quantity: 1, Unit: "m", Note: "wash hot without detergent before use"},
			{Name: "sewing thread", Quantity: 1, Unit: "reel", Note: ""},
		},
		Paper: plan.Paper{Name: "A4", Width: 210, Height: 297},
	}
}

func levels() []plan.Level {
	row := func(name string, height, garment, ease, form, built, chance float64, taken bool) plan.Level {
		target, clearance := garment-ease, garment-built
		return plan.Level{Name: name, Height: height, GarmentGirth: &garment, Taken: taken, Ease: ease, TargetGirth: &target,
			FormGirth: &form, BuiltGirth: &built, Clearance: &clearance, StrainChance: &chance, Section: superellipse(garment/2/math.Pi*1.12, garment/2/math.Pi*0.88, 2.3)}
	}
	return []plan.Level{
		{Name: "neck base", Height: 1400},
		row("underarm", 1290, 830, 15, 760, 812, 0.0004, false),
		row("bust", 1240, 880, 15, 800, 862, 0.0001, true),
		row("underbust", 1160, 740, 15, 700, 723, 0.002, false),
		row("waist", 1060, 620, 15, 560, 603, 0.0006, true),
		row("high hip", 980, 800, 15, 720, 783, 0.003, false),
		row("hip", 890, 930, 15, 850, 912, 0.0009, false),
	}
}

// bodies are the outlines every 10 mm from hip to neck: a waist, a bust set forward, shoulders.
func bodies() (heights []float64, form, garment, target, built []plane.Ring) {
	for z := 880.0; z <= 1420; z += 10 {
		heights = append(heights, z)
		girth, forward := profile(z)
		body := func(less float64) plane.Ring {
			r := (girth - less) / 2 / math.Pi
			return superellipse(r*1.13, r*0.87, 2.3).Move(plane.Point{Y: forward})
		}
		if z > 1395 {
			garment = append(garment, nil)
		} else {
			garment = append(garment, body(0))
		}
		target, built, form = append(target, body(15)), append(built, body(18+4*math.Sin(z/17))), append(form, body(70))
	}
	return
}

// profile is the girth at a height and how far its middle lies to the front.
func profile(z float64) (girth, forward float64) {
	knots := [][3]float64{{880, 935, 0}, {960, 830, 4}, {1060, 620, 12}, {1160, 740, 16}, {1240, 880, 20}, {1300, 830, 8}, {1370, 700, -6}, {1400, 400, -10}, {1420, 370, -8}}
	for i := 1; i < len(knots); i++ {
		if a, b := knots[i-1], knots[i]; z <= b[0] {
			t := (z - a[0]) / (b[0] - a[0])
			t = t * t * (3 - 2*t)
			return a[1] + t*(b[1]-a[1]), a[2] + t*(b[2]-a[2])
		}
	}
	return 370, -8
}

// superellipse has half axes a and b; power 2 is the ellipse.
func superellipse(a, b, power float64) plane.Ring {
	const n = 180
	r := make(plane.Ring, n)
	for i := range r {
		s, c := math.Sincos(2 * math.Pi * float64(i) / n)
		r[i] = plane.Point{
			X: a * math.Copysign(math.Pow(math.Abs(c), 2/power), c),
			Y: b * math.Copysign(math.Pow(math.Abs(s), 2/power), s),
		}
	}
	return r
}
