package torso

import (
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/section"
)

// Sensitivity says how the tapes round a figure hang on one value, to first order.
type Sensitivity struct {
	Key   measure.Key // "" where no reading tells the value
	Taken bool        // otherwise it was drawn
	Value float64     // taken or drawn, mm or degrees; 0 where no reading tells it, and for lengths that were not taken
	Steep float64     // of a girth: how much longer a tape is that lies a millimetre higher than its level; otherwise 0
	SD    float64     // how far people spread about the value drawn, one standard deviation, mm or degrees; 0 where taken
	// Tape is, for each level of the figure, how much longer a tape at the height of that level would be if the value
	// were larger by one millimetre or degree: because its girth is larger, or because the level lies elsewhere and the
	// girth changes with height. At neck base and shoulder, where the skin is nearly level and a garment settles on it, it
	// is the tape of the level wherever it lies.
	Tape []float64
}

// Sensitivities lists them for all values that girths and heights of the levels hang on, in the order in which one
// measures. A girth is its level's own; what lies between two levels follows both. Breadths, depths and arcs change
// the outline, not the tape, and are left out; so is the little by which they and the across measurements move
// levels. The figure must come from Build.
func (t Torso) Sensitivities() []Sensitivity {
	d := t.draft
	girth, height := d.girthsFollow(), d.heightsFollow(t)
	var steep []float64
	for _, l := range t.Levels {
		steep = append(steep, t.steepness(l))
	}
	var out []Sensitivity
	for _, k := range append(keys(), unread) {
		s := Sensitivity{Key: k, Taken: d.has(k), Tape: make([]float64, len(t.Levels))}
		some := false
		for i, l := range t.Levels {
			if k == girthKey(l.Name) {
				s.Steep = steep[i]
			}
			s.Tape[i] = girth[l.Name][k] - steep[i]*height[l.Name][k]
			some = some || s.Tape[i] != 0
		}
		if s.Value = d.sheet[k]; !s.Taken {
			s.Value = d.drawn[k].Value
			s.SD = d.spread(k)
		}
		if s.Key == unread {
			s.Key = ""
		}
		if some {
			out = append(out, s)
		}
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

// steepness is how much longer a tape round the figure is a millimetre above a level; 0 where a garment settles.
func (t Torso) steepness(l Level) float64 {
	if l.Name == measure.NeckBase || l.Name == measure.Shoulder {
		return 0
	}
	const near = RowGap / 2
	above, below := t.Skin.At(l.Height+near), t.Skin.At(l.Height-near)
	return (above.Tape() - below.Tape()) / (2 * near)
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
func (d *draft) heightsFollow(t Torso) map[measure.Level]follow {
	z, u := d.z, &d.upper
	nape := follow{measure.BackWaist: t.climb(section.Back, 0, z.nape)}
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
		own(measure.Underarm, measure.SideLength, t.climb(section.Right, 0, z.at(measure.Underarm)), nil)
	}
	put(measure.Underbust, follow{unread: 1}.add(z.at(measure.Underbust)/z.at(measure.Bust), out[measure.Bust]))
	own(measure.HighHip, measure.WaistToHighHip, -t.climb(section.Right, 0, z.at(measure.HighHip)), nil)
	own(measure.Hip, measure.WaistToHip, -t.climb(section.Right, 0, z.at(measure.Hip)), nil)
	put(measure.AcrossChest, d.between(out))
	return out
}

// climb is how far the far end of a taut tape from height lo to hi moves up or down for each millimetre of tape.
func (t Torso) climb(column int, lo, hi float64) float64 {
	p := t.Skin.Profile(column, math.Min(lo, hi), math.Max(lo, hi))
	path := curve.Taut(p)
	end := [2]plane.Point{path[len(path)-2], path[len(path)-1]}
	if hi < lo {
		end = [2]plane.Point{path[0], path[1]}
	}
	step := end[1].Sub(end[0])
	return step.Norm() / math.Max(step.X, step.Norm()/mostClimb)
}

// mostClimb keeps a tape that ends nearly level from telling of any height; our judgement.
const mostClimb = 3.0
