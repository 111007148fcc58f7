package main

import (
	"bufio"
	"context"
	"fmt"
	"image"
	"math"
	"os"
	"path/filepath"

	"understructure/app/pipeline"
	"understructure/app/record"
	"understructure/app/ui/picture"
	"understructure/geometry/flatten"
	"understructure/geometry/measure"
	"understructure/geometry/padding"
	"understructure/geometry/plane"
	"understructure/geometry/shapetest"
	"understructure/geometry/surface"
	"understructure/geometry/torso"
	"understructure/patterns/drawing"
	"understructure/patterns/vector"
)

// work is what both sides do, and where the references lie.
type work struct {
	folder       string
	figure, form surface.Surface // 200 slices of 256 directions each
	panel        flatten.Patch
	outlines     []plane.Ring // of one page
	records      map[string]record.Record
	notes        []string
}

// newWork makes the inputs and writes them for the references.
func newWork(folder string) (*work, error) {
	w := &work{folder: folder, records: map[string]record.Record{}}
	var err error
	if w.figure, err = skin(840, 620, 950); err != nil {
		return nil, err
	}
	if w.form, err = skin(780, 570, 870); err != nil {
		return nil, err
	}
	w.figure, _ = padding.Contain(w.figure, w.form, cover) // a figure that holds the form, as every mount's
	w.panel.Points, w.panel.Triangles = shapetest.Corseted(67, 90)
	w.outlines = page()
	for _, name := range []string{"demo-1872-bodice", "demo-three-values"} {
		if w.records[name], err = record.Load("assets/" + name + ".json"); err != nil {
			return nil, err
		}
	}
	sections := make([]plane.Ring, len(w.figure.R))
	for i := range sections {
		sections[i] = w.figure.R[i].Ring()
	}
	if err := w.write("sections.txt", rings(sections)); err != nil {
		return nil, err
	}
	if err := w.write("outlines.txt", rings(w.outlines)); err != nil {
		return nil, err
	}
	return w, w.write("panel.off", off(w.panel))
}

// cover is the thickness of the cover, mm.
const cover = 1.0

// rows are the lines of the table in order.
func (w *work) rows() []row {
	return []row{
		{"whole torso, 200 × 256: surface, normals, thickness, layers, tapes; GEOS: offset of 200 slices", w.whole, w.geos("offset"), 0.5},
		{"offset of 200 slices × 256", w.parallels, w.geos("offset"), 0},
		{"hulls of 200 slices × 256", w.hulls, w.geos("hull"), 0},
		{"panel of 12,000 triangles laid flat; CGAL: ARAP", w.flat(w.panel), w.cgal("arap"), 0.25},
		{"panel of 12,000 triangles laid flat; CGAL: LSCM", w.flat(w.panel), w.cgal("lscm"), 0},
		{"60 pages × 50 paths × 300 points; Cairo", w.book, w.cairo, 0.25},
		{"panel of 2,000 triangles laid flat", w.flat(panel(27, 37)), nil, 20},
		{"keystroke to picture, padded", w.redraw("demo-1872-bodice"), nil, 200},
		{"keystroke to picture, slices", w.redraw("demo-three-values"), nil, 200},
		{"a frame of a drag", w.frame(), nil, 1000.0 / 60},
	}
}

// skin is the torso of an invented woman of 1872.
func skin(bust, waist, hip float64) (surface.Surface, error) {
	t, err := torso.Build(measure.Sheet{
		measure.BustGirth: bust, measure.WaistGirth: waist, measure.HipGirth: hip, measure.BackWaist: 385,
	}, measure.Woman, 1872, nil)
	if err != nil {
		return surface.Surface{}, err
	}
	lo, hi := t.At(measure.Hip).Height, t.At(measure.NeckBase).Height
	rows := make([]float64, 200)
	for i := range rows {
		rows[i] = lo + (hi-lo)*float64(i)/199
	}
	return t.Skin.Resampled(rows), nil
}

func panel(nu, nv int) (p flatten.Patch) {
	p.Points, p.Triangles = shapetest.Corseted(nu, nv)
	return p
}

// page is 50 wavy outlines of 300 points, as many pieces as lie on a large sheet.
func page() []plane.Ring {
	all := make([]plane.Ring, 50)
	for k := range all {
		middle := plane.Point{X: 60 + 80*float64(k%10), Y: 120 + 200*float64(k/10)}
		for i := range 300 {
			a := 2 * math.Pi * float64(i) / 300
			r := (30 + 20*math.Sin(float64(k))) * (1 + 0.3*math.Sin(3*a+float64(k)) + 0.05*math.Sin(17*a))
			all[k] = append(all[k], middle.Add(plane.Point{X: r * math.Cos(a), Y: r * math.Sin(a)}))
		}
	}
	return all
}

// whole pads the figure from the form's slices on.
func (w *work) whole() error {
	base := surface.Through(w.form.Z, w.form.R, w.form.Z)
	m := padding.Lay(padding.Job{
		Base: base, Wanted: w.figure, Stock: []padding.Sheet{{Thickness: 6}, {Thickness: 3}}, Cover: cover,
		From: base.Bottom(), To: base.Top(),
	})
	for i := range m.Built.R {
		m.Built.R[i].Tape()
	}
	return nil
}

func (w *work) parallels() error {
	for i := range w.figure.R {
		w.figure.R[i].Parallel(6)
	}
	return nil
}

func (w *work) hulls() error {
	for i := range w.figure.R {
		w.figure.R[i].Tape()
	}
	return nil
}

func (w *work) flat(p flatten.Patch) func() error {
	return func() error {
		_, err := flatten.Lay(p, flatten.Options{})
		return err
	}
}

// counter is where the pages go: nowhere, but counted.
type counter int

func (c *counter) Write(b []byte) (int, error) {
	*c += counter(len(b))
	return len(b), nil
}

func (w *work) book() error {
	var size counter
	book := vector.NewBook(vector.Meta{Title: "bench"})
	for range 60 {
		book.Page(841, 1189)
		book.On(drawing.Cut)
		for _, l := range w.outlines {
			book.Line(l, true, drawing.Pen{Width: 0.5})
		}
	}
	if err := book.Write(&size); err != nil {
		return err
	}
	w.note("PDF: ours %.1f MB", float64(size)/1e6)
	return nil
}

// redraw is what one waits for after a keystroke: the mount, and its front and side.
func (w *work) redraw(name string) func() error {
	return func() error {
		p, err := pipeline.Shape(context.Background(), w.records[name])
		if err != nil {
			return err
		}
		paint(picture.NewBody(p.Surface))
		return nil
	}
}

// frame is a picture drawn anew of a mount that is known.
func (w *work) frame() func() error {
	var body *picture.Body
	return func() error {
		if body == nil {
			p, err := pipeline.Shape(context.Background(), w.records["demo-1872-bodice"])
			if err != nil {
				return err
			}
			body = picture.NewBody(p.Surface)
		}
		paint(body)
		return nil
	}
}

func paint(body *picture.Body) {
	img := image.NewRGBA(image.Rect(0, 0, 1200, 900))
	scale := 850 / (body.High.Z - body.Low.Z)
	for v, x := range []float64{300, 900} {
		body.Elevation(img, picture.View(v), picture.Frame{Scale: scale, X: x, Y: 875 + body.Low.Z*scale}, picture.Light)
	}
}

// write makes an input file of the references.
func (w *work) write(name string, put func(*bufio.Writer)) error {
	f, err := os.Create(filepath.Join(w.folder, name))
	if err != nil {
		return err
	}
	b := bufio.NewWriter(f)
	put(b)
	if err := b.Flush(); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}

// rings writes one outline a line: x y x y …, millimetres.
func rings(all []plane.Ring) func(*bufio.Writer) {
	return func(b *bufio.Writer) {
		for _, r := range all {
			for _, p := range r {
				fmt.Fprintf(b, "%.9f %.9f ", p.X, p.Y)
			}
			fmt.Fprintln(b)
		}
	}
}

// off writes a mesh in the Object File Format.
func off(p flatten.Patch) func(*bufio.Writer) {
	return func(b *bufio.Writer) {
		fmt.Fprintf(b, "OFF\n%d %d 0\n", len(p.Points), len(p.Triangles))
		for _, q := range p.Points {
			fmt.Fprintf(b, "%.9f %.9f %.9f\n", q.X, q.Y, q.Z)
		}
		for _, t := range p.Triangles {
			fmt.Fprintf(b, "3 %d %d %d\n", t[0], t[1], t[2])
		}
	}
}

func (w *work) note(format string, a ...any) {
	n := fmt.Sprintf(format, a...)
	for _, known := range w.notes {
		if known == n {
			return
		}
	}
	w.notes = append(w.notes, n)
}
