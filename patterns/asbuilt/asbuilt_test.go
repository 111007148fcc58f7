package asbuilt_test

import (
	"math"
	"strings"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/space"
	"understructure/patterns/asbuilt"
	"understructure/patterns/piece"
)

const radius, tall = 100.0, 400.0

// pillar is a bare form: a round column.
func pillar() asbuilt.Bare {
	var b asbuilt.Bare
	for z := 0.0; z <= tall; z += 4 {
		b.Heights, b.Outlines = append(b.Heights, z), append(b.Outlines, circle(radius))
	}
	return b
}

func circle(r float64) plane.Ring {
	out := make(plane.Ring, 720)
	for i := range out {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(len(out)))
		out[i] = plane.Point{X: r * c, Y: r * s}
	}
	return out
}

// band is a sheet round the pillar from one angle to another and one height to another, on what
// is so far from the axis. Its upper and lower edges are to be feathered, or its ends butt.
func band(id string, layer int, thickness, on, from, to, lo, hi float64) piece.Piece {
	r := on + thickness/2
	p := piece.Piece{ID: id, Material: "wadding 6 mm", Count: 1, Layer: layer, Thickness: thickness}
	add := func(angle, z float64) {
		s, c := math.Sincos(angle)
		p.Outline = append(p.Outline, plane.Point{X: r * angle, Y: z})
		p.Position = append(p.Position, space.Point{X: r * c, Y: r * s, Z: z})
	}
	const n = 60
	for k := range n + 1 {
		add(from+(to-from)*float64(k)/n, lo)
	}
	for k := range n + 1 {
		add(to+(from-to)*float64(k)/n, hi)
	}
	p.Marks = []piece.Mark{{Kind: piece.Feather, Points: p.Outline[:n+1]}, {Kind: piece.Feather, Points: p.Outline[n+1:]}}
	return p
}

// round is a layer of two sheets that meet at front and back.
func round(layer int, thickness, on, lo, hi float64) []piece.Piece {
	return []piece.Piece{band("L-right", layer, thickness, on, -math.Pi/2, math.Pi/2, lo, hi), band("L-left", layer, thickness, on, math.Pi/2, 3*math.Pi/2, lo, hi)}
}

// A layer of thickness t adds 2πt to the tape (Steiner's formula for parallel curves).
func TestEveryLayerAddsItsThickness(t *testing.T) {
	pieces := append(round(1, 6, radius, 100, 300), round(2, 10, radius+6, 150, 250)...)
	pieces = append(pieces, piece.Piece{ID: "C01", Material: "cover", Thickness: 1})
	m := asbuilt.Make(pillar(), pieces)
	for _, c := range []struct{ z, out float64 }{{50, 1}, {125, 7}, {200, 17}, {275, 7}, {350, 1}} {
		want := 2 * math.Pi * (radius + c.out)
		if got := m.Tape(c.z); math.Abs(got-want) > 0.2 {
			t.Errorf("at %v the tape is %.2f mm, want %.2f", c.z, got, want)
		}
	}
}

// At the line that is cut a feathered sheet has half its thickness, 5 mm inside three quarters.
func TestAFeatheredEdgeThinsEvenly(t *testing.T) {
	m := asbuilt.Make(pillar(), round(1, 6, radius, 100, 300))
	for _, c := range []struct{ z, share float64 }{{300, 0.5}, {295, 0.75}, {305, 0.25}, {312, 0}} {
		if got := (m.Tape(c.z)/2/math.Pi - radius) / 6; math.Abs(got-c.share) > 0.03 {
			t.Errorf("at %v there is %.2f of the sheet, want %.2f", c.z, got, c.share)
		}
	}
}

// disk is a slice whose underside lies at a height.
func disk(number int, r, bottom, thickness float64) piece.Piece {
	p := piece.Piece{ID: "S", Material: "plank 50 mm", Layer: number, Thickness: thickness, Outline: circle(r)}
	for _, c := range p.Outline {
		p.Position = append(p.Position, space.Point{X: c.X, Y: c.Y, Z: bottom})
	}
	return p
}

func TestSlicesAreStackedWhereTheyLie(t *testing.T) {
	m := asbuilt.Make(asbuilt.Bare{}, []piece.Piece{disk(2, 80, 50, 50), disk(1, 100, 0, 50)})
	for _, c := range []struct{ z, r float64 }{{10, 100}, {45, 100}, {55, 80}, {95, 80}} {
		if got := m.Tape(c.z) / 2 / math.Pi; math.Abs(got-c.r) > 0.1 {
			t.Errorf("at %v the radius is %.2f mm, want %v", c.z, got, c.r)
		}
	}
}

// A cone carved from a cylinder: half way up its radius is the mean of both faces.
func TestABevelledSliceIsStraightFromFaceToFace(t *testing.T) {
	p := disk(1, 100, 0, 50)
	p.Marks = []piece.Mark{{Kind: piece.InnerOutline, Label: "bottom face", Points: circle(100)}, {Kind: piece.InnerOutline, Label: "top face", Points: circle(60)}}
	m := asbuilt.Make(asbuilt.Bare{}, []piece.Piece{p})
	if got := m.Tape(25) / 2 / math.Pi; math.Abs(got-80) > 0.1 {
		t.Errorf("half way up the radius is %.2f mm, want 80", got)
	}
}

func TestNothingToLayThePiecesOn(t *testing.T) {
	if m := asbuilt.Make(asbuilt.Bare{}, round(1, 6, radius, 0, 100)); m.Tape(50) != 0 {
		t.Error("sheets without a form have a tape")
	}
}

func TestHonestPiecesPassTheCheck(t *testing.T) {
	apart := piece.Piece{ID: "A01", Material: "cotton", Outline: circle(40)}
	if got := asbuilt.Check(append(round(1, 6, radius, 100, 300), disk(1, 100, 0, 50), apart)); len(got) > 0 {
		t.Errorf("objections to pieces that are right: %v", got)
	}
}

// What happens to a piece between plan and knife: it is enlarged, a corner is pulled out, a
// template is taken for another's place, a corner is lost.
func TestTamperedPiecesAreSeen(t *testing.T) {
	for name, tamper := range map[string]func(p *piece.Piece){
		"3 mm larger all round": func(p *piece.Piece) {
			for i, q := range p.Outline {
				p.Outline[i] = plane.Point{X: q.X + math.Copysign(3, q.X), Y: q.Y + math.Copysign(3, q.Y-200)}
			}
		},
		"two per cent larger": func(p *piece.Piece) {
			for i, q := range p.Outline {
				p.Outline[i] = q.Mul(1.02)
			}
		},
		"a corner pulled out":   func(p *piece.Piece) { p.Outline[30].Y -= 6 },
		"laid on a larger form": func(p *piece.Piece) { *p = relaid(*p, 1.05) },
		"a corner lost":         func(p *piece.Piece) { p.Outline = p.Outline[1:] },
		"no place":              func(p *piece.Piece) { p.Position = nil },
	} {
		p := band("L01", 1, 6, radius, -math.Pi/2, math.Pi/2, 100, 300)
		tamper(&p)
		if got := asbuilt.Check([]piece.Piece{p}); len(got) != 1 || got[0].Piece != "L01" {
			t.Errorf("%s: %v, want one objection", name, got)
		}
	}
}

func relaid(p piece.Piece, scale float64) piece.Piece {
	for i, q := range p.Position {
		p.Position[i] = q.Mul(scale)
	}
	return p
}

// What a maker could do wrong with honest pieces is seen by the tape.
func TestTooMuchIsSeenByTheTape(t *testing.T) {
	right := 2 * math.Pi * (radius + 6)
	for name, pieces := range map[string][]piece.Piece{
		"laid twice":     append(round(1, 6, radius, 100, 300), round(2, 6, radius+6, 100, 300)...),
		"thicker sheets": round(1, 8, radius, 100, 300),
	} {
		if got := asbuilt.Make(pillar(), pieces).Tape(200); got < right+10 {
			t.Errorf("%s: the tape is %.1f mm, hardly more than %.1f", name, got, right)
		}
	}
}

func TestObjectionsSayHowMuch(t *testing.T) {
	p := band("L01", 1, 6, radius, -math.Pi/2, math.Pi/2, 100, 300)
	for i, q := range p.Outline {
		p.Outline[i] = q.Mul(1.1)
	}
	got := asbuilt.Check([]piece.Piece{p})
	if len(got) != 1 || !strings.Contains(got[0].Message, "mm is to lie along") {
		t.Errorf("%v", got)
	}
}

func BenchmarkMake(b *testing.B) {
	pieces := append(round(1, 6, radius, 100, 300), round(2, 10, radius+6, 150, 250)...)
	for b.Loop() {
		asbuilt.Make(pillar(), pieces)
	}
}
