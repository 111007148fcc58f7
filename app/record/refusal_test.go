package record

import (
	"errors"
	"strings"
	"testing"
)

const three = `"bust_girth": 850, "waist_girth": 650, "back_waist_length": 390`

// garment is a record in millimetres with one garment.
func garment(inside string) string {
	return `{"understructure": 1, "unit": "mm", "garment": {` + inside + `}}`
}

// photograph is a record with one photograph of the front.
func photograph(inside string) string {
	return body(`"photographs": [{"view": "front", "file": "a.jpg", ` + inside + `}]`)
}

// hostile lists texts that are not records, with the whole refusal that each must get.
var hostile = []struct{ text, want string }{
	{``, `the file is not JSON at line 1, column 1: it ends too early`},
	{`{"understructure": 1`, `the file is not JSON at line 1, column 21: it ends too early`},
	{`[]`, `a list is not possible; allowed an object in braces`},
	{`null`, `null is not possible; allowed an object in braces`},
	{`{}`, `understructure: an absent number is not the version of a record that can be read; allowed 1`},
	{`{"understructure": 2, "unit": "mm"}`, `understructure: 2 is not the version of a record that can be read; allowed 1`},
	{`{"understructure": 1}`, `unit: must be given; allowed mm, cm, in`},
	{`{"understructure": 1, "unit": "ell"}`, `unit: "ell" is not possible; allowed mm, cm, in`},
	{`{"understructure": 1, "unit": null}`, `unit: null is not possible; allowed mm, cm, in`},
	{`{"understructure": 1, "unit": "mm"}`, `garment.bodice.bust_girth: must be given; allowed 300–1800 mm (30–180 cm)`},
	{garment(`"bodice": {`+three+`}`) + `{}`, `the file is not JSON at line 1, column 127: something follows the end of the record`},
	{garment(`"bodice": {"bust_girth": 850, "waist_girth": 70, "back_waist_length": 390}`), `garment.bodice.waist_girth: 70 mm is not possible; allowed 300–2000 mm (30–200 cm)`},
	{garment(`"bodice": {` + three + `, "hip_girth": "95 cm"}`), `garment.bodice.hip_girth: "95 cm" is not a number; allowed 300–2200 mm (30–220 cm)`},
	{garment(`"bodice": {` + three + `, "hip_girth": 1e308}`), `garment.bodice.hip_girth: 1e308 mm is not possible; allowed 300–2200 mm (30–220 cm)`},
	{garment(`"bodice": {` + three + `, "hip_girth": 1e999}`), `garment.bodice.hip_girth: 1e999 mm is not possible; allowed 300–2200 mm (30–220 cm)`},
	{garment(`"bodice": {` + three + `, "hip_girth": -950}`), `garment.bodice.hip_girth: -950 mm is not possible; allowed 300–2200 mm (30–220 cm)`},
	{garment(`"bodice": {` + three + `, "hip_girth": NaN}`), `the file is not JSON at line 1, column`},
	{garment(`"bodice": {` + three + `, "hip_girth": []}`), `garment.bodice.hip_girth: a list of 0 is not possible; allowed a number, or a list of 1–12`},
	{garment(`"bodice": {` + three + `, "hip_girth": [950, [950]]}`), `garment.bodice.hip_girth[1]: a list is not a number; allowed 300–2200 mm (30–220 cm)`},
	{garment(`"bodice": {` + three + `, "hip_girth": [950, null]}`), `garment.bodice.hip_girth[1]: null is not a number`},
	{garment(`"bodice": {` + three + `, "hip_girth": [950, 95]}`), `garment.bodice.hip_girth[1]: 95 mm is not possible; allowed 300–2200 mm (30–220 cm)`},
	{garment(`"bodice": {` + three + `, "hip_girth": [` + strings.Repeat("950, ", 12) + `950]}`), `garment.bodice.hip_girth: a list of 13 is not possible; allowed at most 12 readings`},
	{garment(`"bodice": {` + three + `, "shoulder_slope_deg": [20, 61]}`), `garment.bodice.shoulder_slope_deg[1]: 61 degrees is not possible; allowed 0–60 degrees`},
	{garment(`"bodice": {` + three + `, "hip_girth": true}`), `garment.bodice.hip_girth: true is not a number`},
	{garment(`"bodice": {` + three + `, "shoulder_slope_deg": 61}`), `garment.bodice.shoulder_slope_deg: 61 degrees is not possible; allowed 0–60 degrees`},
	{garment(`"bodice": {` + three + `, "waist_girth": 650}`), `garment.bodice.waist_girth: the key stands twice`},
	{garment(`"bodice": {` + three + `, "wasit_girth": 650}`), `garment.bodice.wasit_girth: the key is not known; allowed bust_girth underbust_girth`},
	{garment(`"bodice": {` + three + `}, "colour": "blue"`), `garment.colour: the key is not known; allowed strength mass_kg bodice skirt sleeve`},
	{garment(`"bodice": 5`), `garment.bodice: 5 is not possible; allowed an object in braces`},
	{garment(`"mass_kg": 2400, "bodice": {` + three + `}`), `garment.mass_kg: 2400 kg is not possible; allowed 0.01–50 kg`},
	{garment(`"strength": "brittle", "bodice": {` + three + `}`), `garment.strength: "brittle" is not possible; allowed sound, fair, weak`},
	{garment(`"skirt": {"hem_girth": 36}, "bodice": {` + three + `}`), `garment.skirt.hem_girth: 36 mm is not possible`},
	{garment(`"sleeve": {"length": 5600}, "bodice": {` + three + `}`), `garment.sleeve.length: 5600 mm is not possible`},
	{body(`"object": {"year": 1872.5}`), `object.year: 1872.5 is not possible; allowed a whole year, 1000–2100`},
	{body(`"object": {"year": "1872"}`), `object.year: "1872" is not a number; allowed 1000–2100`},
	{body(`"object": {"wearer": "lady"}`), `object.wearer: "lady" is not possible; allowed woman, man, child`},
	{body(`"object": {"title": "` + strings.Repeat("x", 501) + `"}`), `object.title: "` + strings.Repeat("x", 59) + `… is not possible; allowed text of at most 500 characters on one line`},
	{body(`"object": {"title": "a\u0000b"}`), `object.title: "a\u0000b" is not possible; allowed text of at most 500 characters on one line`},
	{body(`"object": {"title": 7}`), `object.title: 7 is not possible`},
	{body(`"taken": {"on": "2026-02-30"}`), `taken.on: "2026-02-30" is not possible; allowed a date as yyyy-mm-dd`},
	{body(`"taken": {"side": "left"}`), `taken.side: "left" is not possible; allowed inside, outside`},
	{body(`"mount": {"build": "padded"}`), `form: must be given where the build is padded`},
	{body(`"form": {"label": "Form 3"}`), `form.bodice.bust_girth: must be given`},
	{body(`"mount": {"ease": -1}`), `mount.ease: -1 mm is not possible; allowed 0–150 mm (0–15 cm)`},
	{body(`"mount": {"ease": {"knee": 10}}`), `mount.ease.knee: the key is not known; allowed neck base shoulder`},
	{body(`"mount": {"wadding": {}}`), `mount.wadding.thickness: must be given; allowed 0.5–50 mm (0.05–5 cm)`},
	{body(`"mount": {"wadding": [{"thickness": 6}, {"thickness": 600}]}`), `mount.wadding[1].thickness: 600 mm is not possible`},
	{body(`"mount": {"wadding": [` + strings.Repeat(`{"thickness": 6},`, 12) + `{"thickness": 6}]}`), `mount.wadding: a list of 13 is not possible; allowed at most 12 waddings`},
	{body(`"mount": {"wadding": {"thickness": 6, "width": 150}}`), `mount.wadding.width: 150 mm is not possible; allowed 300–6000 mm (30–600 cm)`},
	{body(`"mount": {"cover": {"width": 15000}}`), `mount.cover.width: 15000 mm is not possible; allowed 300–6000 mm (30–600 cm)`},
	{body(`"mount": {"planks": {"thickness": 50}}`), `mount.planks: an object is not possible; allowed a list`},
	{body(`"mount": {"planks": [{"thickness": 50, "length": 1200}]}`), `mount.planks[0].width: must be given; allowed 100–5000 mm (10–500 cm)`},
	{body(`"mount": {"planks": [{"thickness": 50, "length": 1200, "width": 600, "count": 0}]}`), `mount.planks[0].count: 0 is not possible; allowed 1–1000`},
	{body(`"mount": {"planks": [{"thickness": 50, "length": 1200, "width": 600, "count": 1.5}]}`), `mount.planks[0].count: 1.5 is not possible; allowed a whole number, 1–1000`},
	{body(`"mount": {"planks": [{"thickness": 50, "length": 1200, "width": 600, "price": -1}]}`), `mount.planks[0].price: -1 is not possible; allowed 0–1000000`},
	{body(`"mount": {"planks": [` + strings.Repeat(`{"thickness": 50, "length": 1200, "width": 600},`, 50) + `{}]}`), `mount.planks: a list of 51 is not possible; allowed at most 50 planks`},
	{body(`"mount": {"offcuts": [{"thickness": 50, "length": 12, "width": 600}]}`), `mount.offcuts[0].length: 12 mm is not possible; allowed 100–5000 mm (10–500 cm)`},
	{body(`"mount": {"offcuts": [null]}`), `mount.offcuts[0]: null is not possible; allowed an object in braces`},
	{body(`"mount": {"prices": {"currency": "euro"}}`), `mount.prices.currency: "euro" is not possible; allowed three capital letters, such as EUR`},
	{body(`"mount": {"prices": {"plank": "30 EUR"}}`), `mount.prices.plank: "30 EUR" is not a number; allowed 0–1000000`},
	{body(`"mount": {"prices": {"foam": 3}}`), `mount.prices.foam: the key is not known; allowed currency plank wadding cover calico net pole`},
	{body(`"mount": {"printer": {"x": 97.9}}`), `mount.printer.x: 97.9 mm is not possible; allowed 98–102 mm (9.8–10.2 cm); print at 100 %, not fitted to the page`},
	{body(`"mount": {"printer": {"z": 100}}`), `mount.printer.z: the key is not known; allowed x y`},
	{body(`"mount": {"paper": "A5"}`), `mount.paper: "A5" is not possible; allowed A4, A3`},
	{body(`"mount": {"paper": [210]}`), `mount.paper: a list of 1 is not possible; allowed [width, height] or a name`},
	{body(`"mount": {"paper": [210, 9000]}`), `mount.paper[1]: 9000 mm is not possible; allowed 160–5080 mm`},
	{body(`"mount": {"paper": [210, null]}`), `mount.paper[1]: null is not a number`},
	{body(`"mount": {"shape": 5}`), `mount.shape: 5 is not possible; allowed an object in braces`},
	{body(`"mount": {"shape": {"knee": {"girth": 500}}}`), `mount.shape.knee: the key is not known; allowed neck base shoulder`},
	{body(`"mount": {"shape": {"waist": 650}}`), `mount.shape.waist: 650 is not possible; allowed an object in braces`},
	{body(`"mount": {"shape": {"waist": {"width": 650}}}`), `mount.shape.waist.width: the key is not known; allowed height girth breadth depth front_arc left_arc`},
	{body(`"mount": {"shape": {"high hip": {"height": -601}}}`), `mount.shape.high hip.height: -601 mm is not possible; allowed -600–1000 mm (-60–100 cm)`},
	{body(`"mount": {"shape": {"waist": {"girth": 65}}}`), `mount.shape.waist.girth: 65 mm is not possible; allowed 100–2500 mm (10–250 cm)`},
	{body(`"mount": {"skirt": "hoops"}`), `mount.skirt: "hoops" is not possible; allowed an object in braces`},
	{body(`"mount": {"skirt": {"support": "cage"}}`), `mount.skirt.support: "cage" is not possible; allowed as dated, tube, legs, petticoat, hoops, net, bustle, bustle frame, none`},
	{body(`"mount": {"skirt": {"hold": "hem"}}`), `mount.skirt.hold: "hem" is not possible; allowed stand, silhouette`},
	{body(`"mount": {"skirt": {"cut": "bias"}}`), `mount.skirt.cut: "bias" is not possible; allowed gored, straight`},
	{body(`"mount": {"skirt": {"train": "long"}}`), `mount.skirt.train: "long" is not possible; allowed by length, level, floor`},
	{body(`"mount": {"skirt": {"stand_height": 100}}`), `mount.skirt.stand_height: 100 mm is not possible; allowed 150–1700 mm (15–170 cm)`},
	{body(`"mount": {"skirt": {"floor_gap": -1}}`), `mount.skirt.floor_gap: -1 mm is not possible; allowed 0–500 mm (0–50 cm)`},
	{body(`"mount": {"skirt": {"band_fastens": 1}}`), `mount.skirt.band_fastens: 1 is not possible; allowed true, false`},
	{body(`"mount": {"skirt": {"steels": 4.5}}`), `mount.skirt.steels: 4.5 is not possible; allowed a whole number, 1–40`},
	{body(`"mount": {"skirt": {"steels": 41}}`), `mount.skirt.steels: 41 is not possible; allowed 1–40`},
	{body(`"mount": {"skirt": {"steels": true}}`), `mount.skirt.steels: true is not a number; allowed 1–40`},
	{body(`"mount": {"skirt": {"hoops": 5}}`), `mount.skirt.hoops: the key is not known; allowed support hold stand_height`},
	{body(`"mount": {"sleeves": {"support": "glove"}}`), `mount.sleeves.support: "glove" is not possible; allowed as taken, arm, tube, puff, none`},
	{body(`"mount": {"sleeves": {"bend_deg": 31}}`), `mount.sleeves.bend_deg: 31 degrees is not possible; allowed 0–30 degrees`},
	{body(`"mount": {"pads": {"bust": "yes"}}`), `mount.pads.bust: "yes" is not a number; allowed 0–150 mm (0–15 cm)`},
	{body(`"mount": {"pads": {"hip": 151}}`), `mount.pads.hip: 151 mm is not possible; allowed 0–150 mm (0–15 cm)`},
	{body(`"mount": {"pads": {"fill": 5}}`), `mount.pads.fill: 5 is not possible; allowed true, false`},
	{body(`"mount": {"pads": {"knee": true}}`), `mount.pads.knee: the key is not known; allowed shoulder bust hip fill`},
	{body(`"fittings": {}`), `fittings: an object is not possible; allowed a list`},
	{body(`"fittings": [null]`), `fittings[0]: null is not possible; allowed an object in braces`},
	{body(`"fittings": [` + strings.Repeat("{}, ", 200) + `{}]`), `fittings: a list of 201 is not possible; allowed at most 200 fittings`},
	{body(`"fittings": [{"on": "2 March"}]`), `fittings[0].on: "2 March" is not possible; allowed a date as yyyy-mm-dd`},
	{body(`"fittings": [{"note": "a\tb"}]`), `fittings[0].note: "a\tb" is not possible; allowed text of at most 2000 characters`},
	{body(`"fittings": [{}, {"seen": [{}]}]`), `fittings[1].seen[0].what: must be given; allowed fails to meet, tight, slack`},
	{body(`"fittings": [{"seen": [{"what": "ugly"}]}]`), `fittings[0].seen[0].what: "ugly" is not possible; allowed fails to meet, tight, slack`},
	{body(`"fittings": [{"seen": [{"what": "tight", "by": 5}]}]`), `fittings[0].seen[0].level: must be given; allowed neck base, shoulder`},
	{body(`"fittings": [{"seen": [{"what": "slack", "level": ""}]}]`), `fittings[0].seen[0].level: must be given; allowed neck base, shoulder`},
	{body(`"fittings": [{"seen": [{"what": "tight", "level": "knee"}]}]`), `fittings[0].seen[0].level: "knee" is not possible; allowed neck base, shoulder`},
	{body(`"fittings": [{"seen": [{"what": "hem long", "level": "hip"}]}]`), `fittings[0].seen[0].level: "hip" is not possible for a hem; allowed no level`},
	{body(`"fittings": [{"seen": [{"what": "limp", "where": "top"}]}]`), `fittings[0].seen[0].where: "top" is not possible; allowed front, back, left, right`},
	{body(`"fittings": [{"seen": [{"what": "limp", "by": -1}]}]`), `fittings[0].seen[0].by: -1 mm is not possible; allowed 0–1000 mm (0–100 cm)`},
	{body(`"fittings": [{"seen": [` + strings.Repeat(`{"what": "limp"}, `, 50) + `{"what": "limp"}]}]`), `fittings[0].seen: a list of 51 is not possible; allowed at most 50 things seen`},
	{body(`"photographs": [{}]`), `photographs[0].view: must be given; allowed front, side, back`},
	{body(`"photographs": [{"view": "top", "file": "a.jpg"}]`), `photographs[0].view: "top" is not possible; allowed front, side, back`},
	{body(`"photographs": [{"view": "front"}]`), `photographs[0].file: must be given; allowed text of at most 1000 characters on one line`},
	{body(`"photographs": [{"view": "front", "file": ""}]`), `photographs[0].file: must be given; allowed text of at most 1000 characters on one line`},
	{body(`"photographs": [` + strings.Repeat(`{"view": "side", "file": "a.jpg"}, `, 12) + `{}]`), `photographs: a list of 13 is not possible; allowed at most 12 photographs`},
	{photograph(`"sha256": "abc"`), `photographs[0].sha256: "abc" is not possible; allowed 64 hexadecimal digits`},
	{photograph(`"low": [1]`), `photographs[0].low: a list is not possible; allowed a list of two numbers, each -100000–100000`},
	{photograph(`"high": [1, 1e6]`), `photographs[0].high[1]: 1e6 is not possible; allowed -100000–100000`},
	{photograph(`"at": [1, 10001]`), `photographs[0].at[1]: 10001 mm is not possible; allowed -10000–10000 mm`},
	{photograph(`"length": 0`), `photographs[0].length: 0 mm is not possible; allowed 1–10000 mm (0.1–1000 cm)`},
	{photograph(`"fade": 1.5`), `photographs[0].fade: 1.5 is not possible; allowed 0–1`},
	{photograph(`"trace": [[1, 2], 3]`), `photographs[0].trace[1]: 3 is not possible; allowed a list of two numbers`},
	{photograph(`"trace": [` + strings.Repeat("[1, 2], ", 2000) + `[1, 2]]`), `photographs[0].trace: a list of 2001 is not possible; allowed at most 2000 points`},
	{body(`"mount": ` + strings.Repeat("[", 100000)), `mount[0][0][0][0][0][0][0][0]: the file nests too deep for a record`},
	{body(`"mount": ` + strings.Repeat(`{"a":`, 100000)), `mount.a.a.a.a.a.a.a.a: the file nests too deep for a record`},
	{strings.Repeat(" ", 4<<20) + `{}`, `the file is too large for a record; allowed 4 MiB`},
	{"{\"understructure\": 1, \"unit\": \"\xff\"}", `the file is not text in UTF-8`},
	{"{\n  \"understructure\": 1,\n  oops\n}", `the file is not JSON at line 3, column 3: `},
	{`{"understructure": 1, "unit": "mm",}`, `the file is not JSON at line 1, column`},
	{`{5: 1}`, `the file is not JSON at line 1, column`},
}

func TestRefusals(t *testing.T) {
	for _, c := range hostile {
		_, err := Decode(strings.NewReader(c.text))
		var refusal *Refusal
		if !errors.As(err, &refusal) {
			t.Errorf("%s\ngot %v, want a refusal", short(c.text), err)
			continue
		}
		if !strings.HasPrefix(refusal.Error(), c.want) {
			t.Errorf("%s\ngot  %s\nwant %s", short(c.text), refusal, c.want)
		}
	}
}

func TestRefusalSpeaksTheUnitOfTheFile(t *testing.T) {
	_, err := Decode(strings.NewReader(`{"understructure": 1, "unit": "in", "garment": {"bodice": {"bust_girth": 340}}}`))
	const want = "garment.bodice.bust_girth: 340 in is not possible; allowed 11.81–70.87 in (300–1800 mm)"
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}
