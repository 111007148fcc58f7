package measure

import "slices"

// Kept says which of several readings of a measure counts.
type Kept int

// The three ways.
const (
	Smallest Kept = iota
	Largest
	Mean
)

// OfGarment is how several readings of a garment count: of a length the smallest, since one who is unsure keeps the
// smaller (Museum of New Zealand Te Papa Tongarewa, how-to guide on measuring costume; Interpret and Display Historic
// Dress, handbook, ch. 5). A slope is no length, and neither of its sides is the safe one: too square a mount
// lifts the shoulders, too sloping a one hangs all the weight on the neck; of slopes it is the mean.
func OfGarment(m Measure) Kept {
	if m.Degrees {
		return Mean
	}
	return Smallest
}

// OfForm is how several readings of a form count: of girths, arcs, breadths and depths the largest, since what goes inside
// a garment is safe when it is thought too large, not too small; of the others, where neither side is safe, the
// mean. Derived from OfGarment.
func OfForm(m Measure) Kept {
	switch m.Group {
	case "girths", "arcs", "breadths and depths":
		return Largest
	}
	return Mean
}

// Of is the one value that stands for the readings; 0 without any.
func (k Kept) Of(readings []float64) float64 {
	switch {
	case len(readings) == 0:
		return 0
	case k == Smallest:
		return slices.Min(readings)
	case k == Largest:
		return slices.Max(readings)
	}
	sum := 0.0
	for _, v := range readings {
		sum += v
	}
	return sum / float64(len(readings))
}
