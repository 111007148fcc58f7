package measure

// Shape is what the maker set by hand of the mount, a level at a time; a level that is absent
// follows the measurements.
type Shape map[Level]Adjustment

// Adjustment is what was set at one level, in millimetres: the height above the waist, which
// may be negative, and the girth, breadth, depth and arcs of the mount there. What is nil
// follows the measurements.
type Adjustment struct{ Height, Girth, Breadth, Depth, FrontArc, LeftArc *float64 }
