package tapes

import (
	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// sag is how far a level line shows below its ends, as a part of half its width: a figure is seen from
// a little above.
const sag = 0.17

// hemFront is the height of the hem's front in the front view.
func (f figure) hemFront() float64 { return hemAt - sag*f.side.At(hemAt) }

// armhole is the armhole's edge in the front view, from the shoulder down.
func (f figure) armhole() line {
	under := f.side.at(underarmAt)
	return bend(f.shoulder, at(2*f.across-(f.shoulder.X+under.X)/2, acrossAt), under)
}

// trunk is the right half of the outline from the neck point to the middle of the hem.
func (f figure) trunk() line {
	hem := f.side.at(hemAt)
	return join(line{f.neck}, f.armhole(), f.side.run(underarmAt, hemAt), level(hem)[:fine/2+1])
}

// neckline is the right half of the neck's edge, from its middle to the neck point.
func (f figure) neckline(middle float64) line {
	return bend(at(0, middle), at(0.9*f.neck.X, middle), f.neck)
}

// front is a garment, or a form, from the front.
func (f figure) front() garment {
	g := garment{cloth: []line{join(f.neckline(pitAt), f.trunk()).whole()}, seams: []line{through(0, pitAt, 0, f.hemFront())}}
	if f.bare {
		return f.upright(g)
	}
	lining := join(f.neckline(napeAt), f.neckline(pitAt).reversed()).whole()
	g.cloth = append(g.cloth, lining)
	switch f.wearer {
	case measure.Woman:
		dart := bend(at(5.5, waistAt-4), at(7, 55), at(f.bustPoint, bustAt-4))
		g.seams = append(g.seams, dart, dart.mirrored())
	case measure.Man:
		lapel := join(line{f.neck}, bend(at(12.5, 82), at(9, 72), at(0, 62)))
		g.seams = append(g.seams, lapel, lapel.mirrored())
	}
	return g
}

// behind is a garment, or a form, from the back.
func (f figure) behind() garment {
	g := garment{cloth: []line{join(f.neckline(napeAt), f.trunk()).whole()}, seams: []line{through(0, napeAt, 0, f.hemFront())}}
	if f.bare {
		return f.upright(g)
	}
	hem := 0.32 * f.side.At(hemAt)
	seam := join(bend(at(f.across+0.3, acrossAt-2), at(7, 70), at(0.6*hem, waistAt)), bend(at(0.6*hem, waistAt), at(0.7*hem, 30), at(hem, f.hemFront()+0.3)))
	g.seams = append(g.seams, seam, seam.mirrored())
	return g
}

// The middle of the armhole and its half axes, in the side view.
const (
	armX           = -1.0
	armRX, armRY   = 6.5, 8.5
	armTop, armEnd = acrossAt + armRY, acrossAt - armRY
)

// aside is a garment, or a form, from its right.
func (f figure) aside() garment {
	nape, pit := f.back.at(napeAt), f.chest.at(pitAt)
	front, back := f.chest.at(hemAt), f.back.at(hemAt)
	neckline := bend(nape, at(1.5, 97), pit)
	outline := join(neckline, f.chest.run(pitAt, hemAt), half(front, back, sag/2*(front.X-back.X)), f.back.run(hemAt, napeAt))
	arm := oval(at(armX, acrossAt), armRX, armRY)
	g := garment{cloth: []line{outline}, seams: []line{
		{neckline[fine/2-4], at(armX, armTop)}, append(arm, arm[0]), through(armX, armEnd, armX, hemAt-sag/2*(front.X-back.X)),
	}}
	if f.bare {
		return g.onPole(at(-4, 91), at(-2.5, stumpAt), at(5.5, stumpAt), at(5, 86))
	}
	return g
}

// stumpAt is the height of a form's neck.
const stumpAt = 98.5

// upright is the stump of a form's neck, from the front or the back.
func (f figure) upright(g garment) garment {
	w := 0.7 * f.neck.X
	return g.onPole(at(-w, 91), at(-w, stumpAt), at(w, stumpAt), at(w, 91))
}

// onPole gives a form the stump of its neck, by its corners from the nape round, and its pole.
func (g garment) onPole(a, b, c, d plane.Point) garment {
	neck := join(line{a}, half(b, c, 0.8), line{d})
	stub := through(-1.4, hemAt, -1.4, 1, 1.4, 1, 1.4, hemAt)
	g.cloth = append([]line{stub, neck}, g.cloth...)
	return g
}
