package ui

import (
	"errors"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
)

// otherSize is the choice of a paper that has no name.
const otherSize = "other size"

// paper is the choice of what is printed on: a paper with a name, or a width and a height.
type paper struct {
	doc   *document.Document
	pick  *pick
	size  *control.TextRow
	typed *record.Paper // not yet taken
	named *record.Paper // that stands while another size is to be typed; nil where none is
	of    openRecord
	box   fyne.CanvasObject
}

func newPaper(d *document.Document) *paper {
	p := &paper{doc: d}
	p.pick = newLabelled(append(slices.Clone(record.Papers), otherSize), append(slices.Clone(record.Papers), lang.L("other size")), p.choose)
	p.size = control.NewTextRow(lang.L("width × height"), "")
	p.size.OnChanged, p.size.OnDone = p.read, p.take
	p.box = container.NewVBox(pickRow(lang.L("paper"), p.pick), p.size)
	return p
}

func (p *paper) choose(name string) {
	r := p.doc.Record()
	if name == otherSize {
		now := r.Mount.Paper
		p.named = &now
		p.show(r, "")
		return
	}
	p.named = nil
	p.change(record.Paper{Name: name})
	p.show(p.doc.Record(), "")
}

func (p *paper) change(to record.Paper) {
	if r := p.doc.Record(); r.Mount.Paper != to {
		r.Mount.Paper = to
		p.doc.Change("paper", r)
	}
}

// read understands a size that is being typed, such as "29.7 × 42"; it counts when it is left.
func (p *paper) read(text string) error {
	p.typed = nil
	if strings.TrimSpace(text) == "" {
		return nil
	}
	sides := strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune("×xX*", r) })
	if len(sides) != 2 {
		return errors.New(lang.L("write width × height, such as 29.7 × 42"))
	}
	var to record.Paper
	for i, side := range []*float64{&to.Width, &to.Height} {
		limit := []record.Limit{record.PaperWidthLimit, record.PaperHeightLimit}[i]
		v, err := document.Field{Min: limit.Least, Max: limit.Most}.Read(sides[i], p.doc.Record().Unit)
		if err != nil {
			return err
		}
		if v == nil {
			return errors.New(lang.L("write width × height, such as 29.7 × 42"))
		}
		*side = *v
	}
	p.typed = &to
	return nil
}

func (p *paper) take() {
	if p.typed != nil {
		to := *p.typed
		p.typed = nil
		p.change(to)
	}
}

// show brings the choice to the record; otherwise is what is used where it has none.
func (p *paper) show(r record.Record, otherwise string) {
	now := r.Mount.Paper
	if of := opened(p.doc); of != p.of || p.named != nil && *p.named != now {
		p.named, p.of = nil, of
	}
	name, own := now.Name, p.named != nil || now.Name == "" && now.Width > 0
	if own {
		name = otherSize
		stock, _ := r.Mount.Stocked(r.Garment.Strength)
		p.size.Say(document.Length.Format(stock.Paper.Width, r.Unit) + " × " + document.Length.Format(stock.Paper.Height, r.Unit))
	}
	p.pick.show(name, otherwise)
	if p.size.Hide(); own {
		p.size.Show()
	}
}
