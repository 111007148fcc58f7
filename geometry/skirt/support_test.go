package skirt

import (
	"math"
	"testing"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// A bustle of about 1885 is of cloth 71.1 cm wide held by straps of 25.4 cm (University of New
// Hampshire, Bowen collection 905): as a circular arc it stands out about 25 cm (derived).
func TestHalfHoop(t *testing.T) {
	rise, err := RiseOf(254, 711)
	if err != nil || math.Abs(rise-250) > 10 {
		t.Errorf("rise %.1f %v, want about 250", rise, err)
	}
	if got := ArcOver(254, rise); math.Abs(got-711) > 1e-6 {
		t.Errorf("arc %.6f, want 711", got)
	}
	// A half circle over its diameter, and a flat one.
	if got := ArcOver(200, 100); math.Abs(got-100*math.Pi) > 1e-9 {
		t.Errorf("half circle %.6f", got)
	}
	if got := ArcOver(200, 0); got != 200 {
		t.Errorf("flat %.6f", got)
	}
	for _, arc := range []float64{254, 100, math.Inf(1), math.NaN()} {
		if _, err := RiseOf(254, arc); err == nil {
			t.Errorf("an arc of %v over 254 has a rise", arc)
		}
	}
}

// bustled is an invented skirt over a bustle.
func bustled(t *testing.T) Skirt {
	sil := Silhouette{Front: Profile{Cone: 1}, Side: Profile{Cone: 1}, Back: Profile{Shelf: 1}, Reach: Reach{0.6, 0.8, 1.6}, Spread: 0.9}
	return hung(t, Garment{Readings: readings(62, 160, 240, 100, 101, 118), Cut: Straight}, torso(), Wish{Gap: 10, Train: Level, Silhouette: sil})
}

// The crescent's outer edge is as long as both edges of the strip sewn to it; nothing crosses itself.
func TestPadsSeams(t *testing.T) {
	p, err := bustled(t).Pad(0)
	if err != nil {
		t.Fatal(err)
	}
	outer := curve.Length(p.Face[:p.Outer])
	for name, edge := range map[string][]plane.Point{"upper": p.Edge[:p.Outer], "lower": append(append([]plane.Point{}, p.Edge[p.Outer-1:]...), p.Edge[0])} {
		if l := curve.Length(edge); math.Abs(l-outer) > 1e-6 {
			t.Errorf("%s edge %.6f, crescent %.6f", name, l, outer)
		}
	}
	for name, r := range map[string]plane.Ring{"face": p.Face, "edge": p.Edge} {
		if at, met := r.Crossing(); met || r.Area() <= 0 {
			t.Errorf("%s: area %.0f, crosses itself at %v", name, r.Area(), at)
		}
	}
	if p.Thickness != p.Projection/2 || p.Projection < leastPad {
		t.Errorf("stands out %.1f, %.1f thick", p.Projection, p.Thickness)
	}
	if lo, hi := p.Edge.Bounds(); math.Abs(hi.Y-lo.Y-p.Thickness) > 1e-9 {
		t.Errorf("the strip is %.3f broad, want %.3f", hi.Y-lo.Y, p.Thickness)
	}
}

func TestFrame(t *testing.T) {
	s := bustled(t)
	hoops, err := s.Frame(FrameHoops, FrameLength)
	if err != nil {
		t.Fatal(err)
	}
	for i, h := range hoops {
		at := s.Section(h.Height)
		if !h.in(at.Ring()) || h.Arc() <= h.Strap {
			t.Errorf("half hoop %d: %+v leaves the skirt", i, h)
		}
		if i == 0 {
			continue
		}
		strip, err := FrameStrip(hoops[i-1], h)
		if err != nil {
			t.Fatal(err)
		}
		if upper, lower := curve.Length(strip.Upper), curve.Length(strip.Lower); math.Abs(upper-hoops[i-1].Arc()) > 0.05 || math.Abs(lower-h.Arc()) > 0.05 {
			t.Errorf("strip %d: %.2f and %.2f, hoops %.2f and %.2f", i, upper, lower, hoops[i-1].Arc(), h.Arc())
		}
		if strip.Strain > 1e-5 {
			t.Errorf("strip %d strains by %.3g", i, strip.Strain)
		}
	}
	tube := hung(t, Garment{Readings: readings(62, 100, 105, 70, 70, 70)}, torso(), Wish{Gap: 300})
	if _, err := tube.Frame(4, 400); err == nil {
		t.Error("a tube has room for a bustle")
	}
	if _, err := tube.Pad(0); err == nil {
		t.Error("a tube has room for a pad")
	}
	for _, bad := range []struct {
		n      int
		length float64
	}{{1, 500}, {4, 5000}, {4, math.NaN()}, {100, 500}} {
		if _, err := s.Frame(bad.n, bad.length); err == nil {
			t.Errorf("%+v: no error", bad)
		}
	}
}

// Net tiers: whole layers of two to three widths, two of them; a deep frill of two to one
// (Interpret and Display Historic Dress, chapter 8). With net 137–150 cm wide on a waist of
// 65–70 cm that is 4 to 7 to 1 (derived).
func TestNet(t *testing.T) {
	sil, _, _ := Silhouettes().At(measure.Woman, "dress", 1840)
	s := hung(t, Garment{Readings: readings(68, 0, 356, 104), Cut: Straight}, torso(), Wish{Gap: 10, Silhouette: sil})
	p, err := s.Petticoat(5)
	if err != nil {
		t.Fatal(err)
	}
	tiers := p.Net(680, 1400, true)
	whole, frill := tiers[0], tiers[1]
	if whole.Widths < 2 || whole.Widths > 3 || whole.Layers != 2 || whole.Ratio() < 3.8 || whole.Ratio() > 7 {
		t.Errorf("%+v, ratio %.2f", whole, whole.Ratio())
	}
	if math.Abs(frill.Ratio()-2) > 1e-9 || float64(frill.Widths)*1400 < frill.Flat || float64(frill.Widths-1)*1400 >= frill.Flat {
		t.Errorf("%+v, ratio %.2f", frill, frill.Ratio())
	}
	if len(p.Net(680, 1400, false)) != 1 {
		t.Error("a cone has a frill only")
	}
}

func TestTrainSupport(t *testing.T) {
	sil, _, _ := Silhouettes().At(measure.Woman, "dress", 1866)
	s := hung(t, Garment{Readings: readings(55.2, 0, 518, 106.7, 0, 180.3)}, post(540), Wish{Gap: 10, Silhouette: sil})
	ring, err := s.TrainSupport()
	if err != nil {
		t.Fatal(err)
	}
	hem := s.Hem()
	for _, p := range ring {
		if !hem.Contains(plane.Point{X: p.X, Y: -p.Y}) {
			t.Errorf("%v leaves the train", p)
		}
	}
	lo, hi := ring.Bounds()
	if at, met := ring.Crossing(); met || ring.Area() <= 0 || hi.Y-lo.Y < s.Back.Train-2*Shorter {
		t.Errorf("area %.0f, %.0f deep, crosses itself at %v", ring.Area(), hi.Y-lo.Y, at)
	}
	if _, err := bustled(t).TrainSupport(); err == nil {
		t.Error("a level hem has a train")
	}
}

func TestHoopCounts(t *testing.T) {
	s := bustled(t)
	for _, n := range []int{0, -3, 1000} {
		if _, err := s.Petticoat(n); err == nil {
			t.Errorf("%d hoops: no error", n)
		}
	}
	sil := all(Profile{Cone: 1}, Reach{1, 1, 1}, 0.8)
	p, err := hung(t, Garment{Readings: readings(71, 0, 366, 102.5)}, post(700), Wish{Gap: 10, Silhouette: sil}).Petticoat(5)
	if err != nil {
		t.Fatal(err)
	}
	for i := 1; i < len(p); i++ { // even rows for a cone
		if got, want := p[i-1].Height-p[i].Height, -p.Hem().Height/5; math.Abs(got-want) > 1e-6 {
			t.Errorf("row %d: %.3f, want %.3f", i, got, want)
		}
	}
}
