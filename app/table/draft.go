package table

import (
	"bytes"
	"encoding/json"
	"errors"
	"slices"
	"strconv"
	"strings"

	"understructure/app/record"
	"understructure/geometry/unit"
)

// draft reads the values of a row, by their paths, as the draft of a record.
func draft(values map[string]string) (record.Record, error) {
	tree := map[string]any{"understructure": record.Version}
	for _, col := range columns {
		if text, ok := values[col.path]; ok && col.path != name {
			put(tree, col.path, value(col, text))
		}
	}
	text, err := json.Marshal(tree)
	if err != nil {
		return record.Record{}, err
	}
	return record.DecodeDraft(bytes.NewReader(text))
}

// put sets a value under a path, and makes the objects on the way.
func put(tree map[string]any, path string, v any) {
	key, rest, deeper := strings.Cut(path, ".")
	if !deeper {
		tree[key] = v
		return
	}
	inner, ok := tree[key].(map[string]any)
	if !ok {
		inner = map[string]any{}
		tree[key] = inner
	}
	put(inner, rest, v)
}

// value is what a cell says. What should be a number and is none stays a text, which the record then refuses.
func value(col column, text string) any {
	if col.text {
		return text
	}
	if !strings.Contains(text, readings) {
		return number(text)
	}
	var all []any
	for _, reading := range strings.Split(text, readings) {
		all = append(all, number(reading))
	}
	return all
}

func number(text string) any {
	v, ok := unit.Number(text)
	if !ok {
		return strings.TrimSpace(text)
	}
	return json.Number(strconv.FormatFloat(v, 'g', -1, 64))
}

// refused turns a record's refusal into the fault of a cell.
func (t *reader) refused(l numbered, err error) {
	var r *record.Refusal
	if !errors.As(err, &r) {
		t.fault(l.row, 0, "%v", err)
		return
	}
	path, _, _ := strings.Cut(r.Path, "[")
	at := 1 + slices.IndexFunc(t.heads, func(c column) bool { return c.path == path })
	said := *r
	if at > 0 {
		said.Path = ""
	}
	t.fault(l.row, at, "%s", said.Error())
}
