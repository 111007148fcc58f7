package control

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Sizes of a card, in the toolkit's units. CardWidth and CardHeight are the room for its picture.
const (
	CardWidth  = 172
	CardHeight = 108
	cardEdge   = 8
	cardLine   = 17
)

// pieceCard is a small picture of a piece with what is to be known of it below.
type pieceCard struct {
	widget.BaseWidget
	image *canvas.Image
	lines [4]*widget.Label
}

func newPieceCard() *pieceCard {
	c := &pieceCard{image: canvas.NewImageFromImage(nil)}
	c.image.FillMode = canvas.ImageFillStretch
	for i := range c.lines {
		l := widget.NewLabel("")
		l.SizeName = theme.SizeNameCaptionText
		l.Truncation = fyne.TextTruncateEllipsis
		l.TextStyle.Bold = i == 0
		c.lines[i] = l
	}
	c.ExtendBaseWidget(c)
	return c
}

func (c *pieceCard) show(p Piece, picture image.Image) {
	for i, text := range append([]string{p.Name}, p.Lines[:]...) {
		if c.lines[i].Text != text {
			c.lines[i].SetText(text)
		}
	}
	if c.image.Image == picture {
		return
	}
	c.image.Image = picture
	if c.image.Hide(); picture != nil {
		c.image.Show()
	}
	c.image.Refresh()
}

// CreateRenderer is for the toolkit.
func (c *pieceCard) CreateRenderer() fyne.WidgetRenderer { return cardRenderer{c} }

type cardRenderer struct{ *pieceCard }

func (r cardRenderer) Destroy() {}

func (r cardRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.image, r.lines[0], r.lines[1], r.lines[2], r.lines[3]}
}

func (r cardRenderer) MinSize() fyne.Size {
	return fyne.NewSize(CardWidth+2*cardEdge, CardHeight+2*cardEdge+cardLine*float32(len(r.lines))+6)
}

func (r cardRenderer) Layout(size fyne.Size) {
	r.image.Resize(fyne.NewSize(CardWidth, CardHeight))
	r.image.Move(fyne.NewPos(round((size.Width-CardWidth)/2), cardEdge))
	for i, l := range r.lines {
		l.Move(fyne.NewPos(2, CardHeight+cardEdge+cardLine*float32(i)))
		l.Resize(fyne.NewSize(size.Width-4, l.MinSize().Height))
	}
}

func (r cardRenderer) Refresh() {
	for _, o := range r.Objects() {
		o.Refresh()
	}
}
