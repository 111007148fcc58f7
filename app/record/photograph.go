package record

import (
	"slices"

	"understructure/geometry/plane"
)

// Photograph is a picture laid behind the outline. It is scaled and turned by two of its points
// whose distance is known; until they are given, both are the same point or Length is 0.
// Pixels count to the right and down from the picture's upper left corner.
type Photograph struct {
	View      string      // one of Views
	File      string      // its path as given, from the record's folder where it is relative
	SHA256    string      // of the file, 64 lower-case hexadecimal digits; "" where not known
	Low, High plane.Point // pixels; High lies straight above Low on the figure
	Length    float64     // from Low to High, millimetres; 0 where not given
	At        plane.Point // where Low lies in the view: across and up from the floor, millimetres
	Fade      float64     // from 0, as it is, to 1, not to be seen
	Trace     []plane.Point
}

// Check says, as Decode would, why p cannot stand in a record of the given unit; nil where it can.
func (p Photograph) Check(unit string) error {
	return check(unit, func(d *decoder, e encoder) { d.photograph("photograph", e.photograph(p)) })
}

// Clone returns a copy whose trace can be changed.
func (p Photograph) Clone() Photograph {
	p.Trace = slices.Clip(slices.Clone(p.Trace))
	return p
}

// pixels and shares are plain numbers.
var pixels, shares = quantity{"", 1}, quantity{"", 1}

func (d *decoder) photograph(path string, n node) Photograph {
	var p Photograph
	var length, fade *float64
	d.object(path, n,
		field{"view", d.word(&p.View, Views)},
		field{"file", d.text(&p.File, longestPath)},
		field{"sha256", blank(d.digest(&p.SHA256))},
		field{"low", d.point(&p.Low, pixels, PixelLimit)},
		field{"high", d.point(&p.High, pixels, PixelLimit)},
		field{"length", d.optional(&length, d.lengths(), PhotographLimit)},
		field{"at", d.point(&p.At, d.lengths(), PlaceLimit)},
		field{"fade", d.optional(&fade, shares, FadeLimit)},
		field{"trace", items(d, &p.Trace, MostTrace, "points", func(path string, n node) (q plane.Point) {
			d.point(&q, pixels, PixelLimit)(path, n)
			return q
		})},
	)
	d.must(path, "view", p.View, Views)
	if p.File == "" {
		d.refuse(join(path, "file"), "", "must be given", oneLine(longestPath))
	}
	if length != nil {
		p.Length = *length
	}
	if fade != nil {
		p.Fade = *fade
	}
	return p
}

// point reads a list of two numbers.
func (d *decoder) point(into *plane.Point, q quantity, l Limit) func(string, node) {
	return func(path string, n node) {
		pair, ok := n.(list)
		if !ok || len(pair) != 2 {
			d.refuse(path, written(n), "is not possible", "a list of two numbers, each "+q.allowed(l))
			return
		}
		into.X, _ = d.number(path+"[0]", pair[0], q, l)
		into.Y, _ = d.number(path+"[1]", pair[1], q, l)
	}
}

func (e encoder) photograph(p Photograph) node {
	var o object
	o.put("view", p.View)
	o.put("file", p.File)
	o.put("sha256", p.SHA256)
	o.put("low", unlessZero(p.Low, pixel))
	o.put("high", unlessZero(p.High, pixel))
	o.put("length", unlessZero(p.Length, e.length))
	o.put("at", unlessZero(p.At, func(p plane.Point) node { return list{e.length(p.X), e.length(p.Y)} }))
	o.put("fade", unlessZero(p.Fade, plain))
	o.put("trace", listed(p.Trace, pixel))
	return o
}

func pixel(p plane.Point) node { return list{plain(p.X), plain(p.Y)} }

// unlessZero writes what differs from what an absent key means.
func unlessZero[T comparable](v T, write func(T) node) node {
	var zero T
	if v == zero {
		return nil
	}
	return write(v)
}
