package pipeline

import (
	"math"

	"understructure/geometry/fit"
	"understructure/geometry/measure"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/geometry/surface"
	"understructure/patterns/plan"
)

// formMass is that of a display form, kg; from memory.
const formMass = 5.0

// loads are what the stand carries, heights from the floor. The stand itself is left out: it lies low, so
// leaving it out asks for more base, never for less.
func (j *job) loads() []fit.Load {
	b := j.bands()
	var out []fit.Load
	add := func(name string, mass float64, at space.Point) {
		out = append(out, fit.Load{Name: name, Mass: mass, At: at.Add(space.Point{Z: j.waist})})
	}
	if j.form != nil {
		add("form", formMass, middle(j.bare, b.Hip, b.Neck))
	}
	for _, s := range j.slices {
		cut := s.Cut()
		c := cut.Ring().Centroid()
		add("slice", fit.Foam.OfVolume(cut.Area()*s.Thickness()), space.Point{X: c.X, Y: c.Y, Z: (s.Bottom + s.Top) / 2})
	}
	for _, p := range j.pieces {
		if isWadding(p) {
			add("wadding", fit.Wadding.OfVolume(p.Area()*p.Thickness*float64(p.Count)), mean(p.Position))
		}
	}
	built := j.mount.Built
	if j.stock.Cover > 0 {
		add("cover", fit.Jersey.OfArea(built.Area(b.Hip, b.Neck)), middle(built, b.Hip, b.Neck))
	}
	skirt, sleeves := j.weights()
	add("skirt support", skirt, j.skirtMiddle())
	add("sleeve supports", sleeves, space.Point{Y: j.garment.Shoulder.Y, Z: j.garment.Shoulder.Z - j.sleeveLength()/2})
	if m := j.record.Garment.MassKg; m != nil {
		add("garment", *m, j.garmentMiddle())
	}
	return out
}

// middle is the middle of the space inside a skin between two heights.
func middle(s surface.Surface, lo, hi float64) space.Point {
	lo, hi = math.Max(lo, s.Bottom()), math.Min(hi, s.Top())
	var sum space.Point
	volume := 0.0
	for _, z := range surface.Rows(lo, hi, 2*outlineGap) {
		at := s.At(z)
		r := at.Ring()
		c, a := r.Centroid(), r.Area()
		sum = sum.Add(space.Point{X: c.X, Y: c.Y, Z: z}.Mul(a))
		volume += a
	}
	return sum.Mul(1 / volume)
}

func mean(points []space.Point) space.Point {
	var sum space.Point
	for _, p := range points {
		sum = sum.Add(p)
	}
	return sum.Mul(1 / float64(max(len(points), 1)))
}

// sleeveLength is that of the sleeves, 0 where there are none.
func (j *job) sleeveLength() float64 {
	if j.sleeve == nil {
		return 0
	}
	return j.sleeve.Length
}

// skirtCloth is the skirt's cloth, its area in mm² and its middle; nothing where there is no skirt.
func (j *job) skirtCloth() (area float64, at space.Point) {
	if j.skirt == nil {
		return 0, at
	}
	rows := j.skirt.Cloth
	for k := 1; k < len(rows); k++ {
		for i := range rows[k] {
			n := (i + 1) % section.Directions
			a, b, c := rows[k-1][i], rows[k][i], rows[k][n]
			part := a.Dist(b) * b.Dist(c)
			if g := j.skirt.Girths[k-1]; !math.IsInf(g.Garment, 1) {
				part *= math.Max(1, g.Gather())
			}
			area += part
			at = at.Add(a.Add(b).Mul(part / 2))
		}
	}
	return area, at.Mul(1 / area)
}

// skirtMiddle is where the weight of what holds the skirt lies.
func (j *job) skirtMiddle() space.Point {
	_, at := j.skirtCloth()
	return at
}

// garmentMiddle is where the garment's weight lies: its bodice and its skirt by the area of their cloth; at the
// waist where there is no skirt.
func (j *job) garmentMiddle() space.Point {
	cloth, at := j.skirtCloth()
	if cloth == 0 {
		return space.Point{}
	}
	top := j.height(measure.NeckBase)
	bodice := j.garment.Skin.Area(0, top)
	upper := middle(j.garment.Skin, 0, top)
	return at.Mul(cloth).Add(upper.Mul(bodice)).Mul(1 / (cloth + bodice))
}

// standing checks the mount against tipping.
func (j *job) standing() plan.Standing {
	loads := j.loads()
	top := j.waist + j.garment.Nape.Z
	b := fit.Weighed(loads, top)
	upright := make([]fit.Part, len(loads))
	for i, l := range loads {
		upright[i] = fit.Part{Mass: l.Mass, Height: l.At.Z}
	}
	f := fit.Stand(upright, top)
	out := plan.Standing{
		MassKg: b.Mass, CentreHeight: b.At.Z, TiltBase: b.Aside() + f.Tilt, PushBase: b.Aside() + f.Push, Base: b.Round(),
		SquareBase: b.Square(), Under: b.Under(),
	}
	for _, n := range b.Cautions(fit.Base{Round: true, Size: math.Ceil(b.Round())}, j.garmentMass()) {
		if n.Code == "standing-self-check" {
			out.Note = "Least bases with which mount and garment pass both tests, the stand's own weight left out. " + n.Message
			continue
		}
		j.notices = append(j.notices, n)
	}
	return out
}

func (j *job) garmentMass() float64 {
	if m := j.record.Garment.MassKg; m != nil {
		return *m
	}
	return 0
}
