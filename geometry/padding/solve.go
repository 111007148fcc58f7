package padding

import (
	"math"

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
	seq   []float64                  // sheet thickness, from the outermost in
	upto  []float64                  // seq added up
	lean  []float64                  // how much farther along the normal each reaches where it climbs over a feathered edge
	bias  Field                      // thickness, sides favoured
	slope Field                      // how fast it changes along the base, mm a mm
	at    Field                      // where on the rows of the wanted skin the normal meets it: row and fraction
	round []float64                  // φ of each row of the wanted skin
	want  []float64                  // tape of each row of the wanted skin
	open  [][section.Directions]bool // places where wadding may be reckoned with
	skin  surface.Shell              // room for the mount as built

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
		s.lean = append(s.lean, math.Hypot(1, τ/(2*EdgeHalf))-1)
	}
	s.bias = make(Field, len(m.Thickness))
	s.open = make([][section.Directions]bool, len(m.Thickness))
	s.skin = make(surface.Shell, len(m.Thickness))
	for i := range s.bias {
		for j := range section.Directions {
			s.open[i][j] = m.open(i, j)
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
		row, part := 0, 0.0
		for j := range section.Directions {
			row, part = s.m.Wanted.RowNear(row, z+(s.m.Thickness[i][j]+s.m.Cover)*s.m.Normals[i][j].Z)
			f[i][j] = float64(row) + part
		}
	}
	return f
}

// rounding is φ at a point of the base.
func (s *solver) rounding(i, j int) float64 {
	k := int(s.at[i][j])
	part := s.at[i][j] - float64(k)
	if k+1 >= len(s.round) {
		return s.round[len(s.round)-1]
	}
	return s.round[k] + (s.round[k+1]-s.round[k])*part
}

// roundings is φ at every point of the base.
func (s *solver) roundings() Field {
	f := make(Field, len(s.at))
	for i := range f {
		for j := range section.Directions {
			f[i][j] = s.rounding(i, j)
		}
	}
	return f
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
func (s *solver) inside(k int, bias, φ float64) float64 { return bias - s.upto[k] + φ*s.seq[k] }

// share is how much of a sheet there is at a place: 1 well inside, 0 well outside, feathered between.
func (s *solver) share(k, i, j int, φ float64) float64 {
	return feather(s.inside(k, s.bias[i][j], φ), s.slope[i][j])
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
func (s *solver) stack(bias, slope, φ float64) float64 { return s.onto(0, 0, bias, slope, φ) }

// onto is stack where so many whole sheets lie anyhow, d mm in all.
func (s *solver) onto(whole int, d, bias, slope, φ float64) float64 {
	half := EdgeHalf * slope
	for k := whole; k < len(s.seq); k++ {
		switch inside := s.inside(k, bias, φ); {
		case inside >= half:
			d += s.seq[k]
		case inside <= -half:
			return d
		default:
			d = s.climb(d, k, 0.5+inside/(2*half), slope)
		}
	}
	return d
}

// climb adds a share of sheet k below d of wadding that climbs over its feathered edge: leaning there, and
// as thick as ever across its own skin, that reaches farther along the normal.
func (s *solver) climb(d float64, k int, share, slope float64) float64 {
	τ := s.seq[k]
	if slope > ledge {
		return d + τ*share // cut square at a step of the core, where nothing climbs
	}
	const steep = 4 // the lean is full but for a quarter of the feather at either end, where it begins
	lean := min(1, steep*min(share, 1-share)) * s.lean[k]
	return d*(1+lean) + τ*share
}

// wadding is the wadding at a place, mm.
func (s *solver) wadding(i, j int) float64 {
	if !s.open[i][j] {
		return 0
	}
	if s.left == nil {
		return s.stack(s.bias[i][j], s.slope[i][j], s.rounding(i, j))
	}
	d, φ := 0.0, s.rounding(i, j)
	for k := range s.seq {
		if !s.left[k][i][j] {
			d = s.climb(d, k, s.share(k, i, j, φ), s.slope[i][j])
		}
	}
	return d
}

// rounds is how often the reckoning is mended; most mounts need three. block is how many rows are looked at one
// after another, each beginning where the last ended; the blocks are looked at at the same time.
const rounds, block = 8, 25

// solve finds, for every height for itself, the roundings that keep the tape in the
// corridor, and draws the tautest line through them, so that sheets end in smooth curves.
// It cuts the mount level and mends the reckoning where what stands at a height is
// not quite what is reckoned with, as long as there is a height that another rounding may help.
func (s *solver) solve() {
	faces := s.faces()
	n := len(s.want)
	off, shift := make([]float64, n), make([]float64, n)
	lo, hi, steep := make([]float64, n), make([]float64, n), make([]float64, n)
	for round := range rounds {
		parallel.Each((n+block-1)/block, func(b int) {
			for i := b * block; i < min(b*block+block, n); i++ {
				if round == 0 { // a row begins where the one below it has ended
					lo[i], steep[i] = 0, 2*math.Pi*s.step()
					if i > b*block {
						lo[i], steep[i] = lo[i-1], steep[i-1]
					}
				}
				guess := lo[i] - shift[i]/steep[i]
				lo[i], steep[i] = s.settle(&faces[i], s.want[i]-slackest-off[i], guess, steep[i])
				guess = lo[i] + (slackest-closest)/steep[i]
				hi[i], steep[i] = s.settle(&faces[i], s.want[i]-closest-off[i], guess, steep[i])
				hi[i] = max(hi[i], lo[i])
			}
		})
		s.round = taut(lo, hi)
		missed, hope := false, false
		got := s.tapes()
		parallel.Each(n, func(i int) {
			was := off[i]
			off[i] = got[i] - faces[i].tape(s, s.round[i])
			shift[i] = off[i] - was
		})
		for i := range got {
			long, slack := got[i] > s.want[i], got[i] < s.want[i]-slackest-tight
			if s.counts(i) && (long || slack) {
				missed = true
				hope = hope || long && hi[i] > leastRound || slack && lo[i] < mostRound
			}
		}
		if !missed {
			return
		}
		if !hope {
			break
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

// settled is how near to the tape aimed at a rounding must come, mm, unless the tape jumps: then a rounding within
// jump of there will do.
const settled, jump = 0.005, 1e-5

// settle returns the φ with which the face of the mount at one height has the tape aimed at, or comes nearest to it,
// and how steeply the tape grows there. It grows nearly in proportion to φ, so that secants from a guess soon
// find it; where they lead out of what is left between too short and too long, that is halved.
func (s *solver) settle(f *face, aim, guess, steep float64) (φ, grows float64) {
	short, long := math.Inf(-1), math.Inf(1)
	φ = max(leastRound, min(mostRound, guess))
	off := f.tape(s, φ) - aim
	for math.Abs(off) > settled && long-short > jump {
		if off > 0 {
			long = φ
		} else {
			short = φ
		}
		next := max(leastRound, min(mostRound, φ-off/steep))
		if next == φ { // more, or less, than there is
			break
		}
		if next <= short || next >= long {
			next = (short + long) / 2
		}
		was := off
		off = f.tape(s, next) - aim
		if g := (off - was) / (next - φ); g > flattestTape {
			steep = g
		}
		φ = next
	}
	return φ, steep
}

// flattestTape is the least that a tape must grow, in mm for a whole sheet more, for a secant to be drawn on it.
const flattestTape = 1.0

// tight is how far below the corridor is near enough, mm.
const tight = 0.5

// counts reports whether a row of the wanted skin lies where wadding may.
func (s *solver) counts(i int) bool {
	z := s.m.Wanted.Z[i]
	return z >= s.m.From-1e-6 && z <= s.m.To+1e-6
}

// shell is every point of the base moved out by wadding and cover. It is good until the next.
func (s *solver) shell() surface.Shell {
	parallel.Each(len(s.skin), func(i int) {
		for j := range section.Directions {
			s.skin[i][j] = s.m.Base.Point(i, j).Add(s.m.Normals[i][j].Mul(s.wadding(i, j) + s.m.Cover))
		}
	})
	return s.skin
}

// tapes cuts the mount level at every row of the wanted skin and measures round it.
func (s *solver) tapes() []float64 {
	return s.around(s.shell())
}

// around measures round a shell at every row of the wanted skin. Where it has no slice the
// tape is as wanted.
func (s *solver) around(shell surface.Shell) []float64 {
	slices := shell.Outer(s.m.Wanted.Z)
	got := make([]float64, len(s.want))
	parallel.Each(len(got), func(i int) {
		got[i] = s.want[i]
		if slices[i] != nil {
			got[i] = section.Around(slices[i][:])
		}
	})
	return got
}

// built is the mount, cover and all, at the rows of the wanted skin.
func (s *solver) built() surface.Surface { return s.shell().Surface(s.m.Wanted.Z, false) }
