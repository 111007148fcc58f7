package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
)

// places are the tabs in which values are typed.
type places struct {
	doc   *document.Document
	tabs  *container.AppTabs
	lists []*control.MeasureList
	names []string
	build *choice
	paper *choice
}

func newPlaces(d *document.Document) *places {
	p := &places{doc: d, tabs: container.NewAppTabs()}
	p.build = newChoice("Build", record.Builds, func(r *record.Record) *string { return &r.Mount.Build }, d)
	p.paper = newChoice("Paper", record.Papers, func(r *record.Record) *string { return &r.Mount.Paper.Name }, d)
	return p
}

// show brings every list to the record, and beside each value what the newest plan says of it.
func (p *places) show() {
	r := p.doc.Record()
	all := document.Places(r)
	if !p.same(all) {
		p.makeTabs(all)
	}
	said := sayings(p.doc)
	for i, place := range all {
		p.lists[i].Fill(said.measures(place.Fields, r))
	}
	p.build.show(r, "")
	p.paper.show(r, said.words["mount.paper"])
}

func (p *places) same(all []document.Place) bool {
	if len(all) != len(p.names) {
		return false
	}
	for i, place := range all {
		if place.Name != p.names[i] {
			return false
		}
	}
	return true
}

func (p *places) makeTabs(all []document.Place) {
	p.lists, p.names = nil, nil
	var items []*container.TabItem
	for _, place := range all {
		list := p.newList(place.Name)
		var content fyne.CanvasObject = list
		if place.Name == "Mount" {
			content = container.NewBorder(p.choices(), nil, nil, nil, list)
		}
		p.lists, p.names = append(p.lists, list), append(p.names, place.Name)
		items = append(items, container.NewTabItem(place.Name, content))
	}
	p.tabs.SetItems(items)
	p.tabs.SelectIndex(0)
}

// choices are the words that are chosen, above the numbers of the mount.
func (p *places) choices() fyne.CanvasObject {
	form := container.New(layout.NewFormLayout(),
		widget.NewLabel("Build"), p.build.choose, widget.NewLabel("Paper"), p.paper.choose)
	return container.New(layout.NewCustomPaddedLayout(6, 0, 0, 10), form)
}

// newList makes the list of one place. It looks fields up anew at each event, since they depend on the record.
func (p *places) newList(place string) *control.MeasureList {
	list := control.NewMeasureList()
	list.Read = func(key, text string) (*float64, error) {
		f, r := p.field(key)
		return f.Read(text, r.Unit)
	}
	list.Write = func(key string, v float64) string {
		f, r := p.field(key)
		return f.Kind.Format(v, r.Unit)
	}
	list.OnChanged = func(key string, v *float64) {
		f, _ := p.field(key)
		p.doc.Set(f, v)
	}
	list.OnDone = p.doc.Settle
	return list
}

func (p *places) field(path string) (document.Field, record.Record) {
	r := p.doc.Record()
	for _, place := range document.Places(r) {
		for _, f := range place.Fields {
			if f.Path == path {
				return f, r
			}
		}
	}
	panic("ui: no field " + path)
}

// choice is one word of the record that is chosen from a few.
type choice struct {
	choose *widget.Select
	word   func(*record.Record) *string
}

func newChoice(label string, words []string, word func(*record.Record) *string, d *document.Document) *choice {
	c := &choice{choose: widget.NewSelect(words, nil), word: word}
	c.choose.OnChanged = func(chosen string) {
		r := d.Record()
		if *word(&r) != chosen {
			*word(&r) = chosen
			d.Change(label, r)
		}
	}
	return c
}

// show selects the record's word; otherwise is what is used where it has none.
func (c *choice) show(r record.Record, otherwise string) {
	if now := *c.word(&r); c.choose.Selected != now || c.choose.PlaceHolder != otherwise {
		c.choose.Selected, c.choose.PlaceHolder = now, otherwise
		c.choose.Refresh()
	}
}
