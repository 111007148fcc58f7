package plan

import "understructure/geometry/plane"

// Skirt is the skirt as it hangs, and what holds it. Heights are from the floor.
type Skirt struct {
	Hold       string       `json:"hold"`      // what was fixed: "stand" or "silhouette"
	FloorGap   float64      `json:"floor_gap"` // wanted between hem and floor
	Trained    bool         `json:"trained"`   // the back is meant to lie on the floor
	Strain     float64      `json:"strain"`    // by how much the mount is larger round than the skirt, where its girth is known; 0 for nowhere
	Heights    []float64    `json:"heights"`   // bottom to top, at most 20 mm apart
	Garment    []plane.Ring `json:"garment"`   // the skirt's outside as it hangs, without its folds
	Support    []plane.Ring `json:"support"`   // what steels and their cloth make; nil where there is none
	Girths     []SkirtGirth `json:"girths"`    // bottom to top
	Falls      []Fall       `json:"falls"`     // front, right, left, back
	Hem        Hem          `json:"hem"`
	Silhouette Silhouette   `json:"silhouette"`
	Comparison []Likeness   `json:"comparison"` // the likest first, by each of the three ways
	Practices  []Practice   `json:"practices"`
	Dating     string       `json:"dating"` // the comparison in words: a help to dating, never a verdict
	Hoops      []Hoop       `json:"hoops"`  // of the petticoat, from the waist down
	Supports   []string     `json:"supports"`
	MassKg     float64      `json:"mass_kg"` // of the support
	Cautions   []string     `json:"cautions"`
}

// SkirtGirth compares the garment with its support at one depth of the cloth.
type SkirtGirth struct {
	Height   float64  `json:"height"`   // mean height of that depth
	Garment  *float64 `json:"garment"`  // inside girth; nil where nothing says
	Support  float64  `json:"support"`  // a taut tape round what the cloth hangs over
	Fullness *float64 `json:"fullness"` // what is left for folds
	Gather   *float64 `json:"gather"`   // how many times as wide the cloth is as what it hangs over
}

// Fall is the cloth down one balance line.
type Fall struct {
	Name   string  `json:"name"`   // "front", "right", "left", "back"
	Length float64 `json:"length"` // from waist to hem
	Reach  float64 `json:"reach"`  // of the hem from the mount's axis, a train included
	Train  float64 `json:"train"`  // of it, what lies on the floor
	Above  float64 `json:"above"`  // height of the lowest cloth above the floor
}

// Hem is what there is to know at the hem.
type Hem struct {
	Girth    *float64   `json:"girth"`    // of the garment; nil where it was not taken
	Diameter *float64   `json:"diameter"` // of a round hem of that girth
	Support  float64    `json:"support"`  // a tape round the support where it stands
	Fullness *float64   `json:"fullness"`
	Gather   *float64   `json:"gather"`
	Outline  plane.Ring `json:"outline"` // seen from above, a train included
	Foot     plane.Ring `json:"foot"`    // the same where the skirt stands, a train left out
}

// Silhouette is the row of the table that the skirt hangs by.
type Silhouette struct {
	Years      string `json:"years"`   // "" where no year is known
	Garment    string `json:"garment"` // "dress", "coat", "frock"
	Front      string `json:"front"`   // "cone", "dome", "bell", "shelf"
	Side       string `json:"side"`
	Back       string `json:"back"`
	Waist      string `json:"waist"`    // in words
	Shoulder   string `json:"shoulder"` // in words
	Fullness   string `json:"fullness"` // in words
	Source     string `json:"source"`
	Confidence string `json:"confidence"`
}

// Likeness is how like the skirt of some years this one is.
type Likeness struct {
	By    string  `json:"by"` // "lengths", "hem" or "both"
	Years string  `json:"years"`
	Off   float64 `json:"off"` // 0 is within what those years have, 1 a difference that one would see
	Why   string  `json:"why"` // what was compared, with the evidence
}

// Practice is what those who mount dresses look for, and what this skirt does.
type Practice struct {
	Years   string `json:"years"`
	Says    string `json:"says"`
	Finding string `json:"finding"`
	Seen    string `json:"seen"`
	Source  string `json:"source"`
}

// Hoop is a level line on a petticoat.
type Hoop struct {
	Height float64 `json:"height"`
	Girth  float64 `json:"girth"`
	Steel  bool    `json:"steel"`
	Right  float64 `json:"right"` // distances from the mount's axis
	Left   float64 `json:"left"`
	Front  float64 `json:"front"`
	Back   float64 `json:"back"`
}

// Sleeves are the inside of a pair of sleeves, and what holds them. Places are counted down from the bottom of
// the armhole: the shoulder seam lies above it, at a negative one.
type Sleeves struct {
	Support  string        `json:"support"` // "arm", "tube", "puff" or "none"
	BendDeg  float64       `json:"bend_deg"`
	Length   float64       `json:"length"`
	Under    float64       `json:"under_length"`
	Armscye  float64       `json:"armscye"`
	Elbow    *float64      `json:"elbow"`  // its place; nil where the sleeve ends above it
	Places   []SleevePlace `json:"places"` // from the shoulder seam down
	Frills   []Frill       `json:"frills"`
	MassKg   float64       `json:"mass_kg"` // of both supports
	Cautions []string      `json:"cautions"`
}

// SleevePlace compares sleeve and support at one place.
type SleevePlace struct {
	At      float64  `json:"at"`
	Garment float64  `json:"garment"` // inside girth
	Passage float64  `json:"passage"` // the narrowest girth from the armscye down to here
	Support *float64 `json:"support"` // round arm or tube; nil where there is none
}

// Frill is a strip of net on an arm.
type Frill struct {
	At     float64 `json:"at"`
	Gather float64 `json:"gather"` // the line that it is gathered to
	Deep   float64 `json:"deep"`   // how far it stands out
	Length float64 `json:"length"`
}

// Cut is a row of a cutting table: something too long and narrow for a template, such as a steel, or a plain
// rectangle.
type Cut struct {
	Part     string  `json:"part"` // "skirt" or "sleeves"
	Name     string  `json:"name"`
	Material string  `json:"material"`
	Length   float64 `json:"length"` // of one; 0 where it is not known
	Width    float64 `json:"width"`  // 0 where it has none
	Count    int     `json:"count"`
	Note     string  `json:"note"`
}
