package tapes

import "understructure/geometry/measure"

// The skirt hangs from its band; its front is to the right in the side view.
const (
	bandAt, bandEnd = 97.0, 91.0
	bandHalf        = 11.0 // from the front; from the side it is less deep
	bandDeep        = 9.0
	skirtHipAt      = 70.0
	skirtHemAt      = 12.0
)

var (
	skirtLevels = []float64{skirtHemAt, 40, skirtHipAt, 84, bandEnd}
	skirtEdge   = edgeThrough(skirtLevels, []float64{37, 30.5, 21.5, 15, bandHalf})
	skirtChest  = edgeThrough(skirtLevels, []float64{23, 18.5, 13.5, 10.8, bandDeep})
	skirtBack   = edgeThrough([]float64{7, skirtHemAt, 40, skirtHipAt, 84, bandEnd}, []float64{-46, -40, -27, -18, -13, -bandDeep})
)

var skirtFront = func() garment {
	hem, waist := skirtEdge.at(skirtHemAt), skirtEdge.at(bandEnd)
	half := join(line{at(0, bandEnd-sag*waist.X)}, level(waist)[:fine/2+1].reversed(), skirtEdge.run(bandEnd, skirtHemAt), level(hem)[:fine/2+1])
	g := garment{cloth: []line{half.whole(), skirtBand(bandHalf)}}
	for _, x := range []float64{-0.62, -0.25, 0.25, 0.62} {
		g.seams = append(g.seams, bend(at(x*8, 86), at(x*14, 72), at(x*26, 40)))
	}
	return g
}()

// skirtBand is the band, so much wide to either side.
func skirtBand(half float64) line {
	low, high := level(at(half, bandEnd)), level(at(half, bandAt))
	return join(high, low.reversed())
}

var skirtAside = func() garment {
	front, back := skirtChest.at(skirtHemAt), skirtBack.at(7)
	outline := join(skirtChest.run(bandEnd, skirtHemAt), bend(front, at(0, 4), back), skirtBack.run(7, bandEnd))
	g := garment{cloth: []line{outline, skirtBand(bandDeep)}}
	for _, s := range [][4]float64{{-5, -10, -20, 40}, {-3, -3, -9, 40}, {3, 5, 8, 40}} {
		g.seams = append(g.seams, bend(at(s[0], 87), at(s[1], 70), at(s[2], s[3])))
	}
	return g
}()

// onSkirt are the drawings of a skirt.
var onSkirt = map[measure.Key]func(figure) Drawing{
	measure.WaistGirth: func(figure) Drawing { return skirtGirth((bandAt + bandEnd) / 2) },
	measure.HipGirth:   func(figure) Drawing { return skirtGirth(skirtHipAt) },
	measure.HemGirth:   func(figure) Drawing { return skirtGirth(skirtHemAt) },
	measure.FrontLength: func(figure) Drawing {
		return Drawing{garment: skirtFront}.between(through(0, bandEnd-sag*bandHalf, 0, skirtHemAt-sag*37))
	},
	measure.SideLength: func(figure) Drawing {
		return Drawing{garment: skirtAside}.between(bend(at(0, bandEnd-sag*bandDeep), at(-1, 50), at(-6, 6.2)))
	},
	measure.BackLength: func(figure) Drawing {
		return Drawing{garment: skirtAside}.between(skirtBack.run(bandEnd, 7))
	},
}

func skirtGirth(y float64) Drawing {
	right := at(bandHalf, y)
	if y < bandEnd {
		right = skirtEdge.at(y)
	}
	return Drawing{garment: skirtFront}.under(level(right).about(y)).over(level(right))
}
