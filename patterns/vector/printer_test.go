package vector

import (
	"bytes"
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

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
		pages, err := sheet.Lay(p)
		if err != nil {
			t.Fatal(err)
		}
		var b bytes.Buffer
		if err := PDF(&b, pages, Meta{Title: name}); err != nil {
			t.Fatal(err)
		}
		out := filepath.Join(t.TempDir(), "page.pgm")
		run(t, "pdftoppm", "-gray", "-rx", fmt.Sprint(dpi*across/100), "-ry", fmt.Sprint(dpi*up/100), "-f", "1", "-l", "1", "-singlefile",
			file(t, "page.pdf", b.Bytes()), strings.TrimSuffix(out, ".pgm"))
		g := pgm(t, out)
		on := pages[0].Print()
		level, upright := ruleTicks(pages[0])
		for i := range level {
			level[i].X = (level[i].X*on.Scale.X + on.At.X) * across / 100
			level[i].Y = (level[i].Y*on.Scale.Y + on.At.Y) * up / 100
			upright[i].X = (upright[i].X*on.Scale.X + on.At.X) * across / 100
			upright[i].Y = (upright[i].Y*on.Scale.Y + on.At.Y) * up / 100
		}
		high := on.Height * up / 100
		got := [2]float64{
			centre(g, level[1], high, true) - centre(g, level[0], high, true),
			centre(g, upright[0], high, false) - centre(g, upright[1], high, false),
		}
		t.Logf("%s: %.3f mm across, %.3f mm up", name, got[0], got[1])
		if math.Abs(got[0]-want[0]) > 0.05 || math.Abs(got[1]-want[1]) > 0.05 {
			t.Errorf("%s: %.3f mm across, %.3f mm up, want %v", name, got[0], got[1], want)
		}
	}
}
