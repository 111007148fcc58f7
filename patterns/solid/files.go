package solid

import (
	"bufio"
	"encoding/binary"
	"fmt"
	"io"
	"math"

	"understructure/geometry/space"
)

// STL writes the body as binary STL. The same body gives the same bytes.
func (b Body) STL(w io.Writer) error {
	out := bufio.NewWriter(w)
	var head [80]byte // must not begin with "solid", which would make it the other kind of STL
	copy(head[:], "mount, one unit is one millimetre, z up")
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

// OBJ writes the body as Wavefront OBJ, to a ten-thousandth of a millimetre. The same body gives the same bytes.
func (b Body) OBJ(w io.Writer) error {
	out := bufio.NewWriter(w)
	fmt.Fprint(out, "# one unit is one millimetre, z up\no mount\n")
	for _, p := range b.Points {
		fmt.Fprintf(out, "v %.4f %.4f %.4f\n", p.X, p.Y, p.Z)
	}
	for _, t := range b.Triangles {
		fmt.Fprintf(out, "f %d %d %d\n", t[0]+1, t[1]+1, t[2]+1)
	}
	if err := out.Flush(); err != nil {
		return fmt.Errorf("solid: %w", err)
	}
	return nil
}
