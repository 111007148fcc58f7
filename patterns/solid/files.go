package solid

import (
	"bufio"
	"encoding/binary"
	"fmt"
	"io"
	"math"

	"understructure/geometry/space"
)

// says is at the head of every file; in STL there is room for 80 letters, and the first word must not be "solid", which
// would make it the other kind of STL.
const says = "one unit is one millimetre, z up"

// STL writes the body as binary STL. The same body gives the same bytes.
func (b Body) STL(w io.Writer) error {
	out := bufio.NewWriter(w)
	var head [80]byte
	copy(head[:], b.Name+", nothing else; "+says)
	out.Write(head[:])
	binary.Write(out, binary.LittleEndian, uint32(len(b.Triangles)))
	var facet [50]byte
	for _, t := range b.Triangles {
		p, q, r := b.Points[t[0]], b.Points[t[1]], b.Points[t[2]]
		for i, v := range []space.Point{q.Sub(p).Cross(r.Sub(p)).Unit(), p, q, r} {
			for k, x := range []float64{v.X, v.Y, v.Z} {
				binary.LittleEndian.PutUint32(facet[12*i+4*k:], math.Float32bits(float32(x)))
			}
		}
		out.Write(facet[:])
	}
	if err := out.Flush(); err != nil { // the first error of any write above
		return fmt.Errorf("solid: %w", err)
	}
	return nil
}

// OBJ writes bodies as Wavefront OBJ, each an object of its name, to a ten-thousandth of a millimetre. The same bodies
// give the same bytes.
func OBJ(w io.Writer, bodies ...Body) error {
	out := bufio.NewWriter(w)
	fmt.Fprintf(out, "# %s\n# what has no name here is not in it, such as what fills the sleeves: that is soft, and hangs as they do\n", says)
	before := 1
	for _, b := range bodies {
		fmt.Fprintf(out, "o %s\n", b.Name)
		for _, p := range b.Points {
			fmt.Fprintf(out, "v %.4f %.4f %.4f\n", p.X, p.Y, p.Z)
		}
		for _, t := range b.Triangles {
			fmt.Fprintf(out, "f %d %d %d\n", t[0]+before, t[1]+before, t[2]+before)
		}
		before += len(b.Points)
	}
	if err := out.Flush(); err != nil {
		return fmt.Errorf("solid: %w", err)
	}
	return nil
}
