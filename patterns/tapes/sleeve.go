package tapes

import (
	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// The sleeve lies flat, bent as an arm hangs: its outer edge on the left, the seam under the arm on
// the right.
var (
	sleeveTop              = at(-3, 94)
	outerArm, innerArm     = at(-17.5, 71), at(13, 69)
	outerElbow, innerElbow = at(-16, 42), at(7.5, 41)
	outerWrist, innerWrist = at(1, 8), at(15, 11)

	sleeveOuter = join(bend(sleeveTop, at(-14, 92), outerArm), bend(outerArm, at(-20, 54), outerElbow), bend(outerElbow, at(-12, 30), outerWrist))
	sleeveInner = join(bend(innerArm, at(8, 53), innerElbow), bend(innerElbow, at(7.5, 32), innerWrist))
)

var sleeve = garment{cloth: []line{
	join(sleeveOuter, half(outerWrist, innerWrist, -1.2), sleeveInner.reversed(), bend(innerArm, at(8, 93), sleeveTop)),
}}

// onSleeve are the drawings of a sleeve.
var onSleeve = map[measure.Key]func(figure) Drawing{
	measure.UpperGirth:   sleeveGirth(outerArm, innerArm),
	measure.ElbowGirth:   sleeveGirth(outerElbow, innerElbow),
	measure.WristGirth:   sleeveGirth(outerWrist, innerWrist),
	measure.SleeveLength: func(figure) Drawing { return Drawing{garment: sleeve}.between(sleeveOuter) },
	measure.UnderLength:  func(figure) Drawing { return Drawing{garment: sleeve}.between(sleeveInner) },
}

func sleeveGirth(outer, inner plane.Point) func(figure) Drawing {
	deep := sag * inner.Dist(outer) / 2
	return func(figure) Drawing {
		return Drawing{garment: sleeve}.under(half(outer, inner, deep)).over(half(outer, inner, -deep))
	}
}
