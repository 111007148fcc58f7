package control

import (
	"errors"
	"testing"

	"fyne.io/fyne/v2/test"
)

func newTestForm(t *testing.T) *FittingForm {
	test.NewTempApp(t)
	f := NewFittingForm([]Option{{"tight", "eng"}, {"hem", "Saum"}}, []Option{{"", "–"}, {"waist", "Taille"}}, []Option{{"", "rundum"}, {"left", "links"}})
	f.OnChosen = func(n Noted) (bool, string) { return n.What != "hem", n.Level }
	return f
}

func TestAFormSaysKeysNotWords(t *testing.T) {
	f := newTestForm(t)
	f.what.SetSelected("eng")
	f.level.SetSelected("Taille")
	f.where.SetSelected("links")
	f.by.SetText("2")
	if got, want := f.Said(), (Noted{"tight", "waist", "left", "2"}); got != want {
		t.Errorf("the form says %v, want %v", got, want)
	}
	if known, _ := f.Told(); known != "waist" {
		t.Errorf("what is known of it: %q", known)
	}
	f.what.SetSelected("Saum")
	if f.Said().Level != "" || !f.level.Disabled() {
		t.Error("a hem keeps its level")
	}
	f.what.SetSelected("eng")
	if f.level.Disabled() {
		t.Error("the level cannot be chosen again")
	}
}

func TestWhatIsNotedLeavesTheForm(t *testing.T) {
	f := newTestForm(t)
	refuse := errors.New("no")
	f.OnNoted = func(Noted) error { return refuse }
	f.Edit(Noted{"tight", "waist", "left", "2"})
	f.by.OnSubmitted("")
	if _, wrong := f.Told(); wrong != "no" || f.Said().What != "tight" || f.button.Text != "Correct it" {
		t.Errorf("refused it says %q, %v", wrong, f.Said())
	}
	refuse = nil
	f.button.OnTapped()
	if _, wrong := f.Told(); wrong != "" || f.Said() != (Noted{}) || f.button.Text != "Note it" || f.leave.Visible() {
		t.Errorf("taken it says %q, %v", wrong, f.Said())
	}
}

func TestALogGrowsAndShrinks(t *testing.T) {
	test.NewTempApp(t)
	l := NewLogList()
	var opened, removed int
	l.OnOpen, l.OnRemove = func(i int) { opened = i }, func(i int) { removed = i }
	l.Fill([]string{"a", "b", "c"}, 1)
	l.rows[2].open.OnTapped()
	l.rows[1].remove.OnTapped()
	if opened != 2 || removed != 1 || !l.rows[1].text.TextStyle.Bold || l.rows[0].text.TextStyle.Bold {
		t.Errorf("opened %d, removed %d", opened, removed)
	}
	l.Fill([]string{"d"}, -1)
	if len(l.rows) != 1 || len(l.box.Objects) != 1 || l.rows[0].text.Text != "d" {
		t.Errorf("%d rows", len(l.rows))
	}
	l.Fill([]string{"d", "e"}, -1)
	l.rows[1].open.OnTapped()
	if opened != 1 || l.rows[1].text.Text != "e" {
		t.Errorf("opened %d of a log that grew again", opened)
	}
}

func TestNotesLeaveTheTabulator(t *testing.T) {
	test.NewTempApp(t)
	n := NewNotes("")
	var typed string
	n.OnChanged = func(s string) error { typed = s; return nil }
	test.Type(n.Entry(), "all\nwell")
	if typed == "" || n.entry.AcceptsTab() {
		t.Errorf("typed %q, keeps the tabulator %v", typed, n.entry.AcceptsTab())
	}
	n.Say("else")
	if n.Entry().Text != "else" || typed == "else" {
		t.Errorf("says %q, and told of it", n.Entry().Text)
	}
}
