// Package trace reads breadths and depths off a silhouette that somebody traced over a photograph, and fits
// a figure to them: where no callipers say otherwise, and with every tape girth held. That a photograph of the
// same period helps to get the silhouette right is common practice, no published source.
//
// It does not correct perspective: what it is given must come from a photograph taken from far away, and level.
package trace

import (
	"math"

	"understructure/geometry/plane"
)

// smooth is over how much height a traced line is smoothed, mm to either side: a hand trembles by about a
// millimetre (from memory). A parabola is laid through what lies there, so that a straight flank stays exactly
// what it is, and a tight waist is not filled up.
const smooth, steps = 12.0, 6

// meeting is how near to each other the ends of a line lie that was meant to be closed, mm.
const meeting = 15.0

// Extent returns how far a silhouette reaches to the left and to the right at a height, in millimetres of the
// view: the outermost places where the line crosses it, lightly smoothed. It is false where the line does not cross
// the height twice. The line may be closed, or open: up one side and down the other, over the top or through the
// air between. Lines in between, such as a way from one side to the other, do no harm.
func Extent(line []plane.Point, height float64) (left, right float64, ok bool) {
	var lefts, rights []float64 // below and above the height, summed; at first the height itself, twice
	for k := 0; k <= steps; k++ {
		d := smooth * float64(k) / steps
		l0, r0, below := crossed(line, height-d)
		l1, r1, above := crossed(line, height+d)
		if !below || !above {
			break
		}
		lefts, rights = append(lefts, l0+l1), append(rights, r0+r1)
	}
	if len(lefts) == 0 {
		return 0, 0, false
	}
	return middle(lefts), middle(rights), true
}

// middle is the value in the middle of the parabola nearest to 2m+1 values in a row, given as the sums of those as far
// before as behind (A. Savitzky and M. Golay, Smoothing and Differentiation of Data by Simplified Least Squares
// Procedures, Analytical Chemistry 36, 1964).
func middle(pairs []float64) float64 {
	m := float64(len(pairs) - 1)
	sum, weight := 0.0, 0.0
	for k, pair := range pairs {
		w := 3*m*m + 3*m - 1 - 5*float64(k*k)
		if k == 0 { // the middle is its own pair
			w /= 2
		}
		sum, weight = sum+w*pair, weight+2*w
	}
	return sum / weight
}

// crossed is where the line crosses a height farthest to the left and to the right.
func crossed(line []plane.Point, height float64) (left, right float64, ok bool) {
	left, right = math.Inf(1), math.Inf(-1)
	for i := 1; i < len(line); i++ {
		left, right = across(line[i-1], line[i], height, left, right)
	}
	if last := len(line) - 1; last > 0 && line[0].Dist(line[last]) <= meeting {
		left, right = across(line[last], line[0], height, left, right)
	}
	return left, right, right > left
}

// across widens an extent by where a straight line crosses a height.
func across(a, b plane.Point, height, left, right float64) (l, r float64) {
	if (a.Y < height) == (b.Y < height) {
		return left, right
	}
	x := a.X + (b.X-a.X)*(height-a.Y)/(b.Y-a.Y)
	return min(left, x), max(right, x)
}
