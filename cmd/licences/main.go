// Command licences writes the file of licences that the program carries: of every module that is
// built into it, with the font files and the C sources that lie in them.
package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

func main() {
	text, err := collect()
	if err == nil {
		err = os.WriteFile(os.Args[1], text, 0o644)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "licences:", err)
		os.Exit(1)
	}
}

// part is a package from outside that is built into the program.
type part struct {
	Dir    string
	Module *struct {
		Path, Dir, Version string
		Main               bool
	}
}

// parts lists the packages from outside of the program for Linux, with its window.
func parts() ([]part, error) {
	list := exec.Command("go", "list", "-deps", "-json=Dir,Module", "understructure/cmd/understructure")
	list.Env = append(os.Environ(), "CGO_ENABLED=1", "GOOS=linux", "GOARCH=amd64")
	list.Stderr = os.Stderr
	out, err := list.Output()
	if err != nil {
		return nil, err
	}
	var all []part
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p part
		switch err := d.Decode(&p); {
		case errors.Is(err, io.EOF):
			return all, nil
		case err != nil:
			return nil, err
		case p.Module != nil && !p.Module.Main:
			all = append(all, p)
		}
	}
}

// grant is a licence's text, with what it is granted for.
type grant struct {
	text  string
	whose []string
}

// collect gathers every licence once, under the names of all that have it.
func collect() ([]byte, error) {
	all, err := parts()
	if err != nil {
		return nil, err
	}
	var grants []grant
	read := map[string]bool{}
	granted := map[string]bool{}
	for _, p := range all {
		files, err := licences(p)
		if err != nil {
			return nil, err
		}
		for _, file := range files {
			granted[p.Module.Path] = true
			if read[file] {
				continue
			}
			read[file] = true
			text, err := os.ReadFile(file)
			if err != nil {
				return nil, err
			}
			grants = add(grants, trimmed(text), name(p, file))
		}
	}
	for _, p := range all {
		if granted[p.Module.Path] {
			continue
		}
		text, err := header(p.Dir)
		if err != nil {
			return nil, err
		}
		granted[p.Module.Path] = true
		grants = add(grants, text, name(p, filepath.Join(p.Module.Dir, "the head of its source")))
	}
	return written(grants), nil
}

// header is what the first file of a package that speaks of copyright says above its code. A
// module without a file of terms must have one.
func header(dir string) (string, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		return "", err
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			return "", err
		}
		above, _, _ := strings.Cut(trimmed(text), "\npackage ")
		if strings.Contains(above, "Copyright") && !strings.HasSuffix(file, "_test.go") {
			return strings.TrimSpace(above), nil
		}
	}
	return "", fmt.Errorf("%s: no licence was found", dir)
}

// licence is what a file is called that grants something.
var licence = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|ofl|patents)([-_.].*)?$`)

// licences are the files that speak for a package: those that lie with it or above it in its module, and
// those below it in folders that are no packages, where fonts and C sources lie.
func licences(p part) ([]string, error) {
	var files []string
	for dir := p.Dir; ; dir = filepath.Dir(dir) {
		found, err := inFolder(dir)
		if err != nil {
			return nil, err
		}
		files = append(files, found...)
		if dir == p.Module.Dir {
			break
		}
	}
	below, err := os.ReadDir(p.Dir)
	if err != nil {
		return nil, err
	}
	for _, d := range below {
		dir := filepath.Join(p.Dir, d.Name())
		if !d.IsDir() || d.Name() == "testdata" || isPackage(dir) {
			continue
		}
		found, err := inFolder(dir)
		if err != nil {
			return nil, err
		}
		files = append(files, found...)
	}
	return files, nil
}

func inFolder(dir string) ([]string, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	var files []string
	for _, e := range entries {
		if e.Type().IsRegular() && filepath.Ext(e.Name()) != ".go" && licence.MatchString(e.Name()) {
			files = append(files, filepath.Join(dir, e.Name()))
		}
	}
	return files, nil
}

func isPackage(dir string) bool {
	files, err := fs.Glob(os.DirFS(dir), "*.go")
	return err == nil && len(files) > 0
}

// name is the module, with its version, and the folder within it that a file speaks for.
func name(p part, file string) string {
	n := p.Module.Path + " " + p.Module.Version
	if in, err := filepath.Rel(p.Module.Dir, filepath.Dir(file)); err == nil && in != "." {
		n += ", " + filepath.ToSlash(in)
	}
	return n
}

func trimmed(text []byte) string {
	return strings.TrimSpace(strings.ReplaceAll(string(text), "\r\n", "\n"))
}

func add(grants []grant, text, whose string) []grant {
	i := slices.IndexFunc(grants, func(g grant) bool { return g.text == text })
	if i < 0 {
		return append(grants, grant{text, []string{whose}})
	}
	grants[i].whose = append(grants[i].whose, whose)
	return grants
}

// goWorks are built into every program written in Go, under the terms of Go's other modules.
const goWorks = "golang.org/x/text"

func written(grants []grant) []byte {
	for i, g := range grants {
		if slices.ContainsFunc(g.whose, func(n string) bool { return strings.HasPrefix(n, goWorks+" ") }) {
			grants[i].whose = append(g.whose, "Go, its runtime and standard library")
		}
		slices.Sort(grants[i].whose)
		grants[i].whose = slices.Compact(grants[i].whose)
	}
	slices.SortFunc(grants, func(a, b grant) int { return slices.Compare(a.whose, b.whose) })
	var b bytes.Buffer
	b.WriteString("Understructure is built with the following works of others,\neach under the terms that stand below its name.\n")
	for _, g := range grants {
		fmt.Fprintf(&b, "\n%s\n%s\n\n%s\n", strings.Repeat("=", 72), strings.Join(g.whose, "\n"), g.text)
	}
	return b.Bytes()
}
