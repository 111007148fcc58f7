package sheet_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
	"understructure/patterns/sheet"
)

// onPrinter lays the made-up plan for a printer whose rules of 100 mm measure x and y.
func onPrinter(t *testing.T, paper string, x, y float64) []sheet.Page {
	t.Helper()
	p := plantest.Plan()
	p.Paper, _ = sheet.Named(paper)
	p.Paper.ScaleX, p.Paper.ScaleY = 100/x, 100/y
	pages, err := sheet.Lay(context.Background(), p, sheet.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

// However a printer shrinks or stretches, about either edge or the middle, everything stays as far from the edges of
// the paper as on any other page, and every length comes out as it is meant.
func TestNothingLeavesTheSheetOfAPrinterThatIsNotTrue(t *testing.T) {
	for _, paper := range []string{"A4", "A1", "roll-610"} {
		size, _ := sheet.Named(paper)
		for _, measured := range [][2]float64{{98, 102}, {102, 98}, {99.6, 100.2}} {
			for i, pg := range onPrinter(t, paper, measured[0], measured[1]) {
				on := pg.Print()
				if math.Abs(on.Width-size.Width) > 1e-9 || on.Height > size.Height+1e-9 || !size.Roll && math.Abs(on.Height-size.Height) > 1e-9 {
					t.Fatalf("%s page %d: a paper of %g × %g mm", paper, i+1, on.Width, on.Height)
				}
				safe := drawing.Box{Hi: plane.Point{X: on.Width, Y: on.Height}}.Grow(-9)
				for _, about := range []float64{0, 0.5, 1} {
					fixed := plane.Point{X: about * on.Width, Y: about * on.Height}
					printed := func(q plane.Point) plane.Point {
						x, y := q.X*on.Scale.X+on.At.X, q.Y*on.Scale.Y+on.At.Y
						return plane.Point{X: fixed.X + (x-fixed.X)*measured[0]/100, Y: fixed.Y + (y-fixed.Y)*measured[1]/100}
					}
					for _, l := range drawn(pg).Lines {
						for k, q := range l.Points {
							if !safe.Contains(printed(q)) {
								t.Fatalf("%s page %d, printer %v: %v is printed at %v", paper, i+1, measured, q, printed(q))
							}
							if k > 0 && math.Abs(printed(q).Dist(printed(l.Points[0]))-q.Dist(l.Points[0])) > 1e-9 {
								t.Fatalf("%s page %d, printer %v: a length changes", paper, i+1, measured)
							}
						}
					}
				}
			}
		}
	}
}

// A page says that it is for one printer only; any other page says nothing of printers, and nothing is moved there.
func TestAPageSaysForWhichPrinterItIs(t *testing.T) {
	says := func(pg sheet.Page) (text string) {
		for _, w := range drawn(pg).Words {
			text += w.Text + "\n"
		}
		return text
	}
	if text := says(onPrinter(t, "A4", 99.6, 100.2)[0]); !strings.Contains(text, "Drawn ×1.004 across, ×0.998 up for this printer.") || !strings.Contains(text, sheet.ScaleNote) {
		t.Error(text)
	}
	plain := laid(t, plantest.Plan(), "A4")[0]
	if strings.Contains(says(plain), "printer") || plain.Print() != (sheet.Print{Width: 210, Height: 297, Scale: plane.Point{X: 1, Y: 1}}) {
		t.Errorf("%+v", plain.Print())
	}
}

func TestAPrinterThatWasNotMeasuredAt100Percent(t *testing.T) {
	for _, scale := range []float64{1.03, 0.97, -1, math.NaN(), math.Inf(1)} {
		p := plan.Paper{Name: "A4", Width: 210, Height: 297, ScaleX: 1, ScaleY: scale}
		if err := sheet.Check(p); err == nil || !strings.Contains(err.Error(), fmt.Sprintf("×%g", scale)) {
			t.Errorf("×%g: %v", scale, err)
		}
	}
}
