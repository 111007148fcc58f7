package view

import (
	"math"
	"math/rand/v2"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/geometry/surface"
	"understructure/geometry/unit"
)

func near(p, q space.Point) bool { return p.Dist(q) < 1e-9 }

// The figure's right hand is at the viewer's left in front, its front at the left of the left
// side's view: as a draughtsman lays views beside each other.
func TestSides(t *testing.T) {
	right, front, up := space.Point{X: 1}, space.Point{Y: 1}, space.Point{Z: 1}
	for _, c := range []struct {
		name             string
		yaw              unit.Angle
		right, front, up space.Point // as seen: X right, Y toward the viewer
	}{
		{"front", Front, space.Point{X: -1}, space.Point{Y: 1}, up},
		{"left side", LeftSide, space.Point{Y: -1}, space.Point{X: -1}, up},
		{"back", Back, space.Point{X: 1}, space.Point{Y: -1}, up},
		{"right side", RightSide, space.Point{Y: 1}, space.Point{X: 1}, up},
		{"three-quarter", ThreeQuarter, space.Point{X: -math.Sqrt2 / 2, Y: -math.Sqrt2 / 2}, space.Point{X: -math.Sqrt2 / 2, Y: math.Sqrt2 / 2}, up},
		{"a turn more", LeftSide + 2*math.Pi, space.Point{Y: -1}, space.Point{X: -1}, up},
		{"the other way round", -LeftSide, space.Point{Y: 1}, space.Point{X: 1}, up},
	} {
		v := From(c.yaw, 0)
		if !near(v.See(right), c.right) || !near(v.See(front), c.front) || !near(v.See(up), c.up) {
			t.Errorf("%s: right %v front %v up %v", c.name, v.See(right), v.See(front), v.See(up))
		}
	}
	if seen := From(Back, 0).See(space.Point{Y: 3}); seen != (space.Point{Y: -3}) {
		t.Errorf("a quarter turn is not exact: %v", seen)
	}
}

// Looking is a rotation: lengths and angles stay, whichever way one looks.
func TestSeeKeepsLengths(t *testing.T) {
	g := rand.New(rand.NewPCG(3, 5))
	for range 1000 {
		c := From(unit.Angle(g.NormFloat64()*9), unit.Angle(g.NormFloat64()))
		p := space.Point{X: g.NormFloat64(), Y: g.NormFloat64(), Z: g.NormFloat64()}
		q := space.Point{X: g.NormFloat64(), Y: g.NormFloat64(), Z: g.NormFloat64()}
		if d := c.See(p).Dist(c.See(q)) - p.Dist(q); math.Abs(d) > 1e-12 {
			t.Fatalf("a length changes by %g", d)
		}
		if n := p.Cross(q); c.See(p).Cross(c.See(q)).Dist(c.See(n).Mul(-1)) > 1e-12 { // Y toward the viewer makes the seen axes left-handed
			t.Fatal("what is seen is mirrored")
		}
		if c.Faces(p) != (c.See(p).Y > 0) {
			t.Fatal("a face is turned to the viewer and away")
		}
	}
}

// From above one sees what lies behind higher up; 30 degrees is the most.
func TestPitch(t *testing.T) {
	c := From(Front, 30*unit.Degree)
	if p := c.See(space.Point{Y: -10}); !near(p, space.Point{Y: -10 * math.Cos(math.Pi/6), Z: 5}) {
		t.Errorf("what lies 10 mm behind the axis is seen at %v, want 5 mm up", p)
	}
	if From(1, 2) != From(1, MostPitch) || From(1, -2) != From(1, -MostPitch) {
		t.Error("one may look from higher up")
	}
}

// ellipsoid has half axes a, b across and c up, its middle at height h.
func ellipsoid(a, b, c, h float64) (surface.Surface, surface.Shell) {
	s := surface.Surface{}
	for z := -0.98 * c; z <= 0.98*c; z += c / 50 {
		s.Z = append(s.Z, h+z)
		f := math.Sqrt(1 - z*z/(c*c))
		var r section.Section
		for j := range r {
			d := section.Direction(j)
			r[j] = f / math.Sqrt(d.X*d.X/(a*a)+d.Y*d.Y/(b*b))
		}
		s.R = append(s.R, r)
	}
	return s, s.Normals()
}

// The contour of an ellipsoid is an ellipse: along a unit vector u of the picture it reaches to
// h·u ± √(a²u₁² + b²u₂² + c²u₃²) (its support function; derived).
func TestContourOfAnEllipsoid(t *testing.T) {
	const a, b, c, h = 200.0, 120.0, 400.0, 1200.0
	s, n := ellipsoid(a, b, c, h)
	for _, yaw := range []unit.Angle{0, 0.4, LeftSide, 2.5} {
		for _, pitch := range []unit.Angle{0, 0.2, -0.3} {
			cam := From(yaw, pitch)
			left, right := cam.AppendContour(nil, nil, s, n)
			across, _, up := cam.Axes()
			for k := range 60 {
				φ := 2 * math.Pi * float64(k) / 60
				u := across.Mul(math.Cos(φ)).Add(up.Mul(math.Sin(φ)))
				if math.Abs(math.Sin(φ)) > 0.9 {
					continue // the ends are cut off
				}
				want := u.Z*h + math.Sqrt(a*a*u.X*u.X+b*b*u.Y*u.Y+c*c*u.Z*u.Z)
				got := math.Inf(-1)
				for _, p := range append(left[:len(left):len(left)], right...) {
					got = max(got, p.X*math.Cos(φ)+p.Z*math.Sin(φ))
				}
				if math.Abs(got-want) > 0.4 {
					t.Errorf("yaw %.1f pitch %.1f: the contour reaches %.2f mm at %.0f°, want %.2f", yaw, pitch, got, φ*180/math.Pi, want)
				}
			}
		}
	}
}

// On its contour a skin is seen edge on: the normal of an ellipsoid, (x/a², y/b², z/c²), is square to the line of sight there.
func TestContourIsSeenEdgeOn(t *testing.T) {
	const a, b, c, h = 200.0, 120.0, 400.0, 1200.0
	s, n := ellipsoid(a, b, c, h)
	for yaw := unit.Angle(0.05); yaw < 6; yaw += 0.37 {
		cam := From(yaw, 0.2)
		right, toward, up := cam.Axes()
		left, far := cam.AppendContour(nil, nil, s, n)
		for _, side := range [2][]space.Point{left, far} {
			for _, q := range side[20:80] {
				p := right.Mul(q.X).Add(toward.Mul(q.Y)).Add(up.Mul(q.Z))
				normal := space.Point{X: p.X / (a * a), Y: p.Y / (b * b), Z: (p.Z - h) / (c * c)}.Unit()
				if off := math.Abs(normal.Dot(toward)); off > 0.002 { // a direction is 0.02 wide
					t.Fatalf("yaw %.2f: at height %.0f the skin is %.4f off edge on", yaw, p.Z, off)
				}
			}
		}
	}
}

// Without pitch a row's contour is its extent, two-lobed rows included.
func TestContourIsTheExtent(t *testing.T) {
	var s surface.Surface
	for z := 0.0; z <= 100; z += 10 {
		var r section.Section
		for j := range r {
			r[j] = 100 + 20*math.Cos(3*2*math.Pi*float64(j)/section.Directions)
		}
		s.Z, s.R = append(s.Z, z), append(s.R, r)
	}
	n := s.Normals()
	for yaw := unit.Angle(0); yaw < 6; yaw += 0.1 {
		c := From(yaw, 0)
		left, right := c.AppendContour(nil, nil, s, n)
		l, r := c.ends(s, 5)
		if math.Abs(left[5].X-l.X) > 0.05 || math.Abs(right[5].X-r.X) > 0.05 {
			t.Errorf("yaw %.1f: from %.2f to %.2f, want %.2f to %.2f", yaw, left[5].X, right[5].X, l.X, r.X)
		}
	}
}

// The top of a flat shoulder, all of it in sight, has its ends for a contour.
func TestContourOfWhatIsAllInSight(t *testing.T) {
	s := surface.Surface{Z: []float64{100, 101}}
	for _, d := range []float64{100, 50} {
		var r section.Section
		for j := range r {
			r[j] = d
		}
		s.R = append(s.R, r)
	}
	left, right := From(0, 0.4).AppendContour(nil, nil, s, s.Normals())
	if math.Abs(left[0].X+100) > 1e-9 || math.Abs(right[0].X-100) > 1e-9 {
		t.Errorf("the contour reaches from %v to %v, want -100 to 100", left[0], right[0])
	}
}

func circle(r float64) plane.Ring {
	var out plane.Ring
	for k := range 64 {
		s, c := math.Sincos(2 * math.Pi * float64(k) / 64)
		out = append(out, plane.Point{X: r * c, Y: r * s})
	}
	return out
}

// A tape seen level is one straight line twice; from above, an ellipse whose near half is the lower.
func TestTapeIsSeenBeforeAndBehind(t *testing.T) {
	for _, yaw := range []unit.Angle{Front, 0.3, LeftSide, Back, 4} {
		before, behind := From(yaw, 0).AppendRound(nil, nil, circle(100), 900)
		for _, part := range [][]plane.Point{before, behind} {
			if len(part) < 30 {
				t.Fatalf("yaw %g: %d points", yaw, len(part))
			}
			for i, p := range part {
				if p.Y != 900 || i > 0 && p.X < part[i-1].X-1e-9 {
					t.Fatalf("yaw %g: the line runs to %v", yaw, p)
				}
			}
			if first, last := part[0].X, part[len(part)-1].X; first > -99.8 || last < 99.8 {
				t.Errorf("yaw %g: from %.2f to %.2f, want -100 to 100", yaw, first, last)
			}
		}
	}
	before, behind := From(0.7, 0.25).AppendRound(nil, nil, circle(100), 0)
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range before {
		low = min(low, p.Y)
	}
	for _, p := range behind {
		high = max(high, p.Y)
	}
	if want := 100 * math.Sin(0.25); math.Abs(low+want) > 0.2 || math.Abs(high-want) > 0.2 {
		t.Errorf("the tape is seen from %.2f to %.2f, want ±%.2f", low, high, want)
	}
	if before, behind := From(0, 0).AppendRound(nil, nil, circle(1)[:2], 0); before != nil || behind != nil {
		t.Error("two points are no tape")
	}
}

func BenchmarkContour(b *testing.B) {
	s, n := ellipsoid(200, 120, 400, 1200)
	for b.Loop() {
		From(0.7, 0).AppendContour(nil, nil, s, n)
	}
}
