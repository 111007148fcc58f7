package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
)

// Stroke is how a line of the picture is drawn.
type Stroke int

// The strokes. An Area is filled.
const (
	Full Stroke = iota
	Dashed
	Area
)

// Line is one outline of a picture: its name, how it is drawn, and the numbers that belong to it.
type Line struct {
	Name    string
	Colour  fyne.ThemeColorName
	Stroke  Stroke
	Numbers []string
}

// Key explains the lines of a section, with their measures in columns.
type Key struct {
	widget.BaseWidget
	heads []string
	lines []Line
	layer *fyne.Container
}

// NewKey returns an empty one.
func NewKey() *Key {
	k := &Key{layer: container.NewWithoutLayout()}
	k.ExtendBaseWidget(k)
	return k
}

// Draw shows these lines, with heads over the columns of their numbers.
func (k *Key) Draw(heads []string, lines []Line) {
	k.heads, k.lines = heads, lines
	k.Refresh()
}

// Numbers returns those of the line of a name, nil when there is no such line.
func (k *Key) Numbers(name string) []string {
	for _, l := range k.lines {
		if l.Name == name {
			return l.Numbers
		}
	}
	return nil
}

// Measures of a key, in the toolkit's units.
const (
	swatchWidth = 18
	keyColumn   = 46
	keyRow      = 19
)

func (k *Key) mark(size fyne.Size) {
	k.layer.Objects = nil
	k.numbers(k.heads, size.Width, keyRow/2, look.ColorFaint)
	for i, l := range k.lines {
		y := keyRow * (float32(i) + 1.5)
		for _, o := range sample(l, y) {
			k.layer.Add(o)
		}
		name := words(l.Name, look.ColorInk, false)
		place(name, swatchWidth+8, y, 0)
		k.layer.Add(name)
		k.numbers(l.Numbers, size.Width, y, look.ColorInk)
	}
	canvas.Refresh(k.layer)
}

// numbers stand in columns from the right.
func (k *Key) numbers(texts []string, right, y float32, colour fyne.ThemeColorName) {
	for i, text := range texts {
		t := words(text, colour, false)
		place(t, right-keyColumn*float32(len(texts)-1-i), y, 1)
		k.layer.Add(t)
	}
}

// sample draws a short piece of the line, its middle at y.
func sample(l Line, y float32) []fyne.CanvasObject {
	switch l.Stroke {
	case Dashed:
		const dash = swatchWidth / 3
		return []fyne.CanvasObject{line(0, y, dash, y, l.Colour, 1.5), line(2*dash, y, 3*dash, y, l.Colour, 1.5)}
	case Area:
		area := canvas.NewRectangle(theme.Color(l.Colour))
		area.CornerRadius = 2
		area.Move(fyne.NewPos(0, y-5))
		area.Resize(fyne.NewSize(swatchWidth, 10))
		return []fyne.CanvasObject{area}
	}
	return []fyne.CanvasObject{line(0, y, swatchWidth, y, l.Colour, 2)}
}

type keyRenderer struct{ *Key }

// CreateRenderer is for the toolkit.
func (k *Key) CreateRenderer() fyne.WidgetRenderer { return keyRenderer{k} }

func (r keyRenderer) Destroy()                     {}
func (r keyRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.layer} }
func (r keyRenderer) Refresh()                     { r.mark(r.Size()) }

func (r keyRenderer) MinSize() fyne.Size {
	return fyne.NewSize(swatchWidth+110+keyColumn*float32(max(len(r.heads)-1, 0)), keyRow*float32(len(r.lines)+1))
}

func (r keyRenderer) Layout(size fyne.Size) {
	r.layer.Resize(size)
	r.mark(size)
}
