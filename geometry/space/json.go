package space

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
)

// MarshalJSON writes [x,y,z] to a hundredth of a millimetre, finer than anything is placed by hand.
func (p Point) MarshalJSON() ([]byte, error) {
	b := []byte{'['}
	for i, x := range [3]float64{p.X, p.Y, p.Z} {
		if i > 0 {
			b = append(b, ',')
		}
		b = strconv.AppendFloat(b, math.Round(x*100)/100+0, 'f', -1, 64) // +0: no negative zero
	}
	return append(b, ']'), nil
}

// UnmarshalJSON reads what MarshalJSON writes.
func (p *Point) UnmarshalJSON(b []byte) error {
	var v []float64
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	if len(v) != 3 {
		return fmt.Errorf("space: a point has three numbers, not %d", len(v))
	}
	*p = Point{v[0], v[1], v[2]}
	return nil
}
