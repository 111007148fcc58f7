package sheet

import "understructure/patterns/drawing"

// Sample is one of the lines that templates are drawn with.
type Sample struct {
	Name string
	Pen  drawing.Pen
}

// Samples are all lines of templates, the heaviest first.
func Samples() []Sample {
	return []Sample{
		{"cut line", cutPen}, {"second outline", innerPen}, {"seam line", sewPen}, {"marks, rules", markPen},
		{"centre line", centrePen}, {"seam of two pages", seamPen}, {"line to a name", leaderPen}, {"map of the pages", thinPen},
	}
}
