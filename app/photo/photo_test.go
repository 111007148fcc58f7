package photo

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
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
	return p.Sizes[0].RGBAAt(int(x*float64(p.Sizes[0].Rect.Dx())), int(y*float64(p.Sizes[0].Rect.Dy())))
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
	if size := p.Sizes[0].Rect; size.Dx()*size.Dy() > Shown || p.Width != 5000 || p.Shrunk != 2 {
		t.Errorf("shown with %v, %v to one of %d", size, p.Shrunk, p.Width)
	}
	for i, each := range p.Sizes[1:] {
		if before := p.Sizes[i].Rect.Size().Div(2); each.Rect.Size() != before {
			t.Errorf("size %d is %v, want %v", i+1, each.Rect.Size(), before)
		}
	}
	if last := p.Sizes[len(p.Sizes)-1].Rect; max(last.Dx(), last.Dy()) > smallest {
		t.Errorf("the smallest is %v", last)
	}
}

// Stripes finer than a pixel that is shown are grey there, not black or white.
func TestAShrunkPixelIsTheMean(t *testing.T) {
	img := image.NewGray(image.Rect(0, 0, 3000, 3000))
	for i := range img.Pix {
		img.Pix[i] = uint8(i % 2 * 255)
	}
	p, err := Decode(pngOf(t, img))
	if err != nil {
		t.Fatal(err)
	}
	for _, size := range p.Sizes {
		if c := size.RGBAAt(100, 100); c != (color.RGBA{128, 128, 128, 255}) {
			t.Errorf("%v in %v, want the grey between black and white", c, size.Rect)
		}
	}
}

// Where the sides are no multiple of the step, a mark is still shown at its pixel over the step, from
// whichever side the pixels are counted.
func TestPointsStayWhereTheyAre(t *testing.T) {
	const w, h, mark = 3203, 2401, 16 // a step of 2 leaves one column and one row over
	img := image.NewGray(image.Rect(0, 0, w, h))
	for y := range mark {
		for x := range mark {
			img.SetGray(1600+x, 800+y, color.Gray{255})
		}
	}
	for held, at := range map[uint16]image.Point{1: {1600, 800}, 2: {w - 1600 - mark, 800}, 3: {w - 1600 - mark, h - 800 - mark}, 6: {h - 800 - mark, 1600}} {
		p, err := Decode(jpegOf(t, img, held))
		if err != nil {
			t.Fatal(err)
		}
		first := p.Sizes[0]
		sum, cx, cy := 0.0, 0.0, 0.0
		for y := range first.Rect.Dy() {
			for x := range first.Rect.Dx() {
				v := float64(first.RGBAAt(x, y).R)
				sum, cx, cy = sum+v, cx+v*(float64(x)+0.5), cy+v*(float64(y)+0.5)
			}
		}
		cx, cy = cx/sum*p.Shrunk, cy/sum*p.Shrunk
		if wantX, wantY := float64(at.X+mark/2), float64(at.Y+mark/2); math.Abs(cx-wantX) > 0.1 || math.Abs(cy-wantY) > 0.1 {
			t.Errorf("held %d: the middle of the mark lies at %.2f, %.2f, want %v, %v", held, cx, cy, wantX, wantY)
		}
	}
}

func TestWhatIsNoPhotographIsRefused(t *testing.T) {
	sized := func(w, h uint32) []byte { // what is left of the file stays as it was
		b := pngOf(t, image.NewGray(image.Rect(0, 0, 8, 8)))
		binary.BigEndian.PutUint32(b[16:], w)
		binary.BigEndian.PutUint32(b[20:], h)
		binary.BigEndian.PutUint32(b[29:], crc32.ChecksumIEEE(b[12:29]))
		return b
	}
	whole := pngOf(t, corners(60, 40))
	for name, c := range map[string]struct {
		b    []byte
		says string
	}{
		"text":         {[]byte("<html>"), "JPEG and PNG files are"},
		"empty":        {nil, "JPEG and PNG files are"},
		"another kind": {[]byte("GIF89a\x01\x00\x01\x00\x00\x00\x00"), "JPEG and PNG files are"},
		"too large":    {sized(100000, 100000), "100000 × 100000 pixels; up to 60 million"},
		"too wide":     {sized(100001, 1), "100000 a side"},
		"no height":    {sized(100, 0), "JPEG and PNG files are"},
		"cut short":    {whole[:len(whole)/2], "damaged"},
		"too long":     {make([]byte, MostBytes+1), "larger than 64 MiB"},
	} {
		if _, err := Decode(c.b); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want %q", name, err, c.says)
		}
	}
}

// What is refused is named with its file; what is no file is not read at all.
func TestARefusalNamesTheFile(t *testing.T) {
	dir := t.TempDir()
	text, huge := filepath.Join(dir, "notes.jpg"), filepath.Join(dir, "huge.png")
	if err := os.WriteFile(text, []byte("no picture"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(huge, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(huge, MostBytes+1); err != nil {
		t.Fatal(err)
	}
	for path, says := range map[string]string{text: "JPEG and PNG", huge: "64 MiB", dir: "no file", filepath.Join(dir, "none.png"): "none.png"} {
		if _, err := Open(path); err == nil || !strings.Contains(err.Error(), says) || !strings.Contains(err.Error(), path) {
			t.Errorf("%s: %v, want %q", path, err, says)
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
		p, err := Decode(b)
		if err != nil {
			return
		}
		if p.Width < 1 || p.Height < 1 || len(p.SHA256) != 64 || len(p.Sizes) == 0 {
			t.Fatalf("a photograph of %d × %d pixels, %d sizes", p.Width, p.Height, len(p.Sizes))
		}
		if got := p.Sizes[0].Rect.Size(); got != image.Pt(p.Width, p.Height).Div(int(p.Shrunk)) {
			t.Errorf("shown with %v", got)
		}
	})
}

// BenchmarkDecode is a photograph of 24 million pixels.
func BenchmarkDecode(b *testing.B) {
	file := jpegOf(b, image.NewRGBA(image.Rect(0, 0, 6000, 4000)), 6)
	for b.Loop() {
		if _, err := Decode(file); err != nil {
			b.Fatal(err)
		}
	}
}
