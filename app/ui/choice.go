package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
)

// choice is one word of the record that is chosen from a few.
type choice struct {
	path string // key path in the record
	pick *pick
	row  fyne.CanvasObject
	word func(*record.Record) *string
}

func newChoice(label, path string, words []string, word func(*record.Record) *string, d *document.Document) *choice {
	c := &choice{path: path, word: word}
	c.pick = newPick(words, func(chosen string) {
		r := d.Record()
		if *word(&r) != chosen {
			*word(&r) = chosen
			d.Change(label, r)
		}
	})
	c.row = pickRow(lang.L(label), c.pick)
	return c
}

// show selects the record's word; otherwise is what is used where it has none. The step is a matter of slices.
func (c *choice) show(r record.Record, otherwise string) {
	c.pick.show(*c.word(&r), otherwise)
	if c.row.Hide(); c.path != "mount.step" || r.Mount.Build == "slices" {
		c.row.Show()
	}
}

// pick is a choice from a few words, which are shown in the language of the desktop.
type pick struct {
	widget.Select
	words  []string
	chosen func(word string) // by a person
}

// newPick offers words that are known to the translator from elsewhere.
func newPick(words []string, chosen func(word string)) *pick {
	var labels []string
	for _, w := range words {
		labels = append(labels, lang.L(w))
	}
	return newLabelled(words, labels, chosen)
}

// newLabelled offers words, each under its label.
func newLabelled(words, labels []string, chosen func(word string)) *pick {
	p := &pick{words: words, chosen: chosen}
	p.Options = labels
	p.OnChanged = func(string) {
		if i := p.SelectedIndex(); i >= 0 {
			p.chosen(p.words[i])
		}
	}
	p.ExtendBaseWidget(p)
	return p
}

// label is what a word is called.
func (p *pick) label(word string) string {
	if i := slices.Index(p.words, word); i >= 0 {
		return p.Options[i]
	}
	return word
}

// choose is as if a person chose a word.
func (p *pick) choose(word string) { p.SetSelectedIndex(slices.Index(p.words, word)) }

// show selects a word without telling anyone; where it is "", otherwise is shown as what is used instead.
func (p *pick) show(word, otherwise string) {
	selected, hint := p.label(word), p.label(otherwise)
	if p.Selected != selected || p.PlaceHolder != hint {
		p.Selected, p.PlaceHolder = selected, hint
		p.Refresh()
	}
}

// pickRow has what is chosen beside its name.
func pickRow(name string, p *pick) fyne.CanvasObject {
	return container.New(control.ChoiceLayout{}, control.NewName(name), p)
}
