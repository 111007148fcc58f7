package judge

import (
	"bytes"
	"fmt"
	"math"
	"testing"

	"understructure/geometry/plane"
)

// Renderers are three programs that draw PDF, of three makes.
var Renderers = []string{"pdftoppm", "mutool", "gs"}

// dpi is how finely pages are drawn: a pixel is 0.042 mm.
const dpi = 600

// Picture is a page in grey, as another program draws it: a byte a pixel from the top left, 0 is black.
type Picture struct {
	width, height int
	pixels        []byte
}

// Render has a page of a PDF, from 1, drawn by one of the renderers.
func Render(t testing.TB, by, pdf string, page int) Picture {
	t.Helper()
	n := fmt.Sprint(page)
	switch by {
	case "pdftoppm":
		return Squeezed(t, pdf, page, 1, 1)
	case "mutool":
		return picture(t, Run(t, by, "draw", "-q", "-r", fmt.Sprint(dpi), "-c", "gray", "-F", "pgm", "-o", "-", pdf, n))
	case "gs":
		return picture(t, Run(t, by, "-q", "-dBATCH", "-dNOPAUSE", "-sDEVICE=pgmraw", fmt.Sprint("-r", dpi), "-dGraphicsAlphaBits=4",
			"-dFirstPage="+n, "-dLastPage="+n, "-sOutputFile=-", pdf))
	}
	t.Fatalf("%s draws no PDF", by)
	return Picture{}
}

// Squeezed has a page drawn as by a printer that makes every length so many times as long, across and up.
func Squeezed(t testing.TB, pdf string, page int, across, up float64) Picture {
	t.Helper()
	n := fmt.Sprint(page)
	return picture(t, Run(t, "pdftoppm", "-gray", "-rx", fmt.Sprint(dpi*across), "-ry", fmt.Sprint(dpi*up), "-f", n, "-l", n, "-singlefile", pdf))
}

// Corner has the lower left corner of a page drawn, large enough for both rules, of a page so high in millimetres. It
// spares drawing the rest of a large one; mutool cannot.
func Corner(t testing.TB, by, pdf string, page int, height float64) Picture {
	t.Helper()
	const wide, high = 130 * dpi / 254 * 10, 145 * dpi / 254 * 10
	n := fmt.Sprint(page)
	if by == "gs" {
		return picture(t, Run(t, by, "-q", "-dBATCH", "-dNOPAUSE", "-sDEVICE=pgmraw", fmt.Sprint("-r", dpi), fmt.Sprintf("-g%dx%d", wide, high),
			"-dGraphicsAlphaBits=4", "-dFirstPage="+n, "-dLastPage="+n, "-sOutputFile=-", pdf))
	}
	top := int(math.Ceil(height/25.4*dpi)) - high
	return picture(t, Run(t, "pdftoppm", "-gray", "-r", fmt.Sprint(dpi), "-f", n, "-l", n, "-singlefile",
		"-x", "0", "-y", fmt.Sprint(top), "-W", fmt.Sprint(wide), "-H", fmt.Sprint(high), pdf))
}

// picture reads PGM.
func picture(t testing.TB, pgm []byte) Picture {
	t.Helper()
	var p Picture
	var most int
	r := bytes.NewReader(withoutComment(pgm))
	if _, err := fmt.Fscanf(r, "P5\n%d %d\n%d\n", &p.width, &p.height, &most); err != nil {
		t.Fatalf("not a grey picture: %v", err)
	}
	p.pixels = make([]byte, p.width*p.height)
	if n, _ := r.Read(p.pixels); n != len(p.pixels) {
		t.Fatalf("%d of %d pixels", n, len(p.pixels))
	}
	return p
}

// withoutComment drops the line that ghostscript writes after the first.
func withoutComment(pgm []byte) []byte {
	if i := bytes.Index(pgm, []byte("\n#")); i == 2 {
		end := bytes.IndexByte(pgm[i+1:], '\n')
		return append([]byte("P5"), pgm[i+1+end:]...)
	}
	return pgm
}

func (p Picture) ink(x, y int) float64 {
	if x < 0 || y < 0 || x >= p.width || y >= p.height {
		return 0
	}
	return 255 - float64(p.pixels[y*p.width+x])
}

// Middle is where the middle of the dark line within 1 mm of a point lies, in millimetres from the lower left:
// its x where across, else its y.
func (p Picture) Middle(near plane.Point, across bool) float64 {
	const mm = dpi / 25.4
	x, y := int(near.X*mm), p.height-1-int(near.Y*mm)
	sum, weight := 0.0, 0.0
	for d := -24; d <= 24; d++ {
		ink, at := p.ink(x, y+d), float64(p.height-y-d)-0.5
		if across {
			ink, at = p.ink(x+d, y), float64(x+d)+0.5
		}
		sum, weight = sum+ink*at, weight+ink
	}
	return sum / weight / mm
}
