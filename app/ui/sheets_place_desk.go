package ui

import (
	"fmt"
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/ui/control"
	"understructure/geometry/plane"
	"understructure/patterns/drawing"
	"understructure/patterns/preview"
	"understructure/patterns/sheet"
)

// sheetsDesk is the stage of the sheets: a strip of all pages, and one of them large.
type sheetsDesk struct {
	place         *sheetsPlace
	small, large  *easel
	strip         *control.SheetStrip
	view          *control.SheetView
	title, about  *widget.Label
	zoom          *widget.Label
	before, after *widget.Button
	box           fyne.CanvasObject
}

// How many pictures are kept: small pages for a long strip, and the last few that were looked at.
const (
	mostSmall = 64
	mostLarge = 4
)

func newSheetsDesk(s *sheetsPlace) *sheetsDesk {
	post := s.window.options.Rooms.Post
	d := &sheetsDesk{
		place: s, small: newEasel(post, mostSmall), large: newEasel(post, mostLarge),
		strip: control.NewSheetStrip(), view: control.NewSheetView(),
		title: widget.NewLabel(""), about: widget.NewLabel(""), zoom: widget.NewLabel(""),
	}
	d.title.TextStyle.Bold = true
	d.about.SizeName, d.zoom.SizeName = theme.SizeNameCaptionText, theme.SizeNameCaptionText
	d.about.Truncation = fyne.TextTruncateEllipsis
	d.strip.Picture, d.strip.OnChosen = d.thumbnail, d.keysAfter(s.turnTo)
	d.view.OnWanted, d.view.OnTapped, d.view.OnTurned, d.view.OnZoomed = d.paint, d.tapped, s.turn, d.zoomed
	d.before, d.after = d.button("", theme.NavigateBackIcon(), func() { s.turn(-1) }), d.button("", theme.NavigateNextIcon(), func() { s.turn(1) })
	fit, full := d.button(lang.L("Fit"), nil, d.view.Fit), d.button("100 %", nil, d.view.TrueSize)
	farther, nearer := d.button("", theme.ZoomOutIcon(), func() { d.view.Nearer(-1) }), d.button("", theme.ZoomInIcon(), func() { d.view.Nearer(1) })
	left := container.NewHBox(d.before, d.title, d.after)
	right := container.NewHBox(fit, full, farther, d.zoom, nearer)
	bar := container.New(layout.NewCustomPaddedLayout(2, 2, 0, 4), container.NewBorder(nil, nil, left, right, d.about))
	d.box = container.NewBorder(bar, nil, d.strip, nil, d.view)
	return d
}

// button does something to the page, which then has the keys.
func (d *sheetsDesk) button(label string, icon fyne.Resource, do func()) *widget.Button {
	return quiet(label, icon, func() { d.keysAfter(func(int) { do() })(0) })
}

// keysAfter gives the keys to the page after something was done.
func (d *sheetsDesk) keysAfter(do func(int)) func(int) {
	return func(i int) {
		do(i)
		if c := fyne.CurrentApp().Driver().CanvasForObject(d.view); c != nil {
			c.Focus(d.view)
		}
	}
}

// focus gives the keys to the page unless something else has them.
func (d *sheetsDesk) focus() {
	c := fyne.CurrentApp().Driver().CanvasForObject(d.view)
	if c != nil && c.Focused() == nil && c.Overlays().Top() == nil {
		c.Focus(d.view)
	}
	d.view.Refresh() // now that it is known how fine the screen is
}

// draw shows pages that were laid anew.
func (d *sheetsDesk) draw() {
	d.small.forget()
	d.large.forget()
	var all []control.Sheet
	for i, pg := range d.place.laid.pages {
		all = append(all, control.Sheet{Name: pageName(i, pg), Width: pg.Width, Height: pg.Height})
	}
	d.strip.Draw(all)
}

// pageName is the number of a page, and of a lone tile its letter.
func pageName(i int, pg sheet.Page) string {
	if len(pg.Items) != 1 || pg.Items[0].Tile == nil {
		return fmt.Sprint(i + 1)
	}
	t := pg.Items[0].Tile
	return fmt.Sprintf("%d · %s", i+1, sheet.TileName(t.Row, t.Column))
}

// turnTo shows one page large.
func (d *sheetsDesk) turnTo(i int) {
	pages := d.place.laid.pages
	d.before.Disable()
	d.after.Disable()
	if i >= len(pages) {
		set(d.title, "")
		set(d.about, "")
		d.view.Draw(control.Sheet{}, nil)
		return
	}
	pg := pages[i]
	set(d.title, lang.L("Page {{.Number}} of {{.All}}", map[string]any{"Number": i + 1, "All": len(pages)}))
	set(d.about, pg.Title.Piece)
	if i > 0 {
		d.before.Enable()
	}
	if i < len(pages)-1 {
		d.after.Enable()
	}
	d.strip.Choose(i)
	d.view.Draw(control.Sheet{Width: pg.Width, Height: pg.Height}, d.thumbnail(i))
	d.zoomed()
}

func (d *sheetsDesk) zoomed() { set(d.zoom, fmt.Sprintf("%.0f %%", 100*d.view.Zoom())) }

// thumbnail is the small picture of a page.
func (d *sheetsDesk) thumbnail(i int) image.Image {
	pg, pixels := d.place.laid.pages[i], pixelsOf(d.strip)
	w, h := int(control.ThumbWidth*pixels), int(control.ThumbHeight*pixels)
	return d.small.picture(fmt.Sprint(i, " ", w), func() image.Image { return preview.Thumbnail(pg, w, h) }, func() { d.strip.Ready(i) })
}

// paint draws the part of the page that is looked at, and nothing that was wanted before.
func (d *sheetsDesk) paint(c control.Cutout) {
	if d.place.at >= len(d.place.laid.pages) {
		return
	}
	pg, picked := d.place.laid.pages[d.place.at], d.place.picked
	box := drawing.Box{
		Lo: plane.Point{X: c.Left, Y: pg.Height - c.Top - c.Height},
		Hi: plane.Point{X: c.Left + c.Width, Y: pg.Height - c.Top},
	}
	name := fmt.Sprint(d.place.at, c, picked)
	d.large.idle()
	show := func() {
		if img, ok := d.large.done[name]; ok {
			d.view.Put(c, img)
		}
	}
	if d.large.picture(name, func() image.Image { return preview.Part(pg, box, c.Scale, picked) }, show) != nil {
		show()
	}
}

// tapped picks the piece under a point of the page, or none.
func (d *sheetsDesk) tapped(x, y float64) {
	if d.place.at >= len(d.place.laid.pages) {
		return
	}
	pg := d.place.laid.pages[d.place.at]
	it, _ := preview.At(pg, plane.Point{X: x, Y: pg.Height - y})
	d.place.pick(it.Piece.ID)
}
