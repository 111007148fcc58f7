package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
)

// places are the tabs in which values are typed.
type places struct {
	doc     *document.Document
	tabs    *container.AppTabs
	lists   []*control.MeasureList
	names   []string
	choices []*choice
}

func newPlaces(d *document.Document) *places {
	p := &places{doc: d, tabs: container.NewAppTabs()}
	p.choices = []*choice{
		newChoice("build", "mount.build", record.Builds, func(r *record.Record) *string { return &r.Mount.Build }, d),
		newChoice("strength of the cloth", "garment.strength", record.Strengths, func(r *record.Record) *string { return &r.Garment.Strength }, d),
		newChoice("step between slices", "mount.step", record.Steps, func(r *record.Record) *string { return &r.Mount.Step }, d),
		newChoice("paper", "mount.paper", record.Papers, func(r *record.Record) *string { return &r.Mount.Paper.Name }, d),
	}
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
	for _, c := range p.choices {
		c.show(r, said.words[c.path])
	}
}

func (p *places) same(all []document.Place) bool {
	return slices.EqualFunc(all, p.names, func(place document.Place, name string) bool { return place.Name == name })
}

// makeTabs makes a tab for each place and stays at the one of the same name.
func (p *places) makeTabs(all []document.Place) {
	at := ""
	if t := p.tabs.Selected(); t != nil {
		at = t.Text
	}
	p.lists, p.names = nil, nil
	var items []*container.TabItem
	for _, place := range all {
		list := p.newList()
		if place.Name == "Mount" {
			list.Head = p.choose()
		}
		p.lists, p.names = append(p.lists, list), append(p.names, place.Name)
		items = append(items, container.NewTabItem(place.Name, list))
	}
	p.tabs.SetItems(items)
	p.tabs.SelectIndex(max(0, slices.Index(p.names, at)))
}

// choose are the words that are chosen, above the numbers of the mount.
func (p *places) choose() fyne.CanvasObject {
	box := container.NewVBox(control.NewGroup("build"))
	for _, c := range p.choices {
		box.Add(c.row)
	}
	return box
}

// newList makes the list of one place. It looks fields up anew at each event, since they depend on the record.
func (p *places) newList() *control.MeasureList {
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
