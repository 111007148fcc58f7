package plane

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
)

// marshalPair rounds to 1e-4 mm, far below what paper or knife can hold, so that files
// stay readable and the same on every machine.
func marshalPair(x, y float64) []byte {
	b := append([]byte{'['}, number(x)...)
	b = append(b, ',')
	b = append(b, number(y)...)
	return append(b, ']')
}

func number(x float64) []byte {
	x = math.Round(x*1e4) / 1e4
	if x == 0 {
		x = 0 // no negative zero
	}
	return strconv.AppendFloat(nil, x, 'f', -1, 64)
}

func unmarshalPair(b []byte, x, y *float64) error {
	var v []float64
	if err := json.Unmarshal(b, &v); err != nil {
		return err
	}
	if len(v) != 2 {
		return fmt.Errorf("plane: a point has two numbers, not %d", len(v))
	}
	*x, *y = v[0], v[1]
	return nil
}
