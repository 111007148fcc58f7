package store

import "math"

// assign gives each row a column of its own so that as many rows as possible have one and their costs add up to
// the least. An infinite cost means that the two do not go together. It returns the column of each row, -1 where a row
// has none. The method of Kuhn and Munkres with potentials, one shortest path a row, O(rows² × columns) (R. Jonker and
// A. Volgenant, "A shortest augmenting path algorithm for dense and sparse linear assignment problems", 1987).
func assign(costs [][]float64) []int {
	padded, real := withStandIns(costs)
	n := len(padded)
	if n == 0 {
		return nil
	}
	m := len(padded[0])
	// Rows and columns are counted from 1; column 0 is where the row to be placed stands.
	rowPrice, columnPrice := make([]float64, n+1), make([]float64, m+1)
	owner := make([]int, m+1) // the row that has a column
	for row := 1; row <= n; row++ {
		owner[0] = row
		from := shortest(padded, owner, rowPrice, columnPrice)
		for j := from.end; j != 0; j = from.before[j] {
			owner[j] = owner[from.before[j]]
		}
	}
	out := make([]int, n)
	for i := range out {
		out[i] = -1
	}
	for j := 1; j <= real; j++ {
		if i := owner[j] - 1; i >= 0 && !math.IsInf(costs[i][j-1], 1) {
			out[i] = j - 1
		}
	}
	return out
}

// withStandIns adds a column for every row that stands for having none, dearer than all other costs
// together, so that none is left without where there is a way. real is the number of true columns.
func withStandIns(costs [][]float64) (padded [][]float64, real int) {
	dear := 1.0
	for _, row := range costs {
		real = len(row)
		for _, c := range row {
			if !math.IsInf(c, 1) {
				dear += math.Abs(c)
			}
		}
	}
	for _, row := range costs {
		wide := make([]float64, real+len(costs))
		for j := range wide {
			wide[j] = dear
			if j < real {
				wide[j] = math.Min(row[j], 3*dear) // never better than none
			}
		}
		padded = append(padded, wide)
	}
	return padded, real
}

// path leads from column 0 to a column that nobody has, by the column before each.
type path struct {
	end    int
	before []int
}

// shortest finds the cheapest way to place the row at column 0 by moving others on, and brings the prices up to date.
func shortest(costs [][]float64, owner []int, rowPrice, columnPrice []float64) path {
	m := len(columnPrice) - 1
	least, seen := make([]float64, m+1), make([]bool, m+1)
	for j := range least {
		least[j] = math.Inf(1)
	}
	p := path{before: make([]int, m+1)}
	for owner[p.end] != 0 {
		seen[p.end] = true
		i, step, next := owner[p.end], math.Inf(1), 0
		for j := 1; j <= m; j++ {
			if seen[j] {
				continue
			}
			if c := costs[i-1][j-1] - rowPrice[i] - columnPrice[j]; c < least[j] {
				least[j], p.before[j] = c, p.end
			}
			if least[j] < step {
				step, next = least[j], j
			}
		}
		for j := range least {
			if seen[j] {
				rowPrice[owner[j]] += step
				columnPrice[j] -= step
			} else {
				least[j] -= step
			}
		}
		p.end = next
	}
	return p
}
