package sheet

import (
	"math"

	"understructure/geometry/plane"
)

// tally counts the cells of a grid that are not empty in any upright rectangle at once (a summed-area table: F. C. Crow,
// "Summed-area tables for texture mapping", 1984). It knows the grid as it was when it was made.
type tally struct {
	f   *free
	sum []int32 // by row and column, one more of each than the grid has: of all cells below and left
}

func (f *free) tally() tally {
	wide := f.columns + 1
	t := tally{f, make([]int32, wide*(f.rows+1))}
	for r := range f.rows {
		var row int32
		for c := range f.columns {
			if f.taken[r*f.columns+c] != empty {
				row++
			}
			t.sum[(r+1)*wide+c+1] = t.sum[r*wide+c+1] + row
		}
	}
	return t
}

// empty reports whether a rectangle of w × h about a place lies on the grid and covers empty cells only.
func (t tally) empty(centre plane.Point, w, h float64) bool {
	f := t.f
	left, right := t.cell(centre.X-w/2-f.box.Lo.X), t.cell(centre.X+w/2-f.box.Lo.X)
	low, high := t.cell(centre.Y-h/2-f.box.Lo.Y), t.cell(centre.Y+h/2-f.box.Lo.Y)
	if left < 0 || low < 0 || right >= f.columns || high >= f.rows {
		return false
	}
	wide := f.columns + 1
	return t.sum[(high+1)*wide+right+1]-t.sum[(high+1)*wide+left]-t.sum[low*wide+right+1]+t.sum[low*wide+left] == 0
}

func (t tally) cell(x float64) int { return int(math.Floor(x / t.f.cell)) }
