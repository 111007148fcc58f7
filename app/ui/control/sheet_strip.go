package control

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/look"
)

// SheetStrip is a column of small pages of which one is chosen. Only those on the screen are asked for.
type SheetStrip struct {
	widget.BaseWidget
	OnChosen func(i int)             // by a person
	Picture  func(i int) image.Image // of a page; nil while there is none, which is blank paper

	sheets []Sheet
	chosen int
	list   *widget.List
}

// Sizes in a strip, in the toolkit's units. ThumbWidth and ThumbHeight are the room for a small page.
const (
	ThumbWidth  = 84
	ThumbHeight = 104
	stripWidth  = 122
)

// NewSheetStrip returns an empty one.
func NewSheetStrip() *SheetStrip {
	s := &SheetStrip{OnChosen: func(int) {}, Picture: func(int) image.Image { return nil }, chosen: -1}
	s.list = widget.NewList(func() int { return len(s.sheets) },
		func() fyne.CanvasObject { return newSheetThumb() },
		func(i int, o fyne.CanvasObject) { o.(*sheetThumb).show(s.sheets[i], s.Picture(i)) })
	s.list.HideSeparators = true
	s.list.OnSelected = func(i int) {
		if i != s.chosen {
			s.chosen = i
			s.OnChosen(i)
		}
	}
	s.ExtendBaseWidget(s)
	return s
}

// Draw shows other pages, none of them chosen.
func (s *SheetStrip) Draw(sheets []Sheet) {
	s.sheets, s.chosen = sheets, -1
	s.list.UnselectAll()
	s.list.Refresh()
	s.list.ScrollToOffset(0)
}

// Choose marks a page and scrolls so far that it is seen, without telling OnChosen.
func (s *SheetStrip) Choose(i int) {
	s.chosen = i
	s.list.Select(i)
}

// Chosen is the number of the marked page, -1 for none.
func (s *SheetStrip) Chosen() int { return s.chosen }

// Pages is how many there are.
func (s *SheetStrip) Pages() int { return len(s.sheets) }

// Ready shows a page whose picture has come.
func (s *SheetStrip) Ready(i int) { s.list.RefreshItem(i) }

// CreateRenderer is for the toolkit.
func (s *SheetStrip) CreateRenderer() fyne.WidgetRenderer { return stripRenderer{s} }

type stripRenderer struct{ *SheetStrip }

func (r stripRenderer) Destroy()                     {}
func (r stripRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.list} }
func (r stripRenderer) Layout(size fyne.Size)        { r.list.Resize(size) }
func (r stripRenderer) MinSize() fyne.Size           { return fyne.NewSize(stripWidth, ThumbHeight) }
func (r stripRenderer) Refresh()                     { r.list.Refresh() }

// sheetThumb is one small page with its name below.
type sheetThumb struct {
	widget.BaseWidget
	sheet Sheet
	paper *canvas.Rectangle
	image *canvas.Image
	edge  *canvas.Rectangle
	name  *canvas.Text
}

func newSheetThumb() *sheetThumb {
	t := &sheetThumb{paper: canvas.NewRectangle(color.White), image: canvas.NewImageFromImage(nil), edge: canvas.NewRectangle(color.Transparent), name: words("", look.ColorInk, false)}
	t.image.FillMode = canvas.ImageFillStretch
	t.edge.StrokeWidth = 1
	t.ExtendBaseWidget(t)
	return t
}

func (t *sheetThumb) show(s Sheet, picture image.Image) {
	if t.sheet == s && t.image.Image == picture {
		return
	}
	t.sheet, t.image.Image, t.name.Text = s, picture, s.Name
	t.Refresh()
}

// CreateRenderer is for the toolkit.
func (t *sheetThumb) CreateRenderer() fyne.WidgetRenderer { return thumbRenderer{t} }

type thumbRenderer struct{ *sheetThumb }

func (r thumbRenderer) Destroy()           {}
func (r thumbRenderer) MinSize() fyne.Size { return fyne.NewSize(ThumbWidth, ThumbHeight+2*margin+18) }

func (r thumbRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.paper, r.image, r.edge, r.name}
}

// Layout makes the page as large as its room, and puts its name below the room.
func (r thumbRenderer) Layout(size fyne.Size) {
	scale := float32(fitted(r.sheet, fyne.NewSize(ThumbWidth+2*sheetEdge, ThumbHeight+2*sheetEdge)))
	paper := fyne.NewSize(float32(r.sheet.Width)*scale, float32(r.sheet.Height)*scale)
	at := fyne.NewPos(round((size.Width-paper.Width)/2), round(margin+(ThumbHeight-paper.Height)/2))
	for _, o := range []fyne.CanvasObject{r.paper, r.image, r.edge} {
		o.Move(at)
		o.Resize(paper)
	}
	place(r.name, size.Width/2, margin+ThumbHeight+11, 0.5)
}

func (r thumbRenderer) Refresh() {
	r.name.Color = theme.Color(look.ColorInk)
	r.edge.StrokeColor = theme.Color(theme.ColorNameInputBorder)
	if r.image.Hide(); r.image.Image != nil {
		r.image.Show()
	}
	r.Layout(r.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}
