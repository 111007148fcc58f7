package folder

import (
	"bytes"
	"errors"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/peterstace/simplefeatures/geom"

	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/plan"
	"understructure/patterns/sheet"
	"understructure/patterns/vector"
)

// The pages of every demonstration, on its own paper and on the least, as another library of plane geometry sees them
// (simplefeatures, P. Stace): what they show of two pieces keeps a knife's gap between, no words stand on another's cloth,
// every piece has one template, and the tiles of a piece are the piece.
func TestPagesOfTheDemonstrations(t *testing.T) {
	demos, _ := filepath.Glob("../../assets/demo-*.json")
	if len(demos) < 4 {
		t.Fatal(demos)
	}
	for _, path := range demos {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".json"), func(t *testing.T) {
			t.Parallel()
			r, err := record.Load(path)
			if err != nil {
				t.Fatal(err)
			}
			p, err := pipeline.Run(t.Context(), r, nil)
			if err != nil {
				t.Fatal(err)
			}
			a4, _ := sheet.Named("A4")
			var pages []sheet.Page
			for _, paper := range []plan.Paper{p.Paper, a4} {
				p.Paper = paper
				if pages, err = Pages(t.Context(), p, nil); err != nil {
					t.Fatal(err)
				}
				keptApart(t, pages)
				complete(t, p, pages)
			}
			sameBytes(t, p, pages)
		})
	}
}

// keptApart looks at every two things on every page.
func keptApart(t *testing.T, pages []sheet.Page) {
	t.Helper()
	const gap = 6 - 1e-3
	for n, pg := range pages {
		if len(pg.Items) == 0 && len(pg.Panels) == 0 {
			t.Errorf("page %d of %s is empty", n+1, pg.Title.Object)
		}
		shown := make([]geom.Geometry, len(pg.Items))
		for i, it := range pg.Items {
			shown[i] = cut(t, it, it.Clip)
			if shown[i].IsEmpty() {
				t.Errorf("page %d: nothing is shown of %s", n+1, it.Name())
			}
			for k, other := range pg.Items[:i] {
				if d := between(shown[i], shown[k], gap); d < gap {
					t.Errorf("page %d: %s lies %.3f mm from %s, want 6", n+1, it.Name(), d, other.Name())
				}
			}
		}
		for i, it := range pg.Items {
			for k, other := range pg.Items {
				for _, w := range it.Label.Words {
					if k != i && between(polygon(onPage(it, w.Corners())), shown[k], 0.1) < 0.1 {
						t.Errorf("page %d: %q of %s stands on %s", n+1, w.Text, it.Name(), other.Name())
					}
				}
			}
		}
	}
}

// between is the distance of two shapes; where the boxes round them are farther apart than far, that of the boxes.
func between(a, b geom.Geometry, far float64) float64 {
	if d, ok := a.Envelope().Distance(b.Envelope()); !ok || d > far {
		return math.Max(d, far)
	}
	d, _ := geom.Distance(a, b)
	return d
}

// complete sums up what the pages show, from seam to seam.
func complete(t *testing.T, p plan.Plan, pages []sheet.Page) {
	t.Helper()
	area, edge, templates := map[string]float64{}, map[string]float64{}, map[string]int{}
	for _, pg := range pages {
		for _, it := range pg.Items {
			core := it.Clip
			if it.Tile != nil {
				core = it.Tile.Core
			}
			if it.Tile == nil || area[it.Piece.ID] == 0 {
				templates[it.Piece.ID]++
				templates[it.Twin]++
			}
			area[it.Piece.ID] += cut(t, it, core).Area()
			for _, run := range core.Cut(onPage(it, it.Piece.CutLine()), true) {
				for k := 1; k < len(run); k++ {
					edge[it.Piece.ID] += run[k].Dist(run[k-1])
				}
			}
		}
	}
	for _, pc := range p.Pieces {
		if templates[pc.ID] != 1 {
			t.Errorf("%s has %d templates", pc.ID, templates[pc.ID])
		}
		line := pc.CutLine()
		if got, ok := edge[pc.ID]; ok && (math.Abs(got-line.Perimeter()) > 1e-6 || math.Abs(area[pc.ID]-line.Area()) > 1e-3) {
			t.Errorf("%s on %s: %.6f of %.6f mm round it, %.4f of %.4f mm²", pc.ID, p.Paper.Name, got, line.Perimeter(), area[pc.ID], line.Area())
		}
	}
}

// sameBytes lays the plan once more.
func sameBytes(t *testing.T, p plan.Plan, pages []sheet.Page) {
	t.Helper()
	again, err := Pages(t.Context(), p, nil)
	if err != nil {
		t.Fatal(err)
	}
	var one, two bytes.Buffer
	if err := errors.Join(vector.PDF(&one, pages, meta(p, "templates")), vector.PDF(&two, again, meta(p, "templates"))); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(one.Bytes(), two.Bytes()) {
		t.Error("the templates of one plan differ")
	}
}

// cut is the part of an item's cloth that lies in a box of its page.
func cut(t *testing.T, it sheet.Item, box drawing.Box) geom.Geometry {
	t.Helper()
	g, err := geom.Intersection(polygon(onPage(it, it.Piece.CutLine())), polygon(box.Corners()))
	if err != nil {
		t.Fatalf("%s: %v", it.Name(), err)
	}
	return g
}

func onPage(it sheet.Item, r []plane.Point) plane.Ring { return plane.Ring(r).Map(it.OnPage) }

func polygon(r plane.Ring) geom.Geometry {
	var xy []float64
	for k := range len(r) + 1 {
		xy = append(xy, r[k%len(r)].X, r[k%len(r)].Y)
	}
	return geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))}).AsGeometry()
}
