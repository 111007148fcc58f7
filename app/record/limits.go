package record

import "understructure/patterns/sheet"

// Limit is the range that a value of the mount may have, in millimetres or kilograms.
type Limit struct{ Least, Most float64 }

// The limits. Like those of the measurements they catch a slip of the unit or the decimal
// point; where no source is named they are wide of anything heard of in workshops, from memory.
var (
	MassLimit        = Limit{0.01, 50}  // kilograms; day dresses weigh 1.6 to 2.7 (New York Times 1883), court trains up to 10 (from memory)
	EaseLimit        = Limit{0, 150}    // there is no negative ease: the mount is always smaller
	TapeErrorLimit   = Limit{0, 20}     // one standard deviation
	WaddingLimit     = Limit{0.5, 50}   // 2.5 to 32 mm are sold
	SpreadLimit      = Limit{0, 10}     // one standard deviation
	CoverLimit       = Limit{0, 10}     // 0 is no cover
	PlankLimit       = Limit{3, 200}    // sheets from 0.3 cm, laminated planks to 10 cm and more
	PlankSideLimit   = Limit{100, 5000} // length and width
	PoleLimit        = Limit{0, 150}    // 0 is no pole
	PaperWidthLimit  = Limit{sheet.LeastWidth, sheet.Most}
	PaperHeightLimit = Limit{sheet.LeastHeight, sheet.Most}
	YearLimit        = Limit{1000, 2100}
)

// The most characters that a text may have, so that it fits where it is printed.
const (
	longestNumber = 100
	longestTitle  = 500
	longestName   = 200
)

// mostWaddings is far more than a workshop keeps.
const mostWaddings = 12

// The words that a choice may be.
var (
	Units     = []string{"mm", "cm", "in"}
	Strengths = []string{"sound", "fair", "weak"}
	Builds    = []string{"padded", "slices"}
	Steps     = []string{"inside", "flush", "bevel"}
	SidesOf   = []string{"inside", "outside"} // of the cloth, where the tape lay
	Papers    = paperNames()
	Wearers   = []string{"woman", "man", "child"}
)

func paperNames() []string {
	var names []string
	for _, p := range sheet.Papers {
		names = append(names, p.Name)
	}
	return names
}
