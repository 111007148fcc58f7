package picture

import (
	"fmt"
	"image"
	"math"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/unit"
	"understructure/geometry/view"
	"understructure/patterns/plan"
)

// torso is an invented figure of the size and with as many outlines as a woman's bodice has in a plan.
// Its garment is too short at the waist and slack over the bust.
func torso() plan.Surface {
	var s plan.Surface
	for z := 860.0; z <= 1420; z += 560.0 / 60 {
		u := (z - 860) / 560
		broad := 175 - 60*math.Exp(-math.Pow((u-0.3)/0.15, 2)) - 110*math.Pow(u, 12)
		deep := 115 - 25*math.Exp(-math.Pow((u-0.3)/0.15, 2)) - 55*math.Pow(u, 8)
		ring := func(grow float64) plane.Ring {
			r := make(plane.Ring, columns)
			for j := range r {
				sin, cos := math.Sincos(2 * math.Pi * float64(j) / columns)
				bust := 35 * math.Exp(-math.Pow((u-0.55)/0.08, 2)) * max(0, sin) * (1 - math.Pow(cos*cos-0.25, 2)*3)
				r[j] = plane.Point{X: (broad + grow) * cos, Y: (deep + grow + bust) * sin}
			}
			return r
		}
		s.Heights = append(s.Heights, z)
		s.Built, s.Form = append(s.Built, ring(0)), append(s.Form, ring(-12))
		s.Garment = append(s.Garment, ring(4+14*math.Exp(-math.Pow((u-0.6)/0.1, 2))-7*math.Exp(-math.Pow((u-0.3)/0.08, 2))))
		s.Target = append(s.Target, ring(1))
	}
	return s
}

// fill makes a figure as large as an image of a side allows.
func fill(b *Body, side float64, yaw unit.Angle, m Mode) Scene {
	scale := 0.95 * side / (b.High.Z - b.Low.Z)
	return Scene{
		Camera: view.From(yaw, 0), Palette: Light, Mode: m,
		Frame: Frame{Scale: scale, X: side / 2, Y: side/2 + (b.High.Z+b.Low.Z)/2*scale},
	}
}

// BenchmarkFigure900 turns the figure, as when somebody drags it round: every frame anew, garment, form and all.
func BenchmarkFigure900(b *testing.B) {
	body := NewBody(torso())
	for _, m := range []Mode{Plain, Clearance} {
		b.Run(fmt.Sprintf("mode %d", m), func(b *testing.B) {
			p := new(Painter)
			yaw := unit.Angle(0)
			b.ReportAllocs()
			for b.Loop() {
				yaw += unit.Degree
				p.Figure(p.Sheet(900, 900), body, fill(body, 900, yaw, m))
			}
		})
	}
}

func BenchmarkNewBody(b *testing.B) {
	s := torso()
	for b.Loop() {
		p := new(Painter)
		p.Figure(image.NewRGBA(image.Rect(0, 0, 8, 8)), NewBody(s), Scene{Camera: view.From(0, 0), Frame: Frame{Scale: 0.01}, Palette: Light})
	}
}

func BenchmarkMap900x600(b *testing.B) {
	body := NewBody(torso())
	p := new(Painter)
	b.ReportAllocs()
	for b.Loop() {
		p.Map(p.Sheet(900, 600), body.Unroll(image.Rect(0, 0, 900, 600)), MapScene{Palette: Light, Levels: []float64{1000, 1100, 1200}, Line: 1})
	}
}

func BenchmarkSection600(b *testing.B) {
	body := NewBody(torso())
	for _, m := range []Mode{Plain, Clearance} {
		b.Run(fmt.Sprintf("mode %d", m), func(b *testing.B) {
			p := new(Painter)
			for b.Loop() {
				p.Section(p.Sheet(600, 600), body, Cut{Height: 1030, Frame: Frame{Scale: 1.6, X: 300, Y: 300}, Palette: Light, Mode: m})
			}
		})
	}
}
