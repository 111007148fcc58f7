package leaf

import (
	"strings"
	"testing"

	"understructure/patterns/plantest"
)

// Words stay in their columns and apart, whatever is written into a table.
func TestTableKeepsItsColumns(t *testing.T) {
	columns := []Column{{Head: "a head of many words that must be broken", Width: 30}, {Head: "n", Width: 12, Number: true}, {Head: "note", Width: 40}}
	rows := [][]string{{"one", "123456789012345", strings.Repeat("long ", 40)}, {"", "", ""}, {strings.Repeat("x", 90), "7", "–"}}
	var r plantest.Recorder
	foot := Table(&r, columns, rows, 8, 0, Left, 200)
	for _, f := range r.Faults(Paper) {
		t.Error(f)
	}
	for _, w := range r.Words {
		at := Left
		for _, k := range columns {
			if w.At.X >= at-1e-9 && w.At.X < at+k.Width && w.At.X+w.Width() > at+k.Width {
				t.Errorf("%q leaves its column", w.Text)
			}
			at += k.Width
		}
	}
	lines := 0
	for _, l := range r.Lines {
		if l.Points[0].Y >= foot-1e-9 {
			lines++
		}
	}
	if lines != len(rows)+1 {
		t.Errorf("%d rules, want one under the head and one under each row", lines)
	}
}

// The answer that is known is crossed, and no other.
func TestTicks(t *testing.T) {
	for known, crosses := range map[string]int{"": 0, "mm": 2, "ell": 0} {
		var r plantest.Recorder
		Ticks(&r, "unit", []string{"mm", "cm", "in"}, known, Left, 100)
		n := 0
		for _, l := range r.Lines {
			if l.Pen.Width == Firm.Width {
				n++
			}
		}
		if n != crosses || len(r.Lines) != 3+crosses {
			t.Errorf("%q: %d strokes of a cross, %d lines", known, n, len(r.Lines))
		}
	}
}

// Notes go down to the foot of the page, and are left out where there is no room for two.
func TestNotes(t *testing.T) {
	for from, want := range map[float64]bool{120: true, 25: false} {
		var r plantest.Recorder
		Notes(&r, from)
		if (len(r.Lines) > 2) != want {
			t.Errorf("from %g: %d lines", from, len(r.Lines))
		}
		for _, l := range r.Lines {
			if l.Points[0].Y < Foot {
				t.Errorf("a line at %g", l.Points[0].Y)
			}
		}
	}
}

// A long text is broken within its width, and the next begins below it.
func TestLines(t *testing.T) {
	var r plantest.Recorder
	y := Items(&r, []string{strings.Repeat("word ", 60), "short"}, Text, Left, Left+70, 200)
	for _, w := range r.Words {
		if w.At.X+w.Width() > Left+70+1e-9 || w.At.Y < y {
			t.Errorf("%q at %v, below %g or too long", w.Text, w.At, y)
		}
	}
	if f := r.Faults(Paper); len(f) > 0 {
		t.Error(f)
	}
}
