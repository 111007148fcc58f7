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
func Figure(r record.Record) (torso.Torso, error) {
	t, _, err := figureOf(fitting.Apply(r).Record)
	return t, err
}

// figureOf is the garment's figure, and the readings that were trusted for it.
func figureOf(r record.Record) (torso.Torso, measure.Sheet, error) {
	bodice, _ := measure.TrustedSkirt(measure.Trusted(r.Garment.Bodice), r.Garment.Skirt)
	t, err := torso.Build(bodice, r.Object.Wearer, r.Object.Year, r.Mount.Shape)
	if err != nil {
		return torso.Torso{}, nil, fmt.Errorf("garment.bodice: %w", err)
	}
	return t, bodice, nil
}
