package pipeline

import (
	"fmt"

	"understructure/app/fitting"
	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/geometry/torso"
)

// Figure is the garment's figure alone, as its fittings leave it, in a fraction of the time of Shape: for
// whoever shapes one level of it by hand.
func Figure(r record.Record) (t torso.Torso, err error) {
	defer confess(&err)
	t, _, err = figureOf(fitting.Apply(r).Record)
	return t, err
}

// figureOf is the garment's figure, and the readings that were trusted for it.
func figureOf(r record.Record) (torso.Torso, measure.Sheet, error) {
	bodice, skirt := measure.TrustedSkirt(measure.Trusted(r.Garment.Bodice), r.Garment.Skirt)
	t, err := torso.Build(bodice, r.Object.Wearer, r.Object.Year, r.Mount.Shape)
	if err != nil {
		return torso.Torso{}, nil, fmt.Errorf("garment.bodice: %w", err)
	}
	hip, taken := skirt[measure.HipGirth]
	drawn := t.At(measure.Hip)
	if !taken || drawn.Taken || drawn.Girth <= hip {
		return t, bodice, nil
	}
	bodice[measure.HipGirth] = hip // a copy
	within, err := torso.Build(bodice, r.Object.Wearer, r.Object.Year, r.Mount.Shape)
	if err != nil {
		return torso.Torso{}, nil, fmt.Errorf("garment.skirt: %w", err)
	}
	within.Notices = append(within.Notices, measure.Notice{Code: "skirt-hip-governs", Level: measure.Hip, Key: measure.HipGirth, Amount: drawn.Girth - hip,
		Message: fmt.Sprintf("The bodice's hip was not taken; statistics would have it %.0f mm round, but the skirt measures %.0f mm there and governs.", drawn.Girth, hip)})
	return within, bodice, nil
}
