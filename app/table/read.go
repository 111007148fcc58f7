package table

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"understructure/app/batch"
)

// Read reads a table, divided by commas, semicolons or tabs, with decimal points or commas. Either every row is
// the draft of a record, or what is returned is Faults, all of them: nothing of a faulty table should be kept.
func Read(r io.Reader) ([]Row, error) {
	b, err := io.ReadAll(io.LimitReader(r, largest+1))
	if err != nil {
		return nil, err
	}
	lines, err := split(b)
	if err != nil {
		return nil, err
	}
	t := &reader{named: map[string]int{}}
	for _, l := range lines {
		switch {
		case l.empty():
		case t.heads == nil:
			if t.heading(l); len(t.faults) > 0 {
				return nil, t.faults // in the rows everything would be wrong
			}
		default:
			t.row(l)
		}
	}
	if t.heads == nil {
		return nil, Faults{{Message: "the table has no headings"}}
	}
	if len(t.faults) > 0 {
		return nil, t.faults
	}
	return t.rows, nil
}

// numbered is a row of cells and its number in a spreadsheet.
type numbered struct {
	row   int
	cells []string
}

// empty reports whether there is nothing in a row for the program.
func (l numbered) empty() bool {
	return strings.HasPrefix(l.cells[0], remark) || strings.TrimSpace(strings.Join(l.cells, "")) == ""
}

// split divides a text into rows and cells.
func split(b []byte) ([]numbered, error) {
	b = bytes.TrimPrefix(b, []byte(byteOrderMark))
	switch {
	case len(b) > largest:
		return nil, Faults{{Message: "the file is too large for a table of measurements; allowed 4 MiB"}}
	case !utf8.Valid(b) || bytes.IndexByte(b, 0) >= 0:
		return nil, Faults{{Message: "the file is not text in UTF-8; please save it as CSV in UTF-8"}}
	}
	c := csv.NewReader(bytes.NewReader(b))
	c.Comma, c.FieldsPerRecord = between(b), -1
	var lines []numbered
	broken := 0 // line ends inside cells so far, which a spreadsheet does not count
	for {
		cells, err := c.Read()
		if err == io.EOF {
			return lines, nil
		}
		var p *csv.ParseError
		if errors.As(err, &p) {
			return nil, Faults{{Row: p.StartLine - broken, Message: "a quotation mark stands where none may: " + p.Err.Error()}}
		}
		if len(lines) == mostRows+1 {
			return nil, Faults{{Message: fmt.Sprintf("the table has too many rows; allowed %d and the headings", mostRows)}}
		}
		at, _ := c.FieldPos(0)
		lines = append(lines, numbered{at - broken, cells})
		broken += strings.Count(strings.Join(cells, ""), "\n")
	}
}

// between finds what divides the columns: what is most frequent in the first line outside quotation marks.
func between(b []byte) rune {
	first, _, _ := bytes.Cut(b, []byte("\n"))
	count := map[byte]int{}
	quoted := false
	for _, c := range first {
		if c == '"' {
			quoted = !quoted
		} else if !quoted {
			count[c]++
		}
	}
	best := byte(',')
	for _, c := range []byte(";\t") {
		if count[c] > count[best] {
			best = c
		}
	}
	return rune(best)
}

// reader makes rows of records and gathers faults.
type reader struct {
	heads  []column // "" where a column has no heading
	rows   []Row
	named  map[string]int // the row in which a name was given
	faults Faults
}

func (t *reader) fault(row, at int, format string, args ...any) {
	heading := ""
	if at > 0 && at <= len(t.heads) {
		heading = t.heads[at-1].path
	}
	t.faults = append(t.faults, Fault{row, at, heading, fmt.Sprintf(format, args...)})
}

func (t *reader) heading(l numbered) {
	seen := map[string]bool{}
	for i, text := range l.cells {
		col, known := find(text)
		switch {
		case strings.TrimSpace(text) == "":
		case !known:
			t.fault(l.row, i+1, "the heading %s is not known; allowed are the paths of values in a record, such as garment.bodice.waist_girth", short(text))
		case seen[col.path]:
			t.fault(l.row, i+1, "the heading %s stands twice", short(text))
		}
		seen[col.path] = true
		t.heads = append(t.heads, col)
	}
}

// name of a row's record: as given, else its number, else its place.
func (t *reader) name(l numbered, values map[string]string) string {
	for _, path := range []string{name, "object.number"} {
		if text := values[path]; text != "" {
			return batch.SafeName(text)
		}
	}
	return fmt.Sprintf("row-%d", l.row)
}

func (t *reader) row(l numbered) {
	values := map[string]string{}
	for i, text := range l.cells {
		text = strings.TrimSpace(text)
		switch {
		case text == "":
		case i >= len(t.heads) || t.heads[i].path == "":
			t.fault(l.row, i+1, "%s stands in a column without a heading", short(text))
		default:
			values[t.heads[i].path] = bare(text)
		}
	}
	n := t.name(l, values)
	if other, twice := t.named[strings.ToLower(n)]; twice {
		t.fault(l.row, 0, "the record would be named %s like that of row %d; please name one of them in the column %q", n, other, name)
	}
	t.named[strings.ToLower(n)] = l.row
	rec, err := draft(values)
	if err != nil {
		t.refused(l, err)
		return
	}
	t.rows = append(t.rows, Row{n, rec})
}
