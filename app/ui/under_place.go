package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/patterns/plan"
)

// support is the column of a place where it is chosen what holds a part of the garment, over its readings.
type support struct {
	doc     *document.Document
	choices []*choice
	asked   *yesNo
	values  *values
}

func newSupport(d *document.Document, fields func(record.Record) []document.Field, asked *yesNo, choices ...*choice) *support {
	s := &support{doc: d, choices: choices, asked: asked, values: newValues(d, fields)}
	box := container.NewVBox(control.NewGroup(lang.L("support")))
	for _, c := range choices {
		box.Add(c.row)
	}
	box.Add(asked.row)
	s.values.list.Head = box
	return s
}

func (s *support) show() {
	r, said := s.doc.Record(), sayings(s.doc)
	s.values.fill(said)
	for _, c := range s.choices {
		c.show(r, said.words[c.path])
	}
	s.asked.show(r)
}

// yesNo is something that is so or not.
type yesNo struct {
	pick      *pick
	row       fyne.CanvasObject
	at        func(*record.Record) *bool // nil where nobody said it
	otherwise bool                       // what then counts
}

const yes, no = "yes", "no"

// newYesNo asks it under a label; a change is a step of that name.
func newYesNo(step, label string, d *document.Document, at func(*record.Record) *bool, otherwise bool, put func(*record.Record, bool)) *yesNo {
	y := &yesNo{at: at, otherwise: otherwise}
	y.pick = newLabelled([]string{yes, no}, []string{lang.L("yes"), lang.L("no")}, func(word string) {
		r := d.Record()
		if now := at(&r); now == nil || *now != (word == yes) {
			put(&r, word == yes)
			d.Change(step, r)
		}
	})
	y.row = pickRow(label, y.pick)
	return y
}

func (y *yesNo) show(r record.Record) {
	word := map[bool]string{true: yes, false: no}
	if now := y.at(&r); now != nil {
		y.pick.show(word[*now], "")
		return
	}
	y.pick.show("", word[y.otherwise])
}

// telling is a column of sentences that is written anew with every plan.
type telling struct {
	box  *fyne.Container
	said []string
}

func newTelling() *telling {
	return &telling{box: container.New(layout.NewCustomPaddedVBoxLayout(-4))}
}

func (t *telling) clear() { t.box.Objects, t.said = nil, nil }

func (t *telling) head(text string) { t.box.Add(control.NewGroup(text)) }

func (t *telling) add(o fyne.CanvasObject) { t.box.Add(o) }

func (t *telling) say(text string) {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	small(l)
	t.box.Add(l)
	t.said = append(t.said, text)
}

// notes says what a plan notes about places of the record that begin like one of these.
func (t *telling) notes(p plan.Plan, paths ...string) {
	first := true
	for _, w := range p.Warnings {
		for _, path := range paths {
			if !strings.HasPrefix(w.Key, path) {
				continue
			}
			if first {
				t.head(lang.L("notes"))
			}
			first = false
			t.say(w.Message)
			break
		}
	}
}

// cautions says what can hurt people or cloth.
func (t *telling) cautions(all []string) {
	if len(all) == 0 {
		return
	}
	t.head(lang.L("cautions"))
	for _, c := range all {
		t.say(c)
	}
}
