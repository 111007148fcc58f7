package pipeline

import (
	"math"

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
