package pipeline

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"sync"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/geometry/skirt"
	"understructure/geometry/torso"
	"understructure/patterns/draft"
	"understructure/patterns/plan"
)

// hung is a skirt over the mount, and how it is to be held.
type hung struct {
	skirt.Skirt
	stock   record.SkirtStock
	taken   measure.Sheet
	ease    float64
	row     skirt.Row // of the year; the zero Row where that is not known
	hold    []skirt.Hold
	support draft.Support
}

// hang hangs the skirt over the mount that is built, and lets the stand follow where the silhouette is what is fixed.
// A skirt that cannot hang is said, and leaves the mount as it is.
func (j *job) hang() {
	readings := j.skirtReadings()
	if len(readings) == 0 {
		return
	}
	stock, filled := j.record.Mount.Skirt.Stocked(j.takenWaistHeight())
	maps.Copy(j.filled, filled)
	h := hung{stock: stock, taken: readings, ease: j.stock.Ease[measure.Waist]}
	silhouette := h.dated(j)
	h.byDate(j, readings)
	garment := skirt.Garment{Readings: readings, HipDepth: j.bodice[measure.WaistToHip], Cut: skirt.Cut(h.stock.Cut)}
	wish := skirt.Wish{Stand: j.standFor(h, silhouette), Gap: stock.Gap, Ease: h.ease, Train: trains[stock.Train], Silhouette: silhouette}
	var err error
	if h.Skirt, err = skirt.Hang(garment, j.body(), wish); err != nil {
		h.ease, wish.Ease = 0, 0
		if h.Skirt, _ = skirt.Hang(garment, j.body(), wish); len(h.Cloth) == 0 {
			j.notices = append(j.notices, cannotHang(err))
			return
		}
		j.notices = append(j.notices, measure.Notice{Code: "skirt-without-ease", Key: "garment.skirt", Message: "The skirt is too narrow somewhere to keep the ease of the waist all the way down; it hangs without. Try it with a toile."})
	}
	h.hold = h.held()
	j.skirt = &h
	j.notices = append(j.notices, under(skirtPath, h.Notices)...)
	j.askHip()
	j.sayFloor()
	for k, d := range h.Drawn {
		j.drawn[skirtPath+string(k)] = plan.Value{Value: d.Value, Source: d.Source}
	}
	j.waist = h.Stand
	if stock.Hold == record.HoldSilhouette {
		j.garment.Drawn[measure.WaistHeight] = torso.Drawn{Value: j.waist, Source: "the lengths of the skirt and how far out its silhouette reaches"}
	}
}

const skirtPath, sleevePath = "garment.skirt.", "garment.sleeve."

// trains says what a record's word for a train means.
var trains = map[string]skirt.Train{record.ByLength: skirt.ByLength, record.LevelHem: skirt.Level, record.OnFloor: skirt.OnFloor}

// skirtReadings are those trusted of the skirt. A back that was only taken from the nape of a whole garment is
// what is left of that below the waist.
func (j *job) skirtReadings() measure.Sheet {
	_, s := measure.TrustedSkirt(measure.Trusted(j.record.Garment.Bodice), j.record.Garment.Skirt)
	if len(s) == 0 {
		return nil
	}
	whole, okWhole := j.bodice[measure.NapeToHem]
	upper, okUpper := j.bodice[measure.BackWaist]
	back, _ := measure.Find(measure.Skirt, measure.BackLength)
	if _, taken := s[measure.BackLength]; !taken && okWhole && okUpper && back.Possible(whole-upper) {
		s[measure.BackLength] = whole - upper // s is a copy
		j.drawn[skirtPath+string(measure.BackLength)] = plan.Value{Value: whole - upper, Source: "nape to hem less nape to waist, both taken"}
	}
	return s
}

// takenWaistHeight is the bodice's, nil where it was not taken.
func (j *job) takenWaistHeight() *float64 {
	if v, ok := j.bodice[measure.WaistHeight]; ok {
		return &v
	}
	return nil
}

// body is the mount under the skirt, as built.
func (j *job) body() skirt.Body {
	hip := j.height(measure.Hip)
	return skirt.Body{Waist: j.mount.Built.At(0), Hip: j.mount.Built.At(hip), HipDepth: -hip}
}

// silhouettes is the table that comes with the program, read once.
var silhouettes = sync.OnceValue(skirt.Silhouettes)

// dated finds the silhouette of the year.
func (h *hung) dated(j *job) skirt.Silhouette {
	o := j.record.Object
	if o.Year == 0 {
		j.notices = append(j.notices, measure.Notice{Code: "year-not-known", Key: "object.year",
			Message: "The year is not known, so the skirt is hung as a plain cone that takes up its whole hem; give a year, and it follows the silhouette of that."})
		return skirt.Plain
	}
	silhouette, row, ok := silhouettes().At(o.Wearer, skirt.Worn(o.Wearer), o.Year)
	if !ok {
		return skirt.Plain
	}
	h.row = row
	return silhouette
}

// standFor is the height of the waist that is fixed, 0 where it is to be found. Where neither the hem nor the year says how
// far out a skirt goes, it hangs straight down.
func (j *job) standFor(h hung, s skirt.Silhouette) float64 {
	if _, taken := h.taken[measure.HemGirth]; h.stock.Stand > 0 || taken || s.Hem > 0 {
		return h.stock.Stand
	}
	least := math.Inf(1)
	for _, k := range []measure.Key{measure.FrontLength, measure.SideLength, measure.BackLength} {
		if l, ok := h.taken[k]; ok {
			least = math.Min(least, l)
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least + h.stock.Gap
}

// byDate draws the cut where nobody says it, and asks where much depends on it.
func (h *hung) byDate(j *job, readings measure.Sheet) {
	if h.stock.Cut != "" {
		return
	}
	h.stock.Cut = string(skirt.Gored)
	why := "the careful guess: no wider than a line from one girth taken to the next"
	if h.row.Cut != "" {
		h.stock.Cut, why = string(h.row.Cut), "as usual in "+h.row.Years()
	}
	j.filled["mount.skirt.cut"] = plan.Value{Text: h.stock.Cut, Source: why}
	if _, taken := readings[measure.HipGirth]; h.stock.Cut == string(skirt.Straight) && !taken {
		j.notices = append(j.notices, measure.Notice{Code: "skirt-cut-by-date", Key: "mount.skirt.cut", Message: fmt.Sprintf(
			"The skirt is taken to be of straight breadths, %s: as wide right under its gathers as at the hem. If it is gored, say so before the support is made, or take its hip girth.", why)})
	}
}

// held is what holds the skirt, from the inside out: as the maker says or the year wants, with a support for the
// train where enough of one lies on the floor.
func (h *hung) held() []skirt.Hold {
	if h.stock.Support == record.NoSupport {
		return nil
	}
	hold := kinds[h.stock.Support]
	if h.stock.Support == record.AsDated {
		hold = h.row.Hold
	}
	if hold == nil {
		hold = []skirt.Hold{skirt.Tube, skirt.Base}
	}
	hold = slices.DeleteFunc(slices.Clone(hold), func(k skirt.Hold) bool { return k == skirt.TrainHold })
	if _, err := h.TrainSupport(); err == nil {
		hold = append(hold, skirt.TrainHold)
	}
	return hold
}

// kinds are what a record's words for supports are made of.
var kinds = map[string][]skirt.Hold{
	record.TubeOnly: {skirt.Tube}, record.Legs: {skirt.Legs}, record.Petticoat: {skirt.Tube, skirt.Base}, record.Hoops: {skirt.Tube, skirt.Hooped},
	record.Net: {skirt.Tube, skirt.Base, skirt.Netted}, record.Bustle: {skirt.Tube, skirt.Pad, skirt.Base}, record.BustleFrame: {skirt.Tube, skirt.Framed, skirt.Base},
}
