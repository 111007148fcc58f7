// Package judge has programs of other makes read what is written here, for tests: those that draw PDF, read DXF or mend
// STL. None of them shares a line of code with this project. One that is missing fails the test and says what to install.
// It does not say what is right.
package judge

import (
	"bytes"
	"os/exec"
	"testing"
)

// packages are where Debian has the programs; make test installs them all.
var packages = map[string]string{
	"pdftoppm": "poppler-utils", "pdftotext": "poppler-utils", "pdfinfo": "poppler-utils", "pdffonts": "poppler-utils",
	"mutool": "mupdf-tools", "gs": "ghostscript", "qpdf": "qpdf", "rsvg-convert": "librsvg2-bin", "admesh": "admesh",
	python: "python3-ezdxf",
}

// Run calls a program and returns what it prints. A program that is missing, or objects, fails the test.
func Run(t testing.TB, name string, args ...string) []byte {
	t.Helper()
	return fed(t, "", name, args...)
}

// fed does the same with something for the program to read.
func fed(t testing.TB, input, name string, args ...string) []byte {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		t.Fatalf("%s is not installed; make test installs it (Debian: %s)", name, packages[name])
	}
	var out, errs bytes.Buffer
	c := exec.Command(name, args...)
	c.Stdin, c.Stdout, c.Stderr = bytes.NewReader([]byte(input)), &out, &errs
	if err := c.Run(); err != nil {
		t.Fatalf("%s %v: %v (Debian: %s)\n%s", name, args, err, packages[name], errs.Bytes())
	}
	return out.Bytes()
}
