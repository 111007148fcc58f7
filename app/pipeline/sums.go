package pipeline

import (
	"fmt"
	"math"

	"understructure/geometry/measure"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// layers sums up the sheets and slices in order of building.
func (j *job) layers() []plan.Layer {
	var out []plan.Layer
	for _, p := range j.pieces {
		if n := len(out); n == 0 || out[n-1].Number != p.Layer || out[n-1].Material != p.Material {
			out = append(out, plan.Layer{Number: p.Layer, Material: p.Material, Thickness: p.Thickness})
		}
		l := &out[len(out)-1]
		l.Area += p.Area() * float64(p.Count)
		l.Pieces += p.Count
	}
	return out
}

// volumes compares the pieces with the space that they are to fill, the cover left out.
func (j *job) volumes() map[string]plan.Volume {
	b := j.bands()
	space := j.mount.Built.Volume(b.Hip, b.Neck) - j.coverVolume() - j.mount.Base.Volume(b.Hip, b.Neck)
	out := map[string]plan.Volume{"wadding": {Space: space, Pieces: volume(j.pieces, isWadding)}}
	if j.stock.Cover > 0 {
		out["cover"] = plan.Volume{Space: j.coverVolume(), Pieces: volume(j.pieces, isCover)}
	}
	if j.slices != nil {
		out["slices"] = j.slicesVolume()
	}
	return out
}

// slicesVolume compares the slices, carved as they are to be, with the stack. A frustum's
// volume follows from its two faces.
func (j *job) slicesVolume() plan.Volume {
	v := plan.Volume{Space: j.bare.Volume(j.bare.Bottom(), j.bare.Top())}
	for _, s := range j.slices {
		a, b := s.Lower.Area(), s.Upper.Area()
		v.Pieces += s.Thickness() / 3 * (a + b + math.Sqrt(a*b))
	}
	return v
}

// coverVolume is the space that the cover takes up: its thickness over the skin below it.
func (j *job) coverVolume() float64 {
	b := j.bands()
	return j.stock.Cover * j.mount.Built.Area(b.Hip, b.Neck)
}

func isSlice(p piece.Piece) bool   { return p.ID[0] == 'S' }
func isCover(p piece.Piece) bool   { return p.ID[0] == 'C' }
func isWadding(p piece.Piece) bool { return p.ID[0] == 'L' }

func volume(ps []piece.Piece, of func(piece.Piece) bool) float64 {
	v := 0.0
	for _, p := range ps {
		if of(p) {
			v += p.Area() * p.Thickness * float64(p.Count)
		}
	}
	return v
}

// materials is the shopping list, waste not counted.
func (j *job) materials() []plan.Material {
	var out []plan.Material
	area := map[float64]float64{}
	for _, p := range j.pieces {
		if isWadding(p) {
			area[p.Thickness] += p.Area() * float64(p.Count)
		}
	}
	for _, w := range j.stock.Wadding {
		if a := area[w.Thickness]; a > 0 {
			out = append(out, plan.Material{Name: fmt.Sprintf("needle-punched polyester wadding, %g mm", w.Thickness), Quantity: a * 1e-6, Unit: "m²", Note: "area of the pieces; allow for waste"})
		}
	}
	if j.slices != nil {
		b := j.stock.Plank
		out = append(out, plan.Material{
			Name:     fmt.Sprintf("closed-cell polyethylene plank, %g × %g × %g mm", b.Thickness, b.Length, b.Width),
			Quantity: float64(planks(j.pieces, b.Length, b.Width)), Unit: "planks", Note: "slices side by side in rows; a closer layout may need fewer",
		})
		if b.Pole > 0 {
			out = append(out, plan.Material{Name: fmt.Sprintf("pole, %g mm across", b.Pole), Quantity: (j.waist + j.height(measure.NeckBase)) / 1000, Unit: "m", Note: "from the floor to the neck"})
		}
	}
	if j.stock.Cover > 0 {
		b := j.bands()
		out = append(out, plan.Material{Name: "smooth cover (cotton jersey or silk), washed", Quantity: j.mount.Built.Area(b.Hip, b.Neck) * 1e-6, Unit: "m²", Note: "area of the mount; allow for seams"})
	}
	return append(out, j.supportMaterials()...)
}

// planks counts the planks that the slices need when their bounds are laid in rows.
func planks(ps []piece.Piece, length, width float64) int {
	const knife = 5.0 // mm between two slices
	n, x, y, row := 1, 0.0, 0.0, 0.0
	for _, p := range ps {
		if !isSlice(p) {
			continue
		}
		lo, hi := p.Outline.Bounds()
		w, h := hi.X-lo.X+knife, hi.Y-lo.Y+knife
		if x+w > length+knife {
			x, y, row = 0, y+row, 0
		}
		if y+h > width+knife {
			n, x, y, row = n+1, 0, 0, 0
		}
		x, row = x+w, math.Max(row, h)
	}
	return n
}
