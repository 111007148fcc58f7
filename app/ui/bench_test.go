package ui

import (
	"context"
	"image"
	"testing"

	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/app/ui/picture"
	"understructure/assets"
)

// demo is one of the program's own records.
func demo(b *testing.B, name string) record.Record {
	b.Helper()
	f, err := assets.Demos.Open(name)
	if err != nil {
		b.Fatal(err)
	}
	defer f.Close()
	r, err := record.Decode(f)
	if err != nil {
		b.Fatal(err)
	}
	return r
}

var demos = map[string]string{"padded": assets.First, "slices": "demo-three-values.json"}

// BenchmarkKeystroke is from a changed value to the painted picture: what one waits for while typing.
func BenchmarkKeystroke(b *testing.B) {
	for build, name := range demos {
		b.Run(build, func(b *testing.B) {
			r := demo(b, name)
			for b.Loop() {
				p, err := pipeline.Shape(context.Background(), r)
				if err != nil {
					b.Fatal(err)
				}
				paint(picture.NewBody(p.Surface))
			}
		})
	}
}

// BenchmarkFrame is the picture alone, at the size that it has in a large window.
func BenchmarkFrame(b *testing.B) {
	for build, name := range demos {
		b.Run(build, func(b *testing.B) {
			p, err := pipeline.Shape(context.Background(), demo(b, name))
			if err != nil {
				b.Fatal(err)
			}
			body := picture.NewBody(p.Surface)
			for b.Loop() {
				paint(body)
			}
		})
	}
}

// paint draws front and side beside each other.
func paint(body *picture.Body) {
	img := image.NewRGBA(image.Rect(0, 0, 1200, 900))
	scale := 850 / (body.High.Z - body.Low.Z)
	for v, x := range []float64{300, 900} {
		body.Elevation(img, picture.View(v), picture.Frame{Scale: scale, X: x, Y: 875 + body.Low.Z*scale}, picture.Light)
	}
}
