package rest

import "math"

// Bed is the tissue or wadding between a garment and each wall of its box, floor and lid (common practice, no published
// source).
const Bed = 20.0

// Cloth is what is folded: the thickness of the garment as it lies, front, back and tissue together, and the diameter
// of the pads in its folds.
type Cloth struct{ Thickness, Pad float64 }

// Packed is how a garment lies in a box. Length, Breadth and Height are those inside the box that it needs.
type Packed struct {
	Across                  Folding  // from the hem up
	Sides                   TurnedIn // to the left and to the right
	SleevesOn               bool     // the sleeves lie on the bodice and not beside it
	Length, Breadth, Height float64
}

// Into packs a garment into a box by its length and breadth inside, with the fewest folds; the height follows. The error
// says what is too narrow or too short.
func (f Flat) Into(length, breadth float64, c Cloth) (Packed, error) {
	p := Packed{Length: length, Breadth: breadth, SleevesOn: f.Sleeve != nil && f.Breadth > breadth-2*Bed+exact}
	var err error
	if p.Across, err = FoldInto(f.Length, length-2*Bed); err != nil {
		return p, err
	}
	if p.Sides, err = TurnInto(f.Body, f.Trunk, breadth-2*Bed); err != nil {
		return p, err
	}
	p.Height = c.height(p)
	return p, nil
}

// height is that of the stack: every fold turns round its pad, and tissue keeps what lies between two folds level.
func (c Cloth) height(p Packed) float64 {
	across := float64(p.Across.Folds)
	return (across+1)*c.Layer(p) + across*c.Pad + 2*Bed
}

// Layer is the height of one stretch between two folds: its sides turned in over their pads, or its middle where those of
// both sides meet, and sleeves that lie on the bodice.
func (c Cloth) Layer(p Packed) float64 {
	side := float64(p.Sides.Folds)
	middle, edge := 1+2*side, 1+side
	if p.SleevesOn {
		middle = math.Max(middle, 2)
	}
	return math.Max(middle*c.Thickness, edge*c.Thickness+side*c.Pad)
}

// Whole is the box in which a garment lies without any fold.
func (f Flat) Whole(c Cloth) Packed {
	p := Packed{Across: Folding{Length: f.Length}, Length: f.Length + 2*Bed, Breadth: f.Breadth + 2*Bed}
	p.Height = c.height(p)
	return p
}

// Box is the smallest box for a garment that is not to be longer or broader inside than given: as few folds as that
// allows, and no longer than these want. Where the sides are turned in, it leaves room for their places to change by
// half a pad. It may be broader than wanted where the bodice is.
func (f Flat) Box(longest, broadest float64, c Cloth) (Packed, error) {
	across, err := FoldInto(f.Length, longest-2*Bed)
	if err != nil {
		return Packed{}, err
	}
	breadth := f.Breadth
	if breadth > broadest-2*Bed {
		breadth = f.Body
	}
	if breadth > broadest-2*Bed {
		breadth = math.Min(breadth, f.Trunk+Sets*c.Pad)
	}
	return f.Into(across.Pitch()+2*Bed, breadth+2*Bed, c)
}
