package control

import (
	"bytes"
	"errors"
	"image"
	"log"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/plane"
	"understructure/patterns/plan"
)

// TestMain fails when the toolkit found a widget used off its thread.
func TestMain(m *testing.M) {
	var heard bytes.Buffer
	log.SetOutput(&heard)
	code := m.Run()
	os.Stderr.Write(heard.Bytes())
	if strings.Contains(heard.String(), "Error in Fyne call thread") {
		code = 1
	}
	os.Exit(code)
}

func newApp(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.New(look.Light))
}

// barrel is a round figure from 900 to 1400 mm.
func barrel() *picture.Body {
	var s plan.Surface
	for z := 900.0; z <= 1400; z += 20 {
		ring := make(plane.Ring, 90)
		for i := range ring {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / 90)
			ring[i] = plane.Point{X: 150 * cos, Y: 100 * sin}
		}
		s.Heights = append(s.Heights, z)
		s.Built = append(s.Built, ring)
		s.Garment = append(s.Garment, ring.Map(func(p plane.Point) plane.Point { return p.Mul(1.03) }))
	}
	return picture.NewBody(s)
}

var tapes = []Tape{
	{Name: "bust", Height: 1250, Taken: "84.0", Built: "82.0", Clearance: "2.0"},
	{Name: "underbust", Height: 1240, Taken: "74.0", Built: "72.0", Clearance: "2.0"},
	{Name: "waist", Height: 1050, Taken: "62.0", Built: "62.5", Clearance: "−0.5", Strains: true},
}

func shownElevation(t *testing.T) (*Elevation, *[]string) {
	newApp(t)
	e, picked := NewElevation(), &[]string{}
	w := test.NewTempWindow(t, e)
	w.Resize(fyne.NewSize(700, 500))
	e.Draw(barrel(), tapes, Rule{Name: "cm", Step: 50, Count: 2, Unit: 10})
	e.OnPicked = func(name string) { *picked = append(*picked, name) }
	return e, picked
}

func TestALevelIsPickedWhereItsTapeLies(t *testing.T) {
	e, picked := shownElevation(t)
	a := e.arrange(e.Size())
	for i, tape := range tapes {
		*picked = nil
		e.Pick("")
		test.TapAt(e, fyne.NewPos(a.rule+20, a.levels[i]))
		if e.Picked() != tape.Name || len(*picked) != 1 || (*picked)[0] != tape.Name {
			t.Errorf("click on the figure at the %s picked %q, told %v", tape.Name, e.Picked(), *picked)
		}
		e.Pick("")
		test.TapAt(e, fyne.NewPos(a.table+20, a.rows[i]+rowHeight/3))
		if e.Picked() != tape.Name {
			t.Errorf("click on the row of the %s picked %q", tape.Name, e.Picked())
		}
	}
}

func TestALevelIsPickedByArrows(t *testing.T) {
	e, picked := shownElevation(t)
	e.Pick("bust")
	for _, k := range []fyne.KeyName{fyne.KeyDown, fyne.KeyDown, fyne.KeyDown, fyne.KeyUp, fyne.KeyHome, fyne.KeyEnd} {
		e.TypedKey(&fyne.KeyEvent{Name: k})
	}
	if got := strings.Join(*picked, " "); got != "underbust waist underbust bust waist" {
		t.Errorf("picked %s", got)
	}
}

func TestHoverMarksWithoutPicking(t *testing.T) {
	e, picked := shownElevation(t)
	a := e.arrange(e.Size())
	e.MouseIn(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(a.rule+20, a.levels[2])}})
	if e.hovered != "waist" || len(*picked) != 0 {
		t.Errorf("hovered %q, picked %v", e.hovered, *picked)
	}
	e.MouseOut()
	if e.hovered != "" {
		t.Error("the mark stays when the pointer has left")
	}
}

func TestPickingDoesNotPaintTheFigureAgain(t *testing.T) {
	e, _ := shownElevation(t)
	before := e.renderer.rasters[0]
	painted := 0
	paint := before.Generator
	before.Generator = func(w, h int) image.Image { painted++; return paint(w, h) }
	e.Pick("waist")
	if painted != 0 {
		t.Errorf("painted %d times for a change of the mark", painted)
	}
}

func TestAnEmptyElevationCanBeUsed(t *testing.T) {
	newApp(t)
	e := NewElevation()
	w := test.NewTempWindow(t, e)
	w.Resize(fyne.NewSize(700, 500))
	test.TapAt(e, fyne.NewPos(100, 100))
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	w.Canvas().Capture()
	if e.Picked() != "" {
		t.Errorf("picked %q of nothing", e.Picked())
	}
}

func TestSpreadKeepsOrderGapAndBounds(t *testing.T) {
	for _, want := range [][]float32{{10, 12, 14, 100}, {50, 50, 50, 50}, {95, 96, 97, 98}, {0, 30, 60, 90}, {1, 2, 3, 4}} {
		got := spread(want, 20, 5, 95)
		for i, y := range got {
			if i > 0 && y-got[i-1] < 19.99 || y < 4.99 || y > 95.01 {
				t.Errorf("%v spread to %v", want, got)
				break
			}
		}
	}
	if got := spread([]float32{50, 54}, 20, 0, 100); got[0] != 42 || got[1] != 62 {
		t.Errorf("two that want 50 and 54 stand at %v, want 42 and 62", got)
	}
}

func mm(v float64) *float64 { return &v }

func someMeasures() []Measure {
	return []Measure{
		{Key: "bust", Label: "bust girth", Where: "Round the bust.", Group: "girths", Unit: "cm", Value: mm(84)},
		{Key: "waist", Label: "waist girth", Where: "Round the waist.", Group: "girths", Unit: "cm", Value: mm(62), Warning: "Smaller than the skirt's."},
		{Key: "back", Label: "back waist length", Where: "From the nape.", Group: "lengths", Unit: "cm", Drawn: mm(38.5)},
	}
}

// typed is a list as a window would use it: what is changed comes back as the next filling.
func shownMeasures(t *testing.T) (*MeasureList, []Measure) {
	newApp(t)
	l, measures := NewMeasureList(), someMeasures()
	l.Read = func(_, text string) (*float64, error) {
		if text == "" {
			return nil, nil
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil || v < 20 {
			return nil, errors.New("write a number of 20 or more")
		}
		return &v, nil
	}
	l.Write = func(_ string, v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	l.OnChanged = func(key string, v *float64) {
		for i := range measures {
			if measures[i].Key == key {
				measures[i].Value = v
			}
		}
		l.Fill(measures)
	}
	l.Fill(measures)
	w := test.NewTempWindow(t, l)
	w.Resize(fyne.NewSize(300, 400))
	return l, measures
}

func focus(l *MeasureList, key string) *measureEntry {
	for _, r := range l.rows {
		if r.measure.Key == key {
			fyne.CurrentApp().Driver().CanvasForObject(l).Focus(r.entry)
			return r.entry
		}
	}
	return nil
}

func TestMeasureListMarkup(t *testing.T) {
	l, _ := shownMeasures(t)
	test.AssertObjectRendersToMarkup(t, "measures.xml", l)
}

func TestTypingReplacesAndCountsAtOnce(t *testing.T) {
	l, measures := shownMeasures(t)
	e := focus(l, "waist")
	if l.foot.help.Text != "Round the waist." {
		t.Errorf("help says %q", l.foot.help.Text)
	}
	test.Type(e, "64.5")
	if e.Text != "64.5" || *measures[1].Value != 64.5 {
		t.Errorf("entry %q, value %v; want 64.5", e.Text, *measures[1].Value)
	}
	if l.Note("waist") != "Smaller than the skirt's." {
		t.Errorf("the warning beside the value is %q", l.Note("waist"))
	}
}

func TestWhatCannotBeReadIsSaidWhenTheEntryIsLeft(t *testing.T) {
	l, measures := shownMeasures(t)
	e := focus(l, "bust")
	test.Type(e, "8") // on the way to 84.5
	if l.Note("bust") != "" {
		t.Errorf("while typing, the list complains: %q", l.Note("bust"))
	}
	focus(l, "waist")
	if l.Note("bust") != "write a number of 20 or more" || *measures[0].Value != 84 {
		t.Errorf("note %q, value %v; want a complaint and 84", l.Note("bust"), *measures[0].Value)
	}
	focus(l, "bust")
	test.Type(e, "85")
	if l.Note("bust") != "" || *measures[0].Value != 85 {
		t.Errorf("note %q, value %v after it was put right", l.Note("bust"), *measures[0].Value)
	}
}

func TestEmptyIsNotTakenAndShowsWhatStatisticsSay(t *testing.T) {
	l, measures := shownMeasures(t)
	e := focus(l, "back")
	if e.PlaceHolder != "38.5" || e.Text != "" {
		t.Errorf("entry %q, placeholder %q; want empty and 38.5", e.Text, e.PlaceHolder)
	}
	e = focus(l, "waist")
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	if measures[1].Value != nil {
		t.Errorf("an emptied entry still counts %v", *measures[1].Value)
	}
}

func TestKeysLeadThroughTheList(t *testing.T) {
	l, measures := shownMeasures(t)
	c := fyne.CurrentApp().Driver().CanvasForObject(l)
	e := focus(l, "bust")
	test.Type(e, "90")
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if c.Focused() != fyne.Focusable(l.rows[1].entry) {
		t.Error("Enter does not lead to the next entry")
	}
	e = l.rows[1].entry
	test.Type(e, "70")
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if e.Text != "62" || *measures[1].Value != 62 {
		t.Errorf("after Escape: %q, %v; want 62", e.Text, *measures[1].Value)
	}
	e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if c.Focused() != fyne.Focusable(l.rows[0].entry) {
		t.Error("the arrow does not lead back")
	}
}

func TestAValueChangedElsewhereReachesAnEntryInUse(t *testing.T) {
	l, measures := shownMeasures(t)
	e := focus(l, "waist")
	test.Type(e, "64.50")
	l.Fill(measures) // the same value, written otherwise: what is typed stays
	if e.Text != "64.50" {
		t.Errorf("what was typed became %q", e.Text)
	}
	measures[1].Value = mm(62) // undone
	l.Fill(measures)
	if e.Text != "62" {
		t.Errorf("after undo the entry says %q, want 62", e.Text)
	}
}

func TestTheFirstClickSelectsAndTheSecondPutsTheCursor(t *testing.T) {
	l, _ := shownMeasures(t)
	e := l.rows[1].entry
	click := func() {
		ev := &desktop.MouseEvent{Button: desktop.MouseButtonPrimary, PointEvent: fyne.PointEvent{Position: fyne.NewPos(10, 10)}}
		e.MouseDown(ev)
		e.MouseUp(ev)
		test.Tap(e)
	}
	click()
	if e.SelectedText() != "62" {
		t.Errorf("the first click selects %q, want the whole value", e.SelectedText())
	}
	click()
	if e.SelectedText() != "" {
		t.Errorf("after the second click %q is still selected", e.SelectedText())
	}
}
