package ui

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/app/ui/picture"
	"understructure/geometry/plane"
	"understructure/patterns/plan"
)

// support is the column of a place where it is chosen what holds a part of the garment, over its readings.
type support struct {
	doc     *document.Document
	choices []*choice
	values  *values
}

func newSupport(d *document.Document, fields func(record.Record) []document.Field, choices ...*choice) *support {
	s := &support{doc: d, choices: choices, values: newValues(d, fields)}
	box := container.NewVBox(control.NewGroup(lang.L("support")))
	for _, c := range choices {
		box.Add(c.row)
	}
	s.values.list.Head = box
	return s
}

func (s *support) show() {
	r, said := s.doc.Record(), sayings(s.doc)
	s.values.fill(said)
	for _, c := range s.choices {
		c.show(r, said.words[c.path])
	}
}

// skirtPlace is where it is chosen what holds the skirt, and seen how it hangs.
type skirtPlace struct {
	*support
	stand   *control.SkirtStage
	falls   *control.Table
	words   *widget.Label
	beside  fyne.CanvasObject
	content fyne.CanvasObject
}

func newSkirtPlace(d *document.Document) *skirtPlace {
	p := &skirtPlace{stand: control.NewSkirtStage(), falls: control.NewTable(), words: widget.NewLabel("")}
	p.support = newSupport(d, func(r record.Record) []document.Field {
		return append(document.SkirtSupportFields(r), document.SkirtFields(r)...)
	},
		newChoice("what holds it", "mount.skirt.support", record.SkirtSupports, func(r *record.Record) *string { return &r.Mount.Skirt.Support }, d),
		newChoice("what is fixed", "mount.skirt.hold", record.Holds, func(r *record.Record) *string { return &r.Mount.Skirt.Hold }, d),
		newChoice("cut of the skirt", "mount.skirt.cut", record.Cuts, func(r *record.Record) *string { return &r.Mount.Skirt.Cut }, d),
		newChoice("train", "mount.skirt.train", record.Trains, func(r *record.Record) *string { return &r.Mount.Skirt.Train }, d),
	)
	p.words.Wrapping = fyne.TextWrapWord
	small(p.words)
	p.beside = container.NewBorder(p.falls, nil, nil, nil, container.NewVScroll(p.words))
	p.content = container.New(figureColumns{}, p.stand, p.beside)
	return p
}

func (p *skirtPlace) name() string             { return "Skirt" }
func (p *skirtPlace) side() fyne.CanvasObject  { return p.values.list }
func (p *skirtPlace) stage() fyne.CanvasObject { return p.content }

func (p *skirtPlace) show() {
	p.support.show()
	pl, _ := p.doc.Plan()
	if p.beside.Hide(); pl.Skirt == nil {
		p.stand.Draw(new(picture.Body), new(picture.Body))
		return
	}
	p.beside.Show()
	whole := skirted(pl)
	bare := whole
	bare.Garment = nil // what touches where is a matter of girths, which the table tells
	p.stand.Draw(picture.NewBody(bare), picture.NewBody(whole))
	k, u := pl.Skirt, p.doc.Record().Unit
	var rows []control.TableRow
	for _, f := range k.Falls {
		rows = append(rows, control.TableRow{Name: lang.L(f.Name), Numbers: []string{length(&f.Length, u), length(&f.Reach, u), length(&f.Above, u), length(&f.Train, u)}})
	}
	p.falls.Draw([]string{u, lang.L("long"), lang.L("reach"), lang.L("above"), lang.L("train")}, rows)
	set(p.words, hanging(k, u))
}

// hanging is what there is to say of a skirt, in sentences.
func hanging(k *plan.Skirt, u string) string {
	text := lang.L("Support at the hem: {{.Girth}} {{.Unit}} round.", map[string]any{"Girth": length(&k.Hem.Support, u), "Unit": u})
	if k.Hem.Girth != nil && k.Hem.Gather != nil {
		text += " " + lang.L("The hem has {{.Girth}} {{.Unit}}, {{.Times}} times as much.", map[string]any{"Girth": length(k.Hem.Girth, u), "Unit": u, "Times": fmt.Sprintf("%.2f", *k.Hem.Gather)})
	}
	for _, x := range k.Practices {
		text += fmt.Sprintf("\n\n%s %s: %s (%s)", x.Years, x.Finding, x.Says, x.Source)
	}
	return text + "\n\n" + k.Dating
}

// skirted is the mount with its skirt below it: the skirt's own outlines as far up as they go.
func skirted(p plan.Plan) plan.Surface {
	k := p.Skirt
	s := plan.Surface{Heights: append([]float64{}, k.Heights...), Garment: append([]plane.Ring{}, k.Garment...)}
	for i, r := range k.Support { // where nothing is built the cloth hangs over the mount itself, or free
		if len(r) == 0 {
			r = k.Garment[i]
		}
		s.Built = append(s.Built, r)
	}
	for i, z := range p.Surface.Heights {
		if n := len(k.Heights); n > 0 && z > k.Heights[n-1]+1 {
			s.Heights, s.Garment, s.Built = append(s.Heights, z), append(s.Garment, p.Surface.Garment[i]), append(s.Built, p.Surface.Built[i])
		}
	}
	return s
}

// sleevePlace is where it is chosen what fills the sleeves.
type sleevePlace struct {
	*support
	girths  *control.Table
	content fyne.CanvasObject
}

func newSleevePlace(d *document.Document) *sleevePlace {
	p := &sleevePlace{girths: control.NewTable()}
	p.support = newSupport(d, func(r record.Record) []document.Field {
		return append(document.SleeveSupportFields(r), document.SleeveFields(r)...)
	}, newChoice("what fills them", "mount.sleeves.support", record.SleeveSupports, func(r *record.Record) *string { return &r.Mount.Sleeves.Support }, d))
	p.content = container.NewVScroll(p.girths)
	return p
}

func (p *sleevePlace) name() string             { return "Sleeves" }
func (p *sleevePlace) side() fyne.CanvasObject  { return p.values.list }
func (p *sleevePlace) stage() fyne.CanvasObject { return p.content }

// show lists the girths of sleeve and support; what would not pass the sleeve above it stands in bold.
func (p *sleevePlace) show() {
	p.support.show()
	pl, _ := p.doc.Plan()
	if p.girths.Hide(); pl.Sleeves == nil {
		return
	}
	p.girths.Show()
	u := p.doc.Record().Unit
	var rows []control.TableRow
	for i, x := range pl.Sleeves.Places {
		if i%3 != 0 && i != len(pl.Sleeves.Places)-1 {
			continue // every third says enough
		}
		rows = append(rows, control.TableRow{
			Name: length(&x.At, u), Numbers: []string{length(&x.Garment, u), length(&x.Passage, u), length(x.Support, u)},
			Strong: x.Support != nil && *x.Support > x.Passage,
		})
	}
	p.girths.Draw([]string{lang.L("below the armhole") + ", " + u, lang.L("sleeve, inside"), lang.L("narrowest above"), lang.L("support")}, rows)
}
