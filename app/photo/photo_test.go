package photo

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// corners is a picture whose left upper corner is white and whose right upper corner is red.
func corners(w, h int) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			c := color.RGBA{A: 255}
			switch {
			case x < w/2 && y < h/2:
				c = color.RGBA{255, 255, 255, 255}
			case y < h/2:
				c = color.RGBA{R: 255, A: 255}
			}
			img.SetRGBA(x, y, c)
		}
	}
	return img
}

func pngOf(t testing.TB, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// jpegOf is a JPEG that says how the camera was held.
func jpegOf(t testing.TB, img image.Image, held uint16) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, nil); err != nil {
		t.Fatal(err)
	}
	tiff := append([]byte("Exif\x00\x00MM\x00*\x00\x00\x00\x08\x00\x01"), 0x01, 0x12, 0, 3, 0, 0, 0, 1)
	tiff = binary.BigEndian.AppendUint16(tiff, held)
	tiff = append(tiff, 0, 0, 0, 0, 0, 0)
	segment := append([]byte{0xff, 0xe1}, binary.BigEndian.AppendUint16(nil, uint16(len(tiff)+2))...)
	return append(append(append([]byte{}, b.Bytes()[:2]...), append(segment, tiff...)...), b.Bytes()[2:]...)
}

func at(p Photo, x, y float64) color.RGBA {
	return p.Image.RGBAAt(int(x*float64(p.Image.Rect.Dx())), int(y*float64(p.Image.Rect.Dy())))
}

func TestAPhotographIsReadWithItsChecksum(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dress.png")
	if err := os.WriteFile(path, pngOf(t, corners(60, 40)), 0o600); err != nil {
		t.Fatal(err)
	}
	p, err := Open(path)
	if err != nil {
		t.Fatal(err)
	}
	if p.Width != 60 || p.Height != 40 || p.Shrunk != 1 || len(p.SHA256) != 64 {
		t.Errorf("read as %d × %d, shrunk %v, checksum %q", p.Width, p.Height, p.Shrunk, p.SHA256)
	}
}

// Where the white and the red corner go for each way of holding a camera (Exif 2.3, tag 0x0112).
func TestAPhotographStandsAsItWasSeen(t *testing.T) {
	for held, where := range map[uint16][2][2]float64{
		1: {{.1, .1}, {.9, .1}}, 2: {{.9, .1}, {.1, .1}}, 3: {{.9, .9}, {.1, .9}}, 4: {{.1, .9}, {.9, .9}},
		5: {{.1, .1}, {.1, .9}}, 6: {{.9, .1}, {.9, .9}}, 7: {{.9, .9}, {.9, .1}}, 8: {{.1, .9}, {.1, .1}},
	} {
		p, err := Decode(jpegOf(t, corners(64, 32), held))
		if err != nil {
			t.Fatal(err)
		}
		white, red := at(p, where[0][0], where[0][1]), at(p, where[1][0], where[1][1])
		if white.G < 200 || red.R < 200 || red.G > 80 {
			t.Errorf("held %d: at the white corner %v, at the red one %v", held, white, red)
		}
		if wide := p.Width > p.Height; wide != (held < 5) {
			t.Errorf("held %d: %d × %d", held, p.Width, p.Height)
		}
	}
}

func TestALargePhotographIsShrunk(t *testing.T) {
	p, err := Decode(pngOf(t, image.NewGray(image.Rect(0, 0, 5000, 3000))))
	if err != nil {
		t.Fatal(err)
	}
	if size := p.Image.Rect; size.Dx()*size.Dy() > shown || p.Width != 5000 || p.Shrunk != 2 {
		t.Errorf("shown with %v, %v to one of %d", size, p.Shrunk, p.Width)
	}
}

func TestWhatIsNoPhotographIsRefused(t *testing.T) {
	huge := pngOf(t, image.NewGray(image.Rect(0, 0, 8, 8)))
	binary.BigEndian.PutUint32(huge[16:], 100000) // the width in its header
	binary.BigEndian.PutUint32(huge[20:], 100000)
	whole := pngOf(t, corners(60, 40))
	for name, c := range map[string]struct {
		b    []byte
		says string
	}{
		"text":      {[]byte("<html>"), "JPEG and PNG"},
		"empty":     {nil, "JPEG and PNG"},
		"too large": {huge, "million"},
		"cut short": {whole[:len(whole)/2], "damaged"},
	} {
		if _, err := Decode(c.b); err == nil || !strings.Contains(err.Error(), c.says) && !strings.Contains(err.Error(), "JPEG and PNG") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func FuzzDecode(f *testing.F) {
	f.Add(pngOf(f, corners(8, 6)))
	f.Add(jpegOf(f, corners(8, 6), 6))
	f.Add([]byte{0xff, 0xd8, 0xff, 0xe1, 0, 20, 'E', 'x', 'i', 'f', 0, 0})
	f.Fuzz(func(t *testing.T, b []byte) {
		if c, _, err := image.DecodeConfig(bytes.NewReader(b)); err == nil && c.Width*c.Height > 1e6 {
			return // only slow
		}
		if p, err := Decode(b); err == nil && (p.Image == nil || p.Width < 1 || p.Height < 1) {
			t.Error("a photograph without pixels")
		}
	})
}
