// Package parallel does the same work for many numbers on all processors.
// It knows nothing of the work.
package parallel

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// Each calls f once for every number below n. f writes only what belongs to its number, so the order does
// not show. A panic of f goes on in whoever called Each, where it can be recovered, after the others have ended.
func Each(n int, f func(i int)) {
	var next atomic.Int64
	var wg sync.WaitGroup
	var first sync.Once
	var fault any
	for range min(runtime.GOMAXPROCS(0), n) {
		wg.Go(func() {
			defer func() {
				if p := recover(); p != nil {
					first.Do(func() { fault = p })
				}
			}()
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				f(i)
			}
		})
	}
	wg.Wait()
	if fault != nil {
		panic(fault)
	}
}
