package record

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"understructure/geometry/measure"
)

// The schema is written from the same tables that Decode uses: go test ./app/record -run Schema -update
var update = flag.Bool("update", false, "write record.schema.json anew")

func TestSchemaIsWrittenFromTheTables(t *testing.T) {
	want, err := json.MarshalIndent(whole(), "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	want = append(want, '\n')
	if *update {
		if err := os.WriteFile("record.schema.json", want, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if !bytes.Equal(Schema, want) {
		t.Error("record.schema.json differs from the tables; run the test with -update and read what changed")
	}
}

func compiled(t testing.TB) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("record.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("record.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func validate(s *jsonschema.Schema, text string) error {
	v, err := jsonschema.UnmarshalJSON(strings.NewReader(text))
	if err != nil {
		return err
	}
	return s.Validate(v)
}

func TestSchemaAdmitsEveryDemo(t *testing.T) {
	s := compiled(t)
	for name, text := range demos(t) {
		if err := validate(s, text); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if err := validate(s, encode(t, decode(t, text))); err != nil {
			t.Errorf("%s, written again: %v", name, err)
		}
	}
}

func TestSchemaRefusesWhatDecodeRefuses(t *testing.T) {
	s := compiled(t)
	for _, c := range hostile {
		if strings.Contains(c.want, "the key stands twice") || strings.Contains(c.want, "too large") {
			continue // beyond a schema
		}
		if validate(s, c.text) == nil {
			t.Errorf("the schema admits %s", short(c.text))
		}
	}
}

// At both ends of every range, in every unit, Decode and schema agree on what lies just inside and just outside.
func TestSchemaAndDecodeAgreeOnEveryRange(t *testing.T) {
	s := compiled(t)
	agree := func(word, frame string, limit Limit) {
		t.Helper()
		const step = 0.01 // of the unit
		for _, c := range []struct {
			v    float64
			want bool
		}{{limit.Least + step, true}, {limit.Most - step, true}, {limit.Least - step, false}, {limit.Most + step, false}} {
			text := strings.ReplaceAll(strings.ReplaceAll(frame, "UNIT", word), "VALUE", decimal(c.v, 6))
			for key, mm := range map[string]float64{"BUST": 850, "WAIST": 650, "BACK": 390, "SIX": 6} {
				text = strings.ReplaceAll(text, key, decimal(inUnit(mm, word), 6))
			}
			_, err := Decode(strings.NewReader(text))
			if (err == nil) != c.want {
				t.Errorf("Decode: %v\n%s", err, text)
			}
			if err := validate(s, text); (err == nil) != c.want {
				t.Errorf("schema: %v\n%s", err, text)
			}
		}
	}
	const base = `"bust_girth": BUST, "waist_girth": WAIST, "back_waist_length": BACK`
	for _, word := range Units {
		size := inUnit(1, word)
		scaled := func(l Limit) Limit { return Limit{l.Least * size, l.Most * size} }
		sheet := func(key string, table []measure.Measure) {
			for _, m := range table {
				limit := Limit{m.Min, m.Max}
				if !m.Degrees {
					limit = scaled(limit)
				}
				inside := fmt.Sprintf(`"%s": VALUE`, m.Key)
				bodice := base
				if key == "bodice" && strings.Contains(base, string(m.Key)) {
					bodice = replaceValue(base, string(m.Key))
				} else if key == "bodice" {
					bodice = base + ", " + inside
				}
				frame := `{"understructure": 1, "unit": "UNIT", "garment": {"bodice": {` + bodice + `}`
				if key != "bodice" {
					frame += `, "` + key + `": {` + inside + `}`
				}
				agree(word, frame+`}}`, limit)
				agree(word, strings.Replace(frame, "VALUE", "[VALUE, VALUE]", 1)+`}}`, limit)
			}
		}
		sheet("bodice", measure.Keys)
		sheet("skirt", measure.Skirt)
		sheet("sleeve", measure.Sleeve)
		for inside, limit := range map[string]Limit{
			`"ease": VALUE`: EaseLimit, `"ease": {"high hip": VALUE}`: EaseLimit, `"tape_error": VALUE`: TapeErrorLimit,
			`"height_error": VALUE`: HeightErrorLimit, `"cutting_error": VALUE`: CuttingErrorLimit, `"cover": {"spread": VALUE}`: SpreadLimit,
			`"wadding": {"thickness": VALUE}`: WaddingLimit, `"wadding": [{"thickness": SIX, "spread": VALUE}]`: SpreadLimit,
			`"wadding": {"thickness": SIX, "width": VALUE}`: RollLimit, `"cover": {"width": VALUE}`: RollLimit,
			`"planks": [{"thickness": VALUE, "length": BUST, "width": BUST}]`: PlankLimit, `"planks": [{"thickness": SIX, "length": VALUE, "width": BUST}]`: PlankSideLimit,
			`"offcuts": [{"thickness": VALUE, "length": BUST, "width": BUST}]`: PlankLimit, `"offcuts": [{"thickness": SIX, "length": BUST, "width": VALUE}]`: PlankSideLimit,
			`"printer": {"x": VALUE}`: RuleLimit, `"printer": {"y": VALUE}`: RuleLimit,
			`"cover": {"thickness": VALUE}`: CoverLimit, `"plank": {"thickness": VALUE}`: PlankLimit,
			`"plank": {"width": VALUE}`: PlankSideLimit, `"plank": {"length": VALUE}`: PlankSideLimit,
			`"plank": {"pole": VALUE}`: PoleLimit, `"paper": [VALUE, BUST]`: PaperWidthLimit, `"paper": [BUST, VALUE]`: PaperHeightLimit,
			`"skirt": {"stand_height": VALUE}`: StandLimit, `"skirt": {"floor_gap": VALUE}`: GapLimit, `"skirt": {"net_width": VALUE}`: NetWidthLimit,
			`"skirt": {"pad_thickness": VALUE}`: PadThicknessLimit, `"skirt": {"frame_length": VALUE}`: FrameLengthLimit,
			`"pads": {"shoulder": VALUE}`: PadLimit, `"pads": {"bust": VALUE}`: PadLimit, `"pads": {"hip": VALUE}`: PadLimit,
			`"shape": {"hip": {"height": VALUE}}`: ShapeHeightLimit, `"shape": {"bust": {"girth": VALUE}}`: ShapeGirthLimit, `"shape": {"waist": {"depth": VALUE}}`: ShapeAcrossLimit,
			`"shape": {"waist": {"breadth": VALUE}}`: ShapeAcrossLimit, `"shape": {"hip": {"front_arc": VALUE}}`: ShapeArcLimit, `"shape": {"hip": {"left_arc": VALUE}}`: ShapeArcLimit,
		} {
			agree(word, `{"understructure": 1, "unit": "UNIT", "garment": {"bodice": {`+base+`}}, "mount": {`+inside+`}}`, scaled(limit))
		}
		agree(word, `{"understructure": 1, "unit": "UNIT", "garment": {"bodice": {`+base+`}}, "mount": {"sleeves": {"bend_deg": VALUE}}}`, BendLimit)
		for _, key := range []string{"plank", "wadding", "cover", "calico", "net", "pole"} {
			agree(word, `{"understructure": 1, "unit": "UNIT", "garment": {"bodice": {`+base+`}}, "mount": {"prices": {"`+key+`": VALUE}}}`, PriceLimit)
		}
		for inside, limit := range map[string]Limit{
			`"fittings": [{"seen": [{"what": "limp", "by": VALUE}]}]`: SeenLimit, `"fittings": [{"seen": [{"what": "limp", "built": VALUE}]}]`: ShapeGirthLimit,
			`"photographs": [{"view": "back", "file": "a", "length": VALUE}]`: PhotographLimit, `"photographs": [{"view": "back", "file": "a", "at": [SIX, VALUE]}]`: PlaceLimit,
		} {
			agree(word, `{"understructure": 1, "unit": "UNIT", "garment": {"bodice": {`+base+`}}, `+inside+`}`, scaled(limit))
		}
	}
}

// replaceValue puts VALUE in the place of a key's value.
func replaceValue(base, key string) string {
	parts := strings.Split(base, ", ")
	for i, p := range parts {
		if strings.Contains(p, `"`+key+`"`) {
			parts[i] = `"` + key + `": VALUE`
		}
	}
	return strings.Join(parts, ", ")
}
