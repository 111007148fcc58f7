package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Option is a word that can be chosen, and the key that it stands for.
type Option struct{ Key, Word string }

// Noted is one thing seen at a fitting, by the keys of what was chosen; By is as it was typed.
type Noted struct{ What, Level, Where, By string }

// FittingForm is where one thing that was seen is said: a fault, at which level, on which side, and by how much.
type FittingForm struct {
	widget.BaseWidget
	OnNoted  func(n Noted) error                   // the button, or Enter in the amount; the error is said below
	OnChosen func(n Noted) (level bool, is string) // whether a level is asked for, and what is known of it
	OnLeft   func()                                // something is not to be corrected after all

	what, level, where *pick
	by                 *wholeEntry
	unit, known, note  *widget.Label
	button, leave      *widget.Button
	label              string // of the button
	box                fyne.CanvasObject
}

// NewFittingForm returns a form for these faults, levels and sides. A level and a side may be left open.
func NewFittingForm(whats, levels, wheres []Option) *FittingForm {
	f := &FittingForm{
		OnNoted: func(Noted) error { return nil }, OnChosen: func(Noted) (bool, string) { return true, "" }, OnLeft: func() {},
		what: newPick(whats), level: newPick(levels), where: newPick(wheres),
		by: &wholeEntry{}, unit: widget.NewLabel(""), known: caption(), note: newNote(), label: lang.L("Note it"),
	}
	f.what.OnChanged = func(string) { f.chosen() }
	f.level.OnChanged = f.what.OnChanged
	f.where.PlaceHolder = lang.L("all round")
	f.level.PlaceHolder, f.what.PlaceHolder = "–", lang.L("choose")
	f.by.ExtendBaseWidget(f.by)
	f.by.OnSubmitted = func(string) { f.noted() }
	f.button = widget.NewButton(f.label, f.noted)
	f.leave = widget.NewButton(lang.L("Leave it"), func() { f.OnLeft() })
	f.leave.Importance = widget.LowImportance
	f.leave.Hide()
	amount := container.NewBorder(nil, nil, nil, f.unit, f.by)
	f.box = container.NewVBox(
		row(lang.L("seen"), f.what), row(lang.L("level"), f.level), row(lang.L("where"), f.where), row(lang.L("by"), amount),
		f.known, f.note, container.NewHBox(f.button, f.leave))
	f.ExtendBaseWidget(f)
	f.chosen()
	return f
}

func row(name string, o fyne.CanvasObject) fyne.CanvasObject {
	return container.New(textLayout{}, NewName(name), o)
}

// caption is small text that is wrapped, and hidden while it says nothing.
func caption() *widget.Label {
	l := widget.NewLabel("")
	l.Wrapping = fyne.TextWrapWord
	l.SizeName = theme.SizeNameCaptionText
	l.Hide()
	return l
}

// say puts a text into a label that is hidden while it says nothing.
func say(l *widget.Label, text string) {
	if l.Text != text {
		l.SetText(text)
	}
	if hidden := text == ""; hidden != l.Hidden {
		l.Hidden = hidden
		l.Refresh()
	}
}

// SetUnit says in which unit the amount is typed.
func (f *FittingForm) SetUnit(u string) {
	if f.unit.Text != u {
		f.unit.SetText(u)
	}
}

// Fill makes the form say n.
func (f *FittingForm) Fill(n Noted) {
	f.what.choose(n.What)
	f.level.choose(n.Level)
	f.where.choose(n.Where)
	f.by.SetText(n.By)
	f.chosen()
}

// Edit puts something already noted into the form, to be corrected.
func (f *FittingForm) Edit(n Noted) {
	f.button.SetText(lang.L("Correct it"))
	f.leave.Show()
	f.Fill(n)
}

// Clear empties the form.
func (f *FittingForm) Clear() {
	f.button.SetText(f.label)
	f.leave.Hide()
	f.Fill(Noted{})
}

// Note notes what the form says, as its button does.
func (f *FittingForm) Note() { f.noted() }

// Told is what the form says of the choice, and what is wrong with it.
func (f *FittingForm) Told() (known, wrong string) { return f.known.Text, f.note.Text }

// Said is what the form says now.
func (f *FittingForm) Said() Noted {
	return Noted{f.what.key(), f.level.key(), f.where.key(), f.by.Text}
}

// Tell brings what is known of the choice up to date.
func (f *FittingForm) Tell() { f.chosen() }

func (f *FittingForm) chosen() {
	asked, known := f.OnChosen(f.Said())
	if !asked && f.level.key() != "" {
		f.level.choose("")
	}
	if asked == f.level.Disabled() {
		if f.level.Enable(); !asked {
			f.level.Disable()
		}
	}
	say(f.known, known)
	say(f.note, "")
	f.Refresh()
}

func (f *FittingForm) noted() {
	err := f.OnNoted(f.Said())
	if err != nil {
		say(f.note, err.Error())
		f.Refresh()
		return
	}
	f.Clear()
	if c := fyne.CurrentApp().Driver().CanvasForObject(f.by); c != nil {
		c.Focus(f.what)
	}
}

// CreateRenderer is for the toolkit.
func (f *FittingForm) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(f.box) }

// pick is a choice from options; the empty key is nothing chosen.
type pick struct {
	widget.Select
	options []Option
}

func newPick(options []Option) *pick {
	p := &pick{options: options}
	for _, o := range options {
		p.Options = append(p.Options, o.Word)
	}
	p.ExtendBaseWidget(p)
	return p
}

// key is that of the option chosen, "" where there is none.
func (p *pick) key() string {
	for _, o := range p.options {
		if o.Word == p.Selected {
			return o.Key
		}
	}
	return ""
}

// choose chooses the option of a key without telling anybody.
func (p *pick) choose(key string) {
	word := ""
	for _, o := range p.options {
		if o.Key == key {
			word = o.Word
		}
	}
	if word != p.Selected {
		p.Selected = word
		p.Refresh()
	}
}
