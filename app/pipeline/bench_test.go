package pipeline

import (
	"context"
	"testing"

	"understructure/app/record"
)

func BenchmarkRunDemo(b *testing.B) {
	r, err := record.Load("../../assets/demo-1872-bodice.json")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Run(context.Background(), r, nil); err != nil {
			b.Fatal(err)
		}
	}
}
