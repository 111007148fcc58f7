package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// Switch is a row of words of which one is chosen.
type Switch struct {
	widget.BaseWidget
	OnChosen func(word string) // by a person

	words   []string
	buttons []*widget.Button
	chosen  string
}

// NewSwitch returns a switch of words, none of which is chosen yet.
func NewSwitch(words ...string) *Switch {
	s := &Switch{OnChosen: func(string) {}, words: words}
	for _, w := range words {
		b := widget.NewButton(w, func() {
			if w != s.chosen {
				s.Choose(w)
				s.OnChosen(w)
			}
		})
		b.Importance = widget.LowImportance
		s.buttons = append(s.buttons, b)
	}
	s.ExtendBaseWidget(s)
	return s
}

// Chosen is the word that is chosen, "" for none.
func (s *Switch) Chosen() string { return s.chosen }

// Choose marks a word as chosen.
func (s *Switch) Choose(word string) {
	if word == s.chosen {
		return
	}
	s.chosen = word
	for i, b := range s.buttons {
		b.Importance = widget.LowImportance
		if s.words[i] == word {
			b.Importance = widget.MediumImportance
		}
		b.Refresh()
	}
}

// CreateRenderer is for the toolkit.
func (s *Switch) CreateRenderer() fyne.WidgetRenderer {
	row := container.New(layout.NewCustomPaddedHBoxLayout(2))
	for _, b := range s.buttons {
		row.Add(b)
	}
	return widget.NewSimpleRenderer(row)
}
