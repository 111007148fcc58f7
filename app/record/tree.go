package record

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

const (
	largest = 4 << 20 // bytes: every list filled to its limit makes some 3 MB, so more is another kind of file
	deepest = 8       // a record nests six deep
)

// node is one JSON value as it stands in the file: nil, bool, string, json.Number, list or object.
type node any

type list []node

// object keeps its keys in the order of the file, so that refusals come in that order.
type object struct {
	keys   []string
	values map[string]node
}

// parse reads exactly one JSON value, and refuses what encoding/json lets pass: keys that stand
// twice, values that follow, broken text, endless nesting.
func parse(r io.Reader) (node, error) {
	b, err := io.ReadAll(io.LimitReader(r, largest+1))
	if err != nil {
		return nil, err
	}
	if len(b) > largest {
		return nil, &Refusal{Message: "the file is too large for a record", Allowed: "4 MiB"}
	}
	b = bytes.TrimPrefix(b, []byte("\uFEFF")) // some editors put a byte order mark first
	if !utf8.Valid(b) {
		return nil, &Refusal{Message: "the file is not text in UTF-8"}
	}
	p := &parser{text: b, dec: json.NewDecoder(bytes.NewReader(b))}
	p.dec.UseNumber()
	n, err := p.value("", 0)
	if err != nil {
		return nil, err
	}
	if _, err := p.dec.Token(); err != io.EOF {
		return nil, p.broken("something follows the end of the record")
	}
	return n, nil
}

type parser struct {
	text []byte
	dec  *json.Decoder
}

func (p *parser) value(path string, depth int) (node, error) {
	t, err := p.dec.Token()
	if err != nil {
		return nil, p.broken(plainly(err))
	}
	if depth > deepest {
		return nil, &Refusal{Path: short(path), Message: "the file nests too deep for a record"}
	}
	switch t {
	case json.Delim('{'):
		return p.object(path, depth)
	case json.Delim('['):
		return p.list(path, depth)
	}
	return t, nil
}

func (p *parser) object(path string, depth int) (node, error) {
	o := object{values: map[string]node{}}
	for p.dec.More() {
		t, err := p.dec.Token()
		if err != nil {
			return nil, p.broken(plainly(err))
		}
		key, ok := t.(string)
		if !ok {
			return nil, p.broken("a key must be in quotation marks")
		}
		at := join(path, short(key))
		if _, twice := o.values[key]; twice {
			return nil, &Refusal{Path: at, Message: "the key stands twice"}
		}
		n, err := p.value(at, depth+1)
		if err != nil {
			return nil, err
		}
		o.keys, o.values[key] = append(o.keys, key), n
	}
	return o, p.end()
}

func (p *parser) list(path string, depth int) (node, error) {
	l := list{}
	for p.dec.More() {
		n, err := p.value(fmt.Sprintf("%s[%d]", path, len(l)), depth+1)
		if err != nil {
			return nil, err
		}
		l = append(l, n)
	}
	return l, p.end()
}

func (p *parser) end() error {
	if _, err := p.dec.Token(); err != nil {
		return p.broken(plainly(err))
	}
	return nil
}

// broken refuses the file as JSON, with the line and column where reading stopped.
func (p *parser) broken(why string) error {
	read := p.text[:min(int(p.dec.InputOffset()), len(p.text))]
	line := 1 + bytes.Count(read, []byte("\n"))
	column := 1 + utf8.RuneCount(read[bytes.LastIndexByte(read, '\n')+1:])
	return &Refusal{Message: fmt.Sprintf("the file is not JSON at line %d, column %d: %s", line, column, why)}
}

func plainly(err error) string {
	if err == io.EOF || err == io.ErrUnexpectedEOF {
		return "it ends too early"
	}
	return strings.TrimPrefix(err.Error(), "json: ")
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}
