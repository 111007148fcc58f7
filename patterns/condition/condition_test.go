package condition

import (
	"bytes"
	"strings"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/rest"
	"understructure/patterns/leaf"
	"understructure/patterns/plantest"
)

// subjects are blank sheets for everyone, and garments of odd sizes.
func subjects() map[string]Subject {
	all := map[string]Subject{"blank": Blank(""), "woman": Blank(measure.Woman), "man": Blank(measure.Man), "child": Blank(measure.Child)}
	for name, by := range map[string]float64{"tiny": 0.6, "vast": 1.7} {
		s := Blank(measure.Woman)
		for _, sheet := range []measure.Sheet{s.Garment.Bodice, s.Garment.Skirt, s.Garment.Sleeve} {
			for k := range sheet {
				sheet[k] *= by
			}
		}
		s.Number, s.Title = strings.Repeat("1872.", 40), strings.Repeat("very long title ", 30)
		all[name] = s
	}
	trained := Blank(measure.Woman)
	trained.Garment.Skirt[measure.BackLength] = 7000
	all["court train"] = trained
	all["bodice"] = Subject{Number: "1", Garment: rest.Garment{Bodice: Blank(measure.Woman).Garment.Bodice}}
	return all
}

func drawn(t *testing.T, s Subject) (pages, [2]plantest.Recorder) {
	t.Helper()
	v, err := newViews(s.Garment)
	if err != nil {
		t.Fatal(err)
	}
	p := pages{s, v}
	var r [2]plantest.Recorder
	for i, page := range []leaf.Page{p.first, p.second} {
		page(&r[i])
		leaf.Footing(&r[i], "Condition sheet – "+s.Number+" "+s.Title, i+1, 2)
	}
	return p, r
}

func TestNothingOverlapsOnAConditionSheet(t *testing.T) {
	for name, s := range subjects() {
		_, r := drawn(t, s)
		for i := range r {
			for _, f := range r[i].Faults(leaf.Paper.Grow(-4)) {
				t.Errorf("%s, page %d: %s", name, i+1, f)
			}
			for _, q := range r[i].Beyond(leaf.Paper.Grow(-8)) {
				t.Errorf("%s, page %d: a line leaves the page at %v", name, i+1, q)
			}
		}
	}
}

// Every term has a code of its own and stands on the sheet once, with its meaning.
func TestEachTermOnce(t *testing.T) {
	_, r := drawn(t, Blank(""))
	codes, names := map[string]bool{}, map[string]bool{}
	for _, term := range Terms {
		if codes[term.Code] || names[term.Name] || len(term.Code) != 2 || term.Meaning == "" {
			t.Errorf("%+v is there twice, or lacks a code of two letters or a meaning", term)
		}
		codes[term.Code], names[term.Name] = true, true
		if !term.Memory && strings.HasSuffix(term.Name, "*") {
			t.Errorf("%q is marked", term.Name)
		}
		n := 0
		for _, w := range r[0].Words {
			if w.Text == term.Code {
				n++
			}
		}
		if n != 1 {
			t.Errorf("code %s stands %d times on the sheet", term.Code, n)
		}
	}
}

// The list holds every term of Museum Textile Services, "Textile Condition Terms" (handout), "mold" in its British spelling, but for
// "deterioration", a general word that names no damage.
func TestThePublishedTermsAreThere(t *testing.T) {
	for _, want := range []string{"abrasion", "accretion", "crease", "crocking", "cut or tear", "discoloration", "embrittlement", "fading", "fold", "fraying", "hole",
		"insect damage", "loss", "mould", "oxidation", "particulates", "shattered", "soot", "stain", "stiffness", "one-way loss", "weak seam"} {
		found := false
		for _, term := range Terms {
			found = found || term.Name == want && !term.Memory
		}
		if !found {
			t.Errorf("%q is missing, or marked as from memory", want)
		}
	}
}

// A square is a round number of millimetres of the garment, large enough to write in, and the grid holds the whole of it.
func TestTheGridHoldsTheGarment(t *testing.T) {
	for name, s := range subjects() {
		p, _ := drawn(t, s)
		if float64(p.columns)*p.cell < p.flat.Breadth-1e-6 || float64(p.rows)*p.cell < p.flat.Length-1e-6 {
			t.Errorf("%s: %d × %d squares of %g mm for %g × %g", name, p.columns, p.rows, p.cell, p.flat.Breadth, p.flat.Length)
		}
		if p.cell/p.scale < leastCell {
			t.Errorf("%s: squares of %g mm on paper", name, p.cell/p.scale)
		}
	}
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 51: "AZ", 52: "BA"} {
		if got := letter(i); got != want {
			t.Errorf("column %d is %q, want %q", i, got, want)
		}
	}
}

// A pencil needs 7 mm.
func TestRowsAreHighEnoughForAPencil(t *testing.T) {
	_, r := drawn(t, Blank(""))
	across := map[float64]bool{}
	for _, l := range r[1].Lines {
		if len(l.Points) == 2 && l.Points[0].Y == l.Points[1].Y && l.Points[1].X-l.Points[0].X > 170 {
			across[l.Points[0].Y] = true
		}
	}
	last, n := 1e9, 0
	for y := range across {
		n++
		for z := range across {
			if z < y {
				last = min(last, y-z)
			}
		}
	}
	if n < rows || last < 7 {
		t.Errorf("%d lines, the closest %g mm apart; want at least %d and 7 mm", n, last, rows)
	}
}

func TestWhatIsWrittenIsTheSameTwice(t *testing.T) {
	var a, b bytes.Buffer
	for _, out := range []*bytes.Buffer{&a, &b} {
		if err := Write(out, Blank(measure.Man)); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("two sheets differ")
	}
	if err := Write(&a, Subject{}); err == nil || !strings.Contains(err.Error(), "bust_girth") {
		t.Errorf("a garment without measurements: %v", err)
	}
}

func BenchmarkWrite(b *testing.B) {
	for b.Loop() {
		var out bytes.Buffer
		if err := Write(&out, Blank("")); err != nil {
			b.Fatal(err)
		}
	}
}
