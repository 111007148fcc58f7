package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// place is where one part of the work is done, such as measuring. All places look at the same document.
type place interface {
	name() string             // in English; the button says it in the language of the desktop
	side() fyne.CanvasObject  // what is typed and chosen there, in the left column
	stage() fyne.CanvasObject // what the rest of the window shows; nil is the figure and its section
	show()                    // brings it to the document and to the newest plan
}

// places are the places and the row of buttons that leads to them. Only the chosen one is on the screen.
type places struct {
	all     []place
	chosen  int
	buttons []*widget.Button
	bar     *fyne.Container
	left    *fyne.Container
	stage   *fyne.Container
	figure  fyne.CanvasObject
}

func newPlaces(figure fyne.CanvasObject, all ...place) *places {
	p := &places{all: all, chosen: -1, figure: figure, bar: container.New(layout.NewCustomPaddedHBoxLayout(2)), left: container.NewStack(), stage: container.NewStack()}
	for i, each := range all {
		b := widget.NewButton(lang.L(each.name()), func() { p.choose(i) })
		b.Importance = widget.LowImportance
		p.buttons = append(p.buttons, b)
		p.bar.Add(b)
	}
	p.choose(0)
	return p
}

// choose goes to a place.
func (p *places) choose(i int) {
	if i == p.chosen {
		return
	}
	if p.chosen >= 0 {
		p.mark(p.chosen, widget.LowImportance)
	}
	p.chosen = i
	p.mark(i, widget.MediumImportance)
	at := p.all[i]
	at.show()
	p.left.Objects = []fyne.CanvasObject{at.side()}
	p.left.Refresh()
	stage := at.stage()
	if stage == nil {
		stage = p.figure
	}
	p.stage.Objects = []fyne.CanvasObject{stage}
	p.stage.Refresh()
}

func (p *places) mark(i int, importance widget.Importance) {
	p.buttons[i].Importance = importance
	p.buttons[i].Refresh()
}

// goTo goes to the place of a name.
func (p *places) goTo(name string) {
	p.choose(slices.IndexFunc(p.all, func(each place) bool { return each.name() == name }))
}

// show brings the place on the screen to the document. The others follow when one goes there.
func (p *places) show() { p.all[p.chosen].show() }
