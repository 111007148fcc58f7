package control

import (
	"errors"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// shownTexts are two rows as a window would use them: what is written comes back without the blanks
// round it, and nothing longer than six letters is allowed.
func shownTexts(t *testing.T) (title, year *TextRow, said map[*TextRow]string) {
	newApp(t)
	title, year, said = NewTextRow("title", ""), NewTextRow("year", "1872"), map[*TextRow]string{}
	for _, r := range []*TextRow{title, year} {
		r.OnChanged = func(text string) error {
			if text = strings.TrimSpace(text); len(text) > 6 {
				return errors.New("six letters are possible")
			}
			said[r] = text
			r.Say(text)
			return nil
		}
	}
	test.NewTempWindow(t, container.NewVBox(title, year)).Resize(fyne.NewSize(300, 200))
	return title, year, said
}

func TestATextCountsAsItIsTyped(t *testing.T) {
	title, year, said := shownTexts(t)
	c := fyne.CurrentApp().Driver().CanvasForObject(title)
	c.Focus(title.entry)
	test.Type(title.entry, " a b ")
	if title.entry.Text != " a b " || said[title] != "a b" {
		t.Errorf("typed %q, said %q: blanks are lost while one types", title.entry.Text, said[title])
	}
	title.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if c.Focused() != fyne.Focusable(year.entry) || title.entry.Text != "a b" {
		t.Errorf("after Enter the text says %q and the next one has the keys: %v", title.entry.Text, c.Focused() == fyne.Focusable(year.entry))
	}
	year.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	test.Type(title.entry, "xy")
	title.entry.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if said[title] != "a b" || title.entry.Text != "a b" {
		t.Errorf("after Escape %q, said %q", title.entry.Text, said[title])
	}
}

func TestATextThatIsNotAllowedIsSaidWhenItIsLeft(t *testing.T) {
	title, year, said := shownTexts(t)
	c := fyne.CurrentApp().Driver().CanvasForObject(title)
	c.Focus(title.entry)
	test.Type(title.entry, "seven letters")
	if title.Note() != "" {
		t.Errorf("while typing it complains: %q", title.Note())
	}
	c.Focus(year.entry)
	if title.Note() != "six letters are possible" || said[title] != "seven" {
		t.Errorf("note %q, said %q", title.Note(), said[title])
	}
	title.Say("silk") // undone, or another record
	if title.entry.Text != "silk" || title.Note() != "" {
		t.Errorf("the text says %q, with %q below", title.entry.Text, title.Note())
	}
}

func TestAFoldHidesItsContent(t *testing.T) {
	newApp(t)
	inside := widget.NewLabel("inside")
	f := NewFold("Object", inside)
	w := test.NewTempWindow(t, f)
	tall := f.MinSize().Height
	var told []bool
	f.OnFolded = func(open bool) { told = append(told, open) }
	test.Tap(f.button)
	if f.Open() || inside.Visible() || f.MinSize().Height >= tall {
		t.Error("it does not fold")
	}
	f.Fold(true) // again
	test.Tap(f.button)
	if !f.Open() || len(told) != 2 || told[0] || !told[1] {
		t.Errorf("open %v, told %v", f.Open(), told)
	}
	w.Canvas().Capture()
}

func TestASwitchChoosesOneWord(t *testing.T) {
	newApp(t)
	s := NewSwitch("mm", "cm", "in")
	test.NewTempWindow(t, s)
	var told []string
	s.OnChosen = func(word string) { told = append(told, word) }
	s.Choose("cm")
	test.Tap(s.buttons[1])
	test.Tap(s.buttons[2])
	if s.Chosen() != "in" || len(told) != 1 || told[0] != "in" {
		t.Errorf("chosen %q, told %v; want in, once", s.Chosen(), told)
	}
	for i, b := range s.buttons {
		if marked := b.Importance == widget.MediumImportance; marked != (i == 2) {
			t.Errorf("%s is marked: %v", b.Text, marked)
		}
	}
}
