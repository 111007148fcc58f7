// Package photo reads a photograph that is laid behind the figure: JPEG or PNG, within limits that are looked
// at before anything large is made of it.
// It does not know where in the view a photograph lies.
package photo

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"image"
	_ "image/jpeg" // the two kinds that are read
	_ "image/png"
	"io"
	"os"
)

// The limits: a sheet scanned at 600 dpi has 35 million pixels, and no camera in use makes files of 64 MiB
// (from memory). A photograph at the limit takes some 700 MB while it is read.
const (
	MostBytes  = 64 << 20
	MostPixels = 60_000_000
	MostSide   = 100_000 // as far as a record counts pixels
)

// Shown is the most pixels that are kept of a photograph: more than a window has.
const Shown = 4_000_000

// Photo is a photograph as it is shown: turned as the camera says, and smaller where it has more pixels than a
// window. Its points are counted in the pixels of the whole, once turned.
type Photo struct {
	Sizes         []*image.RGBA // the largest first, each with half the width and height of the one before
	Shrunk        float64       // pixels of the whole to one of the first, along each side: a whole number
	Width, Height int           // of the whole, pixels
	SHA256        string        // of the file, hexadecimal
}

// Open reads a photograph. The error names the file and what is allowed.
func Open(path string) (Photo, error) {
	b, err := read(path)
	if err != nil {
		return Photo{}, err
	}
	p, err := Decode(b)
	if err != nil {
		return Photo{}, fmt.Errorf("%s: %w", path, err)
	}
	return p, nil
}

// read is the file's content, as long as it is a file that ends.
func read(path string) ([]byte, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, fmt.Errorf("%s: this is no file; a photograph is a JPEG or PNG file", path)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, MostBytes+1))
}

// Decode makes a photograph of a file's bytes. The error says what is allowed.
func Decode(b []byte) (Photo, error) {
	if len(b) > MostBytes {
		return Photo{}, fmt.Errorf("the file is larger than %d MiB, the most that is read", MostBytes>>20)
	}
	size, kind, err := image.DecodeConfig(bytes.NewReader(b))
	if err != nil || kind != "jpeg" && kind != "png" {
		return Photo{}, fmt.Errorf("this is no photograph that can be read; JPEG and PNG files are")
	}
	if w, h := size.Width, size.Height; min(w, h) < 1 || max(w, h) > MostSide || w > MostPixels/h {
		return Photo{}, fmt.Errorf("the photograph has %d × %d pixels; up to %d million are read, %d a side", w, h, MostPixels/1_000_000, MostSide)
	}
	whole, _, err := image.Decode(bytes.NewReader(b))
	if err != nil {
		return Photo{}, fmt.Errorf("the photograph is damaged: %w", err)
	}
	sum, held := sha256.Sum256(b), heldAs(b)
	p := Photo{SHA256: hex.EncodeToString(sum[:]), Width: size.Width, Height: size.Height}
	if held.turned {
		p.Width, p.Height = size.Height, size.Width
	}
	n := step(size.Width, size.Height)
	p.Shrunk = float64(n)
	p.Sizes = halves(held.upright(shrink(whole, n, held)))
	return p, nil
}
