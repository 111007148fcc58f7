package nest_test

import (
	"context"
	"fmt"

	"understructure/geometry/unit"
	"understructure/patterns/nest"
)

// Two gores of a skirt, 400 mm wide at the hem and 900 mm long, on cloth without nap that is as wide as
// they are long: one upright, one upside down between.
func ExampleStrip() {
	gore := nest.Piece{ID: "gore", Outline: ring(0, 0, 400, 0, 200, 900), Count: 2, Turns: []unit.Angle{0, 180 * unit.Degree}}
	l, err := nest.Strip(context.Background(), []nest.Piece{gore}, 900, nest.Options{Effort: 100_000})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f mm of cloth, %.0f %% of it used\n", l.Bins[0].Length, 100*l.Bins[0].Utilisation)
	// Output: 600 mm of cloth, 67 % of it used
}
