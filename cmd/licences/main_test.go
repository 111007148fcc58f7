package main

import (
	"strings"
	"testing"

	"understructure/assets"
)

// The file that the program carries is what its modules say now; make licences writes it anew.
func TestTheFileIsWhole(t *testing.T) {
	now, err := collect()
	if err != nil {
		t.Fatal(err)
	}
	if string(now) != assets.Licences {
		t.Error("assets/licences.txt is not what the modules say; run make licences")
	}
}

// Works that lie inside modules and have terms of their own: derived from the modules' folders by hand.
func TestWhatLiesInsideModulesIsNamed(t *testing.T) {
	for _, work := range []string{
		"Go, its runtime and standard library",
		"go-gl/glfw/v3.3/glfw",               // a C library
		"SIL OPEN FONT LICENSE",              // the fonts
		"fyne.io/fyne/v2 v2.7.1, theme/font", // the window's own
		"fpdf v0.12.0",
	} {
		if !strings.Contains(assets.Licences, work) {
			t.Errorf("nothing is said of %q", work)
		}
	}
}
