package padding

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// inParallel calls f once for every number below n, on all processors. f writes only what
// belongs to its number, so the order does not show.
func inParallel(n int, f func(i int)) {
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), n) {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				f(i)
			}
		}()
	}
	wg.Wait()
}
