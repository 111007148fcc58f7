package ui

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"understructure/patterns/piece"
)

// facts are what is to be known of a piece before it is cut, in the unit u.
func facts(pc piece.Piece, u string) [][2]string {
	across, up := sides(pc, u)
	rows := [][2]string{
		{lang.L("material"), pc.Material}, {lang.L("cut"), fmt.Sprint(pc.Count)}, {lang.L("layer"), fmt.Sprint(pc.Layer)},
		{lang.L("thickness"), length(&pc.Thickness, u) + " " + u},
		{lang.L("broad"), across + " " + u}, {lang.L("high"), up + " " + u},
		{lang.L("area"), area(pc.Area(), u)},
		{lang.L("strain"), lang.L("{{.Strain}} at most when laid flat", map[string]any{"Strain": percent(pc.Strain)})},
	}
	var marks []string
	for _, m := range pc.Marks {
		if name := called(kindWords(), m.Kind); m.Kind != piece.Allowance && !slices.Contains(marks, name) {
			marks = append(marks, name)
		}
	}
	rows = append(rows, [2]string{lang.L("marks"), strings.Join(marks, ", ")})
	for _, s := range pc.Seams {
		long := s.Length
		rows = append(rows, [2]string{called(seamWords(), s.Kind), fmt.Sprintf("%s %s → %s", length(&long, u), u, s.To)})
	}
	return rows
}

// kindWords are what the kinds of marks are called.
func kindWords() map[piece.Kind]string {
	return map[piece.Kind]string{
		piece.LevelLine: lang.L("levels"), piece.CentreFront: lang.L("centre front"), piece.CentreBack: lang.L("centre back"), piece.Side: lang.L("side"),
		piece.Up: lang.L("up"), piece.Feather: lang.L("edges to thin"), piece.Step: lang.L("square edges"), piece.Pin: lang.L("pins"),
		piece.InnerOutline: lang.L("inner outline"), piece.Dart: lang.L("darts"), piece.Notch: lang.L("notches"),
	}
}

// seamWords are what the kinds of seams are called.
func seamWords() map[string]string {
	return map[string]string{"butt": lang.L("butted"), "dart": lang.L("dart"), "sewn": lang.L("sewn")}
}

// called is the word for something, or what it is called inside where there is none.
func called[K ~string](words map[K]string, k K) string {
	if word, ok := words[k]; ok {
		return word
	}
	return string(k)
}

// area writes square millimetres in the square of a unit of its size.
func area(mm2 float64, u string) string {
	if u == "in" {
		return fmt.Sprintf("%.0f in²", mm2/25.4/25.4)
	}
	return fmt.Sprintf("%.0f cm²", mm2/100)
}

// sides are the breadth and the height of what is cut, in the unit u.
func sides(pc piece.Piece, u string) (across, up string) {
	lo, hi := pc.CutLine().Bounds()
	wide, high := hi.X-lo.X, hi.Y-lo.Y
	return length(&wide, u), length(&high, u)
}

// percent writes a fraction without promising more than is known.
func percent(f float64) string { return fmt.Sprintf("%.1f %%", 100*f) }
