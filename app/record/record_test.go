package record

import (
	"bytes"
	"errors"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"understructure/assets"
	"understructure/geometry/measure"
)

// demos returns the text of every demonstration record and published dress, by name.
func demos(t testing.TB) map[string]string {
	t.Helper()
	texts := map[string]string{}
	for _, fsys := range []fs.FS{assets.Demos, os.DirFS("../../testdata/published")} {
		names, err := fs.Glob(fsys, "*.json")
		if err != nil || len(names) == 0 {
			t.Fatal(names, err)
		}
		for _, name := range names {
			b, err := fs.ReadFile(fsys, name)
			if err != nil {
				t.Fatal(err)
			}
			texts[name] = string(b)
		}
	}
	return texts
}

func decode(t testing.TB, text string) Record {
	t.Helper()
	r, err := Decode(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func encode(t testing.TB, r Record) string {
	t.Helper()
	var b bytes.Buffer
	if err := Encode(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestDemosAreWrittenAsTheyWereRead(t *testing.T) {
	for name, text := range demos(t) {
		r := decode(t, text)
		again := encode(t, r)
		if got := decode(t, again); !reflect.DeepEqual(got, r) {
			t.Errorf("%s: read back as\n%+v\nwas\n%+v", name, got, r)
		}
		if name == assets.First && again != text {
			t.Errorf("%s is written as\n%s", name, again)
		}
	}
}

func TestDemosAreMarkedAndWithoutContradiction(t *testing.T) {
	names, _ := fs.Glob(assets.Demos, "*.json")
	for _, name := range names {
		b, _ := fs.ReadFile(assets.Demos, name)
		r := decode(t, string(b))
		if r.Object.Notice != "invented for demonstration" {
			t.Errorf("%s is not marked as invented", name)
		}
		n := measure.Check(r.Garment.Bodice, r.Object.Wearer)
		n = append(n, measure.CheckSkirt(r.Garment.Bodice, r.Garment.Skirt)...)
		n = append(n, measure.CheckSleeve(r.Garment.Sleeve)...)
		if r.Form != nil {
			n = append(n, measure.Check(r.Form.Bodice, r.Object.Wearer)...)
			for k, v := range r.Form.Bodice {
				if m, _ := measure.Find(measure.Keys, k); m.Group == "girths" && v >= r.Garment.Bodice[k] {
					t.Errorf("%s: the form's %s is not smaller than the garment's", name, k)
				}
			}
		}
		if n != nil {
			t.Errorf("%s: %+v", name, n)
		}
	}
}

func TestThreeValuesAreARecord(t *testing.T) {
	r := decode(t, `{"understructure": 1, "unit": "in", "garment": {"bodice": {"bust_girth": 34.5, "waist_girth": 26, "back_waist_length": 15.25, "hip_girth": null}}}`)
	want := Record{
		Unit: "in", Object: Object{Wearer: measure.Woman}, Mount: Mount{Build: "slices"},
		Garment: Garment{Bodice: measure.Sheet{measure.BustGirth: 876.3, measure.WaistGirth: 660.4, measure.BackWaist: 387.35}},
	}
	if !reflect.DeepEqual(r, want) {
		t.Errorf("got %+v\nwant %+v", r, want)
	}
}

func TestBuildFollowsTheForm(t *testing.T) {
	r := decode(t, body(`"form": {"bodice": {"bust_girth": 700, "waist_girth": 550, "back_waist_length": 380}}`))
	if r.Mount.Build != "padded" {
		t.Errorf("build %q", r.Mount.Build)
	}
}

func TestSaveAndLoad(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dress.json")
	r := decode(t, demos(t)[assets.First])
	if err := Save(path, r); err != nil {
		t.Fatal(err)
	}
	if got, err := Load(path); err != nil || !reflect.DeepEqual(got, r) {
		t.Errorf("loaded %+v, %v", got, err)
	}
	r.Object.Title = "two\nlines"
	var refusal *Refusal
	if err := Save(path, r); !errors.As(err, &refusal) || refusal.Path != "object.title" {
		t.Errorf("saving what cannot be read back: %v", err)
	}
	if got, err := Load(path); err != nil || got.Object.Title == r.Object.Title {
		t.Errorf("the file on disk has changed: %v", err)
	}
	if names, _ := os.ReadDir(filepath.Dir(path)); len(names) != 1 {
		t.Errorf("left behind: %v", names)
	}
	if _, err := Load(path + "x"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("loading what is not there: %v", err)
	}
}

func TestADraftMayLackWhatAMountNeeds(t *testing.T) {
	path := filepath.Join(t.TempDir(), "draft.json")
	draft := Record{Unit: "cm", Object: Object{Wearer: measure.Man}, Mount: Mount{Build: "padded"}, Garment: Garment{Bodice: measure.Sheet{measure.HipGirth: 950}}}
	var refusal *Refusal
	if err := Save(path, draft); !errors.As(err, &refusal) {
		t.Errorf("saving what is not whole: %v", err)
	}
	if err := SaveDraft(path, draft); err != nil {
		t.Fatal(err)
	}
	if got, err := LoadDraft(path); err != nil || !reflect.DeepEqual(got, draft) {
		t.Errorf("loaded %+v, %v", got, err)
	}
	if _, err := Load(path); !errors.As(err, &refusal) || refusal.Path != "garment.bodice.bust_girth" {
		t.Errorf("loading a draft as a record: %v", err)
	}
	draft.Garment.Bodice[measure.HipGirth] = 95
	if err := SaveDraft(path, draft); !errors.As(err, &refusal) || refusal.Path != "garment.bodice.hip_girth" {
		t.Errorf("a draft must be possible as far as it goes: %v", err)
	}
}

// A person's value comes back as it was typed, in any unit, to a hundredth of a millimetre and finer.
func TestUnitsDoNotDrift(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	for range 3000 {
		word := Units[r.IntN(3)]
		typed := decimal(inUnit(400+r.Float64()*800, word), 4)
		text := `{"understructure": 1, "unit": "` + word + `", "garment": {"bodice": {"bust_girth": ` + typed +
			`, "waist_girth": ` + typed + `, "back_waist_length": ` + decimal(inUnit(380, word), 4) + `}}}`
		if again := encode(t, decode(t, text)); !strings.Contains(again, `"bust_girth": `+typed+",") {
			t.Fatalf("%s %s is written as\n%s", typed, word, again)
		}
	}
}

func TestStocked(t *testing.T) {
	s, filled := Mount{}.Stocked("")
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"waist ease", s.Ease[measure.Waist], 15}, {"bust ease", s.Ease[measure.Bust], 30}, {"tape error", s.TapeError, 3},
		{"wadding", s.Wadding[0].Thickness, 6}, {"spread", s.Wadding[0].Spread, 1}, {"cover", s.Cover, 1},
		{"height error", s.HeightError, 2}, {"cutting error", s.CuttingError, 1}, {"cover spread", s.CoverSpread, 1. / 6},
		{"wadding width", s.Wadding[0].Width, 1500}, {"cover width", s.CoverWidth, 1500}, {"printer", s.Paper.ScaleX + s.Paper.ScaleY, 0},
		{"plank", s.Plank.Thickness, 50}, {"pole", s.Plank.Pole, 32}, {"paper", s.Paper.Height, 297},
	} {
		if c.got != c.want {
			t.Errorf("%s is %g, want %g", c.name, c.got, c.want)
		}
	}
	if len(filled) != 1+len(measure.Levels)+1+3+2+4+2+3 {
		t.Errorf("%d defaults noted: %v", len(filled), filled)
	}
	for path, v := range filled {
		if v.Source == "" || v.Text == "" && v.Value <= 0 {
			t.Errorf("%s: %+v", path, v)
		}
	}
	if _, ok := filled["mount.ease.high hip"]; !ok {
		t.Error("the ease at the high hip is not noted")
	}
}

func TestWhatIsChosenIsNotStocked(t *testing.T) {
	m := decode(t, body(`"mount": {"ease": {"waist": 8}, "tape_error": 2, "wadding": [{"thickness": 3}, {"thickness": 12, "spread": 1.5, "width": 2000}],
		"cover": {"thickness": 0}, "plank": {"thickness": 25, "length": 2000, "width": 1000, "pole": 0}, "step": "bevel", "paper": [300, 400]}`)).Mount
	s, filled := m.Stocked("weak")
	if s.Ease[measure.Waist] != 8 || s.Ease[measure.Bust] != 40 || s.Cover != 0 || s.Plank.Pole != 0 || s.Step != "bevel" {
		t.Errorf("%+v", s)
	}
	if s.Wadding[0] != (Layer{3, 0.5, 1500}) || s.Wadding[1] != (Layer{12, 1.5, 2000}) || s.Paper.Width != 300 || s.Paper.Roll {
		t.Errorf("%+v", s)
	}
	if len(filled) != len(measure.Levels)-1+1+2+1 {
		t.Errorf("noted: %v", filled)
	}
}

// What a maker knows of the errors stays in the record, and takes the place of what is usual.
func TestErrorsOfTheMountAreKept(t *testing.T) {
	r := decode(t, body(`"mount": {"tape_error": 2, "height_error": 5, "cutting_error": 0.5, "cover": {"thickness": 1.5, "spread": 0.4}}`))
	s, filled := decode(t, encode(t, r)).Mount.Stocked("fair")
	if s.TapeError != 2 || s.HeightError != 5 || s.CuttingError != 0.5 || s.Cover != 1.5 || s.CoverSpread != 0.4 {
		t.Errorf("%+v", s)
	}
	for path := range filled {
		if strings.Contains(path, "error") || strings.Contains(path, "cover") && !strings.Contains(path, "width") {
			t.Errorf("%s was given, yet filled in", path)
		}
	}
}

func TestEveryPaperHasASize(t *testing.T) {
	for _, name := range Papers {
		s, _ := Mount{Paper: Paper{Name: name}}.Stocked("fair")
		if s.Paper.Name != name || s.Paper.Width < 200 || s.Paper.Height < s.Paper.Width || s.Paper.Height > PaperHeightLimit.Most {
			t.Errorf("%s: %+v", name, s.Paper)
		}
	}
}

// body is a record in millimetres with the three required values and whatever else is given.
func body(more string) string {
	return `{"understructure": 1, "unit": "mm", "garment": {"bodice": {"bust_girth": 850, "waist_girth": 650, "back_waist_length": 390}}, ` + more + `}`
}
