package control

import (
	"fmt"
	"image"
	"image/color"
	"slices"
	"strconv"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
)

// repeated is a list whose values can be taken up to four times, as a window would use it: the smallest counts.
func repeated(t *testing.T) (*MeasureList, []Measure) {
	l, measures := shownMeasures(t)
	several := func(i int, all []float64) {
		m := &measures[i]
		m.Readings, m.Spread, m.Wide = all, "", false
		if m.Value = nil; len(all) > 0 {
			m.Value = mm(slices.Min(all))
		}
		if len(all) > 1 {
			spread := slices.Max(all) - slices.Min(all)
			m.Spread, m.Wide = fmt.Sprintf("spread %.1f cm", spread), spread > 1
		}
	}
	set := func(key string, all []float64) {
		for i := range measures {
			if measures[i].Key == key {
				several(i, all)
			}
		}
		l.Fill(measures)
	}
	for i := range measures {
		measures[i].Most = 4
	}
	l.OnChanged = func(key string, v *float64) {
		if v == nil {
			set(key, nil)
			return
		}
		set(key, []float64{*v})
	}
	l.OnReadings = set
	l.Fill(measures)
	return l, measures
}

// lines are what the readings of a key say, the kept one with a star.
func lines(l *MeasureList, key string) []string {
	var all []string
	for _, line := range l.row(key).readings.lines {
		text := line.entry.Text
		if line.entry.TextStyle.Bold {
			text += "*"
		}
		all = append(all, text)
	}
	return all
}

func want(t *testing.T, what string, got any, want ...string) {
	t.Helper()
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("%s %q, want %q", what, got, want)
	}
}

func TestTheStatesOfARow(t *testing.T) {
	for name, make := range map[string]func(*MeasureList, *measureRow){
		"several": func(l *MeasureList, _ *measureRow) { l.OnReadings("bust", []float64{84.2, 84}) },
		"wide":    func(l *MeasureList, _ *measureRow) { l.OnReadings("bust", []float64{84.2, 86}) },
		"open": func(l *MeasureList, r *measureRow) {
			l.OnReadings("bust", []float64{84.2, 84})
			r.open(true)
		},
		"open_wide": func(l *MeasureList, r *measureRow) {
			l.OnReadings("bust", []float64{84.2, 86})
			r.open(true)
		},
		"refused": func(l *MeasureList, r *measureRow) {
			test.Type(focus(l, "bust"), "8")
			focus(l, "waist")
		},
	} {
		t.Run(name, func(t *testing.T) {
			l, _ := repeated(t)
			make(l, l.row("bust"))
			test.AssertObjectRendersToMarkup(t, "row_"+name+".xml", l.row("bust"))
		})
	}
}

func TestSemicolonsGiveSeveralReadings(t *testing.T) {
	l, measures := repeated(t)
	e := focus(l, "bust")
	test.Type(e, "84.2; 84;")
	want(t, "readings", measures[0].Readings, "84.2", "84")
	if *measures[0].Value != 84 || !l.row("bust").readings.box.Visible() {
		t.Errorf("%v counts, open %v; want 84, open", *measures[0].Value, l.row("bust").readings.box.Visible())
	}
	want(t, "lines", lines(l, "bust"), "84.2", "84*", "")
	if e.Text != "84.2; 84;" {
		t.Errorf("what was typed became %q", e.Text)
	}
	focus(l, "waist")
	if e.Text != "84" || l.row("bust").measure.Spread != "spread 0.2 cm" {
		t.Errorf("when left the entry says %q, the spread %q", e.Text, l.row("bust").measure.Spread)
	}
	if focus(l, "bust"); e.Text != "84.2; 84" || e.SelectedText() != e.Text {
		t.Errorf("when one comes back the entry says %q, selected %q", e.Text, e.SelectedText())
	}
	test.Type(e, "83")
	want(t, "after one number was typed the readings are", measures[0].Readings, "83")
	want(t, "lines", lines(l, "bust"), "83", "")
}

func TestTheMarkOpensTheReadings(t *testing.T) {
	l, measures := repeated(t)
	c := fyne.CurrentApp().Driver().CanvasForObject(l)
	r := l.row("bust")
	if r.more.text.Text != "+" {
		t.Errorf("beside a value taken once stands %q", r.more.text.Text)
	}
	if back := l.row("back"); back.more.text.Text != "" {
		t.Errorf("beside what was not taken stands %q", back.more.text.Text)
	}
	test.Tap(r.more)
	blank := r.readings.lines[1].entry
	if c.Focused() != fyne.Focusable(blank) {
		t.Fatal("the empty line does not have the keys")
	}
	test.Type(blank, "83.5")
	want(t, "readings", measures[0].Readings, "84", "83.5")
	want(t, "lines", lines(l, "bust"), "84", "83.5*", "")
	if r.entry.Text != "83.5" {
		t.Errorf("the entry says %q, want the smaller", r.entry.Text)
	}
	blank.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if c.Focused() != fyne.Focusable(r.readings.lines[2].entry) {
		t.Error("Enter does not lead to the next reading")
	}
	if test.Tap(r.more); r.readings.box.Visible() || r.more.text.Text != "2×" || c.Focused() != fyne.Focusable(r.entry) {
		t.Errorf("closed: visible %v, mark %q, the entry has the keys: %v", r.readings.box.Visible(), r.more.text.Text, c.Focused() == fyne.Focusable(r.entry))
	}
}

// A list that is on another tab while light is changed for dark is dark when one comes back.
func TestAnotherThemeReachesAListThatIsHidden(t *testing.T) {
	l, measures := shownMeasures(t)
	colours := func() (all []color.Color) {
		for _, o := range test.WidgetRenderer(l.row("bust").entry).Objects() {
			if box, ok := o.(*canvas.Rectangle); ok {
				all = append(all, box.FillColor)
			}
		}
		return all
	}
	light := colours()
	fyne.CurrentApp().Driver().CanvasForObject(l).SetContent(widget.NewLabel("another tab"))
	fyne.CurrentApp().Settings().SetTheme(look.New(look.Dark))
	l.Fill(measures)
	if dark := colours(); len(dark) == 0 || slices.Equal(light, dark) {
		t.Errorf("the entry is %v as before", dark)
	}
}

func TestAReadingIsTakenOut(t *testing.T) {
	l, measures := repeated(t)
	l.OnReadings("bust", []float64{84.2, 84, 85})
	r := l.row("bust")
	r.open(true)
	test.Tap(r.readings.lines[1].out)
	want(t, "by the mark:", measures[0].Readings, "84.2", "85")
	want(t, "lines", lines(l, "bust"), "84.2*", "85", "")
	first := r.readings.lines[0].entry
	r.focus(first)
	first.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	want(t, "by the keys:", measures[0].Readings, "85")
	if r.focus(r.readings.lines[1].entry); len(r.readings.lines) != 2 {
		t.Errorf("lines %q, want the emptied one gone", lines(l, "bust"))
	}
}

// What a value cannot do without comes back when its last reading is taken out.
func TestTheLastReadingOfWhatIsNeededStays(t *testing.T) {
	l, measures := repeated(t)
	read := l.Read
	l.Read = func(key, text string) (*float64, error) {
		if text == "" {
			return nil, fmt.Errorf("it is needed")
		}
		return read(key, text)
	}
	r := l.row("bust")
	r.open(true)
	test.Tap(r.readings.lines[0].out)
	if measures[0].Value == nil || *measures[0].Value != 84 {
		t.Fatal("it was taken out")
	}
	want(t, "lines", lines(l, "bust"), "84", "")
}

func TestKeysLeadThroughTheReadings(t *testing.T) {
	l, measures := repeated(t)
	l.OnReadings("bust", []float64{84.2, 84})
	c := fyne.CurrentApp().Driver().CanvasForObject(l)
	r := l.row("bust")
	r.open(true)
	at := func() int {
		for i, line := range r.readings.lines {
			if c.Focused() == fyne.Focusable(line.entry) {
				return i
			}
		}
		return -1
	}
	press := func(k fyne.KeyName) { c.Focused().TypedKey(&fyne.KeyEvent{Name: k}) }
	r.focus(r.readings.lines[0].entry)
	press(fyne.KeyDown)
	if at() != 1 {
		t.Errorf("down leads to line %d", at())
	}
	test.Type(c.Focused(), "90")
	want(t, "typed:", measures[0].Readings, "84.2", "90")
	press(fyne.KeyEscape)
	want(t, "after Escape:", measures[0].Readings, "84.2", "84")
	want(t, "lines", lines(l, "bust"), "84.2", "84*", "")
	press(fyne.KeyDown)
	press(fyne.KeyDown)
	if c.Focused() != fyne.Focusable(l.row("waist").entry) {
		t.Error("down from the last line does not lead to the next value")
	}
	r.focus(r.readings.lines[0].entry)
	press(fyne.KeyUp)
	if c.Focused() != fyne.Focusable(r.entry) {
		t.Error("up from the first line does not lead to the value")
	}
}

func TestReadingsChangedElsewhereReachTheLines(t *testing.T) {
	l, _ := repeated(t)
	l.OnReadings("bust", []float64{84.2, 84})
	r := l.row("bust")
	r.open(true)
	r.focus(r.readings.lines[1].entry)
	l.OnReadings("bust", []float64{84.2, 83, 85}) // undone
	want(t, "lines", lines(l, "bust"), "84.2", "83*", "85", "")
	l.OnChanged("bust", mm(70))
	want(t, "lines", lines(l, "bust"), "70", "")
}

func TestNoMoreReadingsThanCanBeKept(t *testing.T) {
	l, measures := repeated(t)
	e := focus(l, "bust")
	test.Type(e, "84;85;86;87;88")
	focus(l, "waist")
	want(t, "readings", measures[0].Readings, "84", "85", "86", "87")
	if l.Note("bust") != "at most 4 readings can be kept" {
		t.Errorf("note %q", l.Note("bust"))
	}
	l, _ = repeated(t)
	l.OnReadings("bust", []float64{84, 85, 86, 87})
	l.row("bust").open(true)
	if n := len(l.row("bust").readings.lines); n != 4 {
		t.Errorf("%d lines, want no empty one where no more can be kept", n)
	}
}

func TestAnotherUnitIsShownInAnEntryInUse(t *testing.T) {
	l, measures := repeated(t)
	l.OnReadings("bust", []float64{84, 85})
	r := l.row("bust")
	r.open(true)
	e := focus(l, "bust")
	l.Write = func(_ string, v float64) string { return strconv.FormatFloat(10*v, 'f', -1, 64) }
	read := l.Read
	l.Read = func(key, text string) (*float64, error) {
		v, err := read(key, text)
		if v != nil {
			*v /= 10
		}
		return v, err
	}
	for i := range measures {
		measures[i].Unit = "mm"
	}
	l.Fill(measures)
	if e.Text != "840; 850" {
		t.Errorf("the entry says %q", e.Text)
	}
	want(t, "lines", lines(l, "bust"), "840*", "850", "")
}

func TestTheFootDrawsTheValueInHand(t *testing.T) {
	newApp(t)
	l := NewMeasureList()
	var drawn []string
	l.Draw = func(key string, w, h int) image.Image {
		drawn = append(drawn, key)
		return image.NewRGBA(image.Rect(0, 0, w, h))
	}
	l.Read = func(string, string) (*float64, error) { return nil, nil }
	l.Write = func(string, float64) string { return "" }
	l.Fill(someMeasures())
	w := test.NewTempWindow(t, l)
	w.Resize(fyne.NewSize(300, 400))
	height := l.scroll.Size().Height
	for _, key := range []string{"bust", "back"} {
		focus(l, key)
		w.Canvas().Capture()
	}
	w.Canvas().Unfocus()
	w.Canvas().Capture()
	if want := []string{"bust", "back", ""}; !slices.Equal(slices.Compact(drawn), want) {
		t.Errorf("drawn %q, want %q", drawn, want)
	}
	before := len(drawn)
	l.Fill(someMeasures()) // the wearer may be another
	w.Canvas().Capture()
	if len(drawn) == before {
		t.Error("it is not drawn anew with new values")
	}
	if l.scroll.Size().Height != height {
		t.Error("the list jumps when something is drawn")
	}
}

func BenchmarkFillAndType(b *testing.B) {
	test.NewTempApp(b)
	l := NewMeasureList()
	l.Read = func(_, text string) (*float64, error) {
		v, err := strconv.ParseFloat(text, 64)
		return &v, err
	}
	l.Write = func(_ string, v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	var all []Measure
	for i := range 50 {
		all = append(all, Measure{Key: fmt.Sprint(i), Label: "girth", Unit: "cm", Value: mm(float64(i)), Most: 12})
	}
	l.Fill(all)
	test.NewTempWindow(b, l).Resize(fyne.NewSize(300, 600))
	for i := 0; b.Loop(); i++ {
		all[7].Value = mm(float64(i))
		l.Fill(all)
	}
}
