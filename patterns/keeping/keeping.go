// Package keeping writes the storage sheet of a garment: the box in which it lies with the fewest folds, where these lie
// and change their places, the pads in them, and how it is rolled, hung and lifted where it may be.
// It computes nothing itself: package rest does. It does not decide: whoever looks after the garment does.
package keeping

import (
	"fmt"
	"io"
	"math"
	"strings"

	"understructure/geometry/rest"
	"understructure/patterns/leaf"
	"understructure/patterns/plan"
	"understructure/patterns/vector"
)

// Write writes the sheet, two pages of A4. The error says what the plan lacks.
func Write(w io.Writer, p plan.Plan) error {
	s, err := newSheet(p)
	if err != nil {
		return err
	}
	title := strings.TrimSpace(p.Object.Number + " " + p.Object.Title)
	m := vector.Meta{Title: "Storage sheet – " + title, Subject: "How a garment is put away"}
	return leaf.Write(w, m, m.Title, s.first, s.second)
}

// What is asked of a box, a pad and a roll where nobody says otherwise: common practice or from memory, no published
// source.
const (
	mostLong, mostBroad = 1500.0, 800.0 // inside, as far as one shelf and two people go
	bulk                = 250.0         // kg of cloth in a cubic metre as it lies
	usualThick          = 6.0           // of a garment that was not weighed
	tissue              = 2.0           // between front and back, and over both
	mostBend            = 0.12          // of a layer, before its own cloths slide on each other
	heavy               = 3.0           // kg: for two people
)

// strength is what follows from how strong the cloth is.
type strength struct {
	pad, tube float64 // least diameters
	verdict   string
}

var strengths = map[string]strength{
	"sound": {50, 80, "Lying is best. It may hang where shoulders and waist are sound and the garment is light."},
	"fair":  {65, 100, "Let it lie. Do not hang it."},
	"weak":  {80, 150, "Let it lie, on a board or a sheet by which it is lifted. Do not hang it, do not roll it."},
}

// sheet is all that is said of one garment.
type sheet struct {
	plan.Object
	garment rest.Garment
	flat    rest.Flat
	cloth   rest.Cloth
	packed  rest.Packed
	strength
	assumed string // what was not known
}

func newSheet(p plan.Plan) (*sheet, error) {
	s := &sheet{Object: p.Object, garment: p.Garment()}
	var err error
	if s.flat, err = rest.Lie(s.garment); err != nil {
		return nil, fmt.Errorf("keeping: %w", err)
	}
	known := true
	if s.strength, known = strengths[p.Object.Strength]; !known {
		s.strength, s.assumed = strengths["fair"], "strength not recorded, taken as fair"
	}
	s.cloth = rest.Cloth{Thickness: usualThick + tissue}
	if m := p.Object.MassKg; m != nil {
		s.cloth.Thickness = math.Ceil(math.Min(60, math.Max(2, *m/(s.flat.Area*1e-6)/bulk*1e3)) + tissue)
	} else {
		s.assumed = strings.TrimPrefix(s.assumed+"; not weighed, thickness from memory", "; ")
	}
	pad, err := rest.PadFor(s.cloth.Thickness, mostBend)
	if err != nil {
		return nil, fmt.Errorf("keeping: %w", err)
	}
	s.cloth.Pad = 5 * math.Ceil(math.Max(pad, s.pad)/5)
	if s.packed, err = s.flat.Box(mostLong, mostBroad, s.cloth); err != nil {
		return nil, fmt.Errorf("keeping: %w", err)
	}
	return s, nil
}

// mm is a length in whole millimetres.
func mm(v float64) string { return fmt.Sprintf("%.0f", v) }
