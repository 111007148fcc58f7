package control

import (
	"fmt"
	"image/color"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
	"understructure/geometry/plane"
)

// Sizes of the points on a photograph, in the toolkit's units.
const (
	tracePoint = 7
	scalePoint = 12
)

// mark draws what lies over the painted picture: rule, levels, the two points and the trace.
func (s *PhotoStage) mark() {
	s.layer.Objects = nil
	if size := s.Size(); size.Width > 0 {
		f := s.frame()
		s.markLevels(f, size)
		s.markRule(f, size)
		if s.laid.Placing != nil {
			s.markWidths(f)
			s.markScale(f)
			s.markTrace(f)
		}
	}
	canvas.Refresh(s.layer)
}

// markLevels draws a line through every level that is in the view, with its name at the right.
func (s *PhotoStage) markLevels(f picture.Frame, size fyne.Size) {
	for _, m := range s.marks {
		y := float32(f.Y - m.Height*f.Scale)
		if y < 0 || y > size.Height {
			continue
		}
		level := line(ruleWidth, y, size.Width, y, look.ColorFaint, 1)
		level.StrokeColor = thin(look.ColorFaint, 0x70)
		s.layer.Add(level)
		s.say(lang.L(m.Name), size.Width-6, y-8, 1)
	}
}

// say writes a word that can be read over any photograph.
func (s *PhotoStage) say(text string, x, y, align float32) {
	t := words(text, look.ColorInk, false)
	place(t, x, y, align)
	ground := canvas.NewRectangle(thin(theme.ColorNameBackground, 0xb8))
	ground.CornerRadius = 3
	ground.Move(t.Position().SubtractXY(3, -1))
	ground.Resize(t.Size().AddWidthHeight(6, -2))
	s.layer.Add(ground)
	s.layer.Add(t)
}

// thin is a colour that lets a photograph through.
func thin(name fyne.ThemeColorName, alpha uint8) color.Color {
	c := color.NRGBAModel.Convert(theme.Color(name)).(color.NRGBA)
	c.A = alpha
	return c
}

// markRule draws the part of the height rule that is in the view.
func (s *PhotoStage) markRule(f picture.Frame, size fyne.Size) {
	if s.rule.Step <= 0 {
		return
	}
	top, bottom := f.Y/f.Scale, (f.Y-float64(size.Height))/f.Scale
	first, last := max(0, int(math.Ceil(bottom/s.rule.Step))), int(math.Floor(top/s.rule.Step))
	if last <= first || float64(last-first)*4 > float64(size.Height) {
		return
	}
	ground := canvas.NewRectangle(thin(theme.ColorNameBackground, 0xb8))
	ground.Resize(fyne.NewSize(ruleWidth, size.Height))
	s.layer.Add(ground)
	for n := first; n <= last; n++ {
		y, long := float32(f.Y-float64(n)*s.rule.Step*f.Scale), float32(4)
		if n%s.rule.Count == 0 {
			long = 8
			number := words(fmt.Sprintf("%.0f", float64(n)*s.rule.Step/s.rule.Unit), look.ColorFaint, false)
			place(number, ruleWidth-long-3, y, 1)
			s.layer.Add(number)
		}
		s.layer.Add(line(ruleWidth-long, y, ruleWidth, y, look.ColorFaint, 1))
	}
	s.say(s.rule.Name, ruleWidth, 10, 1)
}

// markWidths shows between which places of the silhouette its breadth is read.
func (s *PhotoStage) markWidths(f picture.Frame) {
	for _, w := range s.laid.Widths {
		a, b := s.on(f, plane.Point{X: w.Left, Y: w.Height}), s.on(f, plane.Point{X: w.Right, Y: w.Height})
		s.layer.Add(line(a.X, a.Y, b.X, b.Y, theme.ColorNamePrimary, 1.5))
	}
}

// on is the place of a point that lies on the photograph, wherever that is dragged.
func (s *PhotoStage) on(f picture.Frame, p plane.Point) fyne.Position {
	return fromView(f, p.Add(s.hand.shift))
}

func (s *PhotoStage) gripAt(f picture.Frame, g Grip) fyne.Position {
	return s.on(f, s.laid.Placing.View(s.pixel(g)))
}

// markScale draws the two points, the line between them and how far they are apart.
func (s *PhotoStage) markScale(f picture.Frame) {
	low, high := s.gripAt(f, GripLow), s.gripAt(f, GripHigh)
	s.layer.Add(line(low.X, low.Y, high.X, high.Y, theme.ColorNameBackground, 3))
	s.layer.Add(line(low.X, low.Y, high.X, high.Y, look.ColorStrain, 1.2))
	s.say(s.laid.Apart, (low.X+high.X)/2+6, (low.Y+high.Y)/2, 0)
	s.point(low, GripLow, scalePoint, look.ColorStrain)
	s.point(high, GripHigh, scalePoint, look.ColorStrain)
}

// markTrace draws the traced line and its points.
func (s *PhotoStage) markTrace(f picture.Frame) {
	var before fyne.Position
	for i := range s.laid.Trace {
		p := s.gripAt(f, GripTrace+Grip(i))
		if i > 0 {
			s.layer.Add(line(before.X, before.Y, p.X, p.Y, theme.ColorNamePrimary, 2))
		}
		before = p
	}
	for i := range s.laid.Trace {
		s.point(s.gripAt(f, GripTrace+Grip(i)), GripTrace+Grip(i), tracePoint, theme.ColorNamePrimary)
	}
}

// point draws a point; the one that is chosen is full, and ringed where the arrow keys move it.
func (s *PhotoStage) point(at fyne.Position, g Grip, size float32, colour fyne.ThemeColorName) {
	c := canvas.NewCircle(theme.Color(theme.ColorNameBackground))
	c.StrokeColor, c.StrokeWidth = theme.Color(colour), 2
	if g == s.chosen {
		c.FillColor = theme.Color(colour)
		if s.focused {
			s.layer.Add(ring(at.X, at.Y))
		}
	}
	c.Move(at.SubtractXY(size/2, size/2))
	c.Resize(fyne.NewSize(size, size))
	s.layer.Add(c)
}

// photoStageRenderer cuts off what lies beside the stage: one may look from very near.
// CreateRenderer is for the toolkit.
func (s *PhotoStage) CreateRenderer() fyne.WidgetRenderer {
	return marked{s.raster, container.NewClip(s.layer), s.mark, always(300, 260)}
}
