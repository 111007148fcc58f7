package batch

import (
	"context"
	"fmt"
	"os"
	"runtime"
	"strconv"
	"testing"

	"understructure/app/pipeline"
	"understructure/app/record"
)

// many is how many records TestBatchMemory computes: a few unless BATCH says otherwise, as make bench does.
func many(t *testing.T) int {
	text, ok := os.LookupEnv("BATCH")
	if !ok {
		return 30
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 30 {
		t.Fatalf("BATCH is %q; a number of 30 or more is wanted", text)
	}
	return n
}

// Real mounts, one after another: after a third of them no less is in use than after all. A mount kept by
// mistake is 0.7 to 1.3 MB; kept from each of the other two thirds they would be 14 or more.
func TestBatchMemory(t *testing.T) {
	r, err := record.Load("../../assets/demo-1872-bodice.json")
	if err != nil {
		t.Fatal(err)
	}
	inUse := func() uint64 {
		var m runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	n := many(t)
	var early, late uint64
	all := make([]Item, n)
	for i := range all {
		all[i].Name = fmt.Sprint(i)
	}
	outcomes := Run(context.Background(), all, func(ctx context.Context, _ Item) (Made, error) {
		p, err := pipeline.Shape(ctx, r)
		return Made{Pieces: len(p.Pieces)}, err
	}, func(done, _ int) {
		switch done {
		case n / 3:
			early = inUse()
		case n:
			late = inUse()
		}
	})
	for _, o := range outcomes {
		if o.Err != nil {
			t.Fatal(o.Err)
		}
	}
	t.Logf("%.1f MB in use after %d records, %.1f MB after %d", float64(early)/1e6, n/3, float64(late)/1e6, n)
	const working = 2      // mounts that may be in the making when it is looked
	one := uint64(4 << 20) // bytes
	if late > early+working*one {
		t.Errorf("%d bytes in use after %d records, %d after %d", early, n/3, late, n)
	}
}
