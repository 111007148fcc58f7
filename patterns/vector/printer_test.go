package vector

import (
	"bytes"
	"context"
	"math"
	"testing"

	"understructure/geometry/plane"
	"understructure/patterns/judge"
	"understructure/patterns/sheet"
)

// A made-up printer makes 100 mm 99 mm across and 101 mm up: another program draws the page with so many fewer and more
// pixels than it takes for a millimetre. What is drawn for that printer measures 100 mm there within 0.05 mm, and what is
// drawn for any other does not.
func TestAPrinterThatIsNotTrueIsCorrected(t *testing.T) {
	const across, up = 99.0, 101.0
	for name, want := range map[string][2]float64{"corrected": {100, 100}, "as it is": {across, up}} {
		p := small()
		p.Paper, _ = sheet.Named("A4")
		if name == "corrected" {
			p.Paper.ScaleX, p.Paper.ScaleY = 100/across, 100/up
		}
		pages, err := sheet.Lay(context.Background(), p, sheet.Options{})
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := PDF(&b, pages, Meta{Title: name}); err != nil {
			t.Fatal(err)
		}
		g := judge.Squeezed(t, file(t, "page.pdf", b.Bytes()), 1, across/100, up/100)
		on := pages[0].Print()
		printed := func(q plane.Point) plane.Point {
			return plane.Point{X: (q.X*on.Scale.X + on.At.X) * across / 100, Y: (q.Y*on.Scale.Y + on.At.Y) * up / 100}
		}
		level, upright := judge.Rules(pages[0])
		got := [2]float64{
			g.Middle(printed(level[1]), true) - g.Middle(printed(level[0]), true),
			g.Middle(printed(upright[1]), false) - g.Middle(printed(upright[0]), false),
		}
		t.Logf("%s: %.3f mm across, %.3f mm up", name, got[0], got[1])
		if math.Abs(got[0]-want[0]) > 0.05 || math.Abs(got[1]-want[1]) > 0.05 {
			t.Errorf("%s: %.3f mm across, %.3f mm up, want %v", name, got[0], got[1], want)
		}
	}
}
