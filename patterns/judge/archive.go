package judge

import (
	"encoding/base64"
	"encoding/binary"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// file is a PDF as qpdf lays it open: objects by their names, such as "12 0 R".
type file struct {
	objects map[string]object
	trailer object
	faults  []string
}

type object struct {
	Value  any
	Stream struct {
		Dict map[string]any
		Data string
	}
}

func (o object) data() string {
	b, _ := base64.StdEncoding.DecodeString(o.Stream.Data)
	return string(b)
}

// Archive holds a PDF without forms or annotations against what PDF/A-2b asks of such a file, and returns what is
// amiss, by clause (ISO 19005-2:2011). qpdf lays the file open; nothing is taken from whoever wrote it. The file is
// at a path, and this is what is in it.
func Archive(t testing.TB, path string, pdf []byte) []string {
	t.Helper()
	Run(t, "qpdf", "--check", path)
	f := opened(t, path)
	f.ends(pdf)
	f.keys()
	f.colours()
	f.about()
	f.layers()
	f.letters()
	return f.faults
}

func opened(t testing.TB, path string) *file {
	t.Helper()
	var whole struct{ QPDF []json.RawMessage }
	text := Run(t, "qpdf", "--json=2", "--json-stream-data=inline", "--decode-level=generalized", path)
	objects := map[string]object{}
	err := json.Unmarshal(text, &whole)
	if err == nil {
		err = json.Unmarshal(whole.QPDF[1], &objects)
	}
	if err != nil {
		t.Fatal(err)
	}
	f := &file{objects: map[string]object{}, trailer: objects["trailer"]}
	for name, o := range objects {
		f.objects[strings.TrimPrefix(name, "obj:")] = o
	}
	return f
}

func (f *file) fault(clause, format string, args ...any) {
	f.faults = append(f.faults, clause+": "+fmt.Sprintf(format, args...))
}

// at follows keys from a dictionary, through references.
func (f *file) at(from any, keys ...string) any {
	for {
		if name, is := from.(string); is && reference.MatchString(name) {
			if o := f.objects[name]; o.Value != nil {
				from = o.Value
			} else {
				from = o.Stream.Dict
			}
			continue
		}
		if len(keys) == 0 {
			return from
		}
		d, _ := from.(map[string]any)
		from, keys = d[keys[0]], keys[1:]
	}
}

var reference = regexp.MustCompile(`^\d+ 0 R$`)

func (f *file) root(keys ...string) any {
	return f.at(f.trailer.Value, append([]string{"/Root"}, keys...)...)
}

// ends: the head says that what follows is not text, and nothing follows the end.
func (f *file) ends(pdf []byte) {
	binary := 0
	if m := regexp.MustCompile(`^%PDF-1\.[0-7]\n%([^\n]*)`).FindSubmatch(pdf); m != nil {
		for _, b := range m[1] {
			binary += int(b >> 7)
		}
	}
	if binary < 4 {
		f.fault("6.1.2", "it begins %q", pdf[:min(20, len(pdf))])
	}
	if !strings.HasSuffix(string(pdf), "\n%%EOF\n") {
		f.fault("6.1.3", "it ends %q", pdf[max(0, len(pdf)-20):])
	}
	if id, _ := f.at(f.trailer.Value, "/ID").([]any); len(id) != 2 || len(fmt.Sprint(id[0])) < 10 {
		f.fault("6.1.3", "identity %v", id)
	}
}

// forbidden are keys that such a file has nowhere, by clause.
var forbidden = map[string]string{
	"/Encrypt": "6.1.3", "/F": "6.1.7", "/FFilter": "6.1.7", "/TR": "6.2.5", "/TR2": "6.2.5", "/HTP": "6.2.5", "/OPI": "6.2.9", "/PS": "6.2.9",
	"/SMask": "6.2.10, none is wanted", "/Annots": "6.3, none is wanted", "/AcroForm": "6.4, none is wanted", "/XFA": "6.4", "/AA": "6.5", "/JS": "6.5", "/OpenAction": "6.5, none is wanted",
	"/AS": "6.9", "/AlternatePresentations": "6.10", "/PresSteps": "6.10", "/Requirements": "6.11",
}

func (f *file) keys() {
	var walk func(any)
	walk = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			for k, inside := range v {
				if clause, is := forbidden[k]; is {
					f.fault(clause, "there is %s", k)
				}
				walk(inside)
			}
		case []any:
			for _, inside := range v {
				walk(inside)
			}
		case string:
			if v == "/LZWDecode" || len(v) > 32767 {
				f.fault("6.1", "there is %.20s", v)
			}
		}
	}
	for _, o := range f.objects {
		walk(o.Value)
		walk(o.Stream.Dict)
	}
	if files, _ := f.root("/Names", "/EmbeddedFiles", "/Names").([]any); len(files) > 0 {
		f.fault("6.8", "%d files are inside, none is wanted", len(files))
	}
}

// colours: what is meant by red, green, blue and grey is said by a profile.
func (f *file) colours() {
	all, _ := f.root("/OutputIntents").([]any)
	if len(all) != 1 || f.at(all[0], "/S") != "/GTS_PDFA1" {
		f.fault("6.2.3", "output intents %v", all)
		return
	}
	d, _ := all[0].(map[string]any)
	name, _ := d["/DestOutputProfile"].(string)
	icc := f.objects[name].data()
	// ICC.1:2010, 7.2: version at 8, class at 12, space at 16, signature at 36.
	if len(icc) < 128 || icc[36:40] != "acsp" || icc[16:20] != "RGB " || icc[12:16] != "mntr" && icc[12:16] != "prtr" || icc[8] > 4 || f.at(name, "/N") != 3.0 {
		f.fault("6.2.3", "the profile is none of red, green and blue")
	}
}

// about: what the file says of itself in XMP, as plain text, and the same in its own dictionary.
func (f *file) about() {
	name, _ := f.root2("/Metadata").(string)
	o := f.objects[name]
	if o.Stream.Dict["/Filter"] != nil || o.Stream.Dict["/Subtype"] != "/XML" {
		f.fault("6.6.2", "metadata %v", o.Stream.Dict)
	}
	var x struct {
		Described struct {
			Title       string `xml:"title>Alt>li"`
			Part        string `xml:"http://www.aiim.org/pdfa/ns/id/ part"`
			Conformance string `xml:"http://www.aiim.org/pdfa/ns/id/ conformance"`
			Producer    string
		} `xml:"RDF>Description"`
	}
	if err := xml.Unmarshal([]byte(o.data()), &x); err != nil {
		f.fault("6.6.2", "%v", err)
	}
	if d := x.Described; d.Part != "2" || d.Conformance != "B" {
		f.fault("6.6.4", "part %q, conformance %q", d.Part, d.Conformance)
	}
	if title := f.at(f.trailer.Value, "/Info", "/Title"); title != "u:"+x.Described.Title {
		f.fault("6.6.2", "title %q, in XMP %q", title, x.Described.Title)
	}
}

// layers: the set that is shown has a name and an order that lists every layer, and every layer has a name of its own.
func (f *file) layers() {
	all, _ := f.root("/OCProperties", "/OCGs").([]any)
	if all == nil {
		return
	}
	order, _ := f.root("/OCProperties", "/D", "/Order").([]any)
	name, _ := f.root("/OCProperties", "/D", "/Name").(string)
	if name == "" || !slices.Equal(order, all) {
		f.fault("6.9", "the layers %v, in order %v, are shown as %q", all, order, name)
	}
	names := map[any]bool{}
	for _, l := range all {
		names[f.at(l, "/Name")] = true
	}
	if len(names) != len(all) || names[nil] {
		f.fault("6.9", "%d layers have the names %v", len(all), names)
	}
}

// root2 is a value of the root as it stands there.
func (f *file) root2(key string) any {
	d, _ := f.root().(map[string]any)
	return d[key]
}

// shown is a string in a page, and letter finds what is set, in which font (ISO 32000-1:2008, 7.3.4.2).
var (
	shown   = `\((?:\\(?s:.)|[^\\()])*\)`
	letter  = regexp.MustCompile(`/(F[0-9a-f]+) [0-9.]+ Tf|(` + shown + `) ?Tj`)
	strung  = regexp.MustCompile(shown)
	escaped = regexp.MustCompile(`\\(?s:.)`)
)

func unescaped(s string) string {
	return escaped.ReplaceAllStringFunc(s[1:len(s)-1], func(e string) string {
		return map[string]string{`\n`: "\n", `\r`: "\r", `\t`: "\t", `\b`: "\b", `\f`: "\f"}[e] + strings.Trim(e[1:], "nrtbf")
	})
}

// letters: every letter that is shown is in the file, as wide as the page counts on.
func (f *file) letters() {
	used := map[string]map[int]bool{}
	pages, _ := f.root("/Pages", "/Kids").([]any)
	for _, pg := range pages {
		name, _ := f.at(pg).(map[string]any)["/Contents"].(string)
		content := f.objects[name].data()
		f.painted(content)
		font := ""
		for _, m := range letter.FindAllStringSubmatch(content, -1) {
			if m[1] != "" {
				font, _ = f.at(pg, "/Resources", "/Font").(map[string]any)["/"+m[1]].(string)
				continue
			}
			if used[font] == nil {
				used[font] = map[int]bool{}
			}
			codes := unescaped(m[2])
			for i := 0; i+1 < len(codes); i += 2 {
				used[font][int(codes[i])<<8|int(codes[i+1])] = true
			}
		}
	}
	if len(used) == 0 {
		f.fault("6.2.11", "no letters are found")
	}
	for font, codes := range used {
		f.font(font, codes)
	}
}

// operators are what a page may be drawn with (ISO 32000-1:2008, annex A, as far as such pages need it).
var operators = strings.Fields("q Q cm w J j M d m l c h re S s f F n W RG rg G g BT ET Tf Td Tj BDC BMC EMC")

func (f *file) painted(content string) {
	deep, deepest := 0, 0
	for _, word := range strings.Fields(strung.ReplaceAllString(content, "()")) {
		switch {
		case word == "q":
			deep++
			deepest = max(deepest, deep)
		case word == "Q":
			deep--
		case strings.ContainsAny(word[:1], "0123456789.-/[]("):
		case !slices.Contains(operators, word):
			f.fault("6.2.2", "operator %q", word)
		}
	}
	if deep != 0 || deepest > 28 {
		f.fault("6.1.13", "%d states are open, %d at most", deep, deepest)
	}
}

func (f *file) font(name string, codes map[int]bool) {
	base, _ := f.at(name, "/BaseFont").(string)
	parts, _ := f.at(name, "/DescendantFonts").([]any)
	if f.at(name, "/Encoding") != "/Identity-H" || len(parts) != 1 || !regexp.MustCompile(`^/[A-Z]{6}\+`).MatchString(base) ||
		f.at(parts[0], "/FontDescriptor", "/FontName") != base {
		f.fault("6.2.11", "font %s", base)
		return
	}
	d, _ := f.at(parts[0]).(map[string]any)
	descriptor, _ := f.at(d["/FontDescriptor"]).(map[string]any)
	program, _ := descriptor["/FontFile2"].(string)
	toGlyph, _ := d["/CIDToGIDMap"].(string)
	advances, err := advancesOf(f.objects[program].data())
	glyphs := f.objects[toGlyph].data()
	if err != nil {
		f.fault("6.2.11.4", "%s: %v", base, err)
		return
	}
	widths := widthsOf(d)
	for code := range codes {
		glyph := 0
		if 2*code+1 < len(glyphs) {
			glyph = int(glyphs[2*code])<<8 | int(glyphs[2*code+1])
		}
		if glyph == 0 || glyph >= len(advances) {
			f.fault("6.2.11.8", "%s has no letter %U", base, code)
			continue
		}
		if off := math.Abs(widths(code) - advances[glyph]); off > 1 {
			f.fault("6.2.11.5", "%s: %U is %g wide, and %g in the font", base, code, widths(code), advances[glyph])
		}
	}
}

// widthsOf reads the widths that a page counts on, in thousandths of the letter size (ISO 32000-1:2008, 9.7.4.3).
func widthsOf(font map[string]any) func(code int) float64 {
	all := map[int]float64{}
	list, _ := font["/W"].([]any)
	number := func(v any) int { x, _ := v.(float64); return int(x) }
	for i := 0; i+1 < len(list); {
		first := number(list[i])
		if run, is := list[i+1].([]any); is {
			for k, w := range run {
				all[first+k], _ = w.(float64)
			}
			i += 2
			continue
		}
		for code := first; code <= number(list[i+1]) && i+2 < len(list); code++ {
			all[code], _ = list[i+2].(float64)
		}
		i += 3
	}
	return func(code int) float64 {
		if w, is := all[code]; is {
			return w
		}
		w, _ := font["/DW"].(float64)
		return w
	}
}

// advancesOf reads how wide every glyph of a TrueType font is, in thousandths of the letter size (OpenType 1.9, head,
// hhea and hmtx).
func advancesOf(font string) ([]float64, error) {
	tables := map[string]string{}
	number := func(s string, at int) int {
		if at+2 > len(s) {
			return 0
		}
		return int(binary.BigEndian.Uint16([]byte(s[at:])))
	}
	for i := range number(font, 4) {
		at := 12 + 16*i
		from, size := number(font, at+8)<<16|number(font, at+10), number(font, at+12)<<16|number(font, at+14)
		if at+16 > len(font) || from+size > len(font) {
			return nil, fmt.Errorf("the font ends early")
		}
		tables[font[at:at+4]] = font[from : from+size]
	}
	for _, name := range []string{"glyf", "head", "hhea", "hmtx", "loca", "maxp"} {
		if tables[name] == "" {
			return nil, fmt.Errorf("the font has no %s", name)
		}
	}
	unit, long := number(tables["head"], 18), number(tables["hhea"], 34)
	all := make([]float64, number(tables["maxp"], 4))
	for i := range all {
		all[i] = 1000 * float64(number(tables["hmtx"], 4*min(i, long-1))) / float64(unit)
	}
	return all, nil
}
