package pipeline

import (
	"fmt"
	"math"

	"understructure/app/record"
	"understructure/geometry/curve"
	"understructure/geometry/foam"
	"understructure/geometry/measure"
	"understructure/geometry/padding"
	"understructure/geometry/section"
	"understructure/geometry/surface"
	"understructure/geometry/torso"
	"understructure/patterns/draft"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// job is a mount in the making. Heights are counted from the waist until the plan is written.
type job struct {
	record  record.Record
	stock   record.Stock
	filled  map[string]plan.Value
	notices []measure.Notice
	garment torso.Torso
	ease    curve.Monotone  // by height
	figure  surface.Surface // the garment's shape less the ease
	bodice  measure.Sheet   // what is trusted of it
	waist   float64         // height of the waist above the floor

	form   *torso.Torso
	raised float64 // by how much the form is raised so that it stands best
	bare   surface.Surface
	excess []padding.Excess
	slices []foam.Slice
	mount  padding.Mount
	pieces []piece.Piece // of the mount itself

	spare   spared        // what the figure is smaller by than the ease asks
	remade  *plan.AsBuilt // nil where no pieces were cut
	strains spared        // where the mount made anew from its pieces is larger than the garment, and by how much

	skirt    *hung   // nil where there is none
	sleeve   *filled // nil where there are none
	drawn    map[string]plan.Value
	spreads  map[string]plan.Value // of what was drawn: the spread, and what is to be added to the source
	supports []piece.Piece
	cuts     []plan.Cut
	cautions []string
}

func newJob(r record.Record, spare spared) (*job, error) {
	j := &job{record: r, spare: spare, drawn: map[string]plan.Value{}, spreads: map[string]plan.Value{}}
	j.stock, j.filled = r.Mount.Stocked(r.Garment.Strength)
	j.check()
	var err error
	if j.garment, j.bodice, err = figureOf(r); err != nil {
		return nil, err
	}
	j.notices = append(j.notices, under("garment.bodice.", j.garment.Notices)...)
	j.takeEase()
	j.waist = j.waistHeight()
	if r.Mount.Build == "slices" {
		return j, nil
	}
	if r.Form == nil {
		return nil, fmt.Errorf("form: a padded mount needs the form's measurements, or choose mount.build \"slices\"")
	}
	// A form in store is a modern one unless its readings say otherwise.
	form, err := torso.Build(measure.Trusted(r.Form.Bodice), r.Object.Wearer, modern, nil)
	if err != nil {
		return nil, fmt.Errorf("form.bodice: %w", err)
	}
	j.notices = append(j.notices, under("form.bodice.", form.Notices)...)
	j.form = &form
	return j, nil
}

// modern is a year in which nobody laced.
const modern = 2000

// check gathers what the readings say against one another.
func (j *job) check() {
	g, w := j.record.Garment, j.record.Object.Wearer
	j.notices = append(j.notices, under("garment.bodice.", measure.Check(g.Bodice, w))...)
	j.notices = append(j.notices, under("garment.skirt.", measure.CheckSkirt(g.Bodice, g.Skirt))...)
	j.notices = append(j.notices, under("garment.sleeve.", measure.CheckSleeve(g.Sleeve))...)
	if j.record.Form != nil {
		j.notices = append(j.notices, under("form.bodice.", measure.Check(j.record.Form.Bodice, w))...)
	}
}

// under puts the place in the record before the keys of notices.
func under(path string, ns []measure.Notice) []measure.Notice {
	for i := range ns {
		if ns[i].Key != "" {
			ns[i].Key = measure.Key(path) + ns[i].Key
		}
	}
	return ns
}

// takeEase spreads the ease over the heights and takes it off the garment's shape.
func (j *job) takeEase() {
	var z, e []float64
	for i := len(j.garment.Levels) - 1; i >= 0; i-- {
		l := j.garment.Levels[i]
		z, e = append(z, l.Height), append(e, j.stock.Ease[l.Name])
	}
	j.ease = curve.Through(z, e)
	skin := j.garment.Skin
	j.figure = surface.Surface{Z: skin.Z, R: make([]section.Section, len(skin.Z))}
	for i, h := range skin.Z {
		girth := skin.R[i].Tape()
		j.figure.R[i] = skin.R[i].Grown(max(girth-j.ease.At(h)-j.spare.at(h), girth/2))
	}
}

// waistHeight is where the stand must hold the waist where no skirt hangs that says otherwise: as chosen, as taken,
// so that the shortest length of a skirt clears the floor, or as usual for the wearer.
func (j *job) waistHeight() float64 {
	if h := j.record.Mount.Skirt.StandHeight; h != nil {
		return *h
	}
	if h, ok := j.bodice[measure.WaistHeight]; ok {
		return h
	}
	least := math.Inf(1)
	for _, k := range []measure.Key{measure.FrontLength, measure.SideLength, measure.BackLength} {
		if l, ok := j.record.Garment.Skirt[k]; ok {
			least = math.Min(least, l)
		}
	}
	if !math.IsInf(least, 1) {
		stock, _ := j.record.Mount.Skirt.Stocked(nil)
		return least + stock.Gap
	}
	h := j.garment.WaistHeight()
	j.garment.Drawn[measure.WaistHeight] = torso.Drawn{Value: h, Source: "2.6 times the nape's height above the waist; from memory"}
	return h
}

// bands divide the body into zones at the garment's levels.
func (j *job) bands() draft.Bands {
	return draft.Bands{
		Hip: j.garment.At(measure.Hip).Height, Waist: 0,
		Chest: j.garment.At(measure.AcrossChest).Height, Neck: j.garment.At(measure.NeckBase).Height,
	}
}

// narrow is the part of the body below which a layer counts as strips that fill steps.
const narrow = 0.5

// zones says how a layer is divided: by the parts of the body, or, for the strips that
// fill a stack's steps, into halves.
func (j *job) zones() func(padding.Layer) []padding.Zone {
	body, strips := draft.Zones(j.bands()), draft.Strips(j.bands())
	return func(l padding.Layer) []padding.Zone {
		if j.slices != nil && l.Share() < narrow {
			return strips
		}
		return body
	}
}
