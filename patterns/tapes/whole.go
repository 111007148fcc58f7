package tapes

import (
	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// A whole garment stands on the floor: the bodice as it is drawn alone, made smaller, down to the
// waist, and below it a skirt or the skirts of a coat.
const (
	floorAt    = 3.0
	standingAt = 69.0 // the height of its waist
	smaller    = 0.54
)

// lower are the half width of the hem and its height, by wearer.
var lower = map[measure.Wearer]plane.Point{
	measure.Woman: {X: 31, Y: 10.5}, measure.Man: {X: 15, Y: 34}, measure.Child: {X: 22, Y: 30},
}

// small brings a line of the bodice to its place in the whole garment.
func small(l line) line { return l.mapped(lessened) }

func lessened(p plane.Point) plane.Point {
	return at(p.X*smaller, standingAt+(p.Y-waistAt)*smaller)
}

var floor = through(-46, floorAt, 46, floorAt)

// standing is the whole garment, from the front or the back as the neck's middle says.
func (f figure) standing(neck float64) garment {
	waist := lessened(f.side.at(waistAt))
	hem := lower[f.wearer]
	upper := small(join(f.neckline(neck), line{f.neck}, f.armhole(), f.side.run(underarmAt, waistAt)))
	skirt := bend(waist, at(waist.X+0.55*(hem.X-waist.X), waist.Y-6), hem)
	g := garment{
		cloth: []line{join(upper, skirt, level(hem)[:fine/2+1]).whole()},
		seams: []line{level(waist), floor},
	}
	if neck != napeAt {
		lining := small(join(f.neckline(napeAt), f.neckline(neck).reversed()).whole())
		g.cloth = append(g.cloth, lining)
	}
	g.cloth = append([]line{pole(hem.Y)}, g.cloth...)
	return g
}

// pole is what a mount stands on, from a height down to the floor.
func pole(from float64) line { return through(-1, from, -1, floorAt, 1, floorAt, 1, from) }

// bareStanding is the form on its pole.
func (f figure) bareStanding() garment {
	all := f.front()
	g := garment{cloth: []line{pole(lessened(at(0, hemAt)).Y)}, seams: []line{floor}}
	for _, l := range all.cloth[1:] { // without the pole that is cut short there
		g.cloth = append(g.cloth, small(l))
	}
	for _, l := range all.seams {
		g.seams = append(g.seams, small(l))
	}
	return g
}

func waistHeight(f figure) Drawing {
	const beside = 40
	d := Drawing{garment: f.standing(pitAt)}
	if f.bare {
		d.garment = f.bareStanding()
	}
	waist := lessened(f.side.at(waistAt))
	d.guides = []line{{waist, at(beside, waist.Y)}}
	return d.between(through(beside, waist.Y, beside, floorAt))
}

func napeToHem(f figure) Drawing {
	hem := lower[f.wearer]
	return Drawing{garment: f.standing(napeAt)}.between(line{lessened(at(0, napeAt)), at(0, hem.Y-sag*hem.X)})
}
