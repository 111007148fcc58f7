package ui

import (
	"fmt"
	"image/color"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"understructure/app/record"
	"understructure/app/ui/look"
	"understructure/geometry/measure"
	"understructure/patterns/tapes"
)

// enter types into whatever has the keys.
func (b *bench) enter(text string) {
	b.t.Helper()
	test.Type(b.win.Canvas().Focused(), text)
	b.settle()
}

// come gives the entry of a key the keys.
func (b *bench) come(key string) {
	b.t.Helper()
	m := b.measuring()
	for i, v := range []*values{m.garment, m.form} {
		m.tabs.SelectIndex(i)
		if v.list.Focus(key) {
			return
		}
	}
	b.t.Fatalf("no entry for %s", key)
}

func TestTheSmallestOfSeveralReadingsCounts(t *testing.T) {
	b := newBench(t)
	b.come(waist)
	b.enter("62.4; 62.1")
	r := b.doc.Record().Garment
	if r.Bodice[measure.WaistGirth] != 621 || !slices.Equal(r.Readings.Bodice[measure.WaistGirth], []float64{624, 621}) {
		t.Errorf("the waist is %v of %v", r.Bodice[measure.WaistGirth], r.Readings.Bodice)
	}
	b.come(bust)
	m := sayings(b.doc).measures(fieldsOf("Garment")(b.doc.Record()), b.doc.Record())
	for _, v := range m {
		if v.Key == waist && (v.Spread != "spread 0.3 cm" || v.Wide || v.Most != record.MostReadings) {
			t.Errorf("said of the waist: %q, too wide %v, at most %d", v.Spread, v.Wide, v.Most)
		}
	}
	b.menuItem("Undo").Action()
	b.settle()
	if len(b.doc.Record().Garment.Readings.Bodice) != 0 || b.entry(waist).Text != "62" || b.doc.Dirty() {
		t.Errorf("after undo the waist says %q, readings %v", b.entry(waist).Text, b.doc.Record().Garment.Readings.Bodice)
	}
	b.menuItem("Redo").Action()
	b.settle()
	if b.entry(waist).Text != "62.1" {
		t.Errorf("after redo the waist says %q", b.entry(waist).Text)
	}
}

// The tape's error in the record, or the usual 3 mm, says when two readings lie too far apart.
func TestReadingsTooFarApartAreToBeTakenAgain(t *testing.T) {
	for _, c := range []struct {
		error   string
		typed   string
		tooWide bool
	}{{"", "62; 62.9", false}, {"", "62; 63", true}, {"0.1", "62; 62.4", true}, {"0.5", "62; 63", false}, {"0.5", "62; 63.1", true}} {
		b := newBench(t)
		if c.error != "" {
			b.retype("mount.tape_error", c.error)
		}
		b.come(waist)
		b.enter(c.typed)
		for _, m := range sayings(b.doc).measures(fieldsOf("Garment")(b.doc.Record()), b.doc.Record()) {
			if m.Key == waist && (m.Wide != c.tooWide || strings.Contains(m.Spread, "again") != c.tooWide) {
				t.Errorf("tape error %q, %s: %q, too wide %v", c.error, c.typed, m.Spread, m.Wide)
			}
		}
	}
}

func TestSlopesAreTakenInTheMean(t *testing.T) {
	b := newBench(t)
	b.come("garment.bodice.shoulder_slope_deg")
	b.enter("20; 24")
	if got := b.doc.Record().Garment.Bodice[measure.ShoulderSlope]; got != 22 {
		t.Errorf("the slope is %v", got)
	}
	for _, m := range sayings(b.doc).measures(fieldsOf("Garment")(b.doc.Record()), b.doc.Record()) {
		if m.Key == "garment.bodice.shoulder_slope_deg" && m.Spread != "spread 4 °; the mean counts" {
			t.Errorf("said: %q", m.Spread)
		}
	}
}

func TestUnitsAreSwitched(t *testing.T) {
	b := newBench(t)
	m := b.measuring()
	if m.units.Chosen() != "cm" {
		t.Errorf("at first lengths are in %q", m.units.Chosen())
	}
	b.retype(waist, "57.47 cm") // 22 5/8 in is 574.675 mm
	before := b.doc.Record().Garment.Bodice[measure.WaistGirth]
	for _, c := range []struct{ unit, waist string }{{"in", "22⅝"}, {"mm", "574.7"}, {"cm", "57.47"}} {
		m.units.OnChosen(c.unit)
		b.settle()
		if got := b.entry(waist).Text; got != c.waist || m.units.Chosen() != c.unit {
			t.Errorf("in %s the waist says %q, want %q; the switch says %q", c.unit, got, c.waist, m.units.Chosen())
		}
	}
	if b.doc.Record().Garment.Bodice[measure.WaistGirth] != before {
		t.Error("a value has changed")
	}
	b.menuItem("Undo").Action()
	b.settle()
	if b.doc.Record().Unit != "mm" || b.entry(waist).Text != "574.7" || m.units.Chosen() != "mm" {
		t.Errorf("after undo: %s, %q, %q", b.doc.Record().Unit, b.entry(waist).Text, m.units.Chosen())
	}
	m.units.OnChosen("in")
	b.settle()
	b.retype(waist, "23 3/8")
	if got := b.doc.Record().Garment.Bodice[measure.WaistGirth]; got != 23.375*25.4 {
		t.Errorf("23 3/8 in is %v mm", got)
	}
}

// Everything that is known of the garment is typed in the window, from a new record on.
func TestANewRecordIsFilledInTheWindow(t *testing.T) {
	b := newBench(t)
	if b.measuring().object.fold.Open() {
		t.Error("the object is not folded away though it has a title")
	}
	b.blank()
	b.settle()
	m := b.measuring()
	if !m.object.fold.Open() {
		t.Fatal("a new record does not begin with its object")
	}
	for path, written := range map[string]string{
		"object.number": "1901.7", "object.title": "Walking dress, two pieces", "object.year": "1901", "object.notice": "invented",
		"taken.by": "a hand", "taken.on": "2026-03-02",
	} {
		i := slices.IndexFunc(m.object.texts, func(x *text) bool { return x.Path == path })
		if i < 0 {
			t.Fatalf("%s cannot be typed", path)
		}
		test.Type(m.object.texts[i].row.Entry(), written)
		b.doc.Settle()
		b.settle()
	}
	for path, word := range map[string]string{"object.wearer": "child", "taken.side": "inside", "garment.strength": "weak"} {
		i := slices.IndexFunc(m.object.choices, func(c *choice) bool { return c.path == path })
		m.object.choices[i].pick.SetSelected(word)
		b.settle()
	}
	r := b.doc.Record()
	if got := fmt.Sprintf("%v %v %s", r.Object, r.Taken, r.Garment.Strength); got != "{1901.7 Walking dress, two pieces 1901 child invented} {a hand 2026-03-02 inside} weak" {
		t.Errorf("the record has %s", got)
	}
	if b.head.title.Text != "Walking dress, two pieces" {
		t.Errorf("the head says %q", b.head.title.Text)
	}
	if !m.object.fold.Open() {
		t.Error("it folds away while one types")
	}
	for range 9 {
		b.menuItem("Undo").Action()
		b.settle()
	}
	if b.doc.Dirty() || b.doc.Record().Object.Title != "" || m.object.texts[1].row.Entry().Text != "" {
		t.Errorf("after all is undone: %+v", b.doc.Record().Object)
	}
}

func TestTheFormHasItsName(t *testing.T) {
	b := newBench(t)
	e := b.measuring().label.row.Entry()
	if e.Text != "Form 3" {
		t.Errorf("the form is %q", e.Text)
	}
	e.SetText("Form 4")
	b.settle()
	if b.doc.Record().Form.Label != "Form 4" {
		t.Errorf("the record's form is %q", b.doc.Record().Form.Label)
	}
}

// The drawing is in the colours in force, on a clear ground, and there is one for whatever has a tape.
func TestTheTapeIsDrawnInTheColoursInForce(t *testing.T) {
	b := newBench(t)
	draw := tapeOf(b.doc, tapes.Bodice)
	var tape [2]color.Color
	for i, appearance := range []look.Appearance{look.Light, look.Dark} {
		b.setAppearance(appearance)
		img := draw(waist, 112, 112)
		plain := draw("", 112, 112)
		if _, _, _, a := img.At(0, 0).RGBA(); a != 0 {
			t.Error("the ground is not clear")
		}
		ink := shade("primary")
		tape[i] = color.RGBA{ink.R, ink.G, ink.B, 255}
		seen := 0
		for y := range 112 {
			for x := range 112 {
				if img.At(x, y) == tape[i] {
					seen++
				}
				if plain.At(x, y) == tape[i] {
					t.Fatal("there is a tape where none is in hand")
				}
			}
		}
		if seen < 30 {
			t.Errorf("%s: %d points of tape", appearance, seen)
		}
	}
	if tape[0] == tape[1] {
		t.Error("light and dark are drawn alike")
	}
	for _, place := range []string{"Garment", "Form"} {
		for _, f := range fieldsOf(place)(b.doc.Record()) {
			part, key, ok := partOf(f.Path)
			if _, drawn := tapes.Of(part, key, measure.Woman); !ok || !drawn {
				t.Errorf("%s is not drawn", f.Path)
			}
		}
	}
}
