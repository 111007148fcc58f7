// Package unit holds the units that cross a border of the program.
//
// Inside the geometry every length is a float64 in millimetres and every angle a
// float64 in radians; the named types stand where a person's value comes in or goes out.
// It reads numbers as people write them, and writes the eighths of an inch that stand on a
// tape. It does not format for a locale.
package unit

// Length is a length in millimetres. The zero Length is no length at all.
type Length float64

// The lengths a record may be written in.
const (
	Millimetre Length = 1
	Centimetre Length = 10
	Inch       Length = 25.4 // exact since the international yard and pound agreement of 1959
)

// Named returns the length that a record's unit word stands for ("mm", "cm", "in"),
// and false for any other word.
func Named(word string) (Length, bool) {
	switch word {
	case "mm":
		return Millimetre, true
	case "cm":
		return Centimetre, true
	case "in":
		return Inch, true
	}
	return 0, false
}

// Angle is an angle in radians.
type Angle float64

// Degree is one 360th of a turn.
const Degree Angle = 3.14159265358979323846264338327950288 / 180
