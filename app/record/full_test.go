package record

import (
	"bytes"
	"errors"
	"reflect"
	"strings"
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
)

// full is a record in inches that says something of everything, as Encode writes it. All of it is invented.
const full = `{
  "understructure": 1,
  "unit": "in",
  "object": {
    "wearer": "woman"
  },
  "garment": {
    "bodice": {
      "bust_girth": [34.5, 34.25, 34.375],
      "waist_girth": 26,
      "shoulder_slope_deg": [21, 24],
      "back_waist_length": 15.25
    },
    "skirt": {
      "waist_girth": [26.5, 26.25]
    },
    "sleeve": {
      "length": [22, 22.125]
    }
  },
  "form": {
    "label": "",
    "bodice": {
      "bust_girth": [31, 31.5],
      "waist_girth": 23,
      "back_waist_length": 15
    }
  },
  "mount": {
    "build": "padded",
    "shape": {
      "bust": {
        "height": 7.5,
        "girth": 33,
        "breadth": 10,
        "depth": 9.125,
        "front_arc": 17,
        "left_arc": 16.5
      },
      "hip": {
        "height": -7
      }
    },
    "wadding": {
      "thickness": 0.25,
      "width": 60
    },
    "cover": {
      "width": 54,
      "nap": true
    },
    "plank": {
      "thickness": 2
    },
    "planks": [{
      "thickness": 2,
      "length": 96,
      "width": 48,
      "count": 2,
      "price": 48.5
    }, {
      "thickness": 1,
      "length": 48,
      "width": 24
    }],
    "offcuts": [{
      "thickness": 2,
      "length": 20,
      "width": 15.5
    }],
    "prices": {
      "currency": "EUR",
      "plank": 30,
      "wadding": 4.25,
      "cover": 0,
      "calico": 3,
      "net": 2.5,
      "pole": 6
    },
    "skirt": {
      "support": "hoops",
      "hold": "silhouette",
      "stand_height": 40.5,
      "floor_gap": 0.5,
      "cut": "straight",
      "train": "floor",
      "band_fastens": false,
      "steels": 4,
      "net_width": 54,
      "pad_thickness": 2,
      "frame_length": 28
    },
    "sleeves": {
      "support": "arm",
      "bend_deg": 15
    },
    "pads": {
      "shoulder": true,
      "bust": 0.75,
      "hip": 1,
      "fill": true
    },
    "paper": "A3",
    "printer": {
      "x": 3.92,
      "y": 3.945
    }
  },
  "fittings": [{
    "on": "2026-03-02",
    "by": "A. N. Other",
    "note": "first trial\nwith the toile",
    "seen": [{
      "what": "fails to meet",
      "level": "waist",
      "where": "back",
      "by": 0.75,
      "built": 25.5
    }, {
      "what": "hem long"
    }]
  }, {}],
  "photographs": [{
    "view": "side",
    "file": "photographs/side.jpg",
    "sha256": "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef",
    "low": [812.5, 2904],
    "high": [820, 310.25],
    "length": 60,
    "at": [-2.5, 1],
    "fade": 0.4,
    "trace": [[1, 2.5], [3, -4]]
  }]
}
`

func TestTheFullRecordIsWrittenAsItWasRead(t *testing.T) {
	r := decode(t, full)
	if got := encode(t, r); got != full {
		t.Errorf("written as\n%s", got)
	}
	if err := validate(compiled(t), full); err != nil {
		t.Error(err)
	}
	if f := r.Fittings[0].Seen[0]; f.What != FailsToMeet || f.Level != measure.Waist || f.Where != "back" || *f.By != 19.05 || *f.Built != 647.7 {
		t.Errorf("seen %+v", f)
	}
	if p := r.Photographs[0]; p.Low != (plane.Point{X: 812.5, Y: 2904}) || p.Length != 1524 || p.At != (plane.Point{X: -63.5, Y: 25.4}) || len(p.Trace) != 2 {
		t.Errorf("photograph %+v", p)
	}
	if m := r.Mount.Skirt; *m.StandHeight != 1028.7 || *m.BandFastens || *m.Steels != 4 || *m.NetWidth != 1371.6 {
		t.Errorf("skirt %+v", m)
	}
	if m := r.Mount; *m.Sleeves.BendDeg != 15 || !m.Pads.Shoulder.Asked || m.Pads.Shoulder.Projection != nil || *m.Pads.Bust.Projection != 19.05 {
		t.Errorf("sleeves and pads %+v", m)
	}
	if m := r.Mount; m.Planks[0].Length != 2438.4 || *m.Planks[0].Count != 2 || m.Planks[1].Count != nil || m.Offcuts[0] != (Offcut{50.8, 508, 393.7}) {
		t.Errorf("planks %+v, offcuts %+v", m.Planks, m.Offcuts)
	}
	if a := r.Mount.Shape[measure.Hip]; *a.Height != -177.8 || a.Girth != nil {
		t.Errorf("hip %+v", a)
	}
}

// Arithmetic of the readings in full: 34.25 in is 869.95 mm, 26.25 in 666.75 mm, 22 in 558.8 mm,
// 31.5 in 800.1 mm, and 22.5 lies between 21 and 24. Of a garment the smaller is the safe one, of the form inside it the larger.
func TestOfReadingsTheSafeOneCountsAndOfSlopesTheMean(t *testing.T) {
	r := decode(t, full)
	g := r.Garment
	for _, c := range []struct {
		name  string
		sheet measure.Sheet
		all   Readings
		key   measure.Key
		want  float64
		times int
	}{
		{"bust", g.Bodice, g.Readings.Bodice, measure.BustGirth, 869.95, 3},
		{"waist", g.Bodice, g.Readings.Bodice, measure.WaistGirth, 660.4, 0},
		{"slope", g.Bodice, g.Readings.Bodice, measure.ShoulderSlope, 22.5, 2},
		{"skirt", g.Skirt, g.Readings.Skirt, measure.WaistGirth, 666.75, 2},
		{"sleeve", g.Sleeve, g.Readings.Sleeve, measure.SleeveLength, 558.8, 2},
		{"form", r.Form.Bodice, r.Form.Readings, measure.BustGirth, 800.1, 2},
	} {
		if c.sheet[c.key] != c.want || len(c.all[c.key]) != c.times {
			t.Errorf("%s: %g of %v, want %g of %d", c.name, c.sheet[c.key], c.all[c.key], c.want, c.times)
		}
	}
}

// Whatever is read again of a form, it is never thought smaller round, and its lengths lie between the readings.
func TestAFormReadAgainIsNeverThoughtSmaller(t *testing.T) {
	keep := Keep(measure.OfForm)
	for _, m := range measure.Keys {
		once, twice := keep.Of(m, []float64{500}), keep.Of(m, []float64{500, 480})
		largest := measure.OfForm(m) == measure.Largest
		if again := keep.Of(m, []float64{500, 480, 510}); largest && (twice < once || again != 510) || !largest && twice != 490 {
			t.Errorf("%s: %g once, %g twice, %g the third time", m.Key, once, twice, again)
		}
	}
}

func TestEverythingSurvivesAChangeOfUnit(t *testing.T) {
	r := decode(t, full)
	for _, r.Unit = range []string{"mm", "in", "cm", "in"} {
		got := decode(t, encode(t, r))
		if !reflect.DeepEqual(got, r) {
			t.Errorf("in %s read back as\n%+v\nwas\n%+v", r.Unit, got, r)
		}
		r = got
	}
	if got := encode(t, r); got != full {
		t.Errorf("after mm and cm written as\n%s", got)
	}
}

func TestAListOfOneIsANumber(t *testing.T) {
	r := decode(t, garment(`"bodice": {`+three+`, "hip_girth": [950]}`))
	if r.Garment.Bodice[measure.HipGirth] != 950 || r.Garment.Readings.Bodice != nil {
		t.Errorf("read as %+v", r.Garment)
	}
	if text := encode(t, r); !strings.Contains(text, `"hip_girth": 950`) {
		t.Errorf("written as %s", text)
	}
}

func TestReadingsOfAValueSinceReplacedAreNotWritten(t *testing.T) {
	r := decode(t, garment(`"bodice": {`+three+`, "hip_girth": [950, 960]}`))
	r.Garment.Bodice[measure.HipGirth] = 955
	if text := encode(t, r); !strings.Contains(text, `"hip_girth": 955`) {
		t.Errorf("written as %s", text)
	}
}

func TestEmptyPartsAreLeftOut(t *testing.T) {
	r := decode(t, body(`"mount": {"shape": {"waist": {}, "hip": {"girth": null}}, "skirt": {}, "sleeves": {"support": null}, "pads": {"bust": false, "hip": 0, "fill": null}}, "fittings": [], "photographs": null`))
	if r.Mount.Shape != nil || r.Mount.Skirt != (SkirtMount{}) || r.Mount.Sleeves != (SleeveMount{}) || r.Mount.Pads != (Pads{}) || r.Fittings != nil || r.Photographs != nil {
		t.Errorf("read as %+v", r)
	}
}

func TestADigestIsKeptInLowerCase(t *testing.T) {
	r := decode(t, photograph(`"sha256": "`+strings.Repeat("AB", 32)+`"`))
	if got := r.Photographs[0].SHA256; got != strings.Repeat("ab", 32) {
		t.Errorf("kept as %s", got)
	}
}

// Whatever fills every list to its limit, with numbers as long as they get, is still a record.
func TestTheFullestRecordIsNotTooLarge(t *testing.T) {
	long := -1234.5678911
	r := decode(t, full)
	seen := Seen{What: FailsToMeet, Level: measure.AcrossChest, Where: "front", By: ptr(123.456789), Built: ptr(1234.567891)}
	fitting := Fitting{On: "2026-03-02", By: strings.Repeat("x", longestName), Note: strings.Repeat("x", longestNote)}
	for range MostSeen {
		fitting.Seen = append(fitting.Seen, seen)
	}
	for len(r.Fittings) < MostFittings {
		r.Fittings = append(r.Fittings, fitting)
	}
	photo := Photograph{View: "front", File: strings.Repeat("x", longestPath)}
	for range MostTrace {
		photo.Trace = append(photo.Trace, plane.Point{X: long, Y: long})
	}
	for len(r.Photographs) < MostPhotographs {
		r.Photographs = append(r.Photographs, photo)
	}
	var b bytes.Buffer
	if err := Encode(&b, r); err != nil {
		t.Fatal(err)
	}
	if b.Len() > largest*9/10 {
		t.Errorf("%d bytes of %d", b.Len(), largest)
	}
}

func TestPartsAreJudgedAlone(t *testing.T) {
	r := decode(t, full)
	good := []error{
		r.Fittings[0].Check("cm"), Fitting{}.Check("in"), r.Photographs[0].Check("mm"),
		CheckAdjustment(measure.Bust, r.Mount.Shape[measure.Bust], "cm"), CheckAdjustment(measure.Bust, measure.Adjustment{}, "cm"),
	}
	for i, err := range good {
		if err != nil {
			t.Errorf("part %d: %v", i, err)
		}
	}
	for want, err := range map[string]error{
		"fitting.seen[0].what: must be given":                              Fitting{Seen: []Seen{{}}}.Check("cm"),
		"fitting.on: \"soon\" is not possible":                             Fitting{On: "soon"}.Check("cm"),
		"photograph.file: must be given":                                   Photograph{View: "front"}.Check("cm"),
		"mount.shape.waist.girth: 2 cm is not possible; allowed 10–250 cm": CheckAdjustment(measure.Waist, measure.Adjustment{Girth: ptr(20.0)}, "cm"),
		"mount.shape.knee: the level is not known; allowed neck base":      CheckAdjustment("knee", measure.Adjustment{}, "cm"),
	} {
		var refusal *Refusal
		if !errors.As(err, &refusal) || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("got %v, want %s", err, want)
		}
	}
}

func TestACloneOfReadingsSharesNothing(t *testing.T) {
	r := Readings{measure.BustGirth: {840, 850}}
	c := r.Clone()
	c[measure.BustGirth][0], c[measure.HipGirth] = 1, []float64{2, 3}
	if !reflect.DeepEqual(r, Readings{measure.BustGirth: {840, 850}}) || Readings(nil).Clone() != nil {
		t.Errorf("the readings became %v", r)
	}
}

func ptr(v float64) *float64 { return &v }
