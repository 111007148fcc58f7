package padding

import (
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/surface"
)

// Rounding says, row by row, where a sheet ends: the k-th sheet from the outside, which
// would fill the thickness from h−τ to h, lies where the thickness is at least h − φ·τ.
// φ = 0 never lays a sheet that would not fit whole; φ = 1 always does.
const leastRound, mostRound = -1.0, 1.0

// below is how far under the wanted tape the built tape is aimed, mm, and tight how far
// above or below that aim a row may stay.
const below, tight = 1.5, 0.2

// solver holds what does not change while the rounding is sought.
type solver struct {
	m     *Mount
	seq   []float64 // sheet thickness, from the outermost in
	upto  []float64 // seq added up
	bias  Field     // thickness, sides favoured
	slope Field     // how fast it changes along the base, mm a mm
	round []float64 // φ of each row
	aim   []float64 // wanted tape of each row
}

func (m *Mount) newSolver() *solver {
	s := &solver{m: m, seq: m.sequence(), round: make([]float64, len(m.Base.Z)), aim: make([]float64, len(m.Base.Z))}
	h := 0.0
	for _, τ := range s.seq {
		h += τ
		s.upto = append(s.upto, h)
	}
	s.bias = make(Field, len(m.Thickness))
	for i := range s.bias {
		for j := range section.Directions {
			c := section.Direction(j).X
			s.bias[i][j] = m.Thickness[i][j]
			if len(s.seq) > 0 {
				s.bias[i][j] += lean * s.seq[0] * (c*c - 0.5)
			}
		}
	}
	s.slope = slopes(m.Base, s.bias)
	return s
}

// slopes returns how fast a field changes along the skin, never less than flattest.
func slopes(base surface.Surface, f Field) Field {
	out := make(Field, len(f))
	for i := range f {
		lo, hi := max(i-1, 0), min(i+1, len(f)-1)
		for j := range section.Directions {
			next, prev := (j+1)&(section.Directions-1), (j-1)&(section.Directions-1)
			up := (f[hi][j] - f[lo][j]) / base.Point(hi, j).Dist(base.Point(lo, j))
			round := (f[i][next] - f[i][prev]) / base.Point(i, next).Dist(base.Point(i, prev))
			out[i][j] = math.Max(math.Hypot(up, round), flattest)
		}
	}
	return out
}

// inside is how far, in thickness, a place lies within the edge of sheet k.
func (s *solver) inside(k, i, j int) float64 {
	return s.bias[i][j] - s.upto[k] + s.round[i]*s.seq[k]
}

// share is how much of a sheet there is at a place: 1 well inside, 0 well outside, feathered between.
func (s *solver) share(k, i, j int) float64 {
	return math.Max(0, math.Min(1, 0.5+s.inside(k, i, j)/(2*EdgeHalf*s.slope[i][j])))
}

// wadding is the wadding at a place, mm.
func (s *solver) wadding(i, j int) float64 {
	if !s.m.open(i) {
		return 0
	}
	d := 0.0
	for k := range s.seq {
		c := s.share(k, i, j)
		if c == 0 {
			break
		}
		d += s.seq[k] * c
	}
	return d
}

// tape is the tape round row i with every point moved along its normal by d.
func (s *solver) tape(i int, d func(j int) float64) float64 {
	var p [section.Directions]plane.Point
	for j := range p {
		q := s.m.Base.Point(i, j).Add(s.m.Normals[i][j].Mul(d(j)))
		p[j] = plane.Point{X: q.X, Y: q.Y}
	}
	return section.Around(&p)
}

// solve finds the rounding of every row, then cuts the mount level and mends the rows
// whose neighbours, tilted into their height, have made the tape there too long.
func (s *solver) solve() {
	for i := range s.aim {
		s.aim[i] = s.tape(i, func(j int) float64 { return s.m.Thickness[i][j] + s.m.Cover }) - below
	}
	s.settle()
	for range 6 {
		if !s.mend(s.built()) {
			break
		}
		s.settle()
	}
}

// settle finds each row's rounding for its aim.
func (s *solver) settle() {
	for i := range s.round {
		if !s.m.open(i) {
			s.round[i] = leastRound
			continue
		}
		off := func(φ float64) float64 {
			s.round[i] = φ
			return s.tape(i, func(j int) float64 { return s.wadding(i, j) + s.m.Cover }) - s.aim[i]
		}
		φ, err := curve.Root(off, leastRound, mostRound, 1e-3)
		if err != nil { // less than no wadding, or more than there is
			φ = leastRound
			if off(mostRound) < 0 {
				φ = mostRound
			}
		}
		s.round[i] = φ
	}
}

// mend moves the aim of every row by what a level cut of the mount there misses the wanted
// tape by, and reports whether any missed by much.
func (s *solver) mend(built surface.Surface) bool {
	missed := false
	for i, z := range s.m.Base.Z {
		if !s.m.open(i) {
			continue
		}
		want, got := s.m.Wanted.At(z), built.At(z)
		if off := got.Tape() - (want.Tape() - below); math.Abs(off) > tight {
			s.aim[i] -= off
			missed = true
		}
	}
	return missed
}

// built cuts the mount, cover and all, at the heights of the wanted skin.
func (s *solver) built() surface.Surface {
	shell := s.m.Base.Displaced(s.m.Normals, func(i, j int) float64 { return s.wadding(i, j) + s.m.Cover })
	return shell.Surface(s.m.Wanted.Z, false)
}

// layers lists the sheets in order of laying, the innermost and smallest first.
func (s *solver) layers() []Layer {
	var out []Layer
	rows := len(s.m.Base.Z)
	for k := len(s.seq) - 1; k >= 0; k-- {
		l := Layer{Thickness: s.seq[k], Inside: make(Field, rows), Under: make(Field, rows)}
		any := false
		for i := range rows {
			for j := range section.Directions {
				l.Inside[i][j] = s.inside(k, i, j)
				if !s.m.open(i) {
					l.Inside[i][j] = -s.seq[k]
				}
				any = any || l.Inside[i][j] > 0
				for under := k + 1; under < len(s.seq); under++ {
					l.Under[i][j] += s.seq[under] * s.share(under, i, j)
				}
			}
		}
		if any {
			out = append(out, l)
		}
	}
	return out
}
