package record

import "understructure/patterns/sheet"

// Limit is the range that a value of the mount may have, in millimetres or kilograms.
type Limit struct{ Least, Most float64 }

// The limits. Like those of the measurements they catch a slip of the unit or the decimal
// point; where no source is named they are wide of anything heard of in workshops, from memory.
var (
	MassLimit         = Limit{0.01, 50}  // kilograms; day dresses weigh 1.6 to 2.7 (New York Times 1883), court trains up to 10 (from memory)
	EaseLimit         = Limit{0, 150}    // there is no negative ease: the mount is always smaller
	TapeErrorLimit    = Limit{0, 20}     // one standard deviation
	HeightErrorLimit  = Limit{0, 20}     // one standard deviation
	CuttingErrorLimit = Limit{0, 10}     // one standard deviation
	WaddingLimit      = Limit{0.5, 50}   // 2.5 to 32 mm are sold
	SpreadLimit       = Limit{0, 10}     // one standard deviation
	CoverLimit        = Limit{0, 10}     // 0 is no cover
	PlankLimit        = Limit{3, 200}    // sheets from 0.3 cm, laminated planks to 10 cm and more
	PlankSideLimit    = Limit{100, 5000} // length and width
	PoleLimit         = Limit{0, 150}    // 0 is no pole
	CountLimit        = Limit{1, 1000}   // planks of one size in store
	PriceLimit        = Limit{0, 1e6}    // in any currency
	RollLimit         = Limit{300, 6000} // width; ribbons are narrower, and net of 6 m is sold
	RuleLimit         = Limit{sheet.LeastRule, sheet.MostRule}
	PaperWidthLimit   = Limit{sheet.LeastWidth, sheet.Most}
	PaperHeightLimit  = Limit{sheet.LeastHeight, sheet.Most}
	YearLimit         = Limit{1000, 2100}
)

// The limits of what goes under skirt and sleeves. Those of the stand are the waist height's, those of
// steels and elbows what can be drafted; the others are from memory.
var (
	StandLimit        = Limit{150, 1700}
	GapLimit          = Limit{0, 500} // of the hem above the floor; frocks of children hang higher by the stand
	SteelsLimit       = Limit{1, 40}  // a cage of 1858 to 1861 has 29 (corsetsandcrinolines.com, index 185040)
	NetWidthLimit     = Limit{300, 6000}
	PadThicknessLimit = Limit{5, 500}
	FrameLengthLimit  = Limit{100, 2000}
	BendLimit         = Limit{0, 30}  // degrees; beyond, two flat pieces do not follow a thick arm
	PadLimit          = Limit{0, 150} // 0 is no pad
)

// The limits of what the maker sets by hand at a level. They span those of the measurements of
// every level; the height is above the waist, and a figure has some 500 mm on either side of it.
var (
	ShapeHeightLimit = Limit{-600, 1000}
	ShapeGirthLimit  = Limit{100, 2500}
	ShapeAcrossLimit = Limit{30, 1100} // breadth and depth
	ShapeArcLimit    = Limit{40, 1500}
)

// The limits of fittings and photographs.
var (
	SeenLimit       = Limit{0, 1000}       // a garment that fails to meet by more is not on its mount
	PixelLimit      = Limit{-1e5, 1e5}     // the largest pictures have some 50 000 pixels a side (from memory)
	PhotographLimit = Limit{1, 10000}      // between the two points
	PlaceLimit      = Limit{-10000, 10000} // of a point in the view, across and up
	FadeLimit       = Limit{0, 1}
)

// The most items that a list may have. They are wide of what a workshop writes down, and
// keep the fullest record within the size that a file may have.
const (
	MostReadings    = 12
	MostFittings    = 200
	MostSeen        = 50 // at one fitting
	MostPhotographs = 12
	MostTrace       = 2000 // points of an outline traced on a photograph
)

// The most characters that a text may have, so that it fits where it is printed.
const (
	longestNumber = 100
	longestTitle  = 500
	longestName   = 200
	longestNote   = 2000
	longestPath   = 1000
)

// mostWaddings and mostPlanks, of whole ones and of offcuts, are far more than a workshop keeps.
const mostWaddings, mostPlanks = 12, 50

// The words that a choice may be.
var (
	Units     = []string{"mm", "cm", "in"}
	Strengths = []string{"sound", "fair", "weak"}
	Builds    = []string{"padded", "slices"}
	Steps     = []string{"inside", "flush", "bevel"}
	SidesOf   = []string{"inside", "outside"} // of the cloth, where the tape lay
	Papers    = paperNames()
	Wearers   = []string{"woman", "man", "child"}
	Faults    = []string{FailsToMeet, Tight, Slack, TooSquare, TooSloping, HemShort, HemLong, Limp}
	Wheres    = []string{"front", "back", "left", "right"}
	Views     = []string{"front", "side", "back"}

	SkirtSupports  = []string{AsDated, TubeOnly, Legs, Petticoat, Hoops, Net, Bustle, BustleFrame, NoSupport}
	Holds          = []string{HoldStand, HoldSilhouette}
	Cuts           = []string{"gored", "straight"}
	Trains         = []string{ByLength, LevelHem, OnFloor}
	SleeveSupports = []string{AsTaken, Arm, Tube, Puff, NoSupport}
)

func paperNames() []string {
	var names []string
	for _, p := range sheet.Papers {
		names = append(names, p.Name)
	}
	return names
}
