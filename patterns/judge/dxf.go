package judge

import (
	_ "embed"
	"encoding/json"
	"testing"
)

//go:embed read.py
var reader string

const python = "/usr/bin/python3" // Debian's own, for which its packages are

// Drawing is what ezdxf found in a DXF file.
type Drawing struct {
	Version string
	Layers  []string
	Errors  []string
	Extents [2][2]float64
	Lines   []Line
	Words   []struct {
		Layer, Text        string
		X, Y, Height, Turn float64
	}
}

// Line is one line of a drawing.
type Line struct {
	Layer  string
	Closed bool
	Points [][2]float64
}

// DXF has files read by ezdxf.
func DXF(t testing.TB, paths ...string) []Drawing {
	t.Helper()
	found := map[string]Drawing{}
	if err := json.Unmarshal(fed(t, reader, python, append([]string{"-"}, paths...)...), &found); err != nil {
		t.Fatal(err)
	}
	var all []Drawing
	for _, path := range paths {
		all = append(all, found[path])
	}
	return all
}

// On are the lines on a layer, in order.
func (d Drawing) On(layer string) (lines []Line) {
	for _, l := range d.Lines {
		if l.Layer == layer {
			lines = append(lines, l)
		}
	}
	return lines
}
