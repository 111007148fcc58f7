package measure

// Measure says where one tape goes and which readings are possible.
type Measure struct {
	Key      Key
	Label    string  // "bust girth"
	Where    string  // one plain sentence: where the tape goes
	Group    string  // "girths", "arcs", "breadths and depths", "shoulder and neck" or "lengths"
	ISO      string  // the term in ISO 8559-1:2017 for the same tape on a body; "" where we are not sure of one
	Min, Max float64 // millimetres, or degrees where Degrees is true
	Degrees  bool
}

// The ranges are there to catch a slip of the unit or of the decimal point, not to judge a
// body. The least is a newborn's garment (chest and waist some 320 mm), the greatest a man
// of about 250 kg; both from memory, no published source, and widened so that nothing
// that was ever worn is refused. A reason beside a line is for a limit that comes from
// somewhere else.

// Keys lists the measurements of a bodice, or of a bare form, in the order one measures.
var Keys = []Measure{
	{BustGirth, "bust girth", "Level round the fullest part of the bust or chest, under the arms and over the bust points, to the fastening points.", "girths", "bust girth", 300, 1800, false},
	{UnderbustGirth, "underbust girth", "Level round the ribs just below the bust.", "girths", "underbust girth", 280, 1800, false},
	{WaistGirth, "waist girth", "Round the waist, along the lower edge of the inner waist tape where there is one, to the fastening points.", "girths", "waist girth", 300, 2000, false},
	{HighHipGirth, "high hip girth", "Level round the top of the hips, about 8 cm below the waist.", "girths", "", 300, 2000, false},
	{HipGirth, "hip girth", "Level round the fullest part of the hips and seat.", "girths", "hip girth", 300, 2200, false},
	{UnderarmGirth, "underarm girth", "Level round the chest at the bottom of the armholes, above the fullest part of the bust.", "girths", "", 300, 1800, false},
	{NeckBaseGirth, "neck base girth", "Round the base of the neck: over the nape, the two neck points and the pit of the throat.", "girths", "neck base girth", 150, 900, false},
	{ArmscyeGirth, "armscye girth", "Round the armhole along its seam.", "girths", "armscye girth", 100, 1000, false},

	// An arc is a third to two thirds of its girth; the checks compare them.
	{BustFrontArc, "bust front arc", "From side seam to side seam over the front at the bust.", "arcs", "", 80, 1400, false},
	{WaistFrontArc, "waist front arc", "From side seam to side seam over the front at the waist.", "arcs", "", 80, 1400, false},
	{HipFrontArc, "hip front arc", "From side seam to side seam over the front at the hip.", "arcs", "", 80, 1500, false},
	{BustLeftArc, "bust left arc", "From centre front round the wearer's left side to centre back at the bust.", "arcs", "", 80, 1200, false},
	{WaistLeftArc, "waist left arc", "From centre front round the wearer's left side to centre back at the waist.", "arcs", "", 80, 1300, false},
	{HipLeftArc, "hip left arc", "From centre front round the wearer's left side to centre back at the hip.", "arcs", "", 80, 1400, false},

	// A convex outline of girth g is at most g/2 broad.
	{BustBreadth, "bust breadth", "Straight across from side to side at the bust, with callipers or between two set squares.", "breadths and depths", "", 60, 900, false},
	{BustDepth, "bust depth", "Straight from the fullest front to the back at the bust.", "breadths and depths", "", 50, 900, false},
	{UnderbustBreadth, "underbust breadth", "Straight across from side to side just below the bust.", "breadths and depths", "", 60, 900, false},
	{UnderbustDepth, "underbust depth", "Straight from front to back just below the bust.", "breadths and depths", "", 50, 900, false},
	{WaistBreadth, "waist breadth", "Straight across from side to side at the waist.", "breadths and depths", "", 60, 1000, false},
	{WaistDepth, "waist depth", "Straight from front to back at the waist.", "breadths and depths", "", 50, 1000, false},
	{HighHipBreadth, "high hip breadth", "Straight across from side to side at the high hip.", "breadths and depths", "", 60, 1000, false},
	{HighHipDepth, "high hip depth", "Straight from front to back at the high hip.", "breadths and depths", "", 50, 1000, false},
	{HipBreadth, "hip breadth", "Straight across from side to side at the hip.", "breadths and depths", "", 60, 1100, false},
	{HipDepth, "hip depth", "Straight from front to back at the hip.", "breadths and depths", "", 50, 1100, false},
	{BustPointWidth, "bust point width", "Straight from bust point to bust point.", "breadths and depths", "", 40, 500, false},

	{AcrossFront, "across front", "From armhole to armhole over the front, half way down the armhole.", "shoulder and neck", "", 80, 800, false},
	{AcrossBack, "across back", "From armhole to armhole over the back, half way down the armhole.", "shoulder and neck", "", 80, 800, false},
	// From a strap's width to a dropped shoulder of the 1850s: 216 mm is published (University of New Hampshire, Bowen collection 683).
	{ShoulderLength, "shoulder length", "From the neck point to the shoulder point, along the shoulder.", "shoulder and neck", "shoulder length", 15, 350, false},
	// 600 women of today lie between 17 and 31 degrees at the 5th and 95th percentile (landmarks in the R package Anthropometry); period shoulders slope more.
	{ShoulderSlope, "shoulder slope", "The angle by which the shoulder falls from neck point to shoulder point, below level.", "shoulder and neck", "", 0, 60, true},

	// A back can be as short as 1800s fashion made it, a side seam shorter still:
	// 64 mm is published (Connecticut Historical Society 1963.42.3).
	{BackWaist, "back waist length", "From the nape down the centre back to the waist.", "lengths", "back waist length", 80, 800, false},
	{FrontWaist, "front waist length", "From the pit of the throat down the centre front to the waist.", "lengths", "front waist length", 60, 900, false},
	{NeckToBustPoint, "neck to bust point", "From the neck point down to the bust point.", "lengths", "", 60, 600, false},
	{SideLength, "side length", "From the bottom of the armhole straight down to the waist.", "lengths", "", 10, 500, false},
	{WaistToHighHip, "waist to high hip", "From the waist down the side to the high hip.", "lengths", "", 15, 300, false},
	{WaistToHip, "waist to hip", "From the waist down the side to the fullest part of the hip.", "lengths", "", 30, 450, false},
	{WaistHeight, "waist height", "From the floor straight up to the waist, as the garment is to stand.", "lengths", "waist height", 150, 1700, false},
	{NapeToHem, "nape to hem length", "From the nape down the centre back of the whole garment to its hem.", "lengths", "", 150, 8000, false}, // a court train of 8 yards is 7.3 m
}

// Skirt lists the measurements of a skirt in the order one measures. The greatest lengths
// admit a court train of 8 yards (7.3 m), the greatest hem twice the 5.6 m of a published
// skirt of 1862 in three layers (Connecticut Historical Society).
var Skirt = []Measure{
	{WaistGirth, "skirt waist girth", "Along the inside of the waistband, to the fastening points.", "girths", "", 300, 2000, false},
	{HipGirth, "skirt hip girth", "Level round the inside of the skirt at the hip, with its fullness.", "girths", "", 300, 12000, false},
	{HemGirth, "hem girth", "Along the hem, all the way round.", "girths", "", 300, 12000, false},
	{FrontLength, "skirt front length", "From the waist down the centre front to the hem.", "lengths", "", 80, 2000, false},
	{SideLength, "skirt side length", "From the waist down the side to the hem.", "lengths", "", 80, 4000, false},
	{BackLength, "skirt back length", "From the waist down the centre back to the hem, with the train.", "lengths", "", 80, 8000, false},
}

// Sleeve lists the measurements of a sleeve in the order one measures. The greatest girths
// admit the full sleeves of the 1830s and 1890s (about 1 m, from memory) and an open
// sleeve of 910 mm that is published (1862).
var Sleeve = []Measure{
	{UpperGirth, "upper sleeve girth", "Round the inside of the sleeve at its widest, below the armhole.", "girths", "", 80, 1500, false},
	{ElbowGirth, "elbow girth", "Round the inside of the sleeve at the elbow.", "girths", "", 70, 1500, false},
	{WristGirth, "wrist girth", "Round the inside of the sleeve's end, fastened.", "girths", "", 60, 1500, false},
	{SleeveLength, "sleeve length", "From the shoulder seam down the outside of the sleeve to its end.", "lengths", "", 20, 1200, false},
	{UnderLength, "under-sleeve length", "From the bottom of the armhole down the inner seam to the sleeve's end.", "lengths", "", 10, 900, false},
}

// Find returns the row of a table with the given key, and whether there is one.
func Find(table []Measure, k Key) (Measure, bool) {
	for _, m := range table {
		if m.Key == k {
			return m, true
		}
	}
	return Measure{}, false
}

// Possible reports whether a reading lies in the range of m; no number that is not finite does.
func (m Measure) Possible(reading float64) bool { return reading >= m.Min && reading <= m.Max }
