package drawing

// Layer is a part of a drawing that a viewer may show or hide, and a cutting program may skip. Its value is what
// it is called where a name may have no spaces; every kind of file has the same layers.
type Layer string

// The layers, in the order in which a viewer lists them.
const (
	Cut     Layer = "cut"
	Holes   Layer = "holes"  // cut before the edge, so that the piece lies still
	Second  Layer = "second" // the other face of a slice that is carved or bevelled
	Seams   Layer = "seams"  // to sew, not to cut
	Darts   Layer = "darts"
	Feather Layer = "feather"
	Steps   Layer = "steps"
	Marks   Layer = "marks" // levels, balance lines, notches, drill marks of pins, arrows
	Text    Layer = "text"
	Sheet   Layer = "sheet" // what belongs to the paper and not to the piece
)

// Layers lists every layer.
var Layers = []Layer{Cut, Holes, Second, Seams, Darts, Feather, Steps, Marks, Text, Sheet}

var titles = map[Layer]string{
	Cut: "Cut line", Holes: "Holes", Second: "Second outline, to carve or bevel to", Seams: "Seam lines", Darts: "Darts",
	Feather: "Edges to feather", Steps: "Edges at a step", Marks: "Marks and drill holes", Text: "Words",
	Sheet: "Page: rules, crosses, map, title",
}

// Title is what a viewer calls the layer.
func (l Layer) Title() string { return titles[l] }
