package document

import (
	"strings"
	"testing"

	"understructure/app/record"
)

func TestTextsOfARecordAreTyped(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	written := map[string]string{
		"object.number": "1872.4", "object.title": "Day dress", "object.year": "1872", "object.notice": "invented",
		"taken.by": "a hand", "taken.on": "2026-03-02", "form.label": "Form 3",
	}
	texts := append(ObjectTexts(), FormText())
	for _, x := range texts {
		if err := d.SetText(x, "  "+written[x.Path]+" "); err != nil {
			t.Errorf("%s: %v", x.Path, err)
		}
		d.Settle()
		if x.Label == "" || x.Get(d.Record()) != written[x.Path] {
			t.Errorf("%s is %q", x.Path, x.Get(d.Record()))
		}
	}
	r := d.Record()
	if r.Object.Year != 1872 || r.Taken.On != "2026-03-02" || r.Form.Label != "Form 3" {
		t.Errorf("the record has %+v, %+v, %+v", r.Object, r.Taken, r.Form)
	}
	for i := len(texts) - 1; i >= 0; i-- {
		d.Undo()
		if before := texts[i].Get(dress()); texts[i].Get(d.Record()) != before {
			t.Errorf("%s is %q after undo, want %q", texts[i].Path, texts[i].Get(d.Record()), before)
		}
	}
	if d.Dirty() {
		t.Error("something is left after everything was undone")
	}
}

func TestATextTypedLetterByLetterIsOneStep(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	title := ObjectTexts()[1]
	for _, s := range []string{"S", "Si", "Silk"} {
		if err := d.SetText(title, s); err != nil {
			t.Fatal(err)
		}
	}
	if d.Undo(); title.Get(d.Record()) != title.Get(dress()) || d.Dirty() {
		t.Errorf("after one undo the title is %q", title.Get(d.Record()))
	}
}

func TestATextThatARecordCannotHoldIsRefused(t *testing.T) {
	d := newDesk(t, echo)
	d.Start("demo", dress())
	byPath := map[string]Text{}
	for _, x := range append(ObjectTexts(), FormText()) {
		byPath[x.Path] = x
	}
	for _, c := range []struct{ path, text, says string }{
		{"object.year", "18", "from 1000 to 2100"}, {"object.year", "about 1872", "from 1000 to 2100"},
		{"taken.on", "2.3.2026", "yyyy-mm-dd"}, {"taken.on", "2026-02-30", "yyyy-mm-dd"},
		{"object.number", strings.Repeat("1", 101), "at most 100"}, {"object.title", "two\nlines", "one line"},
		{"form.label", strings.Repeat("x", 5000), "at most"},
	} {
		err := d.SetText(byPath[c.path], c.text)
		if err == nil || !strings.Contains(err.Error(), c.says) || strings.Contains(err.Error(), c.path) {
			t.Errorf("%s %q: %v, want %q without the path", c.path, c.text, err, c.says)
		}
	}
	if d.Dirty() {
		t.Error("what was refused has changed the record")
	}
}

// Every text is emptied again, and the year with it.
func TestAnEmptyTextIsNotKnown(t *testing.T) {
	d := newDesk(t, echo)
	r := dress()
	r.Object, r.Taken = record.Object{Number: "1", Title: "t", Year: 1872, Wearer: "woman", Notice: "n"}, record.Taken{By: "b", On: "2026-03-02"}
	d.Start("demo", r)
	for _, x := range ObjectTexts() {
		if err := d.SetText(x, ""); err != nil || x.Get(d.Record()) != "" {
			t.Errorf("%s: %v, %q", x.Path, err, x.Get(d.Record()))
		}
	}
	if d.Record().Object.Year != 0 {
		t.Errorf("the year is %d", d.Record().Object.Year)
	}
}
