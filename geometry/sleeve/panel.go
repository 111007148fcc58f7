package sleeve

import (
	"fmt"
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// Panel is one flat piece of an arm: its seam line as edges that follow one another, counter-clockwise, each
// beginning where the one before ends. Edges of one name on two panels are sewn together and equally long.
type Panel struct {
	Edges  []Edge
	Elbow  []plane.Point // where the elbow crosses, from left to right; nil where it does not
	Strain float64       // greatest stretch or squeeze when laid flat, as a fraction
}

// Edge is a stretch of a panel's outline.
type Edge struct {
	Name string
	Line []plane.Point
}

// The edges of an arm.
const (
	FrontSeam = "front seam" // inside the elbow
	BackSeam  = "back seam"  // over the elbow
	HeadFront = "front of the head"
	HeadBack  = "back of the head"
	Pleat     = "pleat" // of the over-arm alone: folded away
	OverEnd   = "end of the over-arm"
	UnderEnd  = "end of the under-arm"
)

// Outline is the panel's seam line.
func (p Panel) Outline() plane.Ring {
	var r plane.Ring
	for _, e := range p.Edges {
		r = append(r, e.Line[:len(e.Line)-1]...)
	}
	return r
}

// Edge returns the edge of a name, nil where the panel has none.
func (p Panel) Edge(name string) []plane.Point {
	for _, e := range p.Edges {
		if e.Name == name {
			return e.Line
		}
	}
	return nil
}

// Sewn is what an arm is sewn from.
type Sewn struct {
	Over, Under Panel
	Disc        Panel   // of card, for the end
	Gap         float64 // of the seam of the head, in its middle, to leave open for the filling
	Notices     []measure.Notice
}

// gap is left open at the head for filling (handbooks of mounting: 10 cm), and of a narrow arm at most gapShare of the seam.
const gap, gapShare = 100.0, 0.7

// Sewn lays the arm out: the over-arm with a head that an inverted box pleat gathers to the
// under-arm's edge, the under-arm, and the disc that closes the end.
func (a Arm) Sewn() (Sewn, error) {
	over, under, err := a.Halves()
	if err != nil {
		return Sewn{}, fmt.Errorf("sleeve: the arm cannot be laid flat: %w", err)
	}
	var s Sewn
	last := len(a.At) - 1
	foot := reversed(under.Line(last)) // from back to front, counter-clockwise
	length := curve.Length(foot)
	back, front := cut(foot, length/2)
	s.Under = Panel{Strain: under.Flat.Strain.Greatest, Elbow: under.elbow(), Edges: []Edge{
		{UnderEnd, under.Line(0)}, {BackSeam, under.Side(true)}, {HeadBack, back}, {HeadFront, front}, {FrontSeam, reversed(under.Side(false))},
	}}
	head, lowered := a.head(over.Line(last), length)
	front, rest := cut(head, length/2)
	pleat, back := cut(rest, curve.Length(rest)-length/2)
	s.Over = Panel{Strain: over.Flat.Strain.Greatest, Elbow: over.elbow(), Edges: []Edge{
		{OverEnd, over.Line(0)}, {FrontSeam, over.Side(true)}, {HeadFront, front}, {Pleat, pleat}, {HeadBack, back}, {BackSeam, reversed(over.Side(false))},
	}}
	s.Disc = disc(curve.Length(over.Line(0)), curve.Length(under.Line(0)))
	s.Gap = math.Min(gap, gapShare*length)
	if lowered > 1 {
		s.Notices = append(s.Notices, measure.Notice{Code: "arm-head-low", Key: measure.SleeveLength, Amount: lowered, Message: fmt.Sprintf(
			"The head of the arm is %.0f mm lower than the sleeve's: a higher one could not be pleated to the under-arm. Fill the top of the sleeve with soft wadding.", lowered)})
	}
	return s, nil
}

func (h Half) elbow() []plane.Point {
	if h.Elbow < 0 {
		return nil
	}
	return h.Line(h.Elbow)
}

// mostPleat is how much longer than the edge that it is sewn to a head may be, in lengths of that
// edge: the folds of an inverted box pleat then meet behind it from end to end.
const mostPleat = 2.0

// headSteps is how finely a head is drawn: chords that miss an ellipse of 100 by 150 mm by less than 0.1 mm.
const headSteps = 48

// head is the edge of the over-arm above its top row, from right to left: half an ellipse, as high as
// the sleeve's head, or lower where it could not be pleated to an edge of a length, and by how much lower.
func (a Arm) head(row []plane.Point, edge float64) (line []plane.Point, lowered float64) {
	left, right := row[0], row[len(row)-1]
	middle := left.Lerp(right, 0.5)
	across := right.Sub(middle)
	up := plane.Point{X: -across.Y, Y: across.X}.Mul(1 / across.Norm())
	rise := row[len(row)/2].Sub(middle).Dot(up) // the row is a little curved
	at := func(height float64) []plane.Point {
		out := make([]plane.Point, headSteps+1)
		for i := range out {
			sin, cos := math.Sincos(math.Pi * float64(i) / headSteps)
			out[i] = middle.Add(across.Mul(cos)).Add(up.Mul(sin * (height + rise)))
		}
		out[0], out[headSteps] = right, left
		return out
	}
	most := (1 + mostPleat) * edge
	if curve.Length(at(a.Head)) <= most {
		return at(a.Head), 0
	}
	height, err := curve.Root(func(h float64) float64 { return curve.Length(at(h)) - most }, 0, a.Head, 1e-6)
	if err != nil {
		panic("sleeve: the over-arm is three times as wide as the under-arm")
	}
	return at(height), a.Head - height
}

// thinWrist is the girth up to which the end is closed by a round disc, and by an oval one beyond; an oval
// is ovalness longer from front to back than across. That thin arms take round discs and thick ones oval is
// in handbooks of mounting; both figures are from memory.
const thinWrist, ovalness = 180.0, 1.3

// disc closes an end that has two edges of these lengths. It is seen from above, outward to the right and
// the front up.
func disc(over, under float64) Panel {
	const n = 180
	long := 1.0
	if over+under > thinWrist {
		long = ovalness
	}
	ring := make(plane.Ring, n)
	for i := range ring {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		ring[i] = plane.Point{X: cos, Y: long * sin}
	}
	scale := (over + under) / ring.Perimeter()
	for i := range ring {
		ring[i] = ring[i].Mul(scale)
	}
	first, rest := cut(append(ring, ring[0]), over/2)
	below, last := cut(rest, under)
	return Panel{Edges: []Edge{{OverEnd, append(last, first[1:]...)}, {UnderEnd, below}}}
}

// cut divides a line at a length along it.
func cut(line []plane.Point, at float64) (first, rest []plane.Point) {
	for i := 1; i < len(line); i++ {
		step := line[i].Dist(line[i-1])
		if at < step || i == len(line)-1 {
			p := line[i-1].Lerp(line[i], math.Max(0, math.Min(1, at/step)))
			first = append(append(first, line[:i]...), p)
			return first, append([]plane.Point{p}, line[i:]...)
		}
		at -= step
	}
	panic("sleeve: a line of one point has no length")
}

func reversed(line []plane.Point) []plane.Point { return plane.Ring(line).Reverse() }
