package draft

import (
	"fmt"
	"math"

	"understructure/geometry/curve"
	"understructure/geometry/plane"
	"understructure/geometry/sleeve"
	"understructure/patterns/piece"
)

// armAllowance is how far outside their seam lines arms and pads are cut, mm. Common practice, no published source.
const armAllowance = 10.0

// What the parts of sleeve supports are cut from, and the thickness of the card, mm (from memory).
const (
	armCloth      = "washed cotton"
	armCard       = "acid-free card"
	tubeStuff     = "stiff net or polyester film"
	puffNet       = "soft nylon net"
	cardThickness = 1.0
)

// panel is a flat piece of a sleeve's support on its way to a template.
type panel struct {
	sleeve.Panel
	id, name, material string
	thickness          float64
	sewn               bool // it has an allowance
	marks              []piece.Mark
}

// Arm draws the pieces of a soft arm. Every template serves both arms: it is cut twice, once turned over. layer is
// their place in the order of making.
func Arm(w sleeve.Sewn, layer int) []piece.Piece {
	return sewn([]panel{
		{w.Over, "A01-over-arm", "over-arm, one turned over", armCloth, calicoThickness, true, overMarks(w.Over)},
		{w.Under, "A02-under-arm", "under-arm, one turned over", armCloth, calicoThickness, true, underMarks(w.Under, w.Gap)},
		{w.Disc, "A03-end-disc", "disc for the end of the arm", armCard, cardThickness, false, []piece.Mark{{
			Kind: piece.Up, Label: "front", Points: []plane.Point{{}, {Y: curve.Length(w.Disc.Outline()) / 12}},
		}}},
	}, layer)
}

// Tube draws the piece of a straight support, which serves both arms.
func Tube(t sleeve.Tube, layer int) []piece.Piece {
	p := t.Panel()
	marks := []piece.Mark{grain(p.Outline())}
	for _, e := range p.Edges {
		if e.Name == sleeve.TubeSeam {
			marks = append(marks, notchAt(e.Line, curve.Length(e.Line)/2))
		}
	}
	return sewn([]panel{{p, "A11-tube", "tube for a straight sleeve, one turned over; the head slants to the outside", tubeStuff, netThickness, true, marks}}, layer)
}

// sewn turns panels that are sewn together along edges of one name into pieces.
func sewn(panels []panel, layer int) []piece.Piece {
	out := make([]piece.Piece, len(panels))
	for i, p := range panels {
		ring := p.Outline()
		out[i] = piece.Piece{
			ID: p.id, Name: p.name, Material: p.material, Count: 2, Layer: layer, Thickness: p.thickness,
			Outline: ring, Strain: p.Strain, Marks: p.marks,
		}
		if p.sewn {
			out[i].Marks = append([]piece.Mark{{Kind: piece.Allowance, Points: ring.Offset(armAllowance)}}, p.marks...)
		}
		for k, e := range p.Edges {
			if to := sewnTo(panels, i, k); to != "" {
				out[i].Seams = append(out[i].Seams, piece.Seam{To: to, Kind: "sewn", Length: curve.Length(e.Line), Points: e.Line})
			}
		}
	}
	return out
}

// sewnTo is the piece that has another edge of the name of edge k of panel i, "" where there is none.
func sewnTo(panels []panel, i, k int) string {
	for j, q := range panels {
		for l, e := range q.Edges {
			if e.Name == panels[i].Edges[k].Name && (i != j || k != l) {
				return q.id
			}
		}
	}
	return ""
}

// pleatLine is how far into the piece the lines of a pleat are drawn, mm.
const pleatLine = 40.0

// overMarks are the elbow, its notches, the pleat and the grain.
func overMarks(p sleeve.Panel) []piece.Mark {
	out := elbowMarks(p)
	pleat := p.Edge(sleeve.Pleat)
	middle, _ := along(pleat, curve.Length(pleat)/2)
	for _, line := range []struct {
		at    plane.Point
		label string
	}{{pleat[0], "pleat: to the middle"}, {middle, "middle of the box pleat, shoulder"}, {pleat[len(pleat)-1], "pleat: to the middle"}} {
		out = append(out, piece.Mark{Kind: piece.LevelLine, Label: line.label, Points: []plane.Point{line.at, line.at.Sub(plane.Point{Y: pleatLine})}})
	}
	return append(out, grain(p.Outline()))
}

// underMarks are the elbow, its notches, the middle of the head's edge, the gap and the grain.
func underMarks(p sleeve.Panel, gap float64) []piece.Mark {
	out := elbowMarks(p)
	back, front := p.Edge(sleeve.HeadBack), p.Edge(sleeve.HeadFront)
	out = append(out, notchAt(front, 0), notchAt(back, curve.Length(back)-gap/2), notchAt(front, gap/2))
	from, _ := along(back, curve.Length(back)-gap/2)
	to, _ := along(front, gap/2)
	inward := plane.Point{Y: -6}
	out = append(out, piece.Mark{
		Kind: piece.LevelLine, Label: fmt.Sprintf("leave %.0f mm open for the filling", gap), Points: []plane.Point{from.Add(inward), to.Add(inward)},
	})
	return append(out, grain(p.Outline()))
}

// elbowMarks are the line of the elbow and the notches at its ends.
func elbowMarks(p sleeve.Panel) []piece.Mark {
	if p.Elbow == nil {
		return nil
	}
	out := []piece.Mark{{Kind: piece.LevelLine, Label: "elbow", Points: p.Elbow}}
	for _, name := range []string{sleeve.FrontSeam, sleeve.BackSeam} {
		line := p.Edge(name)
		for i, q := range line {
			if q == p.Elbow[0] || q == p.Elbow[len(p.Elbow)-1] {
				out = append(out, notchAt(line, curve.Length(line[:i+1])))
			}
		}
	}
	return out
}

// grain is an arrow up the middle of a piece.
func grain(ring plane.Ring) piece.Mark {
	lo, hi := ring.Bounds()
	c, h := middle(ring), (hi.Y-lo.Y)/8
	return piece.Mark{Kind: piece.Up, Label: "grain", Points: []plane.Point{c.Sub(plane.Point{Y: h}), c.Add(plane.Point{Y: h})}}
}

// notchAt is a notch at a length along an edge, outward: an outline runs counter-clockwise, so outside lies to the right.
func notchAt(edge []plane.Point, at float64) piece.Mark {
	p, d := along(edge, at)
	return piece.Mark{Kind: piece.Notch, Points: []plane.Point{p, p.Add(plane.Point{X: d.Y, Y: -d.X}.Mul(notchLength))}}
}

// along is the place at a length along a line, and the line's direction there.
func along(line []plane.Point, at float64) (place, direction plane.Point) {
	for i := 1; i < len(line); i++ {
		step := line[i].Sub(line[i-1])
		l := step.Norm()
		if at <= l || i == len(line)-1 {
			return line[i-1].Add(step.Mul(math.Min(at/l, 1))), step.Mul(1 / l)
		}
		at -= l
	}
	panic("draft: a line of one point has no direction")
}
