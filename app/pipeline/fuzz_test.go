package pipeline_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/geometry/measure"
)

// FuzzPossible: whatever lies within the ranges of a record, however absurd the whole, there is a mount or a
// refusal that says why; nothing panics. Only the figure and what pads it are tried, which the window draws at every key; the
// pieces take longer than a fuzzer waits.
func FuzzPossible(f *testing.F) {
	f.Add(uint16(1872), []byte("the quick brown fox jumps over the lazy dog, and over a bodice"))
	f.Add(uint16(1830), []byte{})
	f.Add(uint16(0), []byte{255, 0, 255, 0, 255, 0, 255, 0, 255, 0, 255, 0, 255, 0, 255, 0, 255, 0, 255, 0, 255, 0, 255, 0})
	f.Fuzz(func(t *testing.T, year uint16, shares []byte) { answered(t, possible(year, shares), false) })
}

// TestPossibleRecords is the same for records drawn at random, a quarter of them with their pieces, which reach farther in a short time than
// those that a fuzzer grows; POSSIBLE=5000 tries more.
func TestPossibleRecords(t *testing.T) {
	n := 24
	if text := os.Getenv("POSSIBLE"); text != "" {
		var err error
		if n, err = strconv.Atoi(text); err != nil {
			t.Fatalf("POSSIBLE=%q is not a number", text)
		}
	}
	for k := range n {
		t.Run(strconv.Itoa(k), func(t *testing.T) {
			t.Parallel()
			chance := rand.New(rand.NewPCG(seed, uint64(k)))
			shares := make([]byte, chance.IntN(160))
			for i := range shares {
				shares[i] = byte(chance.IntN(256))
			}
			answered(t, possible(uint16(chance.IntN(200)), shares), k%4 == 0)
		})
	}
}

// answered computes a record and wants a mount or a reason, in a minute at most.
func answered(t *testing.T, text string, cut bool) {
	t.Helper()
	r, err := record.Decode(strings.NewReader(text))
	if err != nil {
		return // refused at the door; the record's own tests look after that
	}
	ctx, stop := context.WithTimeout(context.Background(), time.Minute)
	defer stop()
	if cut {
		_, err = pipeline.Run(ctx, r, nil)
	} else {
		_, err = pipeline.Shape(ctx, r)
	}
	var fault *pipeline.Fault
	if errors.As(err, &fault) {
		t.Errorf("%v\n%s\n%s", err, text, fault.Stack)
	}
	if errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("not done in a minute:\n%s", text)
	}
	if err != nil && strings.TrimSpace(err.Error()) == "" {
		t.Errorf("refused without a reason:\n%s", text)
	}
}

// drawer takes what a record holds from bytes, one a choice; with none left, nothing more is taken.
type drawer struct{ shares []byte }

func (d *drawer) next() (share float64, ok bool) {
	if len(d.shares) == 0 {
		return 0, false
	}
	share = float64(d.shares[0]) / 255
	d.shares = d.shares[1:]
	return share, true
}

func (d *drawer) oneOf(words ...string) string {
	share, _ := d.next()
	return words[int(share*float64(len(words)-1)+0.5)]
}

// sheet takes about half of what can be taken, anywhere within its range.
func (d *drawer) sheet(table []measure.Measure, always ...measure.Key) map[string]float64 {
	taken := map[string]float64{}
	for _, m := range table {
		share, ok := d.next()
		if slices.Contains(always, m.Key) || ok && share < 0.5 {
			at, _ := d.next()
			taken[string(m.Key)] = m.Min + at*(m.Max-m.Min)
		}
	}
	return taken
}

// possible is the text of a record whose every value is allowed.
func possible(year uint16, shares []byte) string {
	d := &drawer{shares}
	thickness := func(least, most float64) float64 { s, _ := d.next(); return least + s*(most-least) }
	build := d.oneOf("padded", "slices")
	garment := map[string]any{"bodice": d.sheet(measure.Keys, measure.BustGirth, measure.WaistGirth, measure.BackWaist)}
	parts := d.oneOf("bodice", "bodice, skirt", "bodice, sleeve", "bodice, skirt, sleeve")
	if strings.Contains(parts, "skirt") {
		garment["skirt"] = d.sheet(measure.Skirt)
	}
	if strings.Contains(parts, "sleeve") {
		garment["sleeve"] = d.sheet(measure.Sleeve)
	}
	whole := map[string]any{
		"understructure": 1, "unit": "mm",
		"object":  map[string]any{"number": "F", "title": "Fuzzed", "year": 1750 + int(year)%200, "wearer": d.oneOf("woman", "man", "child")},
		"garment": garment,
		"mount": map[string]any{
			"build": build, "ease": thickness(0, 150), "step": d.oneOf("inside", "flush", "bevel"),
			"wadding": []any{map[string]any{"thickness": thickness(0.5, 50)}},
			"cover":   map[string]any{"thickness": thickness(0, 10)},
			"plank":   map[string]any{"thickness": thickness(3, 200), "pole": thickness(0, 150)},
		},
	}
	if build == "padded" {
		whole["form"] = map[string]any{"label": "F", "bodice": d.sheet(measure.Keys, measure.BustGirth, measure.WaistGirth, measure.BackWaist)}
	}
	text, err := json.Marshal(whole)
	if err != nil {
		panic(fmt.Sprint("a record of plain values: ", err))
	}
	return string(text)
}
