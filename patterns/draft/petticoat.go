package draft

import (
	"fmt"
	"math"
	"strings"

	"understructure/geometry/curve"
	"understructure/geometry/plane"
	"understructure/geometry/skirt"
	"understructure/patterns/piece"
)

// Allowances of petticoats, mm: 2 cm at seams and for the casing of the waist tape, 3 cm at the
// hem, which makes a 2 cm channel (Interpret and Display Historic Dress, chapter 8).
const clothAllowance, hemAllowance, channel = 20.0, 30.0, 20.0

// calico is what petticoats are cut from, and its thickness, mm; from memory.
const calico, calicoThickness = "calico, washed", 0.3

// opening is how far the seam at centre back stays open from the waist, mm; from memory.
const opening = 250.0

// quarterOf names the quarters as skirt.Petticoat counts them, with the marks of their left and
// right edges as seen from outside.
var quarterOf = [4]struct {
	name        string
	left, right piece.Kind
}{
	{"front-right", piece.Side, piece.CentreFront}, {"front-left", piece.CentreFront, piece.Side},
	{"back-left", piece.Side, piece.CentreBack}, {"back-right", piece.CentreBack, piece.Side},
}

// tiers lays the cloth of a petticoat flat, from the top tier down, four quarters each. of is what it belongs to.
func (b *supporter) tiers(p skirt.Petticoat, of string, mark func(i int, s skirt.Strip) []piece.Mark) error {
	n := len(p) - 1
	ids := make([]string, n+2) // of the tiers, none above the first and below the last
	for i := 1; i <= n; i++ {
		ids[i] = b.number('P')
	}
	left := opening
	for i := 1; i <= n; i++ {
		_, _, _, back := p.Tape(i)
		name := of
		if n > 1 {
			name = fmt.Sprintf("%s, tier %d of %d from the top", of, i, n)
		}
		for q := range quarterOf {
			strip, err := p.Quarter(i, q)
			if err != nil {
				return fmt.Errorf("tier %d: %w", i, err)
			}
			t := tier{strip: strip, id: ids[i], above: ids[i-1], below: ids[i+1], name: name, quarter: q}
			pc := t.piece()
			pc.Marks = append(pc.Marks, mark(i, strip)...)
			if left > 0 && left <= back && (quarterOf[q].left == piece.CentreBack || quarterOf[q].right == piece.CentreBack) {
				pc.Marks = append(pc.Marks, t.open(left))
			}
			b.add(pc)
		}
		left -= back
	}
	return nil
}

// tier is one quarter of one tier on its way to a piece.
type tier struct {
	strip            skirt.Strip
	id, above, below string // short names of tiers; "" where there is none
	name             string
	quarter          int
}

func (t tier) full(id string, quarter int) string { return id + "-" + quarterOf[(quarter+4)%4].name }

// piece draws the quarter with its seams, notches, grain and the line to cut.
func (t tier) piece() piece.Piece {
	lower, upper := t.strip.Lower, t.strip.Upper
	n := len(lower) - 1
	right, left := []plane.Point{lower[n], upper[n]}, []plane.Point{upper[0], lower[0]}
	top := plane.Ring(upper).Reverse()
	p := piece.Piece{
		ID: t.full(t.id, t.quarter), Name: t.name + ", " + strings.Replace(quarterOf[t.quarter].name, "-", ", ", 1), Material: calico, Count: 1, Thickness: calicoThickness,
		Outline: t.strip.Outline(), Strain: t.strip.Strain,
	}
	p.Marks = []piece.Mark{
		{Kind: piece.Allowance, Points: t.cutLine()},
		{Kind: quarterOf[t.quarter].left, Points: left}, {Kind: quarterOf[t.quarter].right, Points: right},
		notchAt(right, curve.Length(right)/2), notchAt(left, curve.Length(left)/2),
		notchAt(lower, curve.Length(lower)/2), notchAt(top, curve.Length(top)/2), grain(p.Outline),
	}
	sew := func(to string, line []plane.Point) {
		p.Seams = append(p.Seams, piece.Seam{To: to, Kind: "sewn", Length: curve.Length(line), Points: line})
	}
	if t.below != "" {
		sew(t.full(t.below, t.quarter), lower)
	}
	sew(t.full(t.id, t.quarter+1), right)
	if t.above != "" {
		sew(t.full(t.above, t.quarter), top)
	}
	sew(t.full(t.id, t.quarter-1), left)
	return p
}

// cutLine is the line to cut: the allowance of a seam all round, and that of the hem below the last tier.
func (t tier) cutLine() plane.Ring {
	if t.below != "" {
		return t.strip.Outline().Offset(clothAllowance)
	}
	s := skirt.Strip{Lower: make([]plane.Point, len(t.strip.Lower)), Upper: t.strip.Upper}
	for i, p := range t.strip.Lower {
		up := t.strip.Upper[i].Sub(p)
		s.Lower[i] = p.Sub(up.Mul((hemAllowance - clothAllowance) / math.Max(up.Norm(), 1)))
	}
	return s.Outline().Offset(clothAllowance)
}

// open marks, at a length down the seam at centre back, where its opening ends; tiers above stay open there.
func (t tier) open(down float64) piece.Mark {
	k, next := 0, 1
	if quarterOf[t.quarter].right == piece.CentreBack {
		k, next = len(t.strip.Lower)-1, len(t.strip.Lower)-2
	}
	lower, upper := t.strip.Lower[k], t.strip.Upper[k]
	inward := t.strip.Lower[next].Sub(lower)
	at := upper.Lerp(lower, down/upper.Dist(lower))
	return piece.Mark{Kind: piece.LevelLine, Label: "seam open above here", Points: []plane.Point{at, at.Add(inward.Mul(channel / inward.Norm()))}}
}

// higher is the line on a strip that lies a distance above its lower edge.
func higher(s skirt.Strip, by float64) []plane.Point {
	out := make([]plane.Point, len(s.Lower))
	for i, p := range s.Lower {
		out[i] = p.Lerp(s.Upper[i], math.Min(1, by/math.Max(p.Dist(s.Upper[i]), 1)))
	}
	return out
}
