package skirt

import (
	"fmt"
	"math"
	"slices"

	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
)

// Hoop is a level line on a support: the band at the waist, a steel, or a seam over the hip.
type Hoop struct {
	Height float64 // from the waist up, mm
	Oval   Oval
	Steel  bool
}

// Petticoat is the shape of a support under a skirt: the waist, then lines down to its hem,
// which carries a steel. Cloth goes straight from one to the next, and where two lines face the
// same way lies straight across; so its girth between them is in proportion to theirs.
type Petticoat []Hoop

// Shorter is by how much a petticoat is shorter than its skirt, mm: one inch (a school text
// on sewing of 1911).
const Shorter = 25.0

// Beneath is the room between the skirt and the support's hoops for a smooth top layer, mm. From memory.
const Beneath = 5.0

// mostHoops is a few more than a cage of 1858–61 with 29 (corsetsandcrinolines.com, index 185040).
const mostHoops = 40

// Petticoat fits a petticoat with n steels under the skirt: its girth is nowhere greater, and
// every hoop lies inside the skirt and nests in the next. Under a cone they lie at even steps from waist
// to hem; under a dome or a shelf closer near the waist (Interpret and Display Historic Dress, chapter 8).
func (s Skirt) Petticoat(n int) (Petticoat, error) {
	if n < 1 || n > mostHoops {
		return nil, fmt.Errorf("skirt: %d hoops, want 1 to %d", n, mostHoops)
	}
	hem := s.hemLess(Shorter)
	if hem > -leastHang {
		return nil, fmt.Errorf("skirt: the hem hangs %.0f mm below the waist, want at least %.0f for a petticoat", -s.Lowest(), Shorter+leastHang)
	}
	p := Petticoat{{Oval: about(s.body.Waist)}}
	for i := 1; i <= n; i++ {
		z := hem * math.Pow(float64(i)/float64(n), s.crowding())
		at := s.Section(z)
		widest := Through(at).within(at)
		p = append(p, Hoop{z, widest.inside(Beneath).outside(Through(s.body.at(-z)), widest), true})
	}
	p = p.overHip(s)
	for range 8 {
		p.nest()
		if p.keepIn(s) {
			break
		}
	}
	return p, nil
}

// about is the oval with the tape of a slice and its proportions on the axes.
func about(s section.Section) Oval { return Through(s).Grown(s.Tape()) }

// crowding is the power by which hoops crowd towards the waist: 1 for a cone, 1.5 for a dome
// or shelf all round. The figure is from memory; that they crowd is published.
func (s Skirt) crowding() float64 {
	sil, round := s.Silhouette, 0.0
	for _, p := range []Profile{sil.Front, sil.Side, sil.Side, sil.Back} {
		round += (p.Dome + p.Shelf) / 4
	}
	return 1 + round/2
}

// inside draws an outline in by a distance, but never by more than half.
func (o Oval) inside(d float64) Oval {
	in := func(r float64) float64 { return math.Max(r-d, r/2) }
	return Oval{in(o.Right), in(o.Left), in(o.Front), in(o.Back)}
}

// outside draws an outline out again to the body, but no farther than the widest that the skirt holds.
func (o Oval) outside(body, widest Oval) Oval {
	out := func(r, body, widest float64) float64 { return math.Min(math.Max(r, body), widest) }
	return Oval{out(o.Right, body.Right, widest.Right), out(o.Left, body.Left, widest.Left), out(o.Front, body.Front, widest.Front), out(o.Back, body.Back, widest.Back)}
}

// overHip adds a seam at the hip where the straight cloth would be too tight for it.
func (p Petticoat) overHip(s Skirt) Petticoat {
	b := s.body
	for i := 1; i < len(p) && b.HipDepth > 0; i++ {
		if -p[i].Height <= b.HipDepth+leastHang {
			continue
		}
		hip, z := b.Hip.Tape(), -b.HipDepth
		if p[i-1].Height < z+leastHang || p.girth(i, z) >= hip {
			return p
		}
		seam := p[i-1].Oval.blend(p[i].Oval, (z-p[i-1].Height)/(p[i].Height-p[i-1].Height)).around(about(b.Hip))
		at := s.Section(z)
		return slices.Insert(p, i, Hoop{Height: z, Oval: seam.Grown(math.Min(seam.Girth(), math.Max(hip, at.Tape())))})
	}
	return p
}

// around is the outline that holds two, on the axes.
func (o Oval) around(p Oval) Oval {
	return Oval{math.Max(o.Right, p.Right), math.Max(o.Left, p.Left), math.Max(o.Front, p.Front), math.Max(o.Back, p.Back)}
}

// girth of the cloth at a height between the line before i and line i.
func (p Petticoat) girth(i int, z float64) float64 {
	a, b := p[i-1], p[i]
	t := (z - a.Height) / (b.Height - a.Height)
	return a.Oval.Girth()*(1-t) + b.Oval.Girth()*t
}

// nest lets no steel reach farther than the one below it, so that they fold into one another.
func (p Petticoat) nest() {
	below := p[len(p)-1].Oval
	for i := len(p) - 2; i >= 0; i-- {
		if p[i].Steel {
			o := p[i].Oval
			below = Oval{math.Min(o.Right, below.Right), math.Min(o.Left, below.Left), math.Min(o.Front, below.Front), math.Min(o.Back, below.Back)}
			p[i].Oval = below
		}
	}
}

// keepIn draws steels in where the cloth above them would be wider than the skirt, and reports whether none was.
func (p Petticoat) keepIn(s Skirt) bool {
	const looks = 8
	fit := true
	for i := 1; i < len(p); i++ {
		least := 1.0
		for k := 1; k <= looks && p[i].Steel; k++ {
			t := float64(k) / looks
			z := p[i-1].Height + (p[i].Height-p[i-1].Height)*t
			at := s.Section(z)
			if over := p.girth(i, z) - at.Tape(); over > readable {
				least = math.Min(least, 1-over/(t*p[i].Oval.Girth()))
			}
		}
		if least < 1 {
			p[i].Oval, fit = p[i].Oval.Scale(math.Max(least, 0.5)), false
		}
	}
	return fit
}

// hemLess is the height, on the meridian with the least cloth, where so much of it is left down to the hem.
func (s Skirt) hemLess(left float64) float64 {
	j := section.Front
	for i, l := range s.lengths {
		if l < s.lengths[j]-1e-9 {
			j = i
		}
	}
	for k := s.standing; k > 0; k-- {
		a, b := s.Cloth[k][j], s.Cloth[k-1][j]
		if step := a.Dist(b); step < left {
			left -= step
			continue
		}
		return math.Max(s.Lowest(), a.Lerp(b, left/a.Dist(b)).Z)
	}
	return 0
}

// Tape is the length of a tape from the line before i to line i, in front, at the right, the left and behind.
func (p Petticoat) Tape(i int) (front, right, left, back float64) {
	a, b := p[i-1], p[i]
	down := a.Height - b.Height
	return math.Hypot(down, b.Oval.Front-a.Oval.Front), math.Hypot(down, b.Oval.Right-a.Oval.Right),
		math.Hypot(down, b.Oval.Left-a.Oval.Left), math.Hypot(down, b.Oval.Back-a.Oval.Back)
}

// Steels are the lines with a steel in them, from the top.
func (p Petticoat) Steels() []Hoop {
	var out []Hoop
	for _, h := range p {
		if h.Steel {
			out = append(out, h)
		}
	}
	return out
}

// Hem is the lowest steel.
func (p Petticoat) Hem() Hoop { return p[len(p)-1] }

// Quarter lays the cloth between the line before i and line i flat, a quarter of the way round
// from a balance line: 0 from the right to the front, 1 on to the left, 2 to the back, 3 to the right again.
func (p Petticoat) Quarter(i, quarter int) (Strip, error) {
	a, b := p[i-1], p[i]
	most := math.Max(a.Oval.roundest(), b.Oval.roundest())
	n := 2 * int(math.Ceil(math.Pi/4/math.Sqrt(8*finer/most)))
	var upper, lower []space.Point
	for k := range n + 1 {
		sin, cos := math.Sincos(math.Pi / 2 * (float64(quarter) + float64(k)/float64(n)))
		d := plane.Point{X: cos, Y: sin}
		upper = append(upper, a.at(d))
		lower = append(lower, b.at(d))
	}
	return LayStrip(lower, upper)
}

// finer is how far the straight sides of a hoop's quarter may lie off it, mm, so that its length is right to a few hundredths.
const finer = 0.01

// at is the point of the line that faces a direction.
func (h Hoop) at(d plane.Point) space.Point {
	p := h.Oval.Facing(d)
	return space.Point{X: p.X, Y: p.Y, Z: h.Height}
}
