package store

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"understructure/app/record"
	"understructure/geometry/measure"
)

// largest is the most that a list of forms may hold, in bytes.
const largest = 4 << 20

// ReadForms reads forms from JSON: a list, or the form of a record. There is none where a record has none. A list is
//
//	{ "understructure": 1, "unit": "cm", "forms": [ { "label": "Form 3", "bodice": { "bust_girth": 78, … } } ] }
//
// with each form written as in a record. What is not possible is refused as in a record.
func ReadForms(r io.Reader) ([]record.Form, error) {
	text, err := io.ReadAll(io.LimitReader(r, largest+1))
	if err != nil {
		return nil, err
	}
	if len(text) > largest {
		return nil, &record.Refusal{Message: "the file is too large for a list of forms", Allowed: "4 MiB"}
	}
	var top map[string]json.RawMessage
	listed := json.Unmarshal(bytes.TrimPrefix(text, []byte("\uFEFF")), &top) == nil && top["forms"] != nil
	if !listed {
		return formOf(text, "form")
	}
	return list(top)
}

func list(top map[string]json.RawMessage) ([]record.Form, error) {
	allowed := []string{"understructure", "unit", "forms"}
	for _, key := range slices.Sorted(maps.Keys(top)) {
		if !slices.Contains(allowed, key) {
			return nil, &record.Refusal{Path: key, Message: "the key is not known", Allowed: strings.Join(allowed, " ")}
		}
	}
	var each []json.RawMessage
	if err := json.Unmarshal(top["forms"], &each); err != nil {
		return nil, &record.Refusal{Path: "forms", Message: "is not possible", Allowed: "a list of forms"}
	}
	var all []record.Form
	for i, form := range each {
		text, err := json.Marshal(map[string]json.RawMessage{"understructure": top["understructure"], "unit": top["unit"], "form": form})
		if err != nil {
			return nil, err
		}
		one, err := formOf(text, fmt.Sprintf("forms[%d]", i))
		if err != nil {
			return nil, err
		}
		all = append(all, one...)
	}
	return all, nil
}

// formOf reads a record, or a draft of one, for its form; what is refused in the form is said to be at a place.
func formOf(text []byte, place string) ([]record.Form, error) {
	rec, err := record.DecodeDraft(bytes.NewReader(text))
	var r *record.Refusal
	if errors.As(err, &r) {
		moved := *r
		if rest, inside := strings.CutPrefix(r.Path, "form"); inside {
			moved.Path = place + rest
		}
		return nil, &moved
	}
	if err != nil || rec.Form == nil {
		return nil, err
	}
	if err := Missing(place+".bodice", rec.Form.Bodice); err != nil {
		return nil, err
	}
	return []record.Form{*rec.Form}, nil
}

// Missing is the refusal of a bodice or form that stands at a place and lacks what every mount needs; nil where it has that.
func Missing(place string, s measure.Sheet) error {
	for _, k := range record.Required {
		if _, ok := s[k]; !ok {
			return &record.Refusal{Path: place + "." + string(k), Message: "must be given"}
		}
	}
	return nil
}

// Stock is a store of forms, each once.
type Stock struct {
	Forms []record.Form
	from  map[string]string // by label, the file
}

// Add puts a form from a file into store. One that is there already, as where many records stand on one form, is not added
// again; another with the same label is refused, since nobody could tell them apart. A form without a label has the name given.
func (s *Stock) Add(f record.Form, file, name string) error {
	if f.Label == "" {
		f.Label = name
	}
	i := slices.IndexFunc(s.Forms, func(g record.Form) bool { return g.Label == f.Label })
	switch {
	case i < 0:
		if s.from == nil {
			s.from = map[string]string{}
		}
		s.from[f.Label] = file
		s.Forms = append(s.Forms, f)
	case !maps.Equal(s.Forms[i].Bodice, f.Bodice):
		return fmt.Errorf("%q is measured otherwise in %s than in %s; please give the two forms different labels", f.Label, file, s.from[f.Label])
	}
	return nil
}
