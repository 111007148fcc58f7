package plan

import (
	"bytes"
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"understructure/geometry/plane"
	"understructure/geometry/space"
	"understructure/patterns/piece"
)

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("plan.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("plan.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func validate(t *testing.T, p Plan) error {
	t.Helper()
	b, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	return compiled(t).Validate(v)
}

// full has a value in every kind of place.
func full() Plan {
	n, mass := 850.0, 2.4
	chance := 0.004
	square := plane.Ring{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 100, Y: 100}, {X: 0, Y: 100}}
	return Plan{
		Understructure: Version, Object: Object{Number: "1", Year: 1872, Wearer: "woman", Notice: "invented", Strength: "fair", MassKg: &mass}, Build: "padded",
		Levels:  []Level{{Name: "bust", Height: 1300, GarmentGirth: &n, StrainChance: &chance, EaseForOnePercent: &n, Section: square}, {Name: "shoulder"}},
		Doubt:   Doubt{ChanceAnywhere: 0.01, EaseForAll: 31, Remeasure: []Remeasure{{Key: "garment.bodice.bust_girth", Taken: true, Share: 0.4, ChanceAfter: 0.006}}},
		Surface: Surface{Heights: []float64{1000, 1010}, Form: []plane.Ring{square, nil}, Target: []plane.Ring{square, nil}, Built: []plane.Ring{square, nil}},
		Pieces: []piece.Piece{{
			ID: "W01-front", Count: 1, Layer: 1, Outline: square, Holes: []plane.Ring{square.Reverse()},
			Position: []space.Point{{X: 1, Y: 2, Z: 3}},
			Marks:    []piece.Mark{{Kind: piece.Up, Points: square[:2]}}, Seams: []piece.Seam{{To: "W01-back", Kind: "butt", Length: 100, Points: square[:2]}},
		}},
		AsBuilt:  &AsBuilt{Heights: []float64{1000}, Girths: []float64{620}, Objections: []Objection{{"W01-front", "Too long."}}},
		Warnings: []Warning{{Code: "form-too-big", Level: "bust", Amount: 3, Message: "Too big."}},
		Taken:    map[string]Value{"garment.bodice.bust_girth": {Value: 850, Source: "taken"}},
		Stock:    map[string]Value{"mount.paper": {Text: "A4", Source: "habit"}},
		Stages:   []Stage{{Kind: FormStage, Number: 1, Name: "form", Outlines: []plane.Ring{square, nil}}},
		Layers:   []Layer{{Number: 1}}, Lengths: []Length{{Key: "back_waist_length"}}, Materials: []Material{{Name: "wadding", WithWaste: &n, MassKg: 0.4, Cost: &n, Currency: "EUR", Asks: "washed"}},
		Layouts: []Layout{{Kind: OnPlank, Stock: "plank", Length: 1200, Width: 600, Utilisation: 0.8, Waste: 1, Rest: &Rest{Length: 200, Width: 600},
			Places: []Place{{Piece: "W01-front", Copy: 1, Turn: 90, Move: square[2]}, {Piece: "band", Copy: 1, Outline: square}}}},
		Volumes: map[string]Volume{"wadding": {Space: 1, Pieces: 1}},
		Skirt:   fullSkirt(&n, square), Cuts: []Cut{{Part: "skirt", Name: "hem steel", Material: "steel", Length: 1900, Width: 4.8, Count: 1}}, Cautions: []string{"Tip the ends."},
		Sleeves: &Sleeves{Support: "arm", Elbow: &n, Places: []SleevePlace{{At: -100, Garment: 300, Passage: 290, Support: &n}, {}}, Frills: []Frill{{At: 10}}},
	}
}

func fullSkirt(n *float64, ring plane.Ring) *Skirt {
	return &Skirt{
		Hold: "stand", Heights: []float64{10, 30}, Garment: []plane.Ring{ring, ring}, Support: []plane.Ring{nil, ring},
		Girths: []SkirtGirth{{Garment: n, Fullness: n, Gather: n}, {}}, Falls: []Fall{{Name: "front", Length: 1010}}, Hem: Hem{Girth: n, Outline: ring},
		Silhouette: Silhouette{Front: "cone", Side: "dome", Back: "shelf"}, Comparison: []Likeness{{By: "both"}},
		Practices: []Practice{{Finding: "agrees"}}, Hoops: []Hoop{{Steel: true}}, Supports: []string{"tube"},
	}
}

func TestSchemaAdmitsAPlan(t *testing.T) {
	if err := validate(t, full()); err != nil {
		t.Error(err)
	}
	if err := validate(t, Plan{Understructure: Version, Build: "slices"}); err != nil {
		t.Errorf("a plan without anything in it: %v", err)
	}
}

func TestSchemaRefuses(t *testing.T) {
	for name, change := range map[string]func(*Plan){
		"another version":               func(p *Plan) { p.Understructure = 2 },
		"another build":                 func(p *Plan) { p.Build = "knitted" },
		"a chance above one":            func(p *Plan) { *p.Levels[0].StrainChance = 1.5 },
		"a chance anywhere above one":   func(p *Plan) { p.Doubt.ChanceAnywhere = 1.2 },
		"a share below nothing":         func(p *Plan) { p.Doubt.Remeasure[0].Share = -0.1 },
		"nothing to measure again":      func(p *Plan) { p.Doubt.Remeasure[0].Key = "" },
		"a level with no such name":     func(p *Plan) { p.Levels[0].Name = "knee" },
		"a name that leaves the folder": func(p *Plan) { p.Pieces[0].ID = "../x" },
		"no piece to cut":               func(p *Plan) { p.Pieces[0].Count = 0 },
		"a stage of no kind":            func(p *Plan) { p.Stages[0].Kind = "knitting" },
		"a skirt that holds nothing":    func(p *Plan) { p.Skirt.Hold = "" },
		"a shape of no name":            func(p *Plan) { p.Skirt.Silhouette.Back = "balloon" },
		"sleeves held by nothing known": func(p *Plan) { p.Sleeves.Support = "glove" },
		"nothing to cut":                func(p *Plan) { p.Cuts[0].Count = 0 },
		"a plank of no kind":            func(p *Plan) { p.Layouts[0].Kind = "sheet" },
		"nothing on a plank":            func(p *Plan) { p.Layouts[0].Places = nil },
		"more pieces than plank":        func(p *Plan) { p.Layouts[0].Utilisation = 1.1 },
		"a copy before the first":       func(p *Plan) { p.Layouts[0].Places[0].Copy = 0 },
		"a currency in words":           func(p *Plan) { p.Materials[0].Currency = "euro" },
		"a mark of no kind":             func(p *Plan) { p.Pieces[0].Marks[0].Kind = "" },
	} {
		p := full()
		change(&p)
		if validate(t, p) == nil {
			t.Errorf("%s is admitted", name)
		}
	}
}

// Every key of the Go types stands in the schema, and the other way round.
func TestSchemaHasTheKeysOfThePlan(t *testing.T) {
	var s struct {
		Properties map[string]any `json:"properties"`
		Defs       map[string]struct {
			Properties map[string]any `json:"properties"`
		} `json:"$defs"`
	}
	if err := json.Unmarshal(Schema, &s); err != nil {
		t.Fatal(err)
	}
	for name, v := range map[string]any{
		"": Plan{}, "object": Object{}, "measured": Measured{}, "level": Level{}, "doubt": Doubt{}, "remeasure": Remeasure{}, "surface": Surface{}, "warning": Warning{},
		"value": Value{}, "layer": Layer{}, "stage": Stage{}, "length": Length{}, "volume": Volume{}, "standing": Standing{}, "material": Material{},
		"paper": Paper{}, "layout": Layout{}, "place": Place{}, "rest": Rest{}, "piece": piece.Piece{}, "mark": piece.Mark{}, "seam": piece.Seam{},
		"skirt": Skirt{}, "skirt_girth": SkirtGirth{}, "fall": Fall{}, "hem": Hem{}, "silhouette": Silhouette{}, "likeness": Likeness{}, "practice": Practice{},
		"hoop": Hoop{}, "sleeves": Sleeves{}, "sleeve_place": SleevePlace{}, "frill": Frill{}, "cut": Cut{},
	} {
		properties := s.Properties
		if name != "" {
			properties = s.Defs[name].Properties
		}
		var inSchema []string
		for key := range properties {
			inSchema = append(inSchema, key)
		}
		slices.Sort(inSchema)
		if inGo := keys(reflect.TypeOf(v)); !slices.Equal(inSchema, inGo) {
			t.Errorf("%q: the schema has %v, the type %v", name, inSchema, inGo)
		}
	}
}

func keys(t reflect.Type) []string {
	var all []string
	for f := range t.NumField() {
		key, _, _ := strings.Cut(t.Field(f).Tag.Get("json"), ",")
		all = append(all, key)
	}
	slices.Sort(all)
	return all
}
