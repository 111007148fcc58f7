package padding

import (
	"math"
	"slices"

	"understructure/geometry/curve"
	"understructure/geometry/parallel"
	"understructure/geometry/section"
	"understructure/geometry/surface"
)

// Rounding says, height by height of the wanted shape, where a sheet ends: the k-th sheet
// from the outside, which would fill the thickness from h−τ to h, lies where the thickness
// is at least h − φ·τ. φ = 0 never lays a sheet that would not fit whole; φ = 1 always does.
const leastRound, mostRound = -1.0, 1.0

// slackest and closest are the corridor under the wanted tape in which the built tape is
// kept, mm: inside the 5 mm that a mount may be slack, with room for the unevenness of whole sheets.
const slackest, closest = 2.5, 0.5

// solver holds what does not change while the rounding is sought.
type solver struct {
	m     *Mount
	seq   []float64 // sheet thickness, from the outermost in
	upto  []float64 // seq added up
	bias  Field     // thickness, sides favoured
	slope Field     // how fast it changes along the base, mm a mm
	at    Field     // where on the rows of the wanted skin the normal meets it: row and fraction
	round []float64 // φ of each row of the wanted skin
	want  []float64 // tape of each row of the wanted skin

	left [][][section.Directions]bool // places where a sheet is left off, see leaveWisps; nil until then
}

func (m *Mount) newSolver() *solver {
	s := &solver{m: m, seq: m.sequence(), round: make([]float64, len(m.Wanted.Z))}
	for i := range m.Wanted.Z {
		s.want = append(s.want, m.Wanted.R[i].Tape())
	}
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
	s.at = s.meetings()
	return s
}

// meetings says, for every point of the base, which row of the wanted skin its normal meets.
func (s *solver) meetings() Field {
	f := make(Field, len(s.m.Base.Z))
	for i, z := range s.m.Base.Z {
		for j := range section.Directions {
			row, part := s.m.Wanted.Row(z + (s.m.Thickness[i][j]+s.m.Cover)*s.m.Normals[i][j].Z)
			f[i][j] = float64(row) + part
		}
	}
	return f
}

// rounding is φ at a point of the base.
func (s *solver) rounding(i, j int) float64 {
	row, part := math.Modf(s.at[i][j])
	k := int(row)
	if k+1 >= len(s.round) {
		return s.round[len(s.round)-1]
	}
	return s.round[k] + (s.round[k+1]-s.round[k])*part
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

// inside is how far, in thickness, a place with rounding φ lies within the edge of sheet k.
func (s *solver) inside(k, i, j int, φ float64) float64 {
	return s.bias[i][j] - s.upto[k] + φ*s.seq[k]
}

// share is how much of a sheet there is at a place: 1 well inside, 0 well outside, feathered between.
func (s *solver) share(k, i, j int, φ float64) float64 {
	return feather(s.inside(k, i, j, φ), s.slope[i][j])
}

// feather is how much of a sheet there is where it lies inside its edge by that much
// thickness, the thickness changing by slope mm a mm.
func feather(inside, slope float64) float64 {
	half := EdgeHalf * slope
	switch {
	case inside >= half:
		return 1
	case inside <= -half:
		return 0
	}
	return 0.5 + inside/(2*half)
}

// stack is the wadding, in mm, where the thickness to fill is bias.
func (s *solver) stack(bias, slope, φ float64) float64 {
	d, half := 0.0, EdgeHalf*slope
	for k, τ := range s.seq {
		switch inside := bias - s.upto[k] + φ*τ; {
		case inside >= half:
			d += τ
		case inside <= -half:
			return d
		default:
			d = climb(d, τ, 0.5+inside/(2*half), slope)
		}
	}
	return d
}

// climb adds a share of a sheet below d of wadding that climbs over its feathered edge: leaning there, and
// as thick as ever across its own skin, that reaches farther along the normal.
func climb(d, τ, share, slope float64) float64 {
	if slope > ledge {
		return d + τ*share // cut square at a step of the core, where nothing climbs
	}
	const steep = 4 // the lean is full but for a quarter of the feather at either end, where it begins
	lean := min(1, steep*min(share, 1-share)) * (math.Hypot(1, τ/(2*EdgeHalf)) - 1)
	return d*(1+lean) + τ*share
}

// wadding is the wadding at a place, mm.
func (s *solver) wadding(i, j int) float64 {
	if !s.m.open(i, j) {
		return 0
	}
	if s.left == nil {
		return s.stack(s.bias[i][j], s.slope[i][j], s.rounding(i, j))
	}
	d, φ := 0.0, s.rounding(i, j)
	for k, τ := range s.seq {
		if !s.left[k][i][j] {
			d = climb(d, τ, s.share(k, i, j, φ), s.slope[i][j])
		}
	}
	return d
}

// rounds is how often the reckoning is mended; most mounts need three.
const rounds = 8

// solve finds, for every height for itself, the roundings that keep the tape in the
// corridor, and draws the tautest line through them, so that sheets end in smooth curves.
// Then it cuts the mount level and mends the reckoning where what stands at a height is
// not quite what was reckoned with.
func (s *solver) solve() {
	faces := s.faces()
	n := len(s.want)
	off, lo, hi := make([]float64, n), make([]float64, n), make([]float64, n)
	for range rounds {
		parallel.Each(n, func(i int) {
			lo[i] = s.settle(&faces[i], s.want[i]-slackest-off[i], lo[i])
			hi[i] = s.settle(&faces[i], s.want[i]-closest-off[i], max(hi[i], lo[i]))
		})
		s.round = taut(lo, hi)
		missed := false
		for i, got := range s.tapes() {
			ring := faces[i].ring(s, s.round[i])
			off[i] = got - section.Around(&ring)
			missed = missed || s.counts(i) && (got > s.want[i] || got < s.want[i]-slackest-tight)
		}
		if !missed {
			return
		}
	}
	s.lower()
}

// tautPulls is how often taut pulls; a line of 200 rows is straight to a hundredth of a sheet after these.
const tautPulls = 400

// taut returns the line between lo and hi that bends least: a string pulled tight.
func taut(lo, hi []float64) []float64 {
	φ := make([]float64, len(lo))
	for i := range φ {
		φ[i] = (lo[i] + hi[i]) / 2
	}
	for range tautPulls {
		for i := range φ {
			mean := (φ[max(i-1, 0)] + φ[min(i+1, len(φ)-1)]) / 2
			φ[i] = max(lo[i], min(hi[i], mean))
		}
	}
	return φ
}

// settle returns the φ with which the face of the mount at one height has the tape aimed
// at, looking first near a guess.
func (s *solver) settle(f *face, aim, guess float64) float64 {
	off := func(φ float64) float64 {
		ring := f.ring(s, φ)
		return section.Around(&ring) - aim
	}
	const near, tolerance = 0.1, 2e-3 // parts of a sheet; the tolerance is 0.08 mm of tape for 6 mm sheets
	if φ, err := curve.Root(off, max(guess-near, leastRound), min(guess+near, mostRound), tolerance); err == nil {
		return φ
	}
	φ, err := curve.Root(off, leastRound, mostRound, tolerance)
	if err == nil {
		return φ
	}
	if off(mostRound) < 0 { // more than there is
		return mostRound
	}
	return leastRound
}

// tight is how far below the corridor is near enough, mm.
const tight = 0.5

// counts reports whether a row of the wanted skin lies where wadding may.
func (s *solver) counts(i int) bool {
	z := s.m.Wanted.Z[i]
	return z >= s.m.From-1e-6 && z <= s.m.To+1e-6
}

// shell is every point of the base moved out by wadding and cover.
func (s *solver) shell() surface.Shell {
	return s.m.Base.Displaced(s.m.Normals, func(i, j int) float64 { return s.wadding(i, j) + s.m.Cover })
}

// tapes cuts the mount level at every row of the wanted skin and measures round it.
func (s *solver) tapes() []float64 { return s.around(s.shell()) }

// around measures round a shell at every row of the wanted skin. Where it has no slice the
// tape is as wanted.
func (s *solver) around(shell surface.Shell) []float64 {
	got := slices.Clone(s.want)
	for i, ring := range shell.Outer(s.m.Wanted.Z) {
		if ring != nil {
			got[i] = section.Around(ring)
		}
	}
	return got
}

// built is the mount, cover and all, at the rows of the wanted skin.
func (s *solver) built() surface.Surface { return s.shell().Surface(s.m.Wanted.Z, false) }
