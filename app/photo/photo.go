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
	"image/draw"
	_ "image/jpeg" // the two kinds that are read
	_ "image/png"
	"io"
	"os"
)

// The limits: a sheet scanned at 600 dpi has 35 million pixels, and no camera in use makes files of 64 MiB.
const (
	MostBytes  = 64 << 20
	MostPixels = 60e6
)

// shown is the most pixels that are kept of a photograph: more than a screen shows.
const shown = 4e6

// Photo is a photograph as it is shown: turned as the camera says, and smaller where it has more pixels than a screen.
type Photo struct {
	Image         *image.RGBA
	Width, Height int     // of the whole photograph, pixels, once turned
	Shrunk        float64 // pixels of the whole to one of Image, along each side
	SHA256        string  // of the file, hexadecimal
}

// Open reads a photograph. The error names the file and what is allowed.
func Open(path string) (Photo, error) {
	f, err := os.Open(path)
	if err != nil {
		return Photo{}, err
	}
	defer f.Close()
	b, err := io.ReadAll(io.LimitReader(f, MostBytes+1))
	if err != nil {
		return Photo{}, err
	}
	p, err := Decode(b)
	if err != nil {
		return Photo{}, fmt.Errorf("%s: %w", path, err)
	}
	return p, nil
}

// Decode makes a photograph of a file's bytes.
func Decode(b []byte) (Photo, error) {
	if len(b) > MostBytes {
		return Photo{}, fmt.Errorf("the file is larger than %d MiB, the most that is read", MostBytes>>20)
	}
	size, kind, err := image.DecodeConfig(bytes.NewReader(b))
	if err != nil || kind != "jpeg" && kind != "png" {
		return Photo{}, fmt.Errorf("this is no photograph that can be read; JPEG and PNG are")
	}
	if pixels := float64(size.Width) * float64(size.Height); pixels > MostPixels || pixels < 1 {
		return Photo{}, fmt.Errorf("the photograph has %d × %d pixels; up to %.0f million are read", size.Width, size.Height, MostPixels/1e6)
	}
	whole, _, err := image.Decode(bytes.NewReader(b))
	if err != nil {
		return Photo{}, fmt.Errorf("the photograph is damaged: %w", err)
	}
	sum := sha256.Sum256(b)
	p := Photo{SHA256: hex.EncodeToString(sum[:])}
	p.Image, p.Shrunk = shrink(whole)
	p.Image = turned(p.Image, orientation(b))
	p.Width, p.Height = size.Width, size.Height
	if quarter := orientation(b) >= 5; quarter {
		p.Width, p.Height = size.Height, size.Width
	}
	return p, nil
}

// shrink takes every n-th pixel, with the smallest n that leaves no more than are shown.
func shrink(whole image.Image) (*image.RGBA, float64) {
	b := whole.Bounds()
	n := 1
	for float64(b.Dx()/n)*float64(b.Dy()/n) > shown {
		n++
	}
	small := image.NewRGBA(image.Rect(0, 0, max(b.Dx()/n, 1), max(b.Dy()/n, 1)))
	if n == 1 {
		draw.Draw(small, small.Rect, whole, b.Min, draw.Src)
		return small, 1
	}
	for y := range small.Rect.Dy() {
		for x := range small.Rect.Dx() {
			small.Set(x, y, whole.At(b.Min.X+x*n, b.Min.Y+y*n))
		}
	}
	return small, float64(n)
}
