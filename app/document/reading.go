package document

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"understructure/geometry/unit"
)

// Kind says what a field's number counts.
type Kind int

// The kinds of numbers. A Length is in millimetres inside, in the record's unit on the screen.
const (
	Length Kind = iota
	Slope       // degrees
	Mass        // kilograms
	Count       // whole things, such as steels
	Price       // in the record's currency
)

// errNumber says how a reading may be written.
var errNumber = errors.New("write a number, such as 58, 58.5 or 22 1/2")

// Word is the unit that a reading of this kind is written in, in a record whose unit is u.
func (k Kind) Word(u string) string {
	switch k {
	case Slope:
		return "°"
	case Mass:
		return "kg"
	case Count, Price:
		return ""
	}
	return u
}

// Parse reads what a person wrote in the unit u ("mm", "cm" or "in"). Decimal comma or point,
// fractions, and another unit behind the number are understood. Empty means not taken: nil.
func (k Kind) Parse(text, u string) (*float64, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return nil, nil
	}
	scale := 1.0
	if k == Length {
		text, u = splitUnit(text, u)
		length, ok := unit.Named(u)
		if !ok {
			return nil, fmt.Errorf("unit %q, want mm, cm or in", u)
		}
		scale = float64(length)
	}
	v, ok := unit.Number(text)
	if v *= scale; !ok || math.IsInf(v, 0) {
		return nil, errNumber
	}
	return &v, nil
}

func splitUnit(text, otherwise string) (number, u string) {
	for suffix, u := range map[string]string{"mm": "mm", "cm": "cm", "in": "in", `"`: "in", "″": "in"} {
		if n, ok := strings.CutSuffix(strings.ToLower(text), suffix); ok {
			return strings.TrimSpace(n), u
		}
	}
	return text, otherwise
}

// Format writes a value in the unit u, as finely as a tape is read: a length in inches as
// eighths ("22⅝") where it lies within a hundredth of an inch of them, else as a decimal.
func (k Kind) Format(v float64, u string) string {
	if u == "in" && k == Length {
		if text, ok := unit.Eighths(unit.Length(v)); ok {
			return text
		}
	}
	digits := 1
	switch k {
	case Mass, Price:
		digits = 2
	case Count:
		digits = 0
	}
	if length, ok := unit.Named(u); ok && k == Length {
		v /= float64(length)
		digits = map[string]int{"mm": 1, "cm": 2, "in": 3}[u]
	}
	return trim(strconv.FormatFloat(v, 'f', digits, 64))
}

func trim(s string) string {
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}
