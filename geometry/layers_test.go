package geometry_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// floors are the program's folders from the ground up. A package imports its own floor and those below.
var floors = []string{"assets", "geometry", "patterns", "app", "cmd"}

// doors lists, for every library from outside, the only places that may import it. A place is a
// folder with everything below it, or a file by the beginning of its name. Tests may
// import any of them, except where a library is named in neverInTests.
var doors = map[string][]string{
	"codeberg.org/go-pdf/fpdf":                 {"patterns/vector/"},
	"github.com/tdewolff/canvas":               {"patterns/vector/"},
	"github.com/fogleman/gg":                   {"patterns/preview/"},
	"codeberg.org/go-fonts/liberation":         {"assets/fonts/"},
	"fyne.io/fyne/v2":                          {"app/ui/", "cmd/understructure/window"},
	"github.com/alecthomas/kong":               {"cmd/"},
	"github.com/santhosh-tekuri/jsonschema/v6": {"app/record/"},
	"gonum.org/v1/gonum":                       {"geometry/"},
	"github.com/peterstace/simplefeatures":     {"geometry/plane/"},
	"golang.org/x/image":                       {"assets/fonts/", "patterns/preview/", "app/ui/"}, // letters and filled areas, by Go's own team
}

// neverInTests lists what even a test must leave to its door: it would bring a window or C along.
var neverInTests = []string{"fyne.io/fyne/v2"}

// source is one Go file and what it imports.
type source struct {
	name    string // with slashes, from the top of the project
	imports []string
}

func (s source) floor() int {
	top, _, _ := strings.Cut(s.name, "/")
	return slices.Index(floors, top)
}

func (s source) test() bool { return strings.HasSuffix(s.name, "_test.go") }

// sources reads the imports of every file from the files themselves, so that a forbidden one is
// found even where the package does not build.
func sources(t *testing.T) []source {
	t.Helper()
	var all []source
	err := filepath.WalkDir("..", func(file string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() && (strings.HasPrefix(d.Name(), ".") && d.Name() != ".." || d.Name() == "out") {
			return skipUnless(err)
		}
		if d.IsDir() || path.Ext(d.Name()) != ".go" {
			return nil
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		s := source{name: strings.TrimPrefix(filepath.ToSlash(file), "../")}
		for _, spec := range parsed.Imports {
			name, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			s.imports = append(s.imports, name)
		}
		all = append(all, s)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func skipUnless(err error) error {
	if err != nil {
		return err
	}
	return fs.SkipDir
}

func TestImportsRunDownward(t *testing.T) {
	for _, s := range sources(t) {
		if s.floor() < 0 {
			t.Errorf("%s lies on none of the floors %v", s.name, floors)
		}
		for _, name := range s.imports {
			inside, ours := strings.CutPrefix(name, "understructure/")
			if !ours {
				continue
			}
			if to := (source{name: inside}); to.floor() > s.floor() {
				t.Errorf("%s imports %s, which lies above it", s.name, name)
			}
		}
	}
}

// geometry takes nothing from the other rooms on the ground: what is embedded belongs to paper and window.
func TestGeometryCarriesNothing(t *testing.T) {
	for _, s := range sources(t) {
		if strings.HasPrefix(s.name, "geometry/") && slices.Contains(s.imports, "understructure/assets") {
			t.Errorf("%s imports the assets", s.name)
		}
	}
}

func TestEveryLibraryHasOneDoor(t *testing.T) {
	for _, s := range sources(t) {
		for _, name := range s.imports {
			if standard := !strings.Contains(strings.Split(name, "/")[0], "."); standard {
				continue
			}
			library, known := libraryOf(name)
			if !known {
				t.Errorf("%s imports %s, which has no door", s.name, name)
			}
			if s.test() && !slices.Contains(neverInTests, library) {
				continue
			}
			if !slices.ContainsFunc(doors[library], func(door string) bool { return strings.HasPrefix(s.name, door) }) {
				t.Errorf("%s imports %s, whose door is %v", s.name, name, doors[library])
			}
		}
	}
}

func libraryOf(name string) (string, bool) {
	for library := range doors {
		if name == library || strings.HasPrefix(name, library+"/") {
			return library, true
		}
	}
	return "", false
}

// What the rooms promise not to know, by the standard library's own packages.
func TestRoomsKeepTheirPromises(t *testing.T) {
	for _, promise := range []struct{ room, never string }{
		{"geometry/", "os"}, {"geometry/", "io"}, {"geometry/", "net/http"},
		{"patterns/", "os"},                              // they write to an io.Writer
		{"geometry/", "time"}, {"app/pipeline/", "time"}, // the same record gives the same bytes
		{"geometry/", "math/rand"}, {"patterns/", "math/rand"}, {"app/pipeline/", "math/rand/v2"},
	} {
		for _, s := range sources(t) {
			if strings.HasPrefix(s.name, promise.room) && !s.test() && slices.Contains(s.imports, promise.never) {
				t.Errorf("%s imports %s", s.name, promise.never)
			}
		}
	}
}
