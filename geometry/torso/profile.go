package torso

import (
	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// The usual outlines: mean tape outlines of 120 women, 80 men and 70 children, each made
// from the base mesh and shape targets of the MakeHuman community's open parametric body
// (CC0 1.0, makehumancommunity.org, 2014), cut level at six heights and averaged by us as
// cosine series of the radius. An artist's bodies, not scans: their breadth, depth and girth ratios were held
// against ANSUR II, and only the roundness between breadth and depth is taken from them.
var womanProfiles = map[measure.Level]section.Profile{
	measure.Underarm:  {1.0505, 0.0059, 0.0226, -0.0012, -0.0576, -0.0107, -0.0213, 0.0041, -0.0002},
	measure.Bust:      {1.0602, -0.0033, 0.0261, 0.0163, -0.0781, -0.0178, -0.0207, -0.0023, 0.0049, 0.0072, 0.0077, 0.0025, 0.0028},
	measure.Underbust: {1.0276, -0.0309, 0.0138, 0.0281, -0.0288, 0.0055, -0.0083, 0.0004, -0.0045},
	measure.Waist:     {1.0201, -0.039, 0.0153, 0.0352, -0.0266, 0.0049, -0.0057, 0.0018, -0.0014},
	measure.HighHip:   {1.0142, -0.0567, 0.0167, 0.0537, -0.0246, 0.01, -0.0018, -0.0022, -0.0008},
	measure.Hip:       {1.031, 0.0194, 0.0171, -0.0321, -0.0372, -0.0002, -0.0142, 0.0086, 0.0009},
}

var manProfiles = map[measure.Level]section.Profile{
	measure.Underarm:  {1.0495, -0.0022, 0.022, 0.0035, -0.0538, -0.0029, -0.0233, 0.0016, -0.0001},
	measure.Bust:      {1.0434, -0.0077, 0.0229, 0.0141, -0.0509, -0.0063, -0.0195, -0.001, 0.0009, -0.0007, 0.0031, 0.0013, -0.0011},
	measure.Underbust: {1.0442, -0.0069, 0.0112, 0.0037, -0.0454, -0.0004, -0.0107, 0.0013, -0.002},
	measure.Waist:     {1.0239, -0.0168, 0.0092, 0.0063, -0.0244, 0.0098, -0.0035, 0.0029, -0.0015},
	measure.HighHip:   {1.0195, -0.0211, 0.0096, 0.0079, -0.0195, 0.0125, -0.0057, 0.004, -0.0018},
	measure.Hip:       {1.0249, 0.005, 0.0123, -0.034, -0.0356, 0.0162, -0.0036, 0.0119, 0.0011},
}

var childProfiles = map[measure.Level]section.Profile{
	measure.Underarm:  {1.0548, -0.0054, 0.0218, 0.0016, -0.064, 0.0077, -0.0195, -0.0022, 0.0016},
	measure.Bust:      {1.051, -0.0027, 0.0234, 0.0042, -0.0596, 0.0005, -0.0229, -0.0032, 0.0025, 0.0002, 0.0057, 0.0011, 0.0004},
	measure.Underbust: {1.0377, -0.0182, 0.0139, 0.0139, -0.0395, 0.004, -0.0112, 0.0012, -0.0041},
	measure.Waist:     {1.0165, -0.0292, 0.0097, 0.0197, -0.0188, 0.0065, -0.006, 0.0018, -0.0011},
	measure.HighHip:   {1.0168, -0.0422, 0.0095, 0.0309, -0.0222, 0.0102, -0.0046, 0.0016, -0.0002},
	measure.Hip:       {1.0219, -0.0064, 0.0063, -0.0169, -0.025, 0.0136, -0.0017, 0.0095, 0.0},
}

// bustPointProfile is added to a woman's bust profile for every unit that the distance of
// the bust points, as a fraction of the breadth, exceeds bustPointShare: wide-set points
// flatten the front. Source as above.
var bustPointProfile = section.Profile{0.1166, 0.3433, -0.0649, -0.4602, -0.1615, 0.0216, 0.083, 0.1149, 0.0608, 0.0136, -0.0043, -0.0174, -0.0301}

const bustPointShare = 0.70
