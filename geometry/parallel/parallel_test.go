package parallel_test

import (
	"sync/atomic"
	"testing"

	"understructure/geometry/parallel"
)

func TestEveryNumberOnce(t *testing.T) {
	for _, n := range []int{0, 1, 2, 1000} {
		seen := make([]atomic.Int32, n)
		parallel.Each(n, func(i int) { seen[i].Add(1) })
		for i := range seen {
			if got := seen[i].Load(); got != 1 {
				t.Errorf("of %d, number %d was done %d times", n, i, got)
			}
		}
	}
}

func TestAPanicReachesTheCaller(t *testing.T) {
	defer func() {
		if p := recover(); p != "torn" {
			t.Errorf("recovered %v, want what was thrown", p)
		}
	}()
	parallel.Each(100, func(i int) {
		if i == 50 {
			panic("torn")
		}
	})
	t.Error("the panic was lost")
}
