package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"understructure/app/ui/look"
	"understructure/app/ui/picture"
)

func (s *SleeveStage) mark() {
	s.layer.Objects = nil
	if size := s.Size(); !s.shown.Body.Empty() && size.Width > 0 {
		f, table := s.arrange(size)
		s.markFrills(f)
		s.markRows(f, table, size)
	}
	canvas.Refresh(s.layer)
}

func (s *SleeveStage) markFrills(f picture.Frame) {
	for _, r := range s.shown.Frills {
		y := float32(f.Y + r.At*f.Scale)
		for _, side := range []float64{-1, 1} {
			s.layer.Add(line(float32(f.X+side*r.From*f.Scale), y, float32(f.X+side*r.To*f.Scale), y, look.ColorForm, 1.2))
		}
	}
}

func (s *SleeveStage) markRows(f picture.Frame, table float32, size fyne.Size) {
	var want []float32
	for _, r := range s.shown.Rows {
		want = append(want, float32(f.Y+r.At*f.Scale))
	}
	ys := spread(want, rowHeight, sleeveMargin+rowHeight, size.Height-sleeveMargin)
	for i, head := range s.shown.Heads {
		s.word(head, s.column(table, i), ys[0]-rowHeight, 1, look.ColorFaint, false)
	}
	edge := float32(f.X - s.shown.Body.Low.X*f.Scale)
	for i, r := range s.shown.Rows {
		s.layer.Add(line(float32(f.X+s.shown.Body.Low.X*f.Scale), want[i], edge+6, want[i], look.ColorFaint, 0.6))
		s.layer.Add(line(edge+6, want[i], table-6, ys[i], look.ColorFaint, 0.6))
		s.word(r.Name, table, ys[i], 0, look.ColorInk, r.Strong)
		for k, number := range r.Numbers {
			s.word(number, s.column(table, k), ys[i], 1, look.ColorInk, r.Strong)
		}
	}
	s.word(s.shown.Caption, float32(f.X), size.Height-sleeveMargin/2, 0.5, look.ColorFaint, false)
}

// column is the right edge of a column of numbers.
func (s *SleeveStage) column(table float32, i int) float32 {
	return table + sleeveName + sleeveColumn*float32(i+1)
}

func (s *SleeveStage) word(text string, x, y, part float32, colour fyne.ThemeColorName, bold bool) {
	t := words(text, colour, bold)
	place(t, x, y, part)
	s.layer.Add(t)
}
