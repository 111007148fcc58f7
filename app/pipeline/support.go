package pipeline

import (
	"context"
	"fmt"
	"strings"

	"understructure/geometry/measure"
	"understructure/patterns/draft"
)

// support drafts what goes with the mount under the garment: what holds skirt and sleeves, loose pads, and the disc
// in the neck. Supports come after the cover in the order of making.
func (j *job) support(ctx context.Context) error {
	layer := 1
	for _, p := range j.pieces {
		if !isSlice(p) {
			layer = max(layer, p.Layer+1)
		}
	}
	for _, draw := range []func(layer int) error{
		func(layer int) error { j.drawPads(layer); return nil },
		func(layer int) error { j.neckDisc(layer); return nil },
		j.draftSkirt, j.draftSleeves,
	} {
		if err := ctx.Err(); err != nil {
			return err
		}
		if err := draw(layer); err != nil {
			return fmt.Errorf("pipeline: %w", err)
		}
		for _, p := range j.supports {
			layer = max(layer, p.Layer+1)
		}
	}
	return nil
}

// draftSkirt draws what holds the skirt.
func (j *job) draftSkirt(layer int) error {
	h := j.skirt
	if h == nil || len(h.hold) == 0 {
		return nil
	}
	hip := j.body().Hip
	stock := draft.SkirtStock{
		Hold: h.hold, Layer: layer, PaddedHip: hip.Tape(), Hoops: h.stock.Steels, NetWidth: h.stock.NetWidth,
		PadThickness: h.stock.PadThickness, FrameLength: h.stock.FrameLength, BandFastens: h.stock.BandFastens, GarmentMassKg: j.garmentMass(),
	}
	s, err := draft.SkirtSupport(h.Skirt, stock)
	if err != nil {
		return err
	}
	h.support = s
	for _, left := range s.LeftOut {
		j.notices = append(j.notices, measure.Notice{Code: "support-left-out", Key: "mount.skirt.support", Message: "Left out of what holds the skirt: " + strings.Replace(left, ": skirt: ", ": ", 1) + "."})
	}
	j.take("skirt", s)
	return nil
}

// take gathers what was drafted for a part of the garment.
func (j *job) take(part string, s draft.Support) {
	pieces, cuts := templates(part, s)
	j.supports = append(j.supports, pieces...)
	j.cuts = append(j.cuts, cuts...)
	j.cautions = append(j.cautions, s.Cautions...)
}

// weights are the masses of what holds skirt and sleeves, kg.
func (j *job) weights() (skirt, sleeves float64) {
	if j.skirt != nil {
		skirt = j.skirt.support.MassKg
	}
	if j.sleeve != nil {
		sleeves = j.sleeve.support.MassKg
	}
	return skirt, sleeves
}
