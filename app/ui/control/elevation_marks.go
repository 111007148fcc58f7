package control

import (
	"fmt"
	"image"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"

	"understructure/app/ui/look"
)

// elevationRenderer has the painted figures below, over them the tapes, which follow when a figure is turned, and the
// words. Tapes and words are redrawn without painting the figures again.
type elevationRenderer struct {
	e       *Elevation
	rasters [2]*canvas.Raster
	tapes   *fyne.Container
	words   *fyne.Container
}

// CreateRenderer is for the toolkit.
func (e *Elevation) CreateRenderer() fyne.WidgetRenderer {
	r := &elevationRenderer{e: e, tapes: container.NewWithoutLayout(), words: container.NewWithoutLayout()}
	for v := range r.rasters {
		r.rasters[v] = canvas.NewRaster(func(w, h int) image.Image { return e.paint(v, w, h) })
	}
	e.renderer = r
	return r
}

func (r *elevationRenderer) Destroy() { r.e.Stop() }

func (r *elevationRenderer) MinSize() fyne.Size {
	return fyne.NewSize(ruleWidth+tableWidth+200, 300)
}

func (r *elevationRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.rasters[0], r.rasters[1], r.tapes, r.words}
}

func (r *elevationRenderer) Layout(size fyne.Size) {
	r.tapes.Resize(size)
	r.words.Resize(size)
	r.stand()
	r.mark()
}

func (r *elevationRenderer) Refresh() {
	r.stand()
	for _, raster := range r.rasters {
		raster.Refresh()
	}
	r.mark()
}

// stand puts the figures where they belong.
func (r *elevationRenderer) stand() {
	a := r.e.arrange(r.e.Size())
	for v, raster := range r.rasters {
		if raster.Hide(); v < len(a.boxes) && !r.e.body.Empty() {
			raster.Move(a.boxes[v].at)
			raster.Resize(a.boxes[v].size)
			raster.Show()
		}
	}
}

// turned shows the figure from another side; the words stay.
func (r *elevationRenderer) turned() {
	r.rasters[0].Refresh()
	r.markTapes(r.e.arrange(r.e.Size()))
}

// marksOnly redraws tapes and words, and leaves the figure as it is painted.
func (e *Elevation) marksOnly() {
	if e.renderer != nil {
		e.renderer.mark()
	}
}

func (r *elevationRenderer) add(o ...fyne.CanvasObject) {
	r.words.Objects = append(r.words.Objects, o...)
}

func (r *elevationRenderer) mark() {
	r.words.Objects = nil
	if size := r.e.Size(); !r.e.body.Empty() && size.Width > 0 {
		a := r.e.arrange(size)
		r.markTapes(a)
		r.markRule(a)
		r.markHeads(a)
		r.markDrawn(a)
		for i, t := range r.e.tapes {
			r.markRow(a, i, t)
		}
	} else {
		r.tapes.Objects = nil
	}
	canvas.Refresh(r.words)
}

// markRule draws the height rule, with the height of the picked tape on it.
func (r *elevationRenderer) markRule(a arrangement) {
	rule, f, b := r.e.rule, a.frames[0], r.e.body
	if rule.Step <= 0 {
		return
	}
	y := func(z float64) float32 { return float32(f.Y - z*f.Scale) }
	picked := r.markHeight(a, rule)
	first, last := int(math.Ceil(b.Low.Z/rule.Step)), int(math.Floor(b.High.Z/rule.Step))
	r.add(line(a.rule, y(float64(first)*rule.Step), a.rule, y(float64(last)*rule.Step), look.ColorFaint, 1))
	for n := first; n <= last; n++ {
		z := float64(n) * rule.Step
		long := float32(4)
		if n%rule.Count == 0 {
			long = 8
			if math.Abs(float64(picked-y(z))) > 0.7*rowHeight {
				number := words(fmt.Sprintf("%.0f", z/rule.Unit), look.ColorFaint, false)
				place(number, a.rule-long-3, y(z), 1)
				r.add(number)
			}
		}
		r.add(line(a.rule-long, y(z), a.rule, y(z), look.ColorFaint, 1))
	}
	name := words(rule.Name, look.ColorFaint, false)
	place(name, a.rule, y(float64(last)*rule.Step)-rowHeight, 1)
	r.add(name)
}

// markHeight writes the height of the picked tape beside the rule, and returns where.
func (r *elevationRenderer) markHeight(a arrangement, rule Rule) float32 {
	i := r.e.index(r.e.picked)
	if i < 0 {
		return float32(math.Inf(1))
	}
	number := words(fmt.Sprintf("%.*f", rule.Digits, r.e.tapes[i].Height/rule.Unit), theme.ColorNamePrimary, r.e.hand.name != "")
	place(number, a.rule-11, a.levels[i], 1)
	r.add(number, line(a.rule-8, a.levels[i], a.rule, a.levels[i], theme.ColorNamePrimary, 2.2))
	return a.levels[i]
}

func (r *elevationRenderer) markHeads(a arrangement) {
	for i, head := range []string{lang.L("garment"), lang.L("built"), lang.L("clearance")} {
		t := words(head, look.ColorFaint, false)
		place(t, a.table+columns[i], a.headY(), 1)
		r.add(t)
	}
}

// markDrawn explains the tilde below the table, where there is one.
func (r *elevationRenderer) markDrawn(a arrangement) {
	for _, t := range r.e.tapes {
		if strings.HasPrefix(t.Taken, "~") {
			note := words(lang.L("~ not taken, drawn from statistics"), look.ColorFaint, false)
			place(note, a.table+6, a.rows[len(a.rows)-1]+rowHeight, 0)
			r.add(note)
			return
		}
	}
}

func (r *elevationRenderer) markRow(a arrangement, i int, t Tape) {
	picked := t.Name == r.e.picked
	if picked || t.Name == r.e.hovered {
		r.markGround(a.rows[i], a.table, picked)
	}
	name := words(lang.L(t.Name), look.ColorInk, picked)
	place(name, a.table+6, a.rows[i], 0)
	r.add(name)
	for n, text := range []string{t.Taken, t.Built, t.Clearance} {
		colour, bold := look.ColorInk, picked
		if n == 2 && t.Strains {
			colour, bold = look.ColorStrain, true
		}
		number := words(text, colour, bold)
		place(number, a.table+columns[n], a.rows[i], 1)
		r.add(number)
	}
}

func (r *elevationRenderer) markGround(y, table float32, picked bool) {
	colour := theme.ColorNameHover
	if picked {
		colour = theme.ColorNameSelection
	}
	back := canvas.NewRectangle(theme.Color(colour))
	back.CornerRadius = 4
	if picked && r.e.focused {
		back.StrokeColor, back.StrokeWidth = theme.Color(theme.ColorNamePrimary), 1
	}
	back.Move(fyne.NewPos(table, y-rowHeight/2))
	back.Resize(fyne.NewSize(tableWidth, rowHeight))
	r.add(back)
}
