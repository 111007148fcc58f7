package words

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/geometry/measure"
)

// languages are those that the window speaks beside English.
var languages = []string{"de", "es", "fr"}

// spoken are the words of a language.
func spoken(t *testing.T, language string) map[string]string {
	t.Helper()
	text, err := files.ReadFile("tr/" + language + ".json")
	if err != nil {
		t.Fatal(err)
	}
	words := map[string]string{}
	if err := json.Unmarshal(text, &words); err != nil {
		t.Fatal(err)
	}
	return words
}

// written are the texts that the window's sources hand to the translator.
func written(t *testing.T) []string {
	t.Helper()
	var out []string
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if text, ok := handed(n); ok {
				out = append(out, text)
			}
			out = append(out, listed(n)...)
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// translates reports whether a function hands its first argument to the translator: lang.L, and newChoice.
func translates(f ast.Expr) bool {
	switch f := f.(type) {
	case *ast.Ident:
		return f.Name == "newChoice"
	case *ast.SelectorExpr:
		from, ok := f.X.(*ast.Ident)
		return ok && from.Name == "lang" && f.Sel.Name == "L"
	}
	return false
}

// handed is the text that a call hands to the translator.
func handed(n ast.Node) (string, bool) {
	call, ok := n.(*ast.CallExpr)
	if !ok || len(call.Args) == 0 {
		return "", false
	}
	if !translates(call.Fun) {
		return "", false
	}
	lit, ok := call.Args[0].(*ast.BasicLit)
	if !ok {
		return "", false
	}
	text, err := strconv.Unquote(lit.Value)
	return text, err == nil
}

// listed are the texts of a list of words that a variable ending so holds, and the names of places: they are
// handed to the translator where they are shown.
func listed(n ast.Node) []string {
	switch n := n.(type) {
	case *ast.FuncDecl:
		if n.Name.Name != "name" || n.Recv == nil {
			return nil
		}
		return texts(n.Body)
	case *ast.ValueSpec:
		if strings.HasSuffix(n.Names[0].Name, "Words") && len(n.Values) > 0 {
			return texts(n.Values[0])
		}
	}
	return nil
}

// texts are all strings in a piece of source.
func texts(n ast.Node) []string {
	var out []string
	ast.Inspect(n, func(n ast.Node) bool {
		if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
			text, _ := strconv.Unquote(lit.Value)
			out = append(out, text)
		}
		return true
	})
	return out
}

// named are the words that come from elsewhere: measures, levels, fields, choices.
func named() []string {
	var out []string
	for _, table := range [][]measure.Measure{measure.Keys, measure.Skirt, measure.Sleeve} {
		for _, m := range table {
			out = append(out, m.Label, m.Where, m.Group)
		}
	}
	for _, l := range measure.Levels {
		out = append(out, string(l))
	}
	for _, build := range record.Builds {
		r := record.Record{Unit: "cm", Mount: record.Mount{Build: build}}
		for _, p := range document.Places(r) {
			for _, f := range p.Fields {
				out = append(out, f.Label, f.Where, f.Group)
			}
		}
		for _, l := range measure.Levels {
			for _, f := range document.ShapeFields(r, l) {
				out = append(out, f.Label, f.Where, f.Group)
			}
		}
		for _, f := range slices.Concat(document.EaseFields(r), document.SkirtSupportFields(r), document.SleeveSupportFields(r)) {
			out = append(out, f.Label, f.Where, f.Group)
		}
	}
	for _, t := range slices.Concat(document.ObjectTexts(), document.StockTexts(), []document.Text{document.FormText()}) {
		out = append(out, t.Label)
	}
	for _, list := range [][]string{sides, record.Builds, record.Steps, record.Strengths, record.Wearers, record.SidesOf, record.Faults, record.Wheres, record.Views,
		record.SkirtSupports, record.Holds, record.Cuts, record.Trains, record.SleeveSupports} {
		out = append(out, list...)
	}
	return out
}

// asked are all texts that a language must know, each once, in order.
func asked(t *testing.T) []string {
	all := slices.DeleteFunc(append(written(t), named()...), func(s string) bool { return s == "" })
	slices.Sort(all)
	return slices.Compact(all)
}

// sides are the words of package fit for where on a figure a place lies, and of a bodice's own places.
var sides = []string{"left front", "right front", "left back", "right back", "of the garment", "of the form", "of the mount"}

func TestEveryLanguageKnowsEveryWord(t *testing.T) {
	want := asked(t)
	for _, language := range languages {
		has := spoken(t, language)
		for _, text := range want {
			if has[text] == "" {
				t.Errorf("%s does not know %q", language, text)
			}
		}
		for text := range has {
			if !slices.Contains(want, text) {
				t.Errorf("%s knows %q, which nobody says", language, text)
			}
		}
	}
}

var inserted = regexp.MustCompile(`\{\{\.[A-Za-z]+\}\}`)

// What is put into a sentence in English is put into it in every language.
func TestSentencesHoldTheSame(t *testing.T) {
	for _, language := range languages {
		for text, words := range spoken(t, language) {
			a, b := inserted.FindAllString(text, -1), inserted.FindAllString(words, -1)
			slices.Sort(a)
			slices.Sort(b)
			if !slices.Equal(a, b) {
				t.Errorf("%s: %q holds %v, want %v", language, words, b, a)
			}
		}
	}
}
