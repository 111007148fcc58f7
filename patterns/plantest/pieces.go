package plantest

import (
	"fmt"
	"math"

	"understructure/geometry/plane"
	"understructure/patterns/piece"
)

// Pieces are a panel of 900 × 600 mm with every mark, four of a hand's size, a slice and a slip of a thing.
func Pieces() []piece.Piece {
	all := []piece.Piece{Panel()}
	for i, name := range []string{"back, left", "back, right", "side, left", "side, right"} {
		all = append(all, patch(fmt.Sprintf("W02-%d", i+1), "layer 2 of 3, "+name, 90+25*float64(i), 120+18*float64(i)))
	}
	return append(all, slice(), slip())
}

// Panel is 900 mm wide and 600 high, with a dart in its lower edge and a round hole.
func Panel() piece.Piece {
	var o plane.Ring
	o = append(o, plane.Point{X: 0, Y: 0}, plane.Point{X: 380, Y: 0}, plane.Point{X: 400, Y: 180}, plane.Point{X: 420, Y: 0}, plane.Point{X: 900, Y: 0})
	for i := range 181 { // the upper edge, from right to left
		x := 900 - 5*float64(i)
		o = append(o, plane.Point{X: x, Y: 560 + 40*math.Cos(x/450*math.Pi)})
	}
	var hole plane.Ring
	for i := range 90 {
		a := -2 * math.Pi * float64(i) / 90
		hole = append(hole, plane.Point{X: 700 + 60*math.Cos(a), Y: 300 + 60*math.Sin(a)})
	}
	line := func(k piece.Kind, label string, p ...plane.Point) piece.Mark {
		return piece.Mark{Kind: k, Label: label, Points: p}
	}
	return piece.Piece{
		ID: "W01-front", Name: "layer 1 of 3, front", Material: "wadding 6 mm", Count: 2, Layer: 1, Thickness: 6,
		Outline: o, Holes: []plane.Ring{hole}, Strain: 0.021,
		Marks: []piece.Mark{
			line(piece.LevelLine, "bust", plane.Point{X: 0, Y: 420}, plane.Point{X: 900, Y: 430}),
			line(piece.LevelLine, "waist", plane.Point{X: 0, Y: 120}, plane.Point{X: 386, Y: 124}),
			line(piece.CentreFront, "", plane.Point{X: 450, Y: 0}, plane.Point{X: 450, Y: 519}),
			line(piece.Side, "", plane.Point{X: 880, Y: 10}, plane.Point{X: 880, Y: 560}),
			line(piece.Up, "", plane.Point{X: 250, Y: 220}, plane.Point{X: 250, Y: 300}),
			line(piece.Feather, "", o[5:40]...),
			line(piece.Pin, "", plane.Point{X: 560, Y: 250}),
			line(piece.Dart, "", o[1], o[2], o[3]),
		},
	}
}

func patch(id, name string, w, h float64) piece.Piece {
	o := superellipse(w/2, h/2, 3)
	return piece.Piece{
		ID: id, Name: name, Material: "wadding 6 mm", Count: 1, Layer: 2, Thickness: 6, Outline: o, Strain: 0.008,
		Marks: []piece.Mark{
			{Kind: piece.LevelLine, Label: "waist", Points: []plane.Point{{X: -w / 2, Y: -h / 5}, {X: w / 2, Y: -h / 5}}},
			{Kind: piece.CentreBack, Points: []plane.Point{{X: 0, Y: -h / 2}, {X: 0, Y: h / 2}}},
			{Kind: piece.Up, Points: []plane.Point{{X: -w / 4, Y: 5}, {X: -w / 4, Y: 30}}},
			{Kind: piece.Feather, Points: o[20:70]},
		},
	}
}

func slice() piece.Piece {
	return piece.Piece{
		ID: "S04", Name: "slice 4 of 9", Material: "plank 50 mm", Count: 1, Layer: 4, Thickness: 50,
		Outline: superellipse(85, 62, 2.3), Holes: []plane.Ring{superellipse(16, 16, 2).Reverse()},
		Marks: []piece.Mark{
			{Kind: piece.InnerOutline, Label: "carve to here above", Points: superellipse(77, 55, 2.3)},
			{Kind: piece.Pin, Label: "", Points: []plane.Point{{X: -45}}},
			{Kind: piece.Pin, Label: "", Points: []plane.Point{{X: 45}}},
			{Kind: piece.CentreFront, Points: []plane.Point{{Y: 40}, {Y: 62}}},
			{Kind: piece.Side, Points: []plane.Point{{X: 70}, {X: 85}}},
		},
	}
}

func slip() piece.Piece {
	return piece.Piece{
		ID: "W03-tip", Name: "layer 3 of 3, shoulder tip", Material: "wadding 6 mm", Count: 2, Layer: 3, Thickness: 6,
		Outline: plane.Ring{{X: 0, Y: 0}, {X: 34, Y: 0}, {X: 5, Y: 22}},
	}
}
