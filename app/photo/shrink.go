package photo

import (
	"image"
	"image/draw"
)

// step is the least number of pixels, along each side, to one that is shown.
func step(w, h int) int {
	n := 1
	for max(w/n, 1)*max(h/n, 1) > Shown {
		n++
	}
	return n
}

// shrink makes one pixel, their mean, of each n × n. What is left over is left out at the side that is counted
// last, so that pixel k of the photograph as seen is always the mean of n·k and those after it.
func shrink(whole image.Image, n int, h held) *image.RGBA {
	b := whole.Bounds()
	small := image.NewRGBA(image.Rect(0, 0, max(b.Dx()/n, 1), max(b.Dy()/n, 1)))
	from := b.Min
	if h.fromRight {
		from.X = max(from.X, b.Max.X-n*small.Rect.Dx())
	}
	if h.fromBelow {
		from.Y = max(from.Y, b.Max.Y-n*small.Rect.Dy())
	}
	strip := image.NewRGBA(image.Rect(0, 0, n*small.Rect.Dx(), n))
	for y := range small.Rect.Dy() {
		draw.Draw(strip, strip.Rect, whole, from.Add(image.Pt(0, n*y)), draw.Src)
		average(small.Pix[y*small.Stride:][:small.Stride], strip, n)
	}
	return small
}

// average fills a row with the means of n × n pixels of a strip n high.
func average(row []uint8, strip *image.RGBA, n int) {
	if n == 1 {
		copy(row, strip.Pix)
		return
	}
	for x := 0; x < len(row); x += 4 {
		var sum [4]int
		for v := range n {
			line := strip.Pix[v*strip.Stride+n*x:][:4*n]
			for i, p := range line {
				sum[i%4] += int(p)
			}
		}
		for c := range sum {
			row[x+c] = uint8((sum[c] + n*n/2) / (n * n))
		}
	}
}

// smallest is the longer side of the smallest size that is worth keeping, pixels.
const smallest = 256

// halves are a picture and smaller ones of it, each half as wide and high as the one before: a picture that is
// seen small is taken from one of about its size, or it flickers when it is moved.
func halves(first *image.RGBA) []*image.RGBA {
	all := []*image.RGBA{first}
	for size := first.Rect.Size(); min(size.X, size.Y) > 1 && max(size.X, size.Y) > smallest; size = size.Div(2) {
		all = append(all, shrink(all[len(all)-1], 2, held{}))
	}
	return all
}
