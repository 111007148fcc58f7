package record

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"understructure/geometry/measure"
	"understructure/geometry/unit"
)

// Version is the number at the head of every record.
const Version = 1

// Required lists the keys of a bodice without which there is no mount; a form to be padded needs the same.
var Required = []measure.Key{measure.BustGirth, measure.WaistGirth, measure.BackWaist}

// Decode reads one record. It returns a *Refusal where the file is not one, and never a
// record that is not complete and possible. Choices left out that every record needs are filled:
// the wearer is a woman, the build is padded where a form is given and slices where not.
func Decode(r io.Reader) (Record, error) { return decodeWith(r, decoder{}) }

// DecodeDraft is Decode for work in progress: what every mount needs may still be missing.
func DecodeDraft(r io.Reader) (Record, error) { return decodeWith(r, decoder{draft: true}) }

func decodeWith(r io.Reader, d decoder) (Record, error) {
	n, err := parse(r)
	if err != nil {
		return Record{}, err
	}
	rec := d.record(n)
	if d.err != nil {
		return Record{}, d.err
	}
	return rec, nil
}

// decoder turns the tree of a file into a record and keeps the first refusal.
type decoder struct {
	unit  string // of every length
	draft bool   // what every mount needs may be missing
	err   error
}

// field is one key of an object and what takes its value.
type field struct {
	key  string
	read func(path string, n node)
}

func (d *decoder) refuse(path, value, message, allowed string) {
	if d.err == nil {
		d.err = &Refusal{Path: path, Value: value, Message: message, Allowed: allowed}
	}
}

// object hands every value to its field. A value of null is as good as an absent key.
func (d *decoder) object(path string, n node, fields ...field) {
	o, ok := n.(object)
	if !ok {
		d.refuse(path, written(n), "is not possible", "an object in braces")
		return
	}
	for _, key := range o.keys {
		i := slices.IndexFunc(fields, func(f field) bool { return f.key == key })
		if i < 0 {
			d.refuse(join(path, short(key)), "", "the key is not known", keysOf(fields))
			return
		}
		if v := o.values[key]; v != nil {
			fields[i].read(join(path, key), v)
		}
	}
}

func keysOf(fields []field) string {
	var keys []string
	for _, f := range fields {
		keys = append(keys, f.key)
	}
	return strings.Join(keys, " ")
}

// written is a value as it stands in the file, for a refusal.
func written(n node) string {
	switch v := n.(type) {
	case nil:
		return "null"
	case object:
		return "an object"
	case list:
		return "a list"
	case json.Number:
		return short(v.String())
	default:
		b, _ := json.Marshal(v) // a string or a truth value, which cannot fail
		return short(string(b))
	}
}

// quantity is what a number counts: the word behind it and its size in the program's own unit.
type quantity struct {
	word string
	size float64
}

var (
	degrees   = quantity{"degrees", 1}
	kilograms = quantity{"kg", 1}
	years     = quantity{"", 1}
	pieces    = quantity{"", 1}
)

func (d *decoder) lengths() quantity {
	u, _ := unit.Named(d.unit)
	return quantity{d.unit, float64(u)}
}

func (q quantity) allowed(l Limit) string {
	if _, ok := unit.Named(q.word); ok {
		return span(l.Least, l.Most, q.word)
	}
	return strings.TrimSpace(fmt.Sprintf("%s–%s %s", decimal(l.Least, 2), decimal(l.Most, 2), q.word))
}

// grains are the steps in a millimetre to which lengths are kept: far below any tape, and
// coarse enough that the noise of changing the unit does not grow from saving to saving.
const grains = 1e6

func toGrain(v float64) float64 {
	return math.Round(v*grains)/grains + 0 // adding nought turns a negative nought into a plain one
}

// number returns a value in the program's own unit, and whether it is possible.
func (d *decoder) number(path string, n node, q quantity, l Limit) (float64, bool) {
	s, ok := n.(json.Number)
	if !ok {
		d.refuse(path, written(n), "is not a number", q.allowed(l))
		return 0, false
	}
	v, err := s.Float64() // an error is a number beyond all bounds
	v = toGrain(v * q.size)
	if err != nil || !(v >= l.Least && v <= l.Most) {
		d.refuse(path, strings.TrimSpace(short(s.String())+" "+q.word), "is not possible", q.allowed(l))
		return 0, false
	}
	return v, true
}

// optional reads a number that may be absent.
func (d *decoder) optional(into **float64, q quantity, l Limit) func(string, node) {
	return func(path string, n node) {
		if v, ok := d.number(path, n, q, l); ok {
			*into = &v
		}
	}
}

func (d *decoder) year(into *int) func(string, node) {
	return func(path string, n node) {
		v, ok := d.number(path, n, years, YearLimit)
		if ok && v != math.Trunc(v) {
			d.refuse(path, written(n), "is not possible", "a whole year, "+years.allowed(YearLimit))
			return
		}
		*into = int(v)
	}
}
