package condition

// Term is a word for damage, its code, and what it means.
type Term struct {
	Code, Name, Meaning string
	Memory              bool // from memory; the others are in the published list
}

// Terms are the words for damage, by their names. The words are those of Museum Textile Services, "Textile Condition
// Terms", a handout; the meanings are in words of our own.
var Terms = []Term{
	{"AB", "abrasion", "surface rubbed or worn away", false},
	{"AC", "accretion", "something foreign stuck to the surface", false},
	{"CR", "crease", "pressed sharply where none is meant", false},
	{"CK", "crocking", "colour comes off when touched, the thread stays", false},
	{"CT", "cut or tear", "a clean break in the cloth", false},
	{"DI", "discoloration", "colour differs from that around it", false},
	{"BL", "dye bleed", "colour has run into what lies beside it", true},
	{"EM", "embrittlement", "bends so little that it may break", false},
	{"FA", "fading", "colour lost, mostly to light", false},
	{"FO", "fold", "cloth doubled over", false},
	{"FR", "fraying", "threads come apart, mostly at an edge", false},
	{"HO", "hole", "warp and weft both gone", false},
	{"IN", "insect damage", "grazed or eaten; cases, frass", false},
	{"LO", "loss", "a part that is gone, in general", false},
	{"MF", "missing fastening", "hook, eye, button, tape or lace gone", true},
	{"MO", "mould", "growth, or the stain that it leaves", false},
	{"UN", "one-way loss", "warp gone and weft left, or the other way", false},
	{"OX", "oxidation", "changed by rusting iron in it or beside it", false},
	{"PA", "particulates", "dust and loose soil, on it and in it", false},
	{"RE", "previous repair", "darn, patch, alteration, glue", true},
	{"SH", "shattered", "weighted silk that breaks into losses", false},
	{"SO", "soot", "dark and oily, of smoke or air", false},
	{"SP", "split", "parted along one thread, mostly at a fold", true},
	{"ST", "stain", "a spot of another colour", false},
	{"SF", "stiffness", "no longer supple", false},
	{"TL", "tide line", "edge where a liquid dried", true},
	{"WS", "weak seam", "stitches loose or gone between two pieces", false},
	{"OT", "other", "say what in the note", true},
}

// Grades are the four steps of the whole garment's condition, each with what it means for handling: words of ours, since good and
// fair mean something else to everyone (common practice, no published source).
var Grades = [4]string{
	"sound: handle and mount with usual care",
	"stable: damage that does not grow; support it when lifted",
	"weak: damage grows when handled; treat before mounting",
	"unsafe: lift on its board only; a conservator first",
}
