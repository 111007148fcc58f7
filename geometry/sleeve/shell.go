package sleeve

import (
	"math"

	"understructure/geometry/flatten"
	"understructure/geometry/plane"
	"understructure/geometry/space"
)

// overShare is the part of the girth that the over-arm takes: slightly more than the under-arm, so that the seams lie
// out of sight. That it is larger is in handbooks of mounting; the figure is from memory.
const overShare = 0.53

// overColumns and underColumns are how finely the two pieces are drawn across: chords that miss the
// skin of a thick arm by 0.1 mm.
const overColumns, underColumns = 26, 23

// Half is one of the two pieces of an arm, laid flat with its end at the bottom, seen from outside.
type Half struct {
	Flat  flatten.Flat
	Rows  [][]int // points of every row of the arm, from the end up, each from left to right
	Elbow int     // the row of the elbow, −1 where there is none
}

// Halves lays over-arm and under-arm flat. Between end, elbow and head both have seams
// of one length, and at these three places the girth of the arm together.
func (a Arm) Halves() (over, under Half, err error) {
	half := math.Pi * overShare
	if over, err = a.half(-half, half, overColumns); err != nil {
		return
	}
	under, err = a.half(half, 2*math.Pi-half, underColumns)
	return
}

// half lays the skin between two angles, counted from the outside of the arm to the front.
func (a Arm) half(from, to float64, columns int) (Half, error) {
	frames := a.frames()
	h := Half{Elbow: -1}
	var mesh flatten.Patch
	n := columns + 1
	for i, f := range frames {
		var row []int
		for j := range n {
			v := len(mesh.Points)
			mesh.Points = append(mesh.Points, f.on(from+(to-from)*float64(j)/float64(columns), a.radius(i)))
			row = append(row, v)
			if i > 0 && j > 0 {
				mesh.Triangles = append(mesh.Triangles, [3]int{v - n - 1, v - n, v}, [3]int{v - n - 1, v, v - 1})
			}
		}
		h.Rows = append(h.Rows, row)
		if a.At[i] == a.Elbow {
			h.Elbow = i
		}
	}
	var err error
	h.Flat, err = flatten.Lay(mesh, flatten.Options{Keep: h.kept()})
	return h, err
}

// kept are the lengths that the flat piece keeps: both seams from held row to held row, and those rows.
func (h Half) kept() [][]int {
	last, right := len(h.Rows)-1, len(h.Rows[0])-1
	held := []int{0, last}
	if h.Elbow >= 0 {
		held = []int{0, h.Elbow, last}
	}
	var runs [][]int
	for k, row := range held {
		runs = append(runs, h.Rows[row])
		if k == 0 {
			continue
		}
		for _, column := range []int{0, right} {
			var run []int
			for i := held[k-1]; i <= row; i++ {
				run = append(run, h.Rows[i][column])
			}
			runs = append(runs, run)
		}
	}
	return runs
}

// Line is a row of the flat piece, from left to right.
func (h Half) Line(row int) []plane.Point {
	line := make([]plane.Point, len(h.Rows[row]))
	for i, v := range h.Rows[row] {
		line[i] = h.Flat.Points[v]
	}
	return line
}

// Side is the right (front of an over-arm) or left seam of the flat piece, from the end up.
func (h Half) Side(right bool) []plane.Point {
	line := make([]plane.Point, len(h.Rows))
	for i, row := range h.Rows {
		v := row[0]
		if right {
			v = row[len(row)-1]
		}
		line[i] = h.Flat.Points[v]
	}
	return line
}

// radius of the arm at a row, so that a tape round its corners is the girth.
func (a Arm) radius(row int) float64 {
	chords := 2 * overColumns * math.Sin(math.Pi*overShare/overColumns)
	chords += 2 * underColumns * math.Sin(math.Pi*(1-overShare)/underColumns)
	return a.Girth[row] / chords
}

// frame is a place on the middle line of the arm, and the directions outward and forward there.
type frame struct{ middle, out, front space.Point }

// on is the place at an angle from outward to forward, at a distance from the middle.
func (f frame) on(angle, r float64) space.Point {
	sin, cos := math.Sincos(angle)
	return f.middle.Add(f.out.Mul(r * cos)).Add(f.front.Mul(r * sin))
}

// frames walks down from the armhole and returns the rows' frames from the end up.
func (a Arm) frames() []frame {
	n := len(a.At)
	out := make([]frame, n)
	at := space.Point{}
	for i := n - 1; i >= 0; i-- {
		turn := a.turned(a.At[i])
		sin, cos := math.Sincos(turn)
		if i < n-1 {
			d, dr := a.At[i]-a.At[i+1], a.radius(i)-a.radius(i+1)
			s, c := math.Sincos((turn + a.turned(a.At[i+1])) / 2)
			at = at.Add(space.Point{Y: s, Z: -c}.Mul(math.Sqrt(math.Max(d*d-dr*dr, 0))))
		}
		out[i] = frame{at, space.Point{X: 1}, space.Point{Y: cos, Z: sin}}
	}
	return out
}

// turned is how far the arm has turned to the front at a place. It bends over its own thickness above and below the
// elbow, in an arm long enough: a shorter bend would strain the pieces more.
func (a Arm) turned(at float64) float64 {
	if a.Elbow < 0 {
		return 0
	}
	reach := min(a.round(a.Elbow)/math.Pi, a.Elbow, a.At[0]-a.Elbow)
	t := math.Max(0, math.Min(1, (at-a.Elbow+reach)/(2*reach)))
	return a.Bend * t * t * (3 - 2*t)
}

// Volume is the space inside the arm and its head, mm³: what is to be filled. The head is taken as
// a cylinder cut aslant.
func (a Arm) Volume() float64 {
	v := 0.0
	for i := 1; i < len(a.At); i++ {
		r, q := a.radius(i), a.radius(i-1)
		v += math.Pi / 3 * (r*r + r*q + q*q) * (a.At[i-1] - a.At[i])
	}
	r := a.radius(len(a.At) - 1)
	return v + math.Pi*r*r*a.Head/2
}
