package torso

import (
	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// statistics is what is usual for a wearer and a year. Lengths are millimetres, the heights
// fractions of the nape's height above the waist.
type statistics struct {
	wearer   measure.Wearer
	corseted bool
	source   string

	shape map[measure.Level]shape

	chestAt                                float64 // the girth of chest that the lines below are centred on
	backAt, backBy                         float64 // across back = backAt + backBy·(chest − chestAt)
	shoulderAt, shoulderBy                 float64
	neckAt, neckBy                         float64
	shoulderSlope                          float64 // degrees
	slopeSource                            string
	bust, underbust, underarm, acrossChest float64 // underbust as a fraction of the bust's height, across-chest of the way from underarm to shoulder
	highHip, hip                           float64
	neckBelowNape, pitBelowNape            float64
	chestFalls, backFalls, napeForward     float64 // fractions of the underarm depth
	neckDepth                              float64 // depth over breadth of the neck base
}

// shape is the usual slice at a level: what a tape cannot tell.
type shape struct {
	ratio                float64 // breadth over depth
	front                float64 // share of the depth before the side points
	fullFront, fullBack  float64 // superellipse exponents
	y                    float64 // y of the side points, as a fraction of the depth
	spreadRatio, spreadN float64
}

const ansur = "ANSUR II (Gordon et al., 2012 Anthropometric Survey of U.S. Army Personnel, NATICK/TR-15/007, 2014)"

// statisticsOf returns what is usual for the wearer, in a corset where women wore one.
func statisticsOf(w measure.Wearer, year int) statistics {
	switch w {
	case measure.Man:
		return men
	case measure.Child:
		return children
	}
	s := women
	if s.corseted = year == 0 || year < 1911 && !(year > 1795 && year < 1820); s.corseted {
		s.shape = corsetedShapes
	}
	return s
}

func (s statistics) acrossBack(chest float64) float64  { return s.backAt + s.backBy*(chest-s.chestAt) }
func (s statistics) acrossFront(chest float64) float64 { return 0.93 * s.acrossBack(chest) }
func (s statistics) shoulderLength(chest float64) float64 {
	return s.shoulderAt + s.shoulderBy*(chest-s.chestAt)
}
func (s statistics) neckGirth(chest float64) float64 { return s.neckAt + s.neckBy*(chest-s.chestAt) }

// usual is the slice expected at a level; bustWidth is the bust-point spacing, 0 if not taken.
func (s statistics) usual(l measure.Level, girth map[measure.Level]float64, bustWidth float64) section.Usual {
	p := s.shape[l]
	depth := 200.0
	u := section.Usual{Halves: section.Halves{
		Right: p.ratio * depth / 2, Left: p.ratio * depth / 2,
		Front: p.front * depth, Back: (1 - p.front) * depth,
		FrontFullness: p.fullFront, BackFullness: p.fullBack, Y: p.y * depth,
	}}
	u.Spread.Breadth, u.Spread.Depth, u.Spread.Fullness, u.Spread.Balance = p.spreadRatio, p.spreadRatio, p.spreadN, 0.02
	if l == measure.Bust && s.wearer == measure.Woman {
		width := or(bustWidth, bustWidthPerGirth*girth[measure.Bust])
		u.Lobe = width / 2
		u.Valley = valley * width
	}
	return u
}

// The bust points of 600 Spanish women stand 192.8 mm apart at a mean bust of 959 mm (R
// package Anthropometry 1.20, sample data, 2023).
const bustWidthPerGirth = 192.8 / 959

// valley is the depth of the hollow between the bust points, as a fraction of their
// spacing: real figures have about 0.15 (from memory of measured slices).
const valley = 0.15

var women = statistics{
	wearer: measure.Woman, source: ansur,
	shape: map[measure.Level]shape{
		measure.Underarm:  {1.38, 0.52, 2.5, 2.6, 0, 0.05, 0.2},
		measure.Bust:      {1.30, 0.58, 2.3, 2.5, 0, 0.05, 0.2},
		measure.Underbust: {1.42, 0.55, 2.4, 2.4, 0, 0.05, 0.2},
		measure.Waist:     {1.42, 0.59, 2.4, 2.6, 0, 0.05, 0.2},
		measure.HighHip:   {1.50, 0.50, 2.5, 2.6, 0, 0.05, 0.2},
		measure.Hip:       {1.53, 0.45, 2.6, 2.6, 0, 0.05, 0.2},
	},
	chestAt: 946.9, backAt: 373.4, backBy: 0.63 * 29.8 / 82.7,
	shoulderAt: 135.4, shoulderBy: 0.13 * 10.3 / 82.7, neckAt: 371.2, neckBy: 0.66 * 19.7 / 82.7,
	shoulderSlope: 24.3, slopeSource: "R package Anthropometry 1.20, 600 Spanish women",
	bust: 0.355, underbust: 0.5, underarm: 0.52, acrossChest: 0.45, highHip: 0.21, hip: 0.45,
	neckBelowNape: 0.03, pitBelowNape: 0.18,
	chestFalls: 0.10, backFalls: 0, napeForward: 0.12, neckDepth: 0.95,
}

var corsetedShapes = func() map[measure.Level]shape {
	m := map[measure.Level]shape{}
	for l, s := range women.shape {
		m[l] = s
	}
	// A laced waist is rounder than a natural one (G. Lamb? contemporary health writers say so; the figure is from memory).
	w := m[measure.Waist]
	w.ratio = 1.22
	m[measure.Waist] = w
	return m
}()

var men = statistics{
	wearer: measure.Man, source: ansur,
	shape: map[measure.Level]shape{
		measure.Underarm:  {1.40, 0.50, 2.6, 2.6, 0, 0.05, 0.2},
		measure.Bust:      {1.36, 0.50, 2.6, 2.6, 0, 0.05, 0.2},
		measure.Underbust: {1.36, 0.52, 2.5, 2.5, 0, 0.05, 0.2},
		measure.Waist:     {1.38, 0.57, 2.3, 2.6, 0, 0.05, 0.2},
		measure.HighHip:   {1.40, 0.50, 2.5, 2.6, 0, 0.05, 0.2},
		measure.Hip:       {1.42, 0.45, 2.5, 2.6, 0, 0.05, 0.2},
	},
	chestAt: 1058.7, backAt: 430.9, backBy: 0.25,
	shoulderAt: 149.8, shoulderBy: 0.02, neckAt: 434.6, neckBy: 0.2,
	shoulderSlope: 21, slopeSource: "from memory",
	bust: 0.45, underbust: 0.5, underarm: 0.55, acrossChest: 0.45, highHip: 0.18, hip: 0.38,
	neckBelowNape: 0.03, pitBelowNape: 0.17,
	chestFalls: 0.12, backFalls: 0, napeForward: 0.12, neckDepth: 0.95,
}

var children = func() statistics {
	s := men
	s.wearer = measure.Child
	return s
}()

// drawGirths settles the girth of every taped level.
func (d *draft) drawGirths() {
	bust, waist := d.sheet[measure.BustGirth], d.sheet[measure.WaistGirth]
	d.girth[measure.Bust], d.girth[measure.Waist] = bust, waist
	d.girth[measure.Underarm] = 0.985 * bust
	d.girth[measure.Underbust] = d.take(measure.UnderbustGirth, 0.5*(bust+waist), d.stats.source)
	hip := d.take(measure.HipGirth, 898+0.68*(bust-813), d.stats.source)
	d.girth[measure.Hip] = hip
	d.girth[measure.HighHip] = d.take(measure.HighHipGirth, waist+0.55*(hip-waist), d.stats.source)
}
