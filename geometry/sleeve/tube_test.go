package sleeve

import (
	"math"
	"testing"

	"understructure/geometry/curve"
	"understructure/geometry/measure"
)

// A tube of one girth cut square is a rectangle.
func TestSquareTubeIsARectangle(t *testing.T) {
	p := Tube{End: 300, Upper: 300, Under: 400, Length: 400}.Panel()
	lo, hi := p.Outline().Bounds()
	near(t, "width", hi.X-lo.X, 300, 1e-9)
	near(t, "height", hi.Y-lo.Y, 400, 1e-9)
	near(t, "area", p.Outline().Area(), 300*400, 1e-6)
}

// A tapered tube cut square is a ring sector of angle (G−g)/s between the radii sg/(G−g) and sG/(G−g), s its slant
// (the development of a cone, as in any treatise of descriptive geometry).
func TestTaperedTubeIsARingSector(t *testing.T) {
	const g, G, s = 200.0, 320.0, 350.0
	p := Tube{End: g, Upper: G, Under: s, Length: s}.Panel()
	end, seam := p.Edge(TubeEnd), p.Edge(TubeSeam)
	near(t, "seam", curve.Length(seam), s, 1e-9)
	near(t, "end", curve.Length(end), g, 1e-3)
	near(t, "head", curve.Length(p.Edge(TubeHead)), G, 1e-3)
	angle := (G - g) / s
	near(t, "chord of the end", end[0].Dist(end[len(end)-1]), 2*s*g/(G-g)*math.Sin(angle/2), 1e-9)
	near(t, "area", p.Outline().Area(), s*(g+G)/2, 1)
}

// A cylinder cut aslant develops to a sine curve, and its skin has the mean height.
func TestSlantedTubeIsASine(t *testing.T) {
	tube := Tube{End: 2 * math.Pi * 50, Upper: 2 * math.Pi * 50, Under: 300, Length: 420}
	for _, q := range tube.Panel().Edge(TubeHead) {
		near(t, "head", q.Y, 360+60*math.Cos(q.X/50), 1e-9)
	}
	near(t, "area", tube.Panel().Outline().Area(), 2*math.Pi*50*360, 5)
}

// On a cone the slanting head is plane: every point of it, put back on the cone, lies in one plane, and the
// development keeps its length.
func TestHeadOfATaperedTubeIsPlane(t *testing.T) {
	tube := Tube{End: 200, Upper: 330, Under: 300, Length: 410}
	sin := tube.sine()
	cos := math.Sqrt(1 - sin*sin)
	place := func(θ float64) (x, y, z float64) {
		g := tube.generator(θ)
		r := 200/(2*math.Pi) + g*sin
		return r * math.Cos(θ), r * math.Sin(θ), g * cos
	}
	x0, _, z0 := place(math.Pi)
	x1, _, z1 := place(0)
	near(t, "outside", tube.generator(0), 410, 1e-9)
	near(t, "inside", tube.generator(math.Pi), 300, 1e-9)
	length := 0.0
	const n = 20000
	for i := range n {
		a, b := 2*math.Pi*float64(i)/n, 2*math.Pi*float64(i+1)/n
		x, y, z := place(a)
		u, v, w := place(b)
		near(t, "height over the plane", z, z0+(z1-z0)*(x-x0)/(x1-x0), 1e-9)
		length += math.Sqrt((x-u)*(x-u) + (y-v)*(y-v) + (z-w)*(z-w))
	}
	near(t, "head", curve.Length(tube.Panel().Edge(TubeHead)), length, 0.02)
}

// A frill reaches from the arm to the sleeve: (750 − 15 − core)/2π, and the girth of its outer edge is the sleeve's less ease.
func TestPuffFillsTheSleeve(t *testing.T) {
	full := measure.Sheet{measure.SleeveLength: 560, measure.UpperGirth: 750, measure.WristGirth: 170}
	for _, year := range []int{1833, 1895} {
		s := mustSleeve(t, Taken{Sheet: full, Armscye: 350, Bust: 810, Year: year})
		a := mustArm(t, s, Usual(15))
		p := s.Puff(a, Usual(15))
		if len(p.Frills) < 4 || len(p.Notices) != 0 || p.Bundle > p.Passage || p.Passage > 335+1e-9 {
			t.Errorf("%d: %+v", year, p)
		}
		for _, f := range p.Frills {
			near(t, "fullness", f.Length/f.Outer, p.Fullness, 1e-9)
			if f.At >= 0 {
				near(t, "outer edge", f.Outer, s.Girth(f.At)-15, 1e-9)
				near(t, "depth", f.Deep, (f.Outer-f.Gather)/(2*math.Pi), 1e-9)
			}
			if f.Ratio() < 2 || f.Ratio() > 7 {
				t.Errorf("%d: gathered %.1f to 1", year, f.Ratio())
			}
		}
	}
	plain := mustSleeve(t, Taken{Sheet: sheet(), Armscye: 345})
	if p := plain.Puff(mustArm(t, plain, Usual(15)), Usual(15)); len(p.Frills) != 0 {
		t.Errorf("a plain sleeve has %d frills", len(p.Frills))
	}
}

// A puff too thick for a narrow armscye is given the least fullness, and a word.
func TestPuffTooThick(t *testing.T) {
	full := measure.Sheet{measure.SleeveLength: 560, measure.UpperGirth: 1100, measure.WristGirth: 170}
	s := mustSleeve(t, Taken{Sheet: full, Armscye: 270, Bust: 810, Year: 1833})
	p := s.Puff(mustArm(t, s, Usual(15)), Usual(15))
	if len(p.Notices) != 1 || p.Notices[0].Code != "puff-too-thick" || p.Bundle <= p.Passage {
		t.Errorf("%+v", p.Notices)
	}
	near(t, "fullness", p.Fullness, slackest, 0.051)
}
