package unit

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// fractions are the characters that stand for the parts of an inch on a tape, and thirds.
var fractions = map[rune]float64{
	'½': 1. / 2, '⅓': 1. / 3, '⅔': 2. / 3, '¼': 1. / 4, '¾': 3. / 4,
	'⅛': 1. / 8, '⅜': 3. / 8, '⅝': 5. / 8, '⅞': 7. / 8,
}

// Eighth is the finest part of an inch that most tapes show.
const Eighth = Inch / 8

// offEighth is how far a length may lie from an eighth of an inch and be written as one: a
// quarter of a millimetre, which no tape shows.
const offEighth = Inch / 100

// Eighths writes a length in inches and eighths, such as "22⅝" or "-⅛", and reports whether it
// lies within a hundredth of an inch of that; where it does not, the text is "".
func Eighths(l Length) (text string, ok bool) {
	n := math.Round(float64(l/Eighth)) + 0 // adding nought turns a negative nought into a plain one
	if !(math.Abs(float64(l)-n*float64(Eighth)) <= float64(offEighth)) || math.Abs(n) > 1<<53 {
		return "", false
	}
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, part := math.Floor(n/8), int(math.Mod(n, 8))
	if whole == 0 && part > 0 {
		return sign + eighths[part], true
	}
	return sign + strconv.FormatFloat(whole, 'f', 0, 64) + eighths[part], true
}

var eighths = [8]string{"", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"}

// Number reads a number as people write it: "58", "58.5", "58,5", "22 5/8", "22⅝", "22 ⅝", "-⅛".
// It returns false for anything else, and for what is not finite.
func Number(text string) (float64, bool) {
	text = strings.Replace(strings.TrimSpace(text), ",", ".", 1)
	for _, minus := range []string{"-", "−"} {
		if positive, negative := strings.CutPrefix(text, minus); negative {
			v, ok := unsigned(strings.TrimSpace(positive))
			return -v, ok
		}
	}
	return unsigned(strings.TrimPrefix(text, "+"))
}

func unsigned(text string) (float64, bool) {
	last, size := utf8.DecodeLastRuneInString(text)
	if part, ok := fractions[last]; ok {
		whole, ok := wholeOrNone(strings.TrimSpace(text[:len(text)-size]))
		return whole + part, ok
	}
	before, below, ok := strings.Cut(text, "/")
	if !ok {
		return decimal(text)
	}
	words := strings.Fields(before)
	if len(words) == 0 || len(words) > 2 {
		return 0, false
	}
	whole, ok1 := wholeOrNone(strings.Join(words[:len(words)-1], ""))
	above, ok2 := decimal(words[len(words)-1])
	under, ok3 := decimal(strings.TrimSpace(below))
	v := whole + above/under
	return v, ok1 && ok2 && ok3 && !math.IsInf(v, 0) && !math.IsNaN(v)
}

func wholeOrNone(text string) (float64, bool) {
	if text == "" {
		return 0, true
	}
	return decimal(text)
}

// decimal reads digits with at most a point and an exponent; a second sign, hexadecimal and
// underscores are not how people write.
func decimal(text string) (float64, bool) {
	v, err := strconv.ParseFloat(text, 64)
	finite := err == nil && !math.IsInf(v, 0) && !math.IsNaN(v)
	return v, finite && !strings.ContainsAny(text[:1], "+-") && !strings.ContainsAny(text, "xXpP_")
}
