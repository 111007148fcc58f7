// Package dxf writes one piece for a laser, a knife plotter or a mill: DXF of release 12 in ASCII, which
// every cutting program reads, with straight lines only (Autodesk, "DXF Reference", release 12, 1992).
//
// Release 12 has no word for its unit: one in the file is one millimetre, a comment at its head says so, and
// the cutting program is told so where it asks ($INSUNITS, which later releases have, would be 4).
// What a line is for is told by its layer, and the edge comes last, so that the piece lies still until
// everything inside it is done.
// It does not lay out pieces, and it does not know machines.
package dxf

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"

	"understructure/patterns/drawing"
	"understructure/patterns/piece"
	"understructure/patterns/sheet"
)

// looks lists the layers with the colour number that tells each from the others on a screen, and its line. The layer of
// the paper has no place here.
var looks = []struct {
	layer  drawing.Layer
	colour int
	line   string
}{
	{drawing.Cut, 7, "CONTINUOUS"}, {drawing.Holes, 1, "CONTINUOUS"}, {drawing.Second, 6, "BROKEN"}, {drawing.Seams, 5, "BROKEN"},
	{drawing.Darts, 4, "CONTINUOUS"}, {drawing.Feather, 8, "CONTINUOUS"}, {drawing.Steps, 30, "CONTINUOUS"},
	{drawing.Marks, 3, "CONTINUOUS"}, {drawing.Text, 2, "CONTINUOUS"},
}

// named is how a layer is written: release 12 has capitals only.
func named(l drawing.Layer) string { return strings.ToUpper(string(l)) }

// Piece writes a piece at true size, moved so that nothing lies left of or below the origin.
// The same piece gives the same bytes. A piece that cannot be drawn is an error, and nothing is written.
func Piece(w io.Writer, pc piece.Piece) error {
	it, width, height, err := sheet.Alone(pc)
	if err != nil {
		return fmt.Errorf("dxf: %w", err)
	}
	f := &file{item: it}
	f.head(width, height)
	f.pair(0, "SECTION")
	f.pair(2, "ENTITIES")
	f.entities()
	f.pair(0, "ENDSEC")
	f.pair(0, "EOF")
	if _, err := f.out.WriteTo(w); err != nil {
		return fmt.Errorf("dxf: %w", err)
	}
	return nil
}

// file is a drawing in the making.
type file struct {
	out  bytes.Buffer
	item sheet.Item
}

// pair is a group: what the value means, and the value.
func (f *file) pair(code int, value any) { fmt.Fprintf(&f.out, "%3d\n%v\n", code, value) }

// number is finer than any machine moves. Adding nought turns a negative nought into a plain one.
func (f *file) number(code int, v float64) {
	const grains = 1e4
	f.pair(code, fmt.Sprintf("%.4f", math.Round(v*grains)/grains+0))
}

func (f *file) point(code int, x, y float64) {
	f.number(code, x)
	f.number(code+10, y)
	f.number(code+20, 0)
}

// head says which release this is, how large the drawing, and which layers it has.
func (f *file) head(width, height float64) {
	f.pair(999, "one unit is one millimetre")
	f.pair(999, "release 12 cannot say so itself: choose millimetres where a program asks")
	f.pair(0, "SECTION")
	f.pair(2, "HEADER")
	f.pair(9, "$ACADVER")
	f.pair(1, "AC1009")
	f.pair(9, "$EXTMIN")
	f.point(10, 0, 0)
	f.pair(9, "$EXTMAX")
	f.point(10, width, height)
	f.pair(0, "ENDSEC")
	f.pair(0, "SECTION")
	f.pair(2, "TABLES")
	f.table("LTYPE", 2)
	f.lineType("CONTINUOUS")
	f.lineType("BROKEN", 6, -2)
	f.pair(0, "ENDTAB")
	f.table("LAYER", len(looks))
	for _, l := range looks {
		f.pair(0, "LAYER")
		f.pair(2, named(l.layer))
		f.pair(70, 0)
		f.pair(62, l.colour)
		f.pair(6, l.line)
	}
	f.pair(0, "ENDTAB")
	f.pair(0, "ENDSEC")
}

// lineType takes the lengths of dashes, and of gaps as negative numbers.
func (f *file) lineType(name string, dashes ...float64) {
	whole := 0.0
	for _, d := range dashes {
		whole += math.Abs(d)
	}
	f.pair(0, "LTYPE")
	f.pair(2, name)
	f.pair(70, 0)
	f.pair(3, "")
	f.pair(72, 65) // the only way in which a line can be laid out
	f.pair(73, len(dashes))
	f.number(40, whole)
	for _, d := range dashes {
		f.number(49, d)
	}
}

func (f *file) table(name string, entries int) {
	f.pair(0, "TABLE")
	f.pair(2, name)
	f.pair(70, entries)
}
