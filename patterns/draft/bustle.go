package draft

import (
	"fmt"

	"understructure/geometry/curve"
	"understructure/geometry/plane"
	"understructure/geometry/skirt"
	"understructure/patterns/piece"
)

// stuffGap is left open in a seam to put the stuffing in, mm; from memory.
const stuffGap = 100.0

// pad drafts a stuffed crescent on the back of the waist: two faces and a strip along their outer edge.
func (b *supporter) pad() error {
	p, err := b.skirt.Pad(b.stock.PadThickness)
	if err != nil {
		return err
	}
	upper, under, edge := b.number('B')+"-pad-upper", b.number('B')+"-pad-under", b.number('B')+"-pad-edge"
	n := p.Outer
	outer, inner := p.Face[:n], append(append([]plane.Point{}, p.Face[n-1:]...), p.Face[0])
	face := stuffed(upper, "bustle pad, upper face, the back upward", p.Face)
	face.Seams = []piece.Seam{
		{To: edge, Kind: "sewn", Length: curve.Length(outer), Points: outer},
		{To: under, Kind: "sewn", Length: curve.Length(inner), Points: inner},
	}
	face.Marks = append(face.Marks, notchAt(outer, curve.Length(outer)/2), notchAt(inner, curve.Length(inner)/2))
	below := turnedOver(face)
	below.ID, below.Name = under, "bustle pad, under face, the back upward"
	below.Seams[1].To = upper
	below.Marks = append(below.Marks, piece.Mark{Kind: piece.LevelLine, Label: fmt.Sprintf("leave %.0f mm open here for the stuffing", stuffGap), Points: gap(below.Seams[1].Points, stuffGap)})
	top, bottom := p.Edge[:n], append(append([]plane.Point{}, p.Edge[n-1:]...), p.Edge[0])
	strip := stuffed(edge, "bustle pad, edge", p.Edge)
	strip.Seams = []piece.Seam{{To: upper, Kind: "sewn", Length: curve.Length(top), Points: top}, {To: under, Kind: "sewn", Length: curve.Length(bottom), Points: bottom}}
	strip.Marks = append(strip.Marks, notchAt(top, curve.Length(top)/2), notchAt(bottom, curve.Length(bottom)/2))
	b.add(face, below, strip)
	mass := stuffing.OfVolume(face.Area() * p.Thickness / 2) // a wedge
	b.out.MassKg += mass
	b.cut(Cut{Name: "stuffing of the bustle pad", Material: stuffing.Name, Count: 1, Note: fmt.Sprintf("about %.0f g, firm enough to bear the skirt", 1000*mass)})
	b.cut(Cut{Name: "tape of the bustle pad", Material: "cotton tape", Length: waistTape, Width: waistTapeWidth, Count: 1, Note: "along the inner seam, tied in front"})
	return nil
}

// stuffed is a piece of a pad without its seams.
func stuffed(id, name string, ring plane.Ring) piece.Piece {
	return piece.Piece{
		ID: id, Name: name, Material: calico, Count: 1, Thickness: calicoThickness, Outline: ring,
		Marks: []piece.Mark{{Kind: piece.Allowance, Points: ring.Offset(padAllowance)}, grain(ring)},
	}
}

// padAllowance is that of small stuffed pieces, mm. Common practice, no published source.
const padAllowance = 10.0

// gap is the middle of a line, so long.
func gap(line []plane.Point, long float64) []plane.Point {
	half := curve.Length(line) / 2
	from, _ := along(line, max(0, half-long/2))
	to, _ := along(line, half+long/2)
	return []plane.Point{from, to}
}

// frame drafts a bustle of half hoops on a back panel, held by straps against the body's back.
func (b *supporter) frame() error {
	hoops, err := b.skirt.Frame(skirt.FrameHoops, b.stock.FrameLength)
	if err != nil {
		return err
	}
	ids := make([]string, len(hoops))
	for i := range hoops {
		ids[i] = fmt.Sprintf("%s-frame", b.number('B'))
	}
	for i, h := range hoops {
		strip, gathered := skirt.FrameTop(h), true
		if i > 0 {
			if strip, err = skirt.FrameStrip(hoops[i-1], h); err != nil {
				return err
			}
			gathered = false
		}
		b.add(framePiece(strip, ids, i, gathered, hoops[0].Strap))
		b.hoopSteel(fmt.Sprintf("half hoop %d of %d from the top", i+1, len(hoops)), h.Arc(),
			fmt.Sprintf("stands %.0f mm out from its strap, %.0f mm below the waist; tip the ends", h.Rise, -h.Height))
		b.cut(Cut{Name: fmt.Sprintf("strap %d", i+1), Material: "cotton tape", Length: h.Strap + 2*tapeSpare, Width: tapeWidth, Count: 1,
			Note: fmt.Sprintf("%.0f mm from end to end of its half hoop, 2 cm spare at each end; closes the channel", h.Strap)})
	}
	b.petticoats, b.out.Frame = append(b.petticoats, "bustle frame"), hoops
	return nil
}

// framePiece is one part of a frame's back panel, the first gathered to the waist.
func framePiece(s skirt.Strip, ids []string, i int, gathered bool, waist float64) piece.Piece {
	ring := s.Outline()
	p := piece.Piece{
		ID: ids[i], Name: fmt.Sprintf("bustle frame, back panel, part %d of %d from the top", i+1, len(ids)), Material: "cotton twill", Count: 1, Thickness: 0.5,
		Outline: ring, Strain: s.Strain,
		Marks: []piece.Mark{{Kind: piece.Allowance, Points: ring.Offset(clothAllowance)}, grain(ring), {Kind: piece.LevelLine, Label: "channel", Points: higher(s, channel)}},
	}
	top := plane.Ring(s.Upper).Reverse()
	if gathered {
		p.Marks = append(p.Marks, piece.Mark{Kind: piece.LevelLine, Label: fmt.Sprintf("gather to %.0f mm on the waist tape", waist), Points: top})
	} else {
		p.Seams = append(p.Seams, piece.Seam{To: ids[i-1], Kind: "sewn", Length: curve.Length(top), Points: top})
		p.Marks = append(p.Marks, notchAt(top, curve.Length(top)/2))
	}
	if i+1 < len(ids) {
		p.Seams = append(p.Seams, piece.Seam{To: ids[i+1], Kind: "sewn", Length: curve.Length(s.Lower), Points: s.Lower})
		p.Marks = append(p.Marks, notchAt(s.Lower, curve.Length(s.Lower)/2))
	}
	return p
}
