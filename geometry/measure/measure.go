// Package measure holds what a tape said of one bodice or one bare form, and the names of
// the places where tapes go. Lengths are millimetres, slopes degrees.
// It does not know files; it does not draw a figure.
package measure

// Key names one measurement, as it stands in a record.
type Key string

// The measurements of a bodice, or of a form. Girths are the length of a taut closed tape.
const (
	NeckBaseGirth    Key = "neck_base_girth"
	UnderarmGirth    Key = "underarm_girth"
	BustGirth        Key = "bust_girth"
	UnderbustGirth   Key = "underbust_girth"
	WaistGirth       Key = "waist_girth"
	HighHipGirth     Key = "high_hip_girth"
	HipGirth         Key = "hip_girth"
	BustFrontArc     Key = "bust_front_arc"
	WaistFrontArc    Key = "waist_front_arc"
	HipFrontArc      Key = "hip_front_arc"
	BustLeftArc      Key = "bust_left_arc" // centre front round the left side to centre back
	WaistLeftArc     Key = "waist_left_arc"
	HipLeftArc       Key = "hip_left_arc"
	BustBreadth      Key = "bust_breadth"
	BustDepth        Key = "bust_depth"
	UnderbustBreadth Key = "underbust_breadth"
	UnderbustDepth   Key = "underbust_depth"
	WaistBreadth     Key = "waist_breadth"
	WaistDepth       Key = "waist_depth"
	HighHipBreadth   Key = "high_hip_breadth"
	HighHipDepth     Key = "high_hip_depth"
	HipBreadth       Key = "hip_breadth"
	HipDepth         Key = "hip_depth"
	AcrossFront      Key = "across_front"
	AcrossBack       Key = "across_back"
	ShoulderLength   Key = "shoulder_length"
	ShoulderSlope    Key = "shoulder_slope_deg"
	ArmscyeGirth     Key = "armscye_girth"
	BackWaist        Key = "back_waist_length"
	FrontWaist       Key = "front_waist_length"
	NeckToBustPoint  Key = "neck_to_bust_point"
	BustPointWidth   Key = "bust_point_width"
	SideLength       Key = "side_length"
	WaistToHighHip   Key = "waist_to_high_hip"
	WaistToHip       Key = "waist_to_hip"
	WaistHeight      Key = "waist_height"
	NapeToHem        Key = "nape_to_hem_length" // of a whole garment: closes back waist and skirt back lengths
)

// The measurements of a skirt. It shares WaistGirth, HipGirth and SideLength (waist to hem
// at the side) with the bodice by name, not by place.
const (
	FrontLength Key = "front_length"
	BackLength  Key = "back_length"
	HemGirth    Key = "hem_girth"
)

// The measurements of a sleeve.
const (
	SleeveLength Key = "length"
	UnderLength  Key = "under_length"
	UpperGirth   Key = "upper_girth"
	ElbowGirth   Key = "elbow_girth"
	WristGirth   Key = "wrist_girth"
)

// Sheet is one set of measurements; a key that is absent was not taken.
type Sheet map[Key]float64

// Wearer is whom the garment was made for.
type Wearer string

// The wearers whose statistics are known.
const (
	Woman Wearer = "woman"
	Man   Wearer = "man"
	Child Wearer = "child"
)

// Level names a horizontal plane through the figure for where a tape goes.
type Level string

// The levels, from the neck down.
const (
	NeckBase    Level = "neck base"
	Shoulder    Level = "shoulder"
	AcrossChest Level = "across-chest"
	Underarm    Level = "underarm"
	Bust        Level = "bust"
	Underbust   Level = "underbust"
	Waist       Level = "waist"
	HighHip     Level = "high hip"
	Hip         Level = "hip"
)

// Levels lists every level from the neck down.
var Levels = []Level{NeckBase, Shoulder, AcrossChest, Underarm, Bust, Underbust, Waist, HighHip, Hip}

// Notice is something the maker should know about the values taken.
type Notice struct {
	Code    string  // stable, such as "lengths-disagree"
	Level   Level   // "" when it is about the whole
	Key     Key     // "" when no single value is meant
	Amount  float64 // millimetres by which the values disagree; 0 where that says nothing
	Message string  // one plain sentence
}
