package control

import (
	"fmt"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
)

// overhang is how far a tape's line reaches beyond the figure.
const overhang = 5

// elevationRenderer has the painted figure below and, in a layer of their own that is redrawn
// without painting the figure again, the lines and words.
type elevationRenderer struct {
	e      *Elevation
	raster *canvas.Raster
	layer  *fyne.Container
}

// CreateRenderer is for the toolkit.
func (e *Elevation) CreateRenderer() fyne.WidgetRenderer {
	e.renderer = &elevationRenderer{e: e, raster: canvas.NewRaster(e.paint), layer: container.NewWithoutLayout()}
	return e.renderer
}

func (r *elevationRenderer) Destroy() {}

func (r *elevationRenderer) MinSize() fyne.Size {
	return fyne.NewSize(ruleWidth+tableWidth+200, 300)
}

func (r *elevationRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.raster, r.layer}
}

func (r *elevationRenderer) Layout(size fyne.Size) {
	r.raster.Resize(size)
	r.layer.Resize(size)
	r.mark()
}

func (r *elevationRenderer) Refresh() {
	r.raster.Refresh()
	r.mark()
}

// marksOnly redraws lines and words, and leaves the figure as it is painted.
func (e *Elevation) marksOnly() {
	if e.renderer != nil {
		e.renderer.mark()
	}
}

func (r *elevationRenderer) add(o ...fyne.CanvasObject) {
	r.layer.Objects = append(r.layer.Objects, o...)
}

func (r *elevationRenderer) mark() {
	r.layer.Objects = nil
	if size := r.e.Size(); !r.e.body.Empty() && size.Width > 0 {
		a := r.e.arrange(size)
		r.markRule(a)
		r.markNames(a)
		r.markHeads(a)
		r.markDrawn(a)
		for i, t := range r.e.tapes {
			r.markTape(a, i, t)
		}
		r.markSpot(a)
	}
	canvas.Refresh(r.layer)
}

// markSpot rings the place that is pointed at, in the view that shows it.
func (r *elevationRenderer) markSpot(a arrangement) {
	if r.e.spot == nil {
		return
	}
	for v, f := range a.frames {
		if at, seen := r.e.body.SpotOn(picture.View(v).Camera(), f, r.e.spot.Height, r.e.spot.Turn); seen {
			r.add(ring(float32(at.X), float32(at.Y)))
		}
	}
}

func (r *elevationRenderer) markRule(a arrangement) {
	rule, f, b := r.e.rule, a.frames[0], r.e.body
	y := func(z float64) float32 { return float32(f.Y - z*f.Scale) }
	if rule.Step <= 0 {
		return
	}
	first, last := int(math.Ceil(b.Low.Z/rule.Step)), int(math.Floor(b.High.Z/rule.Step))
	r.add(line(a.rule, y(float64(first)*rule.Step), a.rule, y(float64(last)*rule.Step), look.ColorFaint, 1))
	for n := first; n <= last; n++ {
		z := float64(n) * rule.Step
		long := float32(4)
		if n%rule.Count == 0 {
			long = 8
			number := words(fmt.Sprintf("%.0f", z/rule.Unit), look.ColorFaint, false)
			place(number, a.rule-long-3, y(z), 1)
			r.add(number)
		}
		r.add(line(a.rule-long, y(z), a.rule, y(z), look.ColorFaint, 1))
	}
	name := words(rule.Name, look.ColorFaint, false)
	place(name, a.rule, y(float64(last)*rule.Step)-rowHeight, 1)
	r.add(name)
}

func (r *elevationRenderer) markNames(a arrangement) {
	for v, name := range []string{lang.L("front"), lang.L("left side")} {
		left, right := r.e.body.Width(picture.View(v))
		f := a.frames[v]
		t := words(name, look.ColorFaint, false)
		place(t, float32(f.X+(left+right)/2*f.Scale), float32(f.Y-r.e.body.Low.Z*f.Scale)+16, 0.5)
		r.add(t)
	}
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

func (r *elevationRenderer) markTape(a arrangement, i int, t Tape) {
	colour, width := look.ColorFaint, float32(1)
	picked := t.Name == r.e.picked
	switch {
	case picked:
		colour, width = theme.ColorNamePrimary, 2.2
	case t.Strains:
		colour, width = look.ColorStrain, 1.6
	case t.Name == r.e.hovered:
		colour = look.ColorInk
	}
	if picked || t.Name == r.e.hovered {
		r.markRow(a.rows[i], a.table, picked)
	}
	y := a.levels[i]
	for v, f := range a.frames {
		left, right, ok := r.e.body.Extent(picture.View(v), t.Height)
		if !ok {
			continue
		}
		x0, x1 := float32(f.X+left*f.Scale)-overhang, float32(f.X+right*f.Scale)+overhang
		r.add(line(x0, y, x1, y, colour, width))
		if picture.View(v) == picture.Front {
			r.lead(x1, y, a.table-leader, a.table, a.rows[i], colour)
		} else {
			r.lead(x0, y, a.table+tableWidth+leader, a.table+tableWidth, a.rows[i], colour)
		}
	}
	r.markWords(a, i, t, picked)
}

// lead draws from a tape level to the figure's margin, then slanting to the row.
func (r *elevationRenderer) lead(x, y, edge, table, row float32, colour fyne.ThemeColorName) {
	r.add(line(x, y, edge, y, colour, 0.6), line(edge, y, table, row, colour, 0.6))
}

func (r *elevationRenderer) markRow(y, table float32, picked bool) {
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

func (r *elevationRenderer) markWords(a arrangement, i int, t Tape, picked bool) {
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
