package record

import (
	"bytes"
	"encoding/json"
	"math"
	"slices"

	"understructure/geometry/measure"
)

// entry and ordered are an object whose keys keep their order.
type entry struct {
	key   string
	value any
}

type ordered []entry

func (o ordered) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	for i, e := range o {
		b.WriteByte(",{"[btoi(i == 0)])
		k, _ := json.Marshal(e.key)
		v, err := json.Marshal(e.value)
		if err != nil {
			return nil, err
		}
		b.Write(k)
		b.WriteByte(':')
		b.Write(v)
	}
	if len(o) == 0 {
		b.WriteByte('{')
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}

var number = ordered{{"type", []string{"number", "null"}}}

func described(text string) ordered { return append(number[:1:1], entry{"description", text}) }

func ref(name string) ordered { return ordered{{"$ref", "#/$defs/" + name}} }

func closed(kinds any, properties ordered, more ...entry) ordered {
	return append(ordered{{"type", kinds}, {"additionalProperties", false}, {"properties", properties}}, more...)
}

var orNull = []string{"object", "null"}

func enum(words []string) ordered {
	var all []any
	for _, w := range words {
		all = append(all, w)
	}
	return ordered{{"enum", append(all, nil)}}
}

func line(longest int) ordered {
	return ordered{{"type", []string{"string", "null"}}, {"maxLength", longest}, {"pattern", `^[^\x00-\x1f\x7f-\x9f]*$`}}
}

func table(rows []measure.Measure) ordered {
	var o ordered
	for _, m := range rows {
		text := m.Label + ". " + m.Where
		if m.ISO != "" {
			text += " On a body: " + m.ISO + ", ISO 8559-1:2017."
		}
		o = append(o, entry{string(m.Key), append(ref("readings"), entry{"description", text})})
	}
	return closed(orNull, o)
}

func requiredKeys() ordered {
	var keys []string
	var numbers ordered
	for _, k := range Required {
		keys, numbers = append(keys, string(k)), append(numbers, entry{string(k), ordered{{"type", []string{"number", "array"}}}})
	}
	return ordered{{"type", "object"}, {"required", keys}, {"properties", numbers}}
}

func whole() ordered {
	ifBuild := func(word string) ordered {
		return ordered{{"required", []string{"mount"}}, {"properties", ordered{{"mount", ordered{
			{"type", "object"}, {"required", []string{"build"}}, {"properties", ordered{{"build", ordered{{"const", word}}}}}}}}}}
	}
	formGiven := ordered{{"required", []string{"form"}}, {"properties", ordered{{"form", ordered{{"type", "object"}}}}}}
	formComplete := ordered{{"required", []string{"form"}}, {"properties", ordered{{"form", ordered{
		{"type", "object"}, {"required", []string{"bodice"}}, {"properties", ordered{{"bodice", ref("complete")}}}}}}}}
	rules := []any{
		ordered{{"if", ifBuild("padded")}, {"then", formComplete}},
		ordered{{"if", append(formGiven, entry{"not", ifBuild("slices")})}, {"then", formComplete}},
	}
	defs := ordered{{"bodice", table(measure.Keys)}, {"skirt", table(measure.Skirt)}, {"sleeve", table(measure.Sleeve)},
		{"wadding", closed("object", ordered{{"thickness", ordered{{"type", "number"}}}, {"spread", number}, {"width", number}}, entry{"required", []string{"thickness"}})},
		{"readings", ordered{{"description", "A number, or a list of several readings: of a garment the smallest counts, of a form the largest girth, arc, breadth or depth and the mean of its other lengths; of slopes the mean."},
			{"type", []string{"number", "array", "null"}}, {"minItems", 1}, {"maxItems", MostReadings}, {"items", ordered{{"type", "number"}}}}},
		{"adjustment", adjustmentSchema()},
		{"complete", requiredKeys()}}
	for _, word := range Units {
		rules = append(rules, ordered{{"if", ordered{{"properties", ordered{{"unit", ordered{{"const", word}}}}}}}, {"then", ref("lengths_" + word)}})
		defs = append(defs, inUnitOf(word)...)
	}
	return ordered{
		{"$schema", "https://json-schema.org/draft/2020-12/schema"},
		{"title", "Understructure record"},
		{"description", "One garment on its mount: what was taken and chosen. A value not taken is absent or null. Every length is in the record's unit."},
		{"type", "object"},
		{"additionalProperties", false},
		{"required", []string{"understructure", "unit", "garment"}},
		{"properties", ordered{
			{"understructure", ordered{{"const", Version}}},
			{"unit", ordered{{"enum", Units}}},
			{"object", closed(orNull, ordered{{"number", line(longestNumber)}, {"title", line(longestTitle)},
				{"year", ordered{{"type", []string{"integer", "null"}}, {"minimum", YearLimit.Least}, {"maximum", YearLimit.Most}}},
				{"wearer", enum(Wearers)}, {"notice", line(longestTitle)}})},
			{"taken", closed(orNull, ordered{{"by", line(longestName)},
				{"on", ordered{{"type", []string{"string", "null"}}, {"format", "date"}}}, {"side", enum(SidesOf)}})},
			{"garment", closed("object", ordered{{"strength", enum(Strengths)},
				{"mass_kg", append(number, entry{"minimum", MassLimit.Least}, entry{"maximum", MassLimit.Most})},
				{"bodice", ordered{{"allOf", []any{ref("bodice"), ref("complete")}}}}, {"skirt", ref("skirt")}, {"sleeve", ref("sleeve")}},
				entry{"required", []string{"bodice"}})},
			{"form", closed(orNull, ordered{{"label", line(longestName)}, {"bodice", ref("bodice")}})},
			{"mount", mountSchema()},
			{"fittings", listSchema(MostFittings, fittingSchema())},
			{"photographs", listSchema(MostPhotographs, photographSchema())},
		}},
		{"allOf", rules},
		{"$defs", defs},
	}
}

func mountSchema() ordered {
	var levels, shape ordered
	for _, l := range measure.Levels {
		levels = append(levels, entry{string(l), number})
		shape = append(shape, entry{string(l), ref("adjustment")})
	}
	return closed(orNull, ordered{
		{"build", enum(Builds)},
		{"ease", ordered{{"description", "One number, or one a level."}, {"type", []string{"number", "object", "null"}}, {"additionalProperties", false}, {"properties", levels}}},
		{"shape", closed(orNull, shape, entry{"description", "What was set by hand of the mount, by level; the height is above the waist and may be negative."})},
		{"tape_error", described("One standard deviation of a tape reading.")},
		{"height_error", described("How far a tape lies off its level, one standard deviation.")},
		{"cutting_error", described("How far a knife strays from its line, one standard deviation.")},
		{"wadding", ordered{{"anyOf", []any{ordered{{"type", "null"}}, ref("wadding"), ordered{{"type", "array"}, {"maxItems", mostWaddings}, {"items", ref("wadding")}}}}}},
		{"cover", closed(orNull, ordered{{"thickness", number}, {"spread", number}, {"width", described("Of the roll.")}, {"nap", truth("Every panel must lie the same way.")}})},
		{"plank", closed(orNull, ordered{{"thickness", number}, {"length", number}, {"width", number}, {"pole", number}})},
		{"planks", append(ordered{{"description", "Other sizes of plank that can be had, in the order in which they are to be used; without a count, as many as are wanted."}},
			listSchema(mostPlanks, foamSchema(
				entry{"count", ordered{{"type", []string{"integer", "null"}}, {"minimum", CountLimit.Least}, {"maximum", CountLimit.Most}}}, entry{"price", price}))...)},
		{"offcuts", append(ordered{{"description", "Rests of planks, to be used before any whole one."}}, listSchema(mostPlanks, foamSchema())...)},
		{"prices", closed(orNull, ordered{
			{"currency", ordered{{"type", []string{"string", "null"}}, {"pattern", "^([A-Z]{3})?$"}, {"description", "ISO 4217."}}}, {"plank", price}, {"wadding", price}, {"cover", price},
			{"calico", price}, {"net", price}, {"pole", price}}, entry{"description", "Of one plank, of a square metre of cloth or wadding, of a metre of pole."})},
		{"step", enum(Steps)},
		{"skirt", skirtMountSchema()},
		{"sleeves", closed(orNull, ordered{{"support", append(enum(SleeveSupports), entry{"description", "A full sleeve gets a puff of net beside its arm or tube; puff is the net alone."})},
			{"bend_deg", append(described("Of the elbow, degrees."), entry{"minimum", BendLimit.Least}, entry{"maximum", BendLimit.Most})}})},
		{"pads", closed(orNull, ordered{{"shoulder", pad}, {"bust", pad}, {"hip", pad}, {"fill", truth("Soft fills for a bodice that hangs limp.")}},
			entry{"description", "Loose pads on either side: true, or how far one stands out at its thickest; 0 is none."})},
		{"paper", ordered{{"anyOf", []any{enum(Papers), ordered{{"type", "array"}, {"minItems", 2}, {"maxItems", 2}, {"items", ordered{{"type", "number"}}}}}}}},
		{"printer", closed(orNull, ordered{{"x", number}, {"y", number}}, entry{"description", "What the 100 mm rules of a printed test page measure, across and up the page."})},
	})
}

var price = append(number[:1:1], entry{"minimum", PriceLimit.Least}, entry{"maximum", PriceLimit.Most})

// foamSchema is a piece of foam by its sides.
func foamSchema(more ...entry) ordered {
	given := ordered{{"type", "number"}}
	return closed("object", append(ordered{{"thickness", given}, {"length", given}, {"width", given}}, more...), entry{"required", []string{"thickness", "length", "width"}})
}

var pad = ordered{{"type", []string{"boolean", "number", "null"}}}

func truth(text string) ordered {
	return ordered{{"type", []string{"boolean", "null"}}, {"description", text}}
}

func skirtMountSchema() ordered {
	return closed(orNull, ordered{
		{"support", append(enum(SkirtSupports), entry{"description", "What holds the skirt; as dated is what the year wants."})},
		{"hold", append(enum(Holds), entry{"description", "Which is fixed: the stand, and how far out the hem reaches follows; or the silhouette of the year, and the stand follows."})},
		{"stand_height", described("Of the waist above the floor; takes the place of the bodice's waist_height.")},
		{"floor_gap", described("Of the hem above the floor.")},
		{"cut", append(enum(Cuts), entry{"description", "How the skirt's cloth is cut: widening from one girth taken to the next, or of straight breadths gathered into the band."})},
		{"train", append(enum(Trains), entry{"description", "Whether a longer back lies on the floor."})},
		{"band_fastens", truth("The waistband closes by itself.")},
		{"steels", ordered{{"type", []string{"integer", "null"}}, {"description", "Of a hooped petticoat."}, {"minimum", SteelsLimit.Least}, {"maximum", SteelsLimit.Most}}},
		{"net_width", described("Of the net in stock.")},
		{"pad_thickness", described("Of a bustle pad behind.")},
		{"frame_length", described("Of a bustle frame, from the waist down.")},
	})
}

func adjustmentSchema() ordered {
	var parts ordered
	for _, p := range Parts {
		parts = append(parts, entry{p.Key, number})
	}
	return closed(orNull, parts)
}

func fittingSchema() ordered {
	about := func(is func(string) bool, levels any, more ...entry) ordered {
		words := slices.DeleteFunc(slices.Clone(Faults), func(w string) bool { return !is(w) })
		return ordered{{"if", ordered{{"properties", ordered{{"what", ordered{{"enum", words}}}}}}},
			{"then", append(ordered{{"properties", ordered{{"level", ordered{{"enum", levels}}}}}}, more...)}}
	}
	seen := closed("object", ordered{{"what", ordered{{"enum", Faults}}}, {"level", enum(append(levels(), ""))}, {"where", enum(append(Wheres, ""))},
		{"by", described("How much, where it was measured.")}, {"built", described("The tape girth, at that level, of the mount that was tried on.")}},
		entry{"required", []string{"what"}},
		entry{"allOf", []any{
			about(OfGirth, levels(), entry{"required", []string{"level"}}),
			about(OfHem, []any{"", nil}),
		}})
	return closed("object", ordered{{"on", ordered{{"anyOf", []any{ordered{{"type", []string{"string", "null"}}, {"format", "date"}}, ordered{{"const", ""}}}}}},
		{"by", line(longestName)},
		{"note", ordered{{"type", []string{"string", "null"}}, {"maxLength", longestNote}, {"pattern", `^[^\x00-\x09\x0b-\x1f\x7f-\x9f]*$`}}},
		{"seen", listSchema(MostSeen, seen)}})
}

func photographSchema() ordered {
	pixel := func(text string) ordered {
		return append(ordered{{"description", text}}, pair([]string{"array", "null"}, PixelLimit)...)
	}
	file := append(ordered{{"description", "As given; from the record's folder where it is relative."}, {"minLength", 1}}, line(longestPath)...)
	file[2].value = "string"
	return closed("object", ordered{{"view", ordered{{"enum", Views}}}, {"file", file},
		{"sha256", ordered{{"type", []string{"string", "null"}}, {"pattern", "^([0-9A-Fa-f]{64})?$"}}},
		{"low", pixel("Pixels to the right and down from the upper left corner.")}, {"high", pixel("Lies straight above low on the figure.")},
		{"length", described("From low to high.")},
		{"at", ordered{{"description", "Where low lies in the view: across, and up from the floor."}, {"type", []string{"array", "null"}}, {"minItems", 2}, {"maxItems", 2}, {"items", ordered{{"type", "number"}}}}},
		{"fade", append(number, entry{"minimum", FadeLimit.Least}, entry{"maximum", FadeLimit.Most})},
		{"trace", listSchema(MostTrace, pair("array", PixelLimit))}},
		entry{"required", []string{"view", "file"}})
}

func pair(kinds any, l Limit) ordered {
	return ordered{{"type", kinds}, {"minItems", 2}, {"maxItems", 2}, {"items", ordered{{"type", "number"}, {"minimum", l.Least}, {"maximum", l.Most}}}}
}

func listSchema(most int, item ordered) ordered {
	return ordered{{"type", []string{"array", "null"}}, {"maxItems", most}, {"items", item}}
}

// inUnitOf gives the ranges of every length in one unit.
func inUnitOf(word string) ordered {
	limit := func(l Limit, size float64) ordered {
		return ordered{{"minimum", math.Ceil(l.Least*size*1e6-1e-3) / 1e6}, {"maximum", math.Floor(l.Most*size*1e6+1e-3) / 1e6}}
	}
	length := func(l Limit) ordered { return limit(l, inUnit(1, word)) }
	sheet := func(rows []measure.Measure) ordered {
		var o ordered
		for _, m := range rows {
			size := inUnit(1, word)
			if m.Degrees {
				size = 1
			}
			one := limit(Limit{m.Min, m.Max}, size)
			o = append(o, entry{string(m.Key), append(one, entry{"items", one})})
		}
		return ordered{{"properties", o}}
	}
	object := func(o ordered) ordered { return ordered{{"properties", o}} }
	var levels, shape, parts ordered
	for _, p := range Parts {
		parts = append(parts, entry{p.Key, length(p.Limit)})
	}
	for _, l := range measure.Levels {
		levels = append(levels, entry{string(l), length(EaseLimit)})
		shape = append(shape, entry{string(l), ref("adjustment_" + word)})
	}
	seen := object(ordered{{"by", length(SeenLimit)}, {"built", length(ShapeGirthLimit)}})
	wadding := object(ordered{{"thickness", length(WaddingLimit)}, {"spread", length(SpreadLimit)}, {"width", length(RollLimit)}})
	foam := ordered{{"items", object(ordered{{"thickness", length(PlankLimit)}, {"length", length(PlankSideLimit)}, {"width", length(PlankSideLimit)}})}}
	return ordered{
		{"bodice_" + word, sheet(measure.Keys)},
		{"adjustment_" + word, object(parts)},
		{"lengths_" + word, object(ordered{
			{"garment", object(ordered{{"bodice", ref("bodice_" + word)}, {"skirt", sheet(measure.Skirt)}, {"sleeve", sheet(measure.Sleeve)}})},
			{"form", object(ordered{{"bodice", ref("bodice_" + word)}})},
			{"mount", object(ordered{
				{"ease", append(length(EaseLimit), object(levels)...)},
				{"shape", object(shape)},
				{"tape_error", length(TapeErrorLimit)},
				{"height_error", length(HeightErrorLimit)},
				{"cutting_error", length(CuttingErrorLimit)},
				{"wadding", append(wadding, entry{"items", wadding})},
				{"cover", object(ordered{{"thickness", length(CoverLimit)}, {"spread", length(SpreadLimit)}, {"width", length(RollLimit)}})},
				{"planks", foam},
				{"offcuts", foam},
				{"printer", object(ordered{{"x", length(RuleLimit)}, {"y", length(RuleLimit)}})},
				{"plank", object(ordered{{"thickness", length(PlankLimit)}, {"length", length(PlankSideLimit)}, {"width", length(PlankSideLimit)}, {"pole", length(PoleLimit)}})},
				{"skirt", object(ordered{{"stand_height", length(StandLimit)}, {"floor_gap", length(GapLimit)}, {"net_width", length(NetWidthLimit)},
					{"pad_thickness", length(PadThicknessLimit)}, {"frame_length", length(FrameLengthLimit)}})},
				{"pads", object(ordered{{"shoulder", length(PadLimit)}, {"bust", length(PadLimit)}, {"hip", length(PadLimit)}})},
				{"paper", ordered{{"prefixItems", []any{length(PaperWidthLimit), length(PaperHeightLimit)}}}},
			})},
			{"fittings", ordered{{"items", object(ordered{{"seen", ordered{{"items", seen}}}})}}},
			{"photographs", ordered{{"items", object(ordered{{"length", length(PhotographLimit)}, {"at", ordered{{"items", length(PlaceLimit)}}}})}}},
		})},
	}
}
