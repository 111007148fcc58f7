package pipeline

import (
	"maps"
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/pads"
	"understructure/geometry/plane"
	"understructure/patterns/draft"
)

// neckDisc draws the disc that closes the neck. A neck too small or too large for one is said.
func (j *job) neckDisc(layer int) {
	base := j.mount.Built.At(j.height(measure.NeckBase))
	pole, at := j.poleInNeck()
	disc, err := pads.Neck(base, j.stock.Cover, pole, at)
	if err != nil {
		j.notices = append(j.notices, measure.Notice{Code: "no-neck-disc", Level: measure.NeckBase, Message: "No disc is drawn for the neck: " + err.Error() + "."})
		return
	}
	j.supports = append(j.supports, draft.NeckDisc(disc, layer))
}

// poleInNeck is the pole where it passes the neck base, 0 where it ends below.
func (j *job) poleInNeck() (diameter float64, at plane.Point) {
	if n := len(j.slices); n > 0 && j.slices[n-1].Pole != nil {
		return j.stock.Plank.Pole, *j.slices[n-1].Pole
	}
	return 0, plane.Point{}
}

// The outline of a pad, as a part of the bust girth for the bust and of the hip girth for the hip: about as broad
// as a hand. Workshop habit, from memory.
const bustPadWide, bustPadHigh, hipPadWide, hipPadHigh = 0.15, 0.13, 0.13, 0.18

// drawPads draws the loose pads that the record asks for, of the thinnest wadding.
func (j *job) drawPads(layer int) {
	stock, filled := j.record.Mount.Pads.Stocked()
	maps.Copy(j.filled, filled)
	d := &padMaker{job: j, layer: layer, thin: j.thinnest()}
	bust, hip := j.garment.At(measure.Bust).Girth, j.garment.At(measure.Hip).Girth
	if stock.Shoulder > 0 || stock.FoundShoulder {
		d.shoulder(j.shoulderPad(stock.Shoulder, d.thin))
	}
	if stock.Bust > 0 {
		d.mound("bust", draft.BustPad, pads.Mound{Width: bustPadWide * bust, Height: bustPadHigh * bust, Projection: stock.Bust, Wadding: d.thin})
	}
	if stock.Hip > 0 {
		d.mound("hip", draft.HipPad, pads.Mound{Width: hipPadWide * hip, Height: hipPadHigh * hip, Projection: stock.Hip, Wadding: d.thin})
	}
	if stock.Fill {
		shoulder, under, err := pads.Fills(bust)
		d.put("fill", draft.ShoulderFill, pads.Pad{Sheets: []plane.Ring{shoulder}}, err)
		d.put("fill", draft.BustFill, pads.Pad{Sheets: []plane.Ring{under}}, err)
	}
	if d.drawn {
		j.notices = append(j.notices, measure.Notice{Code: "loose-pads", Key: padsPath,
			Message: "Loose pads come on top of what the layers build. Try them with a toile, and leave out any with which a fastening pulls."})
	}
}

const padsPath = "mount.pads"

// padMaker puts loose pads among the supports.
type padMaker struct {
	*job
	layer int
	thin  float64
	drawn bool
}

func (d *padMaker) shoulder(s pads.Shoulder) {
	where := draft.SlopingShoulder
	if s.Rise() < 0 {
		where = draft.SquareShoulder
	}
	p, err := s.Wedge()
	d.put("shoulder", where, p, err)
}

func (d *padMaker) mound(key string, at draft.Where, m pads.Mound) {
	p, err := m.Stack()
	d.put(key, at, p, err)
}

// put takes a pad, or says why there is none.
func (d *padMaker) put(key string, at draft.Where, p pads.Pad, err error) {
	if err == nil && len(p.Sheets) > 0 {
		d.supports = append(d.supports, draft.Pad(p, at, d.thin, d.layer)...)
		d.drawn = true
		return
	}
	why := "one so thin is less than a sheet of the wadding in stock"
	if err != nil {
		why = err.Error()
	}
	d.notices = append(d.notices, measure.Notice{Code: "no-pad", Key: measure.Key(padsPath + "." + key), Message: "No pad is drawn: " + why + "."})
}

// thinnest is the thinnest wadding in stock.
func (j *job) thinnest() float64 {
	thin := j.stock.Wadding[0].Thickness
	for _, w := range j.stock.Wadding {
		thin = min(thin, w.Thickness)
	}
	return thin
}

// shoulderPad is a wedge on the form's shoulder: as thick as asked for, or, for 0, up to the garment's slope.
func (j *job) shoulderPad(rise, wadding float64) pads.Shoulder {
	on := &j.garment
	if j.form != nil {
		on = j.form
	}
	run := math.Hypot(on.Shoulder.X-on.Neck.X, on.Shoulder.Z-on.Neck.Z)
	slope := func(neckX, neckZ, x, z float64) float64 { return math.Atan2(neckZ-z, x-neckX) }
	g := j.garment
	s := pads.Shoulder{
		Length: run, Form: slope(on.Neck.X, on.Neck.Z, on.Shoulder.X, on.Shoulder.Z), Wanted: slope(g.Neck.X, g.Neck.Z, g.Shoulder.X, g.Shoulder.Z),
		Neck: g.At(measure.NeckBase).Girth, Wadding: wadding,
	}
	if rise > 0 {
		s.Wanted = s.Form + math.Atan2(rise, run)
	}
	return s
}
