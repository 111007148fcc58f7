package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
)

// How the ease is given.
const (
	byStrength = "by strength"
	oneEase    = "one ease"
	byLevel    = "by level"
)

// easeChoice is how the ease is given. A record without any does not tell one ease that is still to be typed
// from the strength of the cloth, so what a person chose stands as long as the record admits it.
type easeChoice struct {
	doc  *document.Document
	pick *pick
	row  fyne.CanvasObject
	mode string
	of   openRecord
	then func() // after a person chose
}

// openRecord tells one open record from another.
type openRecord struct{ path, title string }

func opened(d *document.Document) openRecord { return openRecord{d.Path(), d.Title()} }

func newEaseChoice(d *document.Document) *easeChoice {
	e := &easeChoice{doc: d, then: func() {}}
	e.pick = newLabelled([]string{byStrength, oneEase, byLevel}, []string{lang.L("by strength"), lang.L("one ease"), lang.L("by level")}, e.choose)
	e.row = pickRow(lang.L("ease"), e.pick)
	return e
}

func (e *easeChoice) choose(mode string) {
	e.mode = mode
	if !admits(e.doc.Record().Mount.Ease, mode) {
		e.doc.ClearEase()
	}
	e.then()
}

// admits reports whether an ease can have been given in a way. One ease is an ease for every level too.
func admits(e record.Ease, mode string) bool {
	switch mode {
	case byStrength:
		return e.All == nil && len(e.ByLevel) == 0
	case oneEase:
		return len(e.ByLevel) == 0
	}
	return mode == byLevel
}

// show brings the choice to the record.
func (e *easeChoice) show(r record.Record) {
	if now := opened(e.doc); now != e.of {
		e.mode, e.of = "", now
	}
	if !admits(r.Mount.Ease, e.mode) {
		all := []string{byStrength, oneEase, byLevel}
		e.mode = all[slices.IndexFunc(all, func(mode string) bool { return admits(r.Mount.Ease, mode) })]
	}
	e.pick.show(e.mode, "")
}

// fields are the numbers of the mount, with as many of ease as are given.
func (e *easeChoice) fields(r record.Record) []document.Field {
	mount := fieldsOf("Mount")(r)
	one := slices.IndexFunc(mount, func(f document.Field) bool { return f.Path == "mount.ease" })
	switch e.mode {
	case oneEase:
		return mount
	case byLevel:
		return slices.Concat(document.EaseFields(r), slices.Delete(slices.Clone(mount), one, one+1))
	}
	return slices.Delete(slices.Clone(mount), one, one+1)
}
