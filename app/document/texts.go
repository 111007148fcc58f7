package document

import (
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"understructure/app/record"
)

// Text is one line of a record that is not a number to compute with, such as the garment's title.
type Text struct {
	Path  string // key path in the record, such as "object.title"
	Label string // in words
	Hint  string // how it is written, where that is not plain
	get   func(record.Record) string
	put   func(*record.Record, string) error
}

// ObjectTexts lists what is known of the garment beside its measurements, and of how those were taken.
func ObjectTexts() []Text {
	line := func(path, label, hint string, at func(*record.Record) *string) Text {
		return Text{path, label, hint, func(r record.Record) string { return *at(&r) }, func(r *record.Record, s string) error {
			*at(r) = s
			return nil
		}}
	}
	return []Text{
		line("object.number", "number", "", func(r *record.Record) *string { return &r.Object.Number }),
		line("object.title", "title", "", func(r *record.Record) *string { return &r.Object.Title }),
		{"object.year", "year", "", yearOf, putYear},
		line("object.notice", "notice", "", func(r *record.Record) *string { return &r.Object.Notice }),
		line("taken.by", "measured by", "", func(r *record.Record) *string { return &r.Taken.By }),
		line("taken.on", "measured on", "yyyy-mm-dd", func(r *record.Record) *string { return &r.Taken.On }),
	}
}

// FormText is the name by which a workshop knows the form; a record that had no form gets one.
func FormText() Text {
	return Text{"form.label", "form", "", formLabel, func(r *record.Record, s string) error {
		form(r)
		r.Form.Label = s
		return nil
	}}
}

func formLabel(r record.Record) string {
	if r.Form == nil {
		return ""
	}
	return r.Form.Label
}

func yearOf(r record.Record) string {
	if r.Object.Year == 0 {
		return ""
	}
	return strconv.Itoa(r.Object.Year)
}

func putYear(r *record.Record, s string) error {
	if r.Object.Year = 0; s == "" {
		return nil
	}
	year, err := strconv.Atoi(s)
	if l := record.YearLimit; err != nil || float64(year) < l.Least || float64(year) > l.Most {
		return fmt.Errorf("a year from %.0f to %.0f is possible", l.Least, l.Most)
	}
	r.Object.Year = year
	return nil
}

// Get returns the text in r, "" where it is not known.
func (t Text) Get(r record.Record) string { return t.get(r) }

// SetText gives a text of the record what a person wrote, without the blanks round it. Until Settle,
// setting the same text again belongs to the same step. It refuses what a record cannot hold.
func (d *Document) SetText(t Text, s string) error {
	s = strings.TrimSpace(s)
	if t.Get(d.Record()) == s {
		return nil
	}
	r := clone(d.Record())
	if err := t.put(&r, s); err != nil {
		return err
	}
	if err := record.EncodeDraft(io.Discard, r); err != nil {
		return withoutPath(err)
	}
	d.history.Amend(t.Label, r)
	d.changed()
	return nil
}

// withoutPath is a refusal for the place beside the text, where its path says nothing.
func withoutPath(err error) error {
	var no *record.Refusal
	if !errors.As(err, &no) {
		return err
	}
	bare := *no
	bare.Path = ""
	return &bare
}
