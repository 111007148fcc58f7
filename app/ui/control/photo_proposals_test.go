package control

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

func TestProposalsAreTicked(t *testing.T) {
	newApp(t)
	l := NewProposalList()
	var said []string
	l.OnTicked = func(key string, on bool) { said = append(said, map[bool]string{true: "+", false: "-"}[on]+key) }
	w := test.NewTempWindow(t, l)
	w.Resize(fyne.NewSize(270, 300))
	all := []Proposed{
		{Key: "bust", Name: "Bust", Change: "28.5 → 26.5", Ticked: true},
		{Key: "waist", Name: "Waist", Change: "20.7", Note: "Measured, stays.", Ticked: true, Fixed: true},
		{Key: "hip", Name: "Hip", Change: "33.0 → 31.0", Note: "The skirt lies over it."},
	}
	l.Fill(all)
	for _, want := range all {
		want.Ticked = want.Ticked && !want.Fixed // what cannot be taken over is not ticked
		if got, ok := l.Shown(want.Key); !ok || got != want {
			t.Errorf("shown is %+v, want %+v", got, want)
		}
	}
	l.Tick("bust", false)
	l.Tick("hip", true)
	if len(said) != 2 || said[0] != "-bust" || said[1] != "+hip" {
		t.Errorf("told %q", said)
	}
	row := l.rows[0]
	l.Fill(all)
	if l.rows[0] != row || len(said) != 2 {
		t.Error("the same changes made other rows, or told something")
	}
	before := l.MinSize().Height
	all[0].Note = "As far as the tape allows."
	if l.Fill(all); l.MinSize().Height <= before {
		t.Error("a note has no room")
	}
	l.Fill(all[1:])
	if _, ok := l.Shown("bust"); ok || len(l.rows) != 2 {
		t.Error("a change that is gone is still shown")
	}
}
