package cutting

import (
	"fmt"

	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// key says what the numbers on a page stand for. Copies of one piece share a number.
type key struct {
	names   []string // by number less one
	copies  map[string]int
	numbers map[string]int
	pieces  map[string]piece.Piece // those of the plan
}

func keyOf(l plan.Layout, all []piece.Piece) key {
	k := key{copies: map[string]int{}, numbers: map[string]int{}, pieces: map[string]piece.Piece{}}
	for _, q := range l.Places {
		if k.copies[q.Piece]++; k.copies[q.Piece] == 1 {
			k.names = append(k.names, q.Piece)
			k.numbers[q.Piece] = len(k.names)
		}
	}
	for _, pc := range all {
		if k.numbers[pc.ID] > 0 {
			k.pieces[pc.ID] = pc
		}
	}
	return k
}

// draw sets the key in columns from the height y up, and returns how high it reaches.
func (k key) draw(c drawing.Canvas, y float64) float64 {
	rows := (len(k.names) + columns - 1) / columns
	const pitch = textSize * 1.3
	wide := (pageWidth - 2*margin) / columns
	for i, name := range k.names {
		text := fmt.Sprintf("%d  %s", i+1, name)
		if n := k.copies[name]; n > 1 {
			text += fmt.Sprintf(", %d times", n)
		}
		at := plane.Point{X: margin + wide*float64(i/rows), Y: y + pitch*float64(rows-1-i%rows)}
		c.Word(drawing.Word{Text: text, Size: textSize, At: at}.Fit(wide - 2))
	}
	return y + pitch*float64(rows)
}
