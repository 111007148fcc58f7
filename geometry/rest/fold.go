package rest

import (
	"fmt"
	"math"
)

// Sets is how many sets of fold places there are; a garment is folded by another set each time.
const Sets = 3

// exact is how far a length may be longer than its room but for the last digits, mm.
const exact = 1e-6

// Folding is a length folded to and fro. It is divided into Sets×Folds+1 parts of equal length: the first set of folds
// lies at the marks 1, 4, 7 and so on, the second at 2, 5, 8, the third at 3, 6, 9. So no two sets share a place, each
// is a third of the pitch from the next, and no stretch between two folds is longer than Pitch.
type Folding struct {
	Length float64
	Folds  int
}

// FoldInto folds a length so that it goes into a room with as few folds as may change their places. Room must be above 0.
func FoldInto(length, room float64) (Folding, error) {
	if !(room > 0 && length >= 0 && length/room < 1000) {
		return Folding{}, fmt.Errorf("rest: a length of %g mm into %g mm: want a room above 0 and at most a thousandth of the length", length, room)
	}
	if length <= room+exact {
		return Folding{Length: length}, nil
	}
	return Folding{Length: length, Folds: int(math.Ceil((length-exact)/room - 1.0/Sets))}, nil
}

// Pitch is the longest stretch between two folds, or between a fold and an end.
func (f Folding) Pitch() float64 {
	if f.Folds == 0 {
		return f.Length
	}
	return f.Length * Sets / float64(Sets*f.Folds+1)
}

// Places are the folds of a set, counted from 0, from the end where the length begins.
func (f Folding) Places(set int) []float64 {
	out := make([]float64, f.Folds)
	for k := range out {
		out[k] = f.Pitch() * (float64(k) + float64(set+1)/Sets)
	}
	return out
}

// Parts are the stretches between the folds of a set, from the beginning on.
func (f Folding) Parts(set int) []float64 {
	var out []float64
	last := 0.0
	for _, at := range append(f.Places(set), f.Length) {
		out = append(out, at-last)
		last = at
	}
	return out
}

// TurnedIn is how often each side of a breadth is folded to lie between the walls of a room, and where: set by set the
// first fold from the middle. Half of the breadth that must stay flat lies between middle and fold.
type TurnedIn struct {
	Folds int // on each side
	At    [Sets]float64
}

// TurnInto turns the sides of a garment in, trunk being the breadth that is not folded. The error says by how much the
// room is too narrow.
func TurnInto(breadth, trunk, room float64) (TurnedIn, error) {
	if breadth <= room+exact {
		return TurnedIn{}, nil
	}
	if !(room > trunk) {
		return TurnedIn{}, fmt.Errorf("rest: a room of %.0f mm is too narrow for what must lie flat, %.0f mm", room, trunk)
	}
	var t TurnedIn
	step := (room - trunk) / 2 / Sets
	for i := range t.At {
		t.At[i] = room/2 - float64(i)*step
	}
	last := t.At[Sets-1]
	t.Folds = int(math.Ceil((breadth/2 - last - exact) / (last + room/2)))
	return t, nil
}
