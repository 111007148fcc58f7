package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
)

// choice is one word of the record that is chosen from a few.
type choice struct {
	path string // key path in the record
	pick *widget.Select
	row  fyne.CanvasObject
	word func(*record.Record) *string
}

func newChoice(label, path string, words []string, word func(*record.Record) *string, d *document.Document) *choice {
	c := &choice{path: path, pick: widget.NewSelect(words, nil), word: word}
	c.pick.OnChanged = func(chosen string) {
		r := d.Record()
		if *word(&r) != chosen {
			*word(&r) = chosen
			d.Change(label, r)
		}
	}
	c.row = container.New(control.ChoiceLayout{}, control.NewName(label), c.pick)
	return c
}

// show selects the record's word; otherwise is what is used where it has none. The step is a matter of slices.
func (c *choice) show(r record.Record, otherwise string) {
	if now := *c.word(&r); c.pick.Selected != now || c.pick.PlaceHolder != otherwise {
		c.pick.Selected, c.pick.PlaceHolder = now, otherwise
		c.pick.Refresh()
	}
	if c.row.Hide(); c.path != "mount.step" || r.Mount.Build == "slices" {
		c.row.Show()
	}
}
