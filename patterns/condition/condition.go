// Package condition writes the condition sheet of a garment: its front and back under a grid by which a place is named,
// a list of terms with short codes, and a numbered table to fill in with a pencil.
// It describes nothing: a person who looks at the garment does.
package condition

import (
	"fmt"
	"io"
	"strings"

	"understructure/geometry/measure"
	"understructure/geometry/rest"
	"understructure/patterns/leaf"
	"understructure/patterns/plan"
	"understructure/patterns/vector"
)

// Subject is the garment that is looked at. Without number and title there are lines to write them on.
type Subject struct {
	Number, Title string
	Garment       rest.Garment // whose outline is drawn
	Invented      bool         // the outline is nobody's, and only there to point at
}

// Of is the garment of a plan.
func Of(p plan.Plan) Subject {
	return Subject{Number: p.Object.Number, Title: p.Object.Title, Garment: p.Garment()}
}

// Blank is a garment of which nothing is known but for whom it was made: a dress for a woman and for whom it is not known, a coat
// for a man, a frock for a child. The outline is only there to point at; its measurements are invented.
func Blank(w measure.Wearer) Subject {
	return Subject{Garment: rest.Garment{Bodice: bodice(usual[w]), Skirt: skirt(usual[w]), Sleeve: sleeve(usual[w])}, Invented: true}
}

// figure is what a blank outline is drawn from, millimetres: girths of bust and waist, lengths of back, skirt and sleeve, and the hem.
type figure struct{ bust, waist, back, skirt, hem, arm float64 }

var usual = map[measure.Wearer]figure{
	"":            {860, 640, 380, 1050, 2300, 570},
	measure.Woman: {860, 640, 380, 1050, 2300, 570},
	measure.Man:   {980, 900, 450, 560, 1250, 640},
	measure.Child: {680, 650, 270, 330, 1300, 400},
}

func bodice(f figure) measure.Sheet {
	return measure.Sheet{measure.BustGirth: f.bust, measure.WaistGirth: f.waist, measure.BackWaist: f.back, measure.SideLength: f.back * 0.48}
}

func skirt(f figure) measure.Sheet {
	return measure.Sheet{measure.WaistGirth: f.waist, measure.HemGirth: f.hem, measure.FrontLength: f.skirt, measure.SideLength: f.skirt, measure.BackLength: f.skirt}
}

func sleeve(f figure) measure.Sheet {
	return measure.Sheet{measure.SleeveLength: f.arm, measure.UpperGirth: f.bust * 0.38, measure.WristGirth: f.bust * 0.24}
}

// Write writes the sheet, two pages of A4. The error says what is missing for an outline.
func Write(w io.Writer, s Subject) error {
	v, err := newViews(s.Garment)
	if err != nil {
		return fmt.Errorf("condition: %w", err)
	}
	m := vector.Meta{Title: "Condition sheet", Subject: "Condition of a garment, to be filled in"}
	if name := strings.TrimSpace(s.Number + " " + s.Title); name != "" {
		m.Title += " – " + name
	}
	p := pages{s, v}
	return leaf.Write(w, m, m.Title, p.first, p.second)
}
