package pipeline

import (
	"math"

	"understructure/geometry/fit"
	"understructure/geometry/padding"
	"understructure/geometry/section"
)

// made are the sources of doubt in what is cut and laid: every layer's thickness, the cover's, the edges of layers and of slices.
func (j *job) made() []fit.Source {
	var out []fit.Source
	add := func(sd float64, effect func(z float64) float64) {
		s := fit.Source{Known: fit.Known{SD: sd}}
		for _, l := range j.garment.Levels {
			s.Effect = append(s.Effect, effect(l.Height))
		}
		out = append(out, s)
	}
	for _, l := range j.mount.Layers {
		add(j.spread(l.Thickness), func(z float64) float64 { return -2 * math.Pi * l.ShareAt(j.row(z)) })
	}
	add(j.stock.CoverSpread, func(float64) float64 { return -2 * math.Pi })
	for _, s := range j.slices {
		add(j.stock.CuttingError, func(z float64) float64 {
			if z < s.Bottom || z >= s.Top {
				return 0
			}
			return -2 * math.Pi
		})
	}
	return append(out, j.edges()...)
}

// edges are those of the layers: at each level the errors of all that end there, each by itself. An edge that is cut so
// much too far makes a sheet begin that much earlier to be as thick as it is, over its feathered width.
func (j *job) edges() []fit.Source {
	var out []fit.Source
	for i, level := range j.garment.Levels {
		square := 0.0
		for _, l := range j.mount.Layers {
			a, b := j.row(level.Height-padding.EdgeHalf), j.row(level.Height+padding.EdgeHalf)
			gain := 2 * math.Pi * l.Thickness * ending(l, a, b) / (2 * padding.EdgeHalf)
			square += gain * gain
		}
		s := fit.Source{Known: fit.Known{SD: j.stock.CuttingError * math.Sqrt(square)}, Effect: make([]float64, len(j.garment.Levels))}
		s.Effect[i] = -1
		out = append(out, s)
	}
	return out
}

// ending is the part of the way round at which a layer ends between two rows.
func ending(l padding.Layer, a, b int) float64 {
	n := 0.0
	for k := range section.Directions {
		if (l.Inside[a][k] > 0) != (l.Inside[b][k] > 0) {
			n++
		}
	}
	return n / section.Directions
}

// spread is that of the wadding of a thickness.
func (j *job) spread(thickness float64) float64 {
	for _, w := range j.stock.Wadding {
		if w.Thickness == thickness {
			return w.Spread
		}
	}
	return 0
}

// row is the row of the base that is nearest to a height.
func (j *job) row(z float64) int {
	best := 0
	for i, at := range j.mount.Base.Z {
		if math.Abs(at-z) < math.Abs(j.mount.Base.Z[best]-z) {
			best = i
		}
	}
	return best
}
