package batch

import (
	"context"
	"sync"
	"sync/atomic"
)

// Each calls work for every number below n, at most so many at a time, and gives each answer to done, one
// after the other, as they come. Nothing is begun after ctx ends; what is at work then is waited for. Nothing but
// what done keeps stays in memory.
func Each[T any](ctx context.Context, n, workers int, work func(i int) T, done func(i int, answer T)) {
	var next atomic.Int64
	var wg sync.WaitGroup
	var one sync.Mutex
	for range min(workers, n) {
		wg.Go(func() {
			for ctx.Err() == nil {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				answer := work(i)
				one.Lock()
				done(i, answer)
				one.Unlock()
			}
		})
	}
	wg.Wait()
}
