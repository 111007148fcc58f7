package tapes

import (
	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// onBodice are the drawings of a bodice, or of a bare form.
var onBodice = map[measure.Key]func(figure) Drawing{
	measure.UnderarmGirth:  girth(underarmAt + 1),
	measure.BustGirth:      girth(bustAt),
	measure.UnderbustGirth: girth(underbustAt),
	measure.WaistGirth:     girth(waistAt),
	measure.HighHipGirth:   girth(highHipAt),
	measure.HipGirth:       girth(hipAt),
	measure.NeckBaseGirth: func(f figure) Drawing {
		return Drawing{garment: f.front()}.over(f.neckline(napeAt).whole()).over(f.neckline(pitAt).whole())
	},
	measure.ArmscyeGirth: func(f figure) Drawing {
		ring := oval(at(armX, acrossAt), armRX, armRY)
		return Drawing{garment: f.aside()}.over(append(ring, ring[0]))
	},

	measure.BustFrontArc:  frontArc(bustAt),
	measure.WaistFrontArc: frontArc(waistAt),
	measure.HipFrontArc:   frontArc(hipAt),
	measure.BustLeftArc:   leftArc(bustAt),
	measure.WaistLeftArc:  leftArc(waistAt),
	measure.HipLeftArc:    leftArc(hipAt),

	measure.BustBreadth:      breadth(bustAt),
	measure.BustDepth:        depth(bustAt),
	measure.UnderbustBreadth: breadth(underbustAt),
	measure.UnderbustDepth:   depth(underbustAt),
	measure.WaistBreadth:     breadth(waistAt),
	measure.WaistDepth:       depth(waistAt),
	measure.HighHipBreadth:   breadth(highHipAt),
	measure.HighHipDepth:     depth(highHipAt),
	measure.HipBreadth:       breadth(hipAt),
	measure.HipDepth:         depth(hipAt),
	measure.BustPointWidth: func(f figure) Drawing {
		return Drawing{garment: f.front()}.between(through(-f.bustPoint, bustAt, f.bustPoint, bustAt))
	},

	measure.AcrossFront: func(f figure) Drawing {
		return Drawing{garment: f.front()}.between(level(at(f.across, acrossAt)))
	},
	measure.AcrossBack: func(f figure) Drawing {
		return Drawing{garment: f.behind()}.between(through(-f.across, acrossAt, f.across, acrossAt))
	},
	measure.ShoulderLength: func(f figure) Drawing {
		return Drawing{garment: f.front()}.between(line{f.neck, f.shoulder})
	},
	measure.ShoulderSlope: shoulderSlope,

	measure.BackWaist: func(f figure) Drawing {
		return Drawing{garment: f.behind()}.waist(f).between(through(0, napeAt, 0, waistAt-sag*f.side.At(waistAt)))
	},
	measure.FrontWaist: func(f figure) Drawing {
		return Drawing{garment: f.front()}.waist(f).between(through(0, pitAt, 0, waistAt-sag*f.side.At(waistAt)))
	},
	measure.NeckToBustPoint: func(f figure) Drawing {
		return Drawing{garment: f.front()}.between(line{f.neck, at(f.bustPoint, bustAt)})
	},
	measure.SideLength:     downSide(armEnd, waistAt),
	measure.WaistToHighHip: downSide(waistAt, highHipAt),
	measure.WaistToHip:     downSide(waistAt, hipAt),
	measure.WaistHeight:    waistHeight,
	measure.NapeToHem:      napeToHem,
}

// level is the front of a level line from a point on the right to its mirror image.
func level(right plane.Point) line { return half(right, mirror(right), sag*right.X) }

// over lays a stretch of tape on the garment.
func (d Drawing) over(l line) Drawing {
	d.tape = append(d.tape, run{line: l})
	return d
}

// under lays a stretch of tape behind the garment.
func (d Drawing) under(l line) Drawing {
	d.tape = append(d.tape, run{l, true})
	return d
}

// between lays a tape whose ends are marked.
func (d Drawing) between(l line) Drawing { return d.over(l).ending(l[0], l[len(l)-1]) }

func (d Drawing) ending(p ...plane.Point) Drawing {
	d.ends = append(d.ends, p...)
	return d
}

// waist shows where the waist is.
func (d Drawing) waist(f figure) Drawing {
	d.guides = append(d.guides, level(f.side.at(waistAt)))
	return d
}

// girth goes all the way round at a height.
func girth(y float64) func(figure) Drawing {
	return func(f figure) Drawing {
		right := f.side.at(y)
		return Drawing{garment: f.front()}.under(level(right).about(y)).over(level(right))
	}
}

// about turns a line over a height upside down: the front of a level line becomes its back.
func (l line) about(y float64) line {
	return l.mapped(func(p plane.Point) plane.Point { return at(p.X, 2*y-p.Y) })
}

func frontArc(y float64) func(figure) Drawing {
	return func(f figure) Drawing { return Drawing{garment: f.front()}.between(level(f.side.at(y))) }
}

// leftArc runs from centre front to centre back; the wearer's left is the viewer's right.
func leftArc(y float64) func(figure) Drawing {
	return func(f figure) Drawing {
		front := level(f.side.at(y))[:fine/2+1]
		back := front.about(y)
		return Drawing{garment: f.front()}.under(back).over(front).ending(front[fine/2], back[fine/2])
	}
}

// breadth is taken between two jaws that touch the sides.
func breadth(y float64) func(figure) Drawing {
	return func(f figure) Drawing {
		right := f.side.at(y)
		return Drawing{garment: f.front()}.gripped(mirror(right), right)
	}
}

func depth(y float64) func(figure) Drawing {
	return func(f figure) Drawing { return Drawing{garment: f.aside()}.gripped(f.back.at(y), f.chest.at(y)) }
}

// gripped is a straight line, between jaws, from one point of the outline to another at the same height.
func (d Drawing) gripped(a, b plane.Point) Drawing {
	const jaw, off = 7, tapeWidth / 2
	a.X, b.X = a.X-off, b.X+off
	d = d.over(line{a, b})
	for _, p := range []plane.Point{a, b} {
		d = d.over(line{p.Add(at(0, jaw)), p.Sub(at(0, jaw))})
	}
	return d
}

func shoulderSlope(f figure) Drawing {
	const reach, arc = 27.0, 19.0
	fall := f.shoulder.Sub(f.neck)
	fall = fall.Mul(1 / fall.Norm())
	flat := at(1, 0)
	d := Drawing{garment: f.front()}.over(line{f.neck.Add(flat.Mul(reach)), f.neck, f.neck.Add(fall.Mul(reach))})
	mid := flat.Add(fall)
	mid = mid.Mul(arc / mid.Norm() * 1.02)
	return d.over(bend(f.neck.Add(flat.Mul(arc)), f.neck.Add(mid), f.neck.Add(fall.Mul(arc))))
}

// downSide runs down the side from one height to another.
func downSide(from, to float64) func(figure) Drawing {
	return func(f figure) Drawing {
		d := Drawing{garment: f.aside()}
		d.guides = append(d.guides, line{f.back.at(waistAt), f.chest.at(waistAt)})
		if to != waistAt {
			d.guides = append(d.guides, line{f.back.at(to), f.chest.at(to)})
		}
		return d.between(through(armX, from, armX, to))
	}
}
