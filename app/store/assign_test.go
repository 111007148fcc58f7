package store

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

var inf = math.Inf(1)

// sum is how many rows are served, and at what cost.
func sum(costs [][]float64, chosen []int) (served int, cost float64) {
	for i, j := range chosen {
		if j >= 0 {
			served, cost = served+1, cost+costs[i][j]
		}
	}
	return served, cost
}

// tryAll finds the best answer by trying every one.
func tryAll(costs [][]float64) (served int, cost float64) {
	best := []int(nil)
	chosen := make([]int, len(costs))
	var place func(i int)
	place = func(i int) {
		if i == len(costs) {
			n, c := sum(costs, chosen)
			if best == nil || n > served || n == served && c < cost {
				best, served, cost = slices.Clone(chosen), n, c
			}
			return
		}
		chosen[i] = -1
		place(i + 1)
		for j, c := range costs[i] {
			if !math.IsInf(c, 1) && !slices.Contains(chosen[:i], j) {
				chosen[i] = j
				place(i + 1)
			}
		}
		chosen[i] = -1
	}
	place(0)
	return served, cost
}

func TestAssignByHand(t *testing.T) {
	for name, c := range map[string]struct {
		costs [][]float64
		want  []int
	}{
		"nothing":                         {nil, nil},
		"no column":                       {[][]float64{{}, {}}, []int{-1, -1}},
		"one":                             {[][]float64{{5}}, []int{0}},
		"the cheap one for the other row": {[][]float64{{1, 2}, {1, 9}}, []int{1, 0}},
		"serving two is worth any cost":   {[][]float64{{1, 1000}, {1, inf}}, []int{1, 0}},
		"more rows than columns":          {[][]float64{{3}, {1}, {2}}, []int{-1, 0, -1}},
		"more columns than rows":          {[][]float64{{9, 4, 7}}, []int{1}},
		"none goes":                       {[][]float64{{inf, inf}, {inf, 2}}, []int{-1, 1}},
		"costs of nothing":                {[][]float64{{0, 0}, {0, inf}}, []int{1, 0}},
		// Three agents and tasks with the least cost 1 + 2 + 2 = 5, hand reckoned: the six orders cost 5, 8, 7, 10, 7 and 7.
		"three by three": {[][]float64{{1, 3, 2}, {2, 2, 4}, {3, 3, 2}}, []int{0, 1, 2}},
	} {
		if got := assign(c.costs); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

func TestAssignIsBestOfAll(t *testing.T) {
	g := rand.New(rand.NewPCG(7, 1))
	for range 2000 {
		rows, columns, gaps := 1+g.IntN(6), 1+g.IntN(6), g.Float64()
		costs := make([][]float64, rows)
		for i := range costs {
			costs[i] = make([]float64, columns)
			for j := range costs[i] {
				if costs[i][j] = math.Round(g.Float64() * 20); g.Float64() < gaps {
					costs[i][j] = inf
				}
			}
		}
		chosen := assign(costs)
		served, cost := sum(costs, chosen)
		if wantServed, want := tryAll(costs); served != wantServed || math.Abs(cost-want) > 1e-9 {
			t.Fatalf("%v: %v serves %d at %v, but %d at %v can be", costs, chosen, served, cost, wantServed, want)
		}
		seen := map[int]bool{}
		for _, j := range chosen {
			if j >= 0 && seen[j] {
				t.Fatalf("%v: column %d is used twice", costs, j)
			}
			seen[j] = true
		}
	}
}

func BenchmarkAssign(b *testing.B) {
	g := rand.New(rand.NewPCG(7, 2))
	costs := make([][]float64, 300)
	for i := range costs {
		costs[i] = make([]float64, 300)
		for j := range costs[i] {
			costs[i][j] = g.Float64()
		}
	}
	for b.Loop() {
		assign(costs)
	}
}
