package record

import (
	"errors"
	"reflect"
	"strings"
	"testing"
)

// FuzzDecode: whatever the text, Decode gives a record that is written and read back as
// itself, or a refusal that says something; it never panics.
func FuzzDecode(f *testing.F) {
	for _, text := range demos(f) {
		f.Add(text)
	}
	for _, c := range hostile {
		if len(c.text) < 4096 {
			f.Add(c.text)
		}
	}
	f.Add(body(`"mount": {"ease": {"waist": 8, "high hip": 20}, "wadding": [{"thickness": 3}], "paper": [300, 400]}`))
	f.Add(body(`"mount": {"skirt": {"support": "bustle frame", "steels": 1e0, "band_fastens": true}, "sleeves": {"bend_deg": 0}, "pads": {"shoulder": true, "hip": 20}}`))
	f.Add(body(`"mount": {"planks": [{"thickness": 50, "length": 2400, "width": 1200, "count": 2, "price": 48.5}], "offcuts": [{"thickness": 25, "length": 400, "width": 300}]}`))
	f.Add(body(`"mount": {"wadding": {"thickness": 6, "width": 1000}, "cover": {"width": 1600}, "prices": {"currency": "EUR", "plank": 0, "wadding": 4.25}, "printer": {"x": 99.6, "y": 1002e-1}}`))
	f.Add(body(`"mount": {"planks": [null], "offcuts": [{"length": 1e999}], "prices": {"currency": "=1"}, "printer": {"x": 103}}`))
	f.Add(full)
	f.Fuzz(func(t *testing.T, text string) {
		r, err := Decode(strings.NewReader(text))
		if err != nil {
			var refusal *Refusal
			if !errors.As(err, &refusal) || refusal.Message == "" {
				t.Fatalf("refused without a reason: %v", err)
			}
			return
		}
		if again := decode(t, encode(t, r)); !reflect.DeepEqual(again, r) {
			t.Fatalf("read back as\n%+v\nwas\n%+v", again, r)
		}
	})
}

func BenchmarkDecode(b *testing.B) {
	text := demos(b)["demo-1872-bodice.json"]
	for b.Loop() {
		if _, err := Decode(strings.NewReader(text)); err != nil {
			b.Fatal(err)
		}
	}
}
