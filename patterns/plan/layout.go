package plan

import (
	"math"

	"understructure/geometry/plane"
)

// Layout is one plank, one offcut or one stretch of a roll with what is cut from it. Its lower left corner is the
// origin, x runs along its length.
type Layout struct {
	Kind        string  `json:"kind"`      // OnPlank, OnOffcut or OnRoll
	Stock       string  `json:"stock"`     // in words; the name of a material of the plan
	Thickness   float64 `json:"thickness"` // 0 where it does not matter
	Length      float64 `json:"length"`    // of a roll, the stretch that is used
	Width       float64 `json:"width"`
	Places      []Place `json:"places"`
	Utilisation float64 `json:"utilisation"`    // part of the area that is pieces, 0 to 1
	Waste       float64 `json:"waste"`          // of the area, what is neither pieces nor rest, mm²
	Rest        *Rest   `json:"rest,omitempty"` // nil where no rest is worth keeping
}

// The kinds of stock.
const (
	OnPlank  = "plank"
	OnOffcut = "offcut"
	OnRoll   = "roll"
)

// Place is where a piece, or a rectangle of the cutting table, lies: turned over left to right if it is, then turned about the
// origin of its own outline, then moved.
type Place struct {
	Piece   string      `json:"piece"` // ID of the piece, or the name of the cut
	Copy    int         `json:"copy"`  // which of its copies, from 1
	Turn    float64     `json:"turn"`  // degrees, counter-clockwise
	Over    bool        `json:"over"`  // turned over
	Move    plane.Point `json:"move"`
	Outline plane.Ring  `json:"outline,omitempty"` // what is cut, as drawn, where it is not a piece of the plan
}

// Of returns where a point of the piece comes to lie.
func (p Place) Of(q plane.Point) plane.Point {
	sin, cos := math.Sincos(p.Turn * math.Pi / 180)
	if p.Over {
		q.X = -q.X
	}
	return plane.Point{X: cos*q.X - sin*q.Y, Y: sin*q.X + cos*q.Y}.Add(p.Move)
}

// Rest is a rectangle that is left of a plank or an offcut, in one of its corners; to be used as an offcut.
type Rest struct {
	At     plane.Point `json:"at"` // lower left corner
	Length float64     `json:"length"`
	Width  float64     `json:"width"`
}
