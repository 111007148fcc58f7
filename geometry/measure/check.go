package measure

import (
	"fmt"
	"math"
)

// Check compares the readings of one bodice or form with each other and returns every
// contradiction, with the amount and with what is done about it. A reading alone is never judged here.
func Check(s Sheet, w Wearer) []Notice {
	f, _ := contradictions(s, w)
	return notices(f)
}

// Trusted returns the sheet to build from: where readings contradict each other the
// smaller stays, and the other is brought down to it or left out. Girths are kept as they were
// taken, for each is a limit of its own that the mount must not pass. s is not changed.
func Trusted(s Sheet) Sheet {
	_, t := contradictions(s, Woman) // the wearer only changes what is said, never what is trusted
	return t
}

// finding is a contradiction and what Trusted does about it.
type finding struct {
	Notice
	leave []Key           // left out of the trusted sheet
	set   map[Key]float64 // brought down, or up, to what the other readings allow
}

// contradictions applies every rule, in the order in which the maker would look, each to
// the sheet that the rules before it left.
func contradictions(s Sheet, w Wearer) ([]finding, Sheet) {
	inOrder := func(s Sheet) []finding { return girthOrder(s, w) }
	var all []finding
	t := settle(s, nil)
	for _, rule := range []func(Sheet) []finding{arcs, hulls, inOrder, waistLengths, bustPoints, sides, hips, shoulders} {
		f := rule(t)
		all, t = append(all, f...), settle(t, f)
	}
	return all, t
}

func notices(fs []finding) []Notice {
	var n []Notice
	for _, f := range fs {
		n = append(n, f.Notice)
	}
	return n
}

func settle(s Sheet, fs []finding) Sheet {
	t := make(Sheet, len(s))
	for k, v := range s {
		t[k] = v
	}
	for _, f := range fs {
		for k, v := range f.set {
			t[k] = v
		}
	}
	for _, f := range fs {
		for _, k := range f.leave {
			delete(t, k)
		}
	}
	return t
}

// found builds a finding; the amount is rounded to a tenth of a millimetre, a tape's own doubt being larger.
func found(code string, l Level, k Key, amount float64, format string, args ...any) finding {
	return finding{Notice: Notice{code, l, k, math.Round(amount*10) / 10, fmt.Sprintf(format, args...)}}
}

func (f finding) leaving(keys ...Key) finding       { f.leave = keys; return f }
func (f finding) setting(k Key, to float64) finding { f.set = map[Key]float64{k: to}; return f }
func (s Sheet) both(a, b Key) (x, y float64, ok bool) {
	x, okA := s[a]
	y, okB := s[b]
	return x, y, okA && okB
}

// round is the set of keys that describe one section; "" where no key does.
type round struct {
	level                              Level
	girth, front, left, breadth, depth Key
}

var rounds = []round{
	{Bust, BustGirth, BustFrontArc, BustLeftArc, BustBreadth, BustDepth},
	{Underbust, UnderbustGirth, "", "", UnderbustBreadth, UnderbustDepth},
	{Waist, WaistGirth, WaistFrontArc, WaistLeftArc, WaistBreadth, WaistDepth},
	{HighHip, HighHipGirth, "", "", HighHipBreadth, HighHipDepth},
	{Hip, HipGirth, HipFrontArc, HipLeftArc, HipBreadth, HipDepth},
}

// The shares of a girth that an arc may take. Period side seams lie well back, so the front
// may have up to two thirds (workshop habit, no published source); the halves of a crooked body
// differ by less (from memory).
const (
	leastFront, mostFront = 0.35, 0.65
	leastLeft, mostLeft   = 0.40, 0.60
)

func arcs(s Sheet) []finding {
	var f []finding
	for _, r := range rounds {
		f = append(f, share(s, r, "front", r.front, leastFront, mostFront)...)
		f = append(f, share(s, r, "left", r.left, leastLeft, mostLeft)...)
	}
	return f
}

func share(s Sheet, r round, name string, arc Key, least, most float64) []finding {
	a, g, ok := s.both(arc, r.girth)
	switch {
	case !ok:
		return nil
	case a >= g:
		return []finding{found(name+"-arc-not-below-girth", r.level, arc, a-g,
			"The %s arc at the %s, %.0f mm, is not shorter than the whole girth, %.0f mm; the arc is left out.", name, r.level, a, g).leaving(arc)}
	case a < least*g || a > most*g:
		bound := math.Min(math.Max(a, least*g), most*g)
		return []finding{found(name+"-arc-share", r.level, arc, math.Abs(a-bound),
			"The %s arc at the %s, %.0f mm, is %.0f %% of the girth, %.0f mm; %.0f to %.0f %% is usual, so %.0f mm is used.",
			name, r.level, a, 100*a/g, g, 100*least, 100*most, bound).setting(arc, bound)}
	}
	return nil
}

// hulls: a tape round a section that is b broad and d deep is at least twice the diagonal of
// the box b by d (the shortest closed path that touches all four sides) and at most the box's perimeter.
func hulls(s Sheet) []finding {
	var f []finding
	for _, r := range rounds {
		g, okG := s[r.girth]
		b, okB := s[r.breadth]
		d, okD := s[r.depth]
		if !okG || !okB && !okD {
			continue
		}
		if least := 2 * math.Hypot(b, d); g < least {
			f = append(f, found("girth-below-breadth-and-depth", r.level, r.girth, least-g,
				"A section with the breadth and depth taken at the %s measures at least %.0f mm round, but the girth is %.0f mm; the girth is trusted, breadth and depth are left out.",
				r.level, least, g).leaving(r.breadth, r.depth))
		}
		if most := 2 * (b + d); okB && okD && g > most {
			f = append(f, found("girth-above-breadth-and-depth", r.level, r.girth, g-most,
				"A section with the breadth and depth taken at the %s measures at most %.0f mm round, but the girth is %.0f mm; breadth and depth are left out.",
				r.level, most, g).leaving(r.breadth, r.depth))
		}
	}
	return f
}
