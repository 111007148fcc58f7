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
)

// errNumber says how a reading may be written.
var errNumber = errors.New("write a number, such as 58, 58.5 or 22 1/2")

// fractions are the characters that stand on a tape.
var fractions = map[rune]float64{
	'½': 1. / 2, '⅓': 1. / 3, '⅔': 2. / 3, '¼': 1. / 4, '¾': 3. / 4,
	'⅛': 1. / 8, '⅜': 3. / 8, '⅝': 5. / 8, '⅞': 7. / 8,
}

// Word is the unit that a reading of this kind is written in, in a record whose unit is u.
func (k Kind) Word(u string) string {
	switch k {
	case Slope:
		return "°"
	case Mass:
		return "kg"
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
	v, err := number(text)
	if err != nil {
		return nil, err
	}
	if v *= scale; math.IsInf(v, 0) {
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

// number reads "58", "58,5", "22 1/2", "22½".
func number(text string) (float64, error) {
	text = strings.Replace(text, ",", ".", 1)
	if r := []rune(text); len(r) > 0 && fractions[r[len(r)-1]] > 0 {
		whole, err := decimal(strings.TrimSpace(string(r[:len(r)-1])), true)
		return whole + fractions[r[len(r)-1]], err
	}
	before, below, ok := strings.Cut(text, "/")
	if !ok {
		return decimal(text, false)
	}
	words := strings.Fields(before)
	if len(words) == 0 || len(words) > 2 {
		return 0, errNumber
	}
	above, err1 := decimal(words[len(words)-1], false)
	under, err2 := decimal(strings.TrimSpace(below), false)
	whole, err3 := decimal(strings.Join(words[:len(words)-1], ""), true)
	if errors.Join(err1, err2, err3) != nil || under == 0 {
		return 0, errNumber
	}
	return whole + above/under, nil
}

func decimal(text string, emptyIsZero bool) (float64, error) {
	if text == "" && emptyIsZero {
		return 0, nil
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) || strings.ContainsAny(text, "xXpP_") {
		return 0, errNumber
	}
	return v, nil
}

// Format writes a value in the unit u, as finely as a tape is read.
func (k Kind) Format(v float64, u string) string {
	digits := 1
	if k == Mass {
		digits = 2
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
