package record

// SkirtMount is how a skirt hangs and what holds it.
type SkirtMount struct {
	Support     string   // one of SkirtSupports, "" for as dated
	Hold        string   // one of Holds: which is fixed, and the other follows; "" for the stand where its height is known
	StandHeight *float64 // of the waist above the floor; takes the place of the bodice's waist height
	FloorGap    *float64 // of the hem above the floor
	Cut         string   // one of Cuts, "" for the usual one of the year
	Train       string   // one of Trains, "" for by length
	BandFastens *bool    // the skirt's waistband closes by itself

	Steels       *float64 // of a hooped petticoat, a whole number
	NetWidth     *float64 // of the net in stock
	PadThickness *float64 // of a bustle pad
	FrameLength  *float64 // of a bustle frame
}

// SleeveMount is what holds the sleeves.
type SleeveMount struct {
	Support string   // one of SleeveSupports, "" for as taken
	BendDeg *float64 // of the elbow
}

// Pads are the loose pads that the maker wants beside the layers.
type Pads struct {
	Shoulder, Bust, Hip Pad
	Fill                bool // soft fills for a bodice that hangs limp
}

// Pad is one kind of pad, on both sides. The zero Pad is none.
type Pad struct {
	Asked      bool
	Projection *float64 // how far it stands out at its thickest; nil leaves it to the program
}

// What can hold a skirt, from nothing to a bustle frame; see skirt.Hold for what each is made of.
const (
	AsDated     = "as dated" // what the year wants
	TubeOnly    = "tube"
	Legs        = "legs"
	Petticoat   = "petticoat"
	Hoops       = "hoops"
	Net         = "net"
	Bustle      = "bustle"
	BustleFrame = "bustle frame"
	NoSupport   = "none" // of sleeves too
)

// Which of the two is fixed.
const (
	HoldStand      = "stand"      // how far out the hem reaches follows from the stand
	HoldSilhouette = "silhouette" // the stand follows from how far out the year's hem reaches
)

// What can hold a sleeve. A full sleeve gets a puff of net beside its arm or tube.
const (
	AsTaken = "as taken" // what the sleeve's readings want
	Arm     = "arm"
	Tube    = "tube"
	Puff    = "puff" // the net alone
)

// ByLength, LevelHem and OnFloor say whether the longer back of a skirt lies on the floor.
const (
	ByLength = "by length"
	LevelHem = "level"
	OnFloor  = "floor"
)
