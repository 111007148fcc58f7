package skirt

import "fmt"

// Wish is how the skirt is to be shown.
type Wish struct {
	Stand      float64    // height of the waist above the floor, mm; 0 to find it from the silhouette
	Gap        float64    // of the hem above the floor, mm
	Ease       float64    // by which everything stays below the garment's girths, mm
	Train      Train      // whether a longer back lies on the floor
	Silhouette Silhouette // the zero Silhouette is Plain
}

// Train says whether cloth that is longer behind lies on the floor or goes over a bustle.
type Train string

// The three ways.
const (
	ByLength Train = ""      // it lies where the back is longer than the front by 150 mm or more
	Level    Train = "level" // the hem is level all round
	OnFloor  Train = "floor" // the silhouette says how far the skirt reaches, the rest lies
)

// The ranges of a wish, mm. The greatest stand is that of measure's waist height.
const mostStand, mostGap, mostEase = 1700.0, 500.0, 500.0

func (w Wish) check() error {
	for _, v := range []struct {
		name        string
		value, most float64
	}{{"waist_height", w.Stand, mostStand}, {"gap", w.Gap, mostGap}, {"ease", w.Ease, mostEase}} {
		if !(v.value >= 0 && v.value <= v.most) {
			return fmt.Errorf("skirt: %s is %.6g mm, want 0 to %g", v.name, v.value, v.most)
		}
	}
	if w.Train != ByLength && w.Train != Level && w.Train != OnFloor {
		return fmt.Errorf("skirt: train is %q, want %q, %q or nothing", w.Train, Level, OnFloor)
	}
	return w.Silhouette.check("silhouette")
}

// leastStand is the lowest stand at which a hem can hang below the hip.
func (w Wish) leastStand(b Body) float64 { return w.Gap + b.HipDepth + leastHang }

// leastHang is the least cloth that hangs below the hip, mm.
const leastHang = 10.0
