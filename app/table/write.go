package table

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"understructure/app/record"
)

// byteOrderMark tells spreadsheets that the text is UTF-8.
const byteOrderMark = "\uFEFF"

// Write writes records as a table with every column, each row in its record's unit. The same records give the same bytes.
func Write(w io.Writer, rows []Row, c Comma) error {
	lines := [][]string{headings()}
	for _, r := range rows {
		values, err := flat(r.Record)
		if err != nil {
			return fmt.Errorf("%s: %w", r.Name, err)
		}
		values[name] = r.Name
		lines = append(lines, line(values, c))
	}
	return Cells(w, lines, c)
}

// Blank writes a table to fill in: the columns, and for each its name, where the tape goes, and what is possible.
func Blank(w io.Writer, c Comma) error {
	lines := [][]string{headings(), nil, nil, nil}
	for _, col := range columns {
		for i, text := range []string{col.label, col.where, col.allowed} {
			if col.path == name {
				text = remark + " " + text
			}
			lines[i+1] = append(lines[i+1], Guarded(text))
		}
	}
	return Cells(w, lines, c)
}

func headings() []string {
	var all []string
	for _, col := range columns {
		all = append(all, col.path)
	}
	return all
}

func line(values map[string]any, c Comma) []string {
	var cells []string
	for _, col := range columns {
		cells = append(cells, cell(values[col.path], c))
	}
	return cells
}

// cell writes a text, a number, or several readings.
func cell(value any, c Comma) string {
	switch v := value.(type) {
	case string:
		return Guarded(v)
	case json.Number:
		return c.Number(v.String())
	case []any:
		var all []string
		for _, reading := range v {
			all = append(all, cell(reading, c))
		}
		return strings.Join(all, " "+readings+" ")
	}
	return ""
}

// flat lists the values of a record's file by their paths.
func flat(r record.Record) (map[string]any, error) {
	var b bytes.Buffer
	if err := record.EncodeDraft(&b, r); err != nil {
		return nil, err
	}
	d := json.NewDecoder(&b)
	d.UseNumber()
	var tree map[string]any
	if err := d.Decode(&tree); err != nil {
		return nil, err
	}
	values := map[string]any{}
	flatten("", tree, values)
	return values, nil
}

func flatten(path string, tree map[string]any, into map[string]any) {
	for key, v := range tree {
		if inner, ok := v.(map[string]any); ok {
			flatten(path+key+".", inner, into)
		} else {
			into[path+key] = v
		}
	}
}

// Cells writes rows of cells as a spreadsheet reads them: UTF-8 and said to be, with the line ends of RFC 4180. Texts
// that come from elsewhere must be Guarded.
func Cells(w io.Writer, rows [][]string, c Comma) error {
	var b bytes.Buffer
	b.WriteString(byteOrderMark)
	out := csv.NewWriter(&b)
	out.Comma, out.UseCRLF = c.between(), true
	if err := out.WriteAll(rows); err != nil {
		return fmt.Errorf("table: %w", err)
	}
	_, err := b.WriteTo(w)
	return err
}
