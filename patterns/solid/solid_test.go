package solid

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"understructure/geometry/plane"
	"understructure/geometry/section"
	"understructure/geometry/space"
	"understructure/patterns/judge"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
)

// round is a circle as a section draws it: a polygon of section.Directions corners.
func round(radius float64) plane.Ring {
	var s section.Section
	for j := range s {
		s[j] = radius
	}
	return s.Ring()
}

func of(t testing.TB, heights []float64, outlines ...plane.Ring) Body {
	t.Helper()
	b, err := Of(heights, outlines)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// mount is the made-up mount of other tests.
func mount(t testing.TB) (b Body, heights []float64, outlines []plane.Ring) {
	p := plantest.Plan()
	return of(t, p.Surface.Heights, p.Surface.Built...), p.Surface.Heights, p.Surface.Built
}

// volume by the divergence theorem, as the sum of the tetrahedra from the origin to every triangle: a triangle the
// wrong way round takes away.
func volume(b Body) float64 {
	v := 0.0
	for _, t := range b.Triangles {
		v += b.Points[t[0]].Dot(b.Points[t[1]].Cross(b.Points[t[2]])) / 6
	}
	return v
}

// watertight reports an edge that is not passed once in each direction.
func watertight(b Body) error {
	passed := map[[2]int]int{}
	for _, t := range b.Triangles {
		for i := range t {
			passed[[2]int{t[i], t[(i+1)%3]}]++
		}
	}
	for e, n := range passed {
		if n != 1 || passed[[2]int{e[1], e[0]}] != 1 {
			return fmt.Errorf("edge %v is passed %d times, and %d back", e, n, passed[[2]int{e[1], e[0]}])
		}
	}
	return nil
}

// The polygon of n corners on a circle has the area n/2·r²·sin(2π/n) (Euclid, Elements XII, in modern terms).
func polygon(r float64) float64 {
	const n = section.Directions
	return n / 2.0 * r * r * math.Sin(2*math.Pi/n)
}

func TestKnownBodies(t *testing.T) {
	for name, c := range map[string]struct {
		body   Body
		volume float64
		bodies int
	}{
		"cylinder": {of(t, []float64{0, 30, 100}, round(50), round(50), round(50)), 100 * polygon(50), 1},
		// A frustum of heights h and similar faces A and B holds h/3·(A+√(AB)+B) (Moscow Mathematical Papyrus, problem 14).
		"frustum":                   {of(t, []float64{10, 70}, round(40), round(20)), 60.0 / 3 * (polygon(40) + polygon(math.Sqrt(40*20)) + polygon(20)), 1},
		"two drums with a gap":      {of(t, []float64{0, 10, 20, 30, 40}, round(10), round(10), nil, round(20), round(20)), 10*polygon(10) + 10*polygon(20), 2},
		"an outline alone":          {of(t, []float64{0, 10}, round(10), nil), 0, 0},
		"fewer outlines":            {of(t, []float64{0, 10, 20}, round(10), round(10)), 10 * polygon(10), 1},
		"two outlines in one place": {of(t, []float64{0, 10, 10.001, 20}, round(10), round(10), round(10), round(10)), 20 * polygon(10), 1},
	} {
		if got := volume(c.body); math.Abs(got-c.volume) > 1e-9*c.volume+1e-9 {
			t.Errorf("%s: %.6f mm³, want %.6f", name, got, c.volume)
		}
		if err := watertight(c.body); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		// Euler: corners − edges + faces = 2 for every body without a hole.
		if got := len(c.body.Points) - len(c.body.Triangles)*3/2 + len(c.body.Triangles); got != 2*c.bodies {
			t.Errorf("%s: corners − edges + faces = %d, want %d", name, got, 2*c.bodies)
		}
	}
}

// frusta is the volume between outlines, each layer as a frustum: h/3·(A+√(AB)+B).
func frusta(heights []float64, outlines []plane.Ring) float64 {
	v := 0.0
	for i := range heights[1:] {
		a, b := outlines[i].Area(), outlines[i+1].Area()
		v += (heights[i+1] - heights[i]) / 3 * (a + math.Sqrt(a*b) + b)
	}
	return v
}

func TestTheMountHoldsWhatItsOutlinesHold(t *testing.T) {
	b, heights, outlines := mount(t)
	if got, want := volume(b), frusta(heights, outlines); math.Abs(got-want) > 0.005*want {
		t.Errorf("%.0f mm³, want %.0f", got, want)
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range b.Points {
		lo, hi = math.Min(lo, p.Z), math.Max(hi, p.Z)
	}
	if lo != heights[0] || hi != heights[len(heights)-1] {
		t.Errorf("from %.2f to %.2f mm above the floor, want %.2f to %.2f", lo, hi, heights[0], heights[len(heights)-1])
	}
}

// admesh has another program read an STL and returns its figures by their names.
func admesh(t *testing.T, stl []byte) map[string]float64 {
	t.Helper()
	path := filepath.Join(t.TempDir(), "mount.stl")
	if err := os.WriteFile(path, stl, 0o600); err != nil {
		t.Fatal(err)
	}
	return judge.Mesh(t, path)
}

func written(t *testing.T, write func(io.Writer) error) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func TestAnotherProgramFindsNothingToMend(t *testing.T) {
	b, heights, outlines := mount(t)
	found := admesh(t, written(t, b.STL))
	for name, want := range map[string]float64{
		"Number of facets": float64(len(b.Triangles)), "Number of parts": 1, "Degenerate facets": 0, "Edges fixed": 0, "Facets removed": 0,
		"Facets added": 0, "Facets reversed": 0, "Backwards edges": 0, "Normals fixed": 0, "Total disconnected facets": 0,
	} {
		if got, said := found[name]; !said || got != want {
			t.Errorf("%s: %v, want %v (said: %v)", name, got, want, said)
		}
	}
	if got, want := found["Volume"], frusta(heights, outlines); math.Abs(got-want) > 0.005*want {
		t.Errorf("volume %.0f mm³, want %.0f", got, want)
	}
	if got := found["Min Z"]; math.Abs(got-heights[0]) > 0.001 {
		t.Errorf("the lowest point is %v above the floor, want %v", got, heights[0])
	}
}

// The judge is no judge unless it finds a triangle that is missing and one that is the wrong way round.
func TestAnotherProgramFindsWhatIsWrong(t *testing.T) {
	b, _, _ := mount(t)
	whole := b.Triangles
	b.Triangles = append([][3]int{{whole[0][1], whole[0][0], whole[0][2]}}, whole[1:]...)
	if found := admesh(t, written(t, b.STL)); found["Facets reversed"]+found["Backwards edges"] == 0 {
		t.Errorf("a triangle the wrong way round is not found: %v", found)
	}
	if watertight(b) == nil {
		t.Error("the test itself does not find a triangle the wrong way round")
	}
	b.Triangles = whole[1:]
	if found := admesh(t, written(t, b.STL)); found["Number of facets"] == float64(len(whole)-1) && found["Facets added"] == 0 && found["Total disconnected facets"] == 0 {
		t.Errorf("a missing triangle is not found: %v", found)
	}
}

func TestOBJIsTheSameBody(t *testing.T) {
	b, _, _ := mount(t)
	var c Body
	for _, line := range strings.Split(string(written(t, func(w io.Writer) error { return OBJ(w, b) })), "\n") {
		var p space.Point
		var i, j, k int
		if n, _ := fmt.Sscanf(line, "v %f %f %f", &p.X, &p.Y, &p.Z); n == 3 {
			c.Points = append(c.Points, p)
		}
		if n, _ := fmt.Sscanf(line, "f %d %d %d", &i, &j, &k); n == 3 {
			c.Triangles = append(c.Triangles, [3]int{i - 1, j - 1, k - 1})
		}
	}
	if len(c.Points) != len(b.Points) || len(c.Triangles) != len(b.Triangles) || math.Abs(volume(c)-volume(b)) > 1e-6*volume(b) {
		t.Errorf("%d points, %d triangles, %.0f mm³; want %d, %d, %.0f", len(c.Points), len(c.Triangles), volume(c), len(b.Points), len(b.Triangles), volume(b))
	}
	if err := watertight(c); err != nil {
		t.Error(err)
	}
}

// Objects are told apart by their names, and each has the points that its triangles speak of.
func TestTwoBodiesInOneOBJ(t *testing.T) {
	p := plantest.Plan()
	bodies, err := Bodies(p)
	if err != nil || len(bodies) != 1 || bodies[0].Name != Mount {
		t.Fatalf("%d bodies: %v", len(bodies), err)
	}
	p.Skirt = &plan.Skirt{Heights: []float64{0, 20, 40}, Support: []plane.Ring{nil, nil, nil}}
	if bodies, err = Bodies(p); err != nil || len(bodies) != 1 {
		t.Fatalf("nothing under the skirt: %d bodies, %v", len(bodies), err)
	}
	p.Skirt.Support = []plane.Ring{nil, round(400), round(300)}
	if bodies, err = Bodies(p); err != nil || len(bodies) != 2 || bodies[1].Name != Skirt {
		t.Fatalf("%d bodies: %v", len(bodies), err)
	}
	text := string(written(t, func(w io.Writer) error { return OBJ(w, bodies...) }))
	_, skirt, found := strings.Cut(text, "\no "+Skirt+"\n")
	least, most := math.MaxInt, 0
	for _, line := range strings.Split(skirt, "\n") {
		var i, j, k int
		if n, _ := fmt.Sscanf(line, "f %d %d %d", &i, &j, &k); n == 3 {
			least, most = min(least, i, j, k), max(most, i, j, k)
		}
	}
	if first := len(bodies[0].Points); !found || least != first+1 || most != first+len(bodies[1].Points) {
		t.Errorf("the skirt's triangles speak of points %d to %d", least, most)
	}
	p.Skirt.Support[1] = round(10).Move(plane.Point{X: 50})
	if bodies, err = Bodies(p); err != nil || len(bodies) != 1 {
		t.Errorf("a support beside the axis: %d bodies, %v", len(bodies), err)
	}
}

func TestAnOutlineBesideTheAxisIsRefused(t *testing.T) {
	beside := round(10).Move(plane.Point{X: 50})
	if _, err := Of([]float64{0, 10}, []plane.Ring{round(10), beside}); err == nil || !strings.Contains(err.Error(), "10.0 mm above the floor") {
		t.Errorf("%v", err)
	}
	if _, err := Of([]float64{0, 10}, []plane.Ring{round(10), {{X: math.NaN()}, {X: 1}, {Y: 1}}}); err == nil {
		t.Error("an outline of no place is taken")
	}
}

func TestTheSameBytesTwice(t *testing.T) {
	b, _, _ := mount(t)
	for _, write := range []func(io.Writer) error{b.STL, func(w io.Writer) error { return OBJ(w, b, b) }} {
		if !bytes.Equal(written(t, write), written(t, write)) {
			t.Error("the same body gave other bytes the second time")
		}
	}
}

func BenchmarkSTL(b *testing.B) {
	p := plantest.Plan()
	for b.Loop() {
		body, err := Of(p.Surface.Heights, p.Surface.Built)
		if err != nil {
			b.Fatal(err)
		}
		if err := body.STL(io.Discard); err != nil {
			b.Fatal(err)
		}
	}
}
