package torso

import (
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/section"
)

// Sensitivity says how the tapes round a figure hang on one value, to first order.
type Sensitivity struct {
	Key   measure.Key // "" where no reading tells the value
	Taken bool        // otherwise it was drawn
	Value float64     // taken or drawn, mm or degrees; 0 where no reading tells it, and for lengths that were not taken
	Steep float64     // of a girth: how much longer a tape is that lies a millimetre higher than its level; otherwise 0
	SD    float64     // how far people spread about the value drawn, one standard deviation, mm or degrees; 0 where taken

	Guessed bool // that spread is from memory
	// Tape and Rise are, for each level of the figure, how much longer a tape at the height looked at would be, and how much
	// higher what is there would lie, if the value were larger by one millimetre or degree.
	Tape, Rise []float64
}

// Slope is how much longer a tape is for each millimetre above a height, and how much shorter for each below.
type Slope struct{ Above, Below float64 }

func (s Slope) mean() float64 { return (s.Above + s.Below) / 2 }

// Sensitivities lists what the tapes hang on, in the order in which one measures, and how steep the figure is. It is
// looked at for each of its levels at a height near it: that of the level, or of the same level of another figure. Neck base
// and shoulder, where the skin is nearly level and a garment settles on it, are looked at where they lie, and as if upright.
//
// A girth is its level's own; what lies between two levels follows both. What moves a level changes the tape at a height that
// stays, where girth changes with height. Breadths, depths and arcs change the outline, not the tape, and are left
// out; so is the little by which they and the across measurements move levels. The figure must come from Build.
func (t Torso) Sensitivities(at []float64) ([]Sensitivity, []Slope) {
	d := t.draft
	girth := d.girthsFollow()
	height := d.heightsFollow(t, girth)
	slopes := t.slopes(at)
	var out []Sensitivity
	for _, k := range append(keys(), unread) {
		s := Sensitivity{Key: k, Taken: d.has(k), Value: d.sheet[k]}
		wider, some := t.at(at, func(l measure.Level) float64 { return girth[l][k] })
		rise, moves := t.at(at, func(l measure.Level) float64 { return height[l][k] })
		if !some && !moves {
			continue
		}
		s.Tape, s.Rise = wider, rise
		for i, l := range t.Levels {
			s.Tape[i] -= slopes[i].mean() * rise[i]
			if k == girthKey(l.Name) {
				s.Steep = slopes[i].mean()
			}
		}
		if !s.Taken {
			s.Value = d.drawn[k].Value
			s.SD, s.Guessed = d.spread(k)
		}
		if k == unread {
			s.Key = ""
		}
		out = append(out, s)
	}
	return out, slopes
}

// at is something that is known at the levels, at other heights; and whether it is anywhere more than nothing.
func (t Torso) at(heights []float64, of func(measure.Level) float64) (out []float64, some bool) {
	z, v := make([]float64, len(t.Levels)), make([]float64, len(t.Levels))
	for i, l := range t.Levels {
		z[len(z)-1-i], v[len(z)-1-i] = l.Height, of(l.Name)
		some = some || v[len(z)-1-i] != 0
	}
	if !some {
		return make([]float64, len(heights)), false
	}
	along := curve.Through(z, v)
	for i, l := range t.Levels {
		h := heights[i]
		if settles(l.Name) {
			h = l.Height
		}
		out = append(out, along.At(h))
	}
	return out, true
}

// settles reports whether a garment lies on the figure at a level, so that its height there does not count.
func settles(l measure.Level) bool { return l == measure.NeckBase || l == measure.Shoulder }

// slopes are those at heights near the levels.
func (t Torso) slopes(at []float64) []Slope {
	out := make([]Slope, len(t.Levels))
	for i, l := range t.Levels {
		if settles(l.Name) {
			continue
		}
		below, here, above := t.Skin.At(at[i]-RowGap), t.Skin.At(at[i]), t.Skin.At(at[i]+RowGap)
		tape := here.Tape()
		out[i] = Slope{Above: (above.Tape() - tape) / RowGap, Below: (tape - below.Tape()) / RowGap}
	}
	return out
}

// has reports whether a value was taken.
func (d *draft) has(k measure.Key) bool {
	_, taken := d.sheet[k]
	return taken
}

// unread stands for the height of the underbust below the bust, which no length tells.
const unread measure.Key = "underbust height"

// keys lists the measurements of a bodice in order.
func keys() []measure.Key {
	var out []measure.Key
	for _, m := range measure.Keys {
		out = append(out, m.Key)
	}
	return out
}

// follow is how much something grows for each millimetre or degree by which a value is larger.
type follow map[measure.Key]float64

// add adds so much of another.
func (f follow) add(share float64, g follow) follow {
	for k, v := range g {
		f[k] += share * v
	}
	return f
}

// times is so much of f.
func (f follow) times(share float64) follow { return follow{}.add(share, f) }

// girthsFollow says what the girth of each level hangs on, wherever the level lies.
func (d *draft) girthsFollow() map[measure.Level]follow {
	u, s := &d.upper, d.stats
	bust := follow{measure.BustGirth: 1}
	drawn := func(k measure.Key, by follow) follow {
		own := follow{k: 1}
		if !d.has(k) {
			own.add(1, by)
		}
		return own
	}
	hip := drawn(measure.HipGirth, bust.times(s.hip.by))
	out := map[measure.Level]follow{
		measure.Bust: bust, measure.Waist: {measure.WaistGirth: 1}, measure.Hip: hip,
		measure.NeckBase: drawn(measure.NeckBaseGirth, bust.times(s.neck.by)),
	}
	for _, t := range taped {
		if c, ok := s.girths[t.level]; ok {
			by := follow{}.add(c[0], bust).add(c[1], out[measure.Waist]).add(c[2], hip)
			out[t.level] = drawn(t.girth, by)
		}
	}
	// A flat outline is longer by twice what it is broader, and there are two shoulders.
	sin, cos := math.Sincos(u.slope)
	length := drawn(measure.ShoulderLength, bust.times(s.shoulder.by))
	out[measure.Shoulder] = follow{measure.ShoulderSlope: -4 * u.shoulderLength * sin * degree}.add(1, out[measure.NeckBase]).add(4*cos, length)
	out[measure.AcrossChest] = d.between(out)
	out[measure.Shoulder][measure.ShoulderSlope] += deeper * u.shoulderLength * cos * degree
	return out
}

const degree = math.Pi / 180

// deeper is how much longer the tape at the shoulder is for each millimetre that the shoulder lies lower: figures built by
// this package have 0.8 to 1 (measured by us).
const deeper = 0.9

// between is what the across-chest follows: underarm and shoulder, as far as it lies from each. Where the
// armscye cuts it, it follows the shoulder less than that.
func (d *draft) between(of map[measure.Level]follow) follow {
	z := d.z
	t := (z.at(measure.AcrossChest) - z.at(measure.Underarm)) / (z.shoulder - z.at(measure.Underarm))
	return of[measure.Underarm].times(1-t).add(t, of[measure.Shoulder])
}

// heightsFollow says what the height of each level above the waist hangs on. What was set by hand hangs on nothing.
func (d *draft) heightsFollow(t Torso, girth map[measure.Level]follow) map[measure.Level]follow {
	z, u := d.z, &d.upper
	up, _ := t.climb(section.Back, 0, z.nape)
	nape := follow{measure.BackWaist: up}
	if d.hand[measure.NeckBase].Height != nil {
		nape = follow{}
	}
	usual := func(l measure.Level) follow { return nape.times(z.at(l) / z.nape) }
	out := map[measure.Level]follow{}
	put := func(l measure.Level, f follow) {
		if d.hand[l].Height != nil || l == measure.Waist {
			f = follow{}
		}
		out[l] = f
	}
	own := func(l measure.Level, k measure.Key, rises float64, above follow) {
		if !d.has(k) {
			above, rises = usual(l), math.Copysign(1, rises)
		}
		put(l, follow{k: rises}.add(1, above))
	}
	sin, cos := math.Sincos(u.slope)
	put(measure.NeckBase, usual(measure.NeckBase))
	put(measure.Shoulder, follow{measure.ShoulderLength: -sin, measure.ShoulderSlope: -u.shoulderLength * cos * degree}.add(1, out[measure.NeckBase]))
	own(measure.Bust, measure.NeckToBustPoint, -1, out[measure.NeckBase])
	switch side, low := d.has(measure.SideLength), z.at(measure.Underarm)-z.at(measure.Bust) <= d.step(); {
	case !side && d.has(measure.ArmscyeGirth):
		put(measure.Underarm, follow{measure.ArmscyeGirth: -0.5}.add(1, out[measure.Shoulder])) // the way there and back
	case !side && low: // it lies as near above the bust as it may
		put(measure.Underarm, follow{measure.SideLength: 1}.add(1, out[measure.Bust]))
	default:
		up, _ := t.climb(section.Right, 0, z.at(measure.Underarm))
		own(measure.Underarm, measure.SideLength, up, nil)
	}
	put(measure.Underbust, follow{unread: 1}.add(z.at(measure.Underbust)/z.at(measure.Bust), out[measure.Bust]))
	// A tape of the same length that runs farther out does not reach as far down.
	hips := func(l measure.Level, k measure.Key) {
		down, lean := t.climb(section.Right, z.at(l), 0)
		own(l, k, -down, girth[l].times(lean/(2*math.Pi)).add(-lean/(2*math.Pi), girth[measure.Waist]))
	}
	hips(measure.HighHip, measure.WaistToHighHip)
	hips(measure.Hip, measure.WaistToHip)
	put(measure.AcrossChest, d.between(out))
	return out
}

// climb is how far the end of a taut tape, that is farther from the waist, moves up or down for each millimetre of tape,
// and how much it leans outward towards that end, a millimetre in height.
func (t Torso) climb(column int, lo, hi float64) (climb, lean float64) {
	path := curve.Taut(t.Skin.Profile(column, lo, hi))
	step := path[len(path)-1].Sub(path[len(path)-2])
	if lo < 0 {
		step = path[1].Sub(path[0])
		step.Y = -step.Y
	}
	steep := math.Max(step.X, step.Norm()/mostClimb)
	return step.Norm() / steep, step.Y / steep
}

// mostClimb keeps a tape that ends nearly level from telling of any height; our judgement.
const mostClimb = 3.0
