package folder

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"understructure/geometry/plane"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
	"understructure/patterns/plantest"
	"understructure/patterns/vector"
)

func small() plan.Plan {
	square := plane.Ring{{X: 0, Y: 0}, {X: 60, Y: 0}, {X: 60, Y: 60}, {X: 0, Y: 60}}
	around := square.Move(plane.Point{X: -30, Y: -30})
	return plan.Plan{
		Understructure: plan.Version, Build: "padded", Object: plan.Object{Number: "1 \\ \"2\" {", Wearer: "woman"},
		Paper:   plan.Paper{Name: "A4", Width: 210, Height: 297},
		Surface: plan.Surface{Heights: []float64{0, 10}, Target: []plane.Ring{square, nil}, Built: []plane.Ring{around, around}},
		Pieces:  []piece.Piece{{ID: "W01-front", Name: "layer 1 of 1", Material: "wadding 6 mm", Count: 1, Layer: 1, Outline: square}},
		Taken:   map[string]plan.Value{"garment.bodice.bust_girth": {Value: 840}, "garment.bodice.waist_girth": {Value: 620}, "garment.bodice.back_waist_length": {Value: 380}},
	}
}

func TestWriteMakesEveryFileTheSameEveryTime(t *testing.T) {
	one, two := t.TempDir(), t.TempDir()
	for _, dir := range []string{one, two} {
		if err := Write(context.Background(), dir, small(), func(float64) {}); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"plan.json", "templates.pdf", "record.pdf", "materials.csv", "storage.pdf", "condition.pdf", "svg/W01-front.svg", "dxf/W01-front.dxf", "mount.stl", "mount.obj", manifest} {
		a, errA := os.ReadFile(filepath.Join(one, name))
		b, errB := os.ReadFile(filepath.Join(two, name))
		if errA != nil || errB != nil || len(a) == 0 || !bytes.Equal(a, b) {
			t.Errorf("%s: %v, %v, %d and %d bytes", name, errA, errB, len(a), len(b))
		}
	}
}

// What is printed is what is written, page by page.
func TestTemplatesAreThePages(t *testing.T) {
	p := plantest.Plan()
	pages, err := Pages(context.Background(), p, nil)
	if err != nil {
		t.Fatal(err)
	}
	var alone, all bytes.Buffer
	if err := errors.Join(Templates(context.Background(), &alone, p, pages), vector.PDF(&all, pages, meta(p, "templates"))); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(alone.Bytes(), all.Bytes()) {
		t.Error("the PDF to print is not the PDF of the pages")
	}
	if n := bytes.Count(alone.Bytes(), []byte("/Type /Page\n")); n != len(pages) {
		t.Errorf("%d pages in the PDF, want %d", n, len(pages))
	}
}

func TestPagesAndTemplatesCanBeCalledOff(t *testing.T) {
	p := plantest.Plan()
	pages, err := Pages(context.Background(), p, nil)
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Pages(ctx, p, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("pages: %v", err)
	}
	if err := Templates(ctx, io.Discard, p, pages); !errors.Is(err, context.Canceled) {
		t.Errorf("templates: %v", err)
	}
}

func TestHostileIDs(t *testing.T) {
	for _, id := range []string{"", "..", "../x", "a/b", `a\b`, "a b", ".hidden", "C:x", "x\n", strings.Repeat("x", 101)} {
		p := small()
		p.Pieces[0].ID = id
		if err := Write(context.Background(), t.TempDir(), p, func(float64) {}); err == nil {
			t.Errorf("%q is written", id)
		}
	}
}

func TestReadableIsTheSameJSON(t *testing.T) {
	var b bytes.Buffer
	if err := readable(&b, small()); err != nil {
		t.Fatal(err)
	}
	var got plan.Plan
	if err := json.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(got, small()) {
		t.Errorf("read back as %+v", got)
	}
	if want := "\n   [[0,0],[60,0],[60,60],[0,60]],\n   null\n  ]"; !strings.Contains(b.String(), want) {
		t.Errorf("no outline on a line of its own:\n%s", b.String())
	}
}
