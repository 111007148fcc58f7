package control

import (
	"image"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// measureFoot says below a list how the value in hand is taken, and shows it. Its height stays whatever
// it says.
type measureFoot struct {
	help    *widget.Label
	drawing *canvas.Raster // nil where nothing is drawn
	key     string         // of the value in hand, "" for none
}

// Heights of the foot, in the toolkit's units: of three lines of small text, and of a drawing.
const (
	helpHeight    = 64
	drawingHeight = 112
)

func newMeasureFoot() *measureFoot {
	f := &measureFoot{help: widget.NewLabel(idle())}
	f.help.Wrapping = fyne.TextWrapWord
	f.help.SizeName = theme.SizeNameCaptionText
	return f
}

// idle is said while no entry is being typed in.
func idle() string {
	return lang.L("Leave empty what was not taken. A grey value is drawn from statistics, or is the usual choice.")
}

// box is the foot with a drawing beside the words, or without where there is none.
func (f *measureFoot) box(draw func(key string, width, height int) image.Image) fyne.CanvasObject {
	words := container.NewVScroll(f.help)
	words.SetMinSize(fyne.NewSize(0, helpHeight))
	if draw == nil {
		return words
	}
	f.drawing = canvas.NewRaster(func(w, h int) image.Image { return draw(f.key, w, h) })
	f.drawing.SetMinSize(fyne.NewSquareSize(drawingHeight))
	return container.NewBorder(nil, nil, f.drawing, nil, words)
}

// show says and draws how a value is taken.
func (f *measureFoot) show(m Measure) { f.say(m.Key, strings.TrimSpace(m.Where+" "+m.Why)) }

// rest is the foot while no entry is being typed in.
func (f *measureFoot) rest() { f.say("", idle()) }

func (f *measureFoot) say(key, text string) {
	if f.help.Text != text {
		f.help.SetText(text)
	}
	if f.key != key {
		f.key = key
		f.redraw()
	}
}

// redraw shows what has changed of the garment that is drawn.
func (f *measureFoot) redraw() {
	if f.drawing != nil {
		f.drawing.Refresh()
	}
}
