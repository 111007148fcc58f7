package torso

import "understructure/geometry/measure"

// The figures below: breadth over depth, its spread, the front arc's spread, mid-depth,
// correlations, girths that add up, heights of levels and the upper figure are from mesh;
// hip ratios are the mean of mesh and ansur; regressions on bust girth are computed from
// the means, standard deviations and correlations of ansur; fullness beyond the profiles, at
// waist and hip, is halfway to what ansur's girths over breadth and depth say, which
// callipers press; the waist's place below
// the nape and the bust's are from spain.

var women = statistics{
	wearer: measure.Woman, profile: womanProfiles,
	shape: map[measure.Level]shape{
		measure.Underarm:  {1.53, 0.095, 0.0097, -0.09, 0.74, 0},
		measure.Bust:      {1.33, 0.079, 0.0095, 0.01, 0.67, 0},
		measure.Underbust: {1.38, 0.087, 0.0063, -0.01, 0.83, 0},    // mesh 1.42, moved as the waist is
		measure.Waist:     {1.35, 0.107, 0.0078, 0, 0.79, 0.02},     // between spain (1.29, natural waist) and ansur (1.42, navel)
		measure.HighHip:   {1.46, 0.109, 0.0061, -0.03, 0.75, 0.02}, // mesh 1.52, moved as waist and hip are
		measure.Hip:       {1.58, 0.085, 0.0069, -0.15, 1, 0.072},   // mid-depth: mesh −0.25, halved for an upright stance (from memory)
	},
	girths: map[measure.Level][3]float64{
		measure.Underarm: {0.825, -0.097, 0.218}, measure.Underbust: {0.34, 0.63, -0.01}, measure.HighHip: {0.18, 0.57, 0.24},
	},
	hip: line{946.9, 1021.2, 0.74 * 75.9 / 82.7}, across: line{946.9, 373.4, 0.63 * 29.8 / 82.7},
	shoulder: line{946.9, 135.4, 0.13 * 10.3 / 82.7}, neck: line{946.9, 371.2, 0.66 * 19.7 / 82.7},
	chest: 0.35, slope: 24.3,
	heights: levelHeights{bust: 0.355, underarm: 0.49, highHip: 0.21, hip: 0.46, underbust: 0.52, acrossChest: 0.45, neckAbove: 0.04, pitBelow: 0.16},
	upper:   upperShape{chest: 0.92, back: 0.04, nape: 0.16, neckDeep: 1.0, neckAt: 0.52},
	sources: sources{ansur, mesh, spain},
}

var men = statistics{
	wearer: measure.Man, profile: manProfiles,
	shape: map[measure.Level]shape{
		measure.Underarm:  {1.55, 0.096, 0.0097, -0.08, 0.86, 0},
		measure.Bust:      {1.41, 0.087, 0.012, -0.05, 0.68, 0},
		measure.Underbust: {1.35, 0.080, 0.0063, -0.04, 0.75, 0},
		measure.Waist:     {1.40, 0.105, 0.0078, 0, 0.83, 0.02},
		measure.HighHip:   {1.40, 0.100, 0.0061, -0.02, 0.74, 0.015},
		measure.Hip:       {1.46, 0.084, 0.0069, -0.13, 1, 0.045},
	},
	girths: map[measure.Level][3]float64{
		measure.Underarm: {1.108, -0.111, 0.025}, measure.Underbust: {0.617, 0.398, -0.037}, measure.HighHip: {0.172, 0.537, 0.277},
	},
	hip: line{1058.7, 1019.5, 0.84 * 76.7 / 87.4}, across: line{1058.7, 430.9, 0.407},
	shoulder: line{1058.7, 149.8, 0}, neck: line{1058.7, 434.6, 0.2},
	chest: 0.35, slope: 19.1,
	heights: levelHeights{bust: 0.42, underarm: 0.54, highHip: 0.18, hip: 0.40, underbust: 0.6, acrossChest: 0.45, neckAbove: 0.035, pitBelow: 0.13},
	upper:   upperShape{chest: 0.94, back: 0.03, nape: 0.16, neckDeep: 0.9, neckAt: 0.56},
	sources: sources{ansur, mesh, mesh},
}

var children = statistics{
	wearer: measure.Child, profile: childProfiles,
	shape: map[measure.Level]shape{
		measure.Underarm:  {1.38, 0.118, 0.0097, -0.14, 0.95, 0},
		measure.Bust:      {1.30, 0.108, 0.0095, -0.11, 0.86, 0},
		measure.Underbust: {1.32, 0.095, 0.0063, -0.07, 0.69, 0},
		measure.Waist:     {1.37, 0.118, 0.0078, 0, 0.81, 0},
		measure.HighHip:   {1.38, 0.150, 0.0061, -0.02, 0.81, 0},
		measure.Hip:       {1.39, 0.129, 0.0069, -0.16, 1, 0},
	},
	girths: map[measure.Level][3]float64{
		measure.Underarm: {0.992, -0.060, 0.077}, measure.Underbust: {0.78, 0.36, -0.16}, measure.HighHip: {0.17, 0.56, 0.27},
	},
	// A child's chest and hip differ little; across back, shoulder and neck are men's at
	// this size (from memory, for want of a table of children).
	hip: line{650, 680, 0.9}, across: line{650, 270, 0.407}, shoulder: line{650, 95, 0.12}, neck: line{650, 300, 0.25},
	chest: 0.34, slope: 25,
	heights: levelHeights{bust: 0.42, underarm: 0.52, highHip: 0.2, hip: 0.46, underbust: 0.6, acrossChest: 0.45, neckAbove: 0.05, pitBelow: 0.11},
	upper:   upperShape{chest: 0.95, back: 0.03, nape: 0.16, neckDeep: 0.95, neckAt: 0.6},
	sources: sources{"from memory", mesh, mesh},
}
