package measure

// Shape is what the maker set of the figure by hand, a level at a time. A level that is absent
// follows the measurements; the zero Shape leaves everything to them.
type Shape map[Level]Adjustment

// Adjustment is what was set by hand at one level of the figure that fills the garment, ease
// not yet taken off, in millimetres. What is nil follows the measurements; what is set overrules
// a reading, taken or drawn. Arcs run along a taut tape.
type Adjustment struct {
	Height   *float64 // of the level above the waist level, negative below it
	Girth    *float64 // the whole tape, > 0: where no measurement takes it, or to overrule one that does
	Breadth  *float64 // straight across from side to side, > 0
	Depth    *float64 // straight from front to back, > 0
	FrontArc *float64 // side seam to side seam over the front, > 0, less than the girth
	LeftArc  *float64 // centre front round the left side to centre back, > 0, less than the girth
}

// Empty reports whether nothing is set.
func (a Adjustment) Empty() bool { return a == Adjustment{} }

// Empty reports whether nothing is set at any level.
func (s Shape) Empty() bool {
	for _, a := range s {
		if !a.Empty() {
			return false
		}
	}
	return true
}
