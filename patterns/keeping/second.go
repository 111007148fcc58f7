package keeping

import (
	"fmt"
	"math"

	"understructure/geometry/measure"
	"understructure/geometry/plane"
	"understructure/geometry/rest"
	"understructure/patterns/drawing"
	"understructure/patterns/leaf"
)

// second is the page of pads, rolls and hangers, of what to use and what to beware of.
func (s *sheet) second(c drawing.Canvas) {
	y := leaf.Heading(c, "Storage sheet", s.Number, "Pads, rolls, materials") - 1
	y = s.pads(c, y) - 3
	y = s.rolled(c, y) - 2
	y = s.hung(c, y) - 2
	half := (leaf.Left + leaf.Right) / 2
	left := leaf.Items(c, materials, leaf.Text, leaf.Left, half-4, leaf.Section(c, "Materials", leaf.Left, half-4, y))
	right := leaf.Items(c, cautions, leaf.Text, half+4, leaf.Right, leaf.Section(c, "Beware", half+4, leaf.Right, y))
	y = leaf.Lines(c, sources, leaf.Small, leaf.Left, leaf.Right, math.Min(left, right)-2)
	leaf.Notes(c, y-1)
}

// pads draws a pad in its fold, and says what a thinner one would do.
func (s *sheet) pads(c drawing.Canvas, y float64) float64 {
	const room = 46.0
	y = leaf.Section(c, "Pads in the folds", leaf.Left, leaf.Right, y)
	t, pad := s.cloth.Thickness, s.cloth.Pad
	scale := scaleFor(plane.Point{X: pad + 2*t, Y: pad + 2*t}, plane.Point{X: 22, Y: 22})
	at := plane.Point{X: leaf.Left + 24, Y: y - 3 - (pad/2+t)/scale}
	for _, side := range []float64{-1, 1} {
		low, high := at.Y+side*pad/2/scale, at.Y+side*(pad/2+t)/scale
		from := leaf.Left + 2
		band := []plane.Point{{X: from, Y: low}, {X: at.X, Y: low}, {X: at.X, Y: high}, {X: from, Y: high}}
		c.Fill(band, drawing.Pale)
		c.Line(band[:2], false, leaf.Fine)
		c.Line(band[2:], false, leaf.Fine)
	}
	turn(c, at, pad/2/scale, t/scale, 1)
	w := leaf.Word(mm(pad), leaf.Small, at.X, at.Y-0.9)
	c.Word(w.Back(0.5))
	foot := at.Y - (pad/2+t)/scale
	c.Word(leaf.Word(fmt.Sprintf("1 : %.0f", scale), leaf.Small, leaf.Left+2, foot-4))

	x := leaf.Left + room
	columns := []leaf.Column{{Head: "pad, mm across", Width: 27, Number: true}}
	rows := [][]string{{"thickness " + mm(t)}}
	for _, d := range []float64{5, 20, 50, 65, 80, 120} {
		columns = append(columns, leaf.Column{Head: mm(d), Width: 16, Number: true})
		rows[0] = append(rows[0], fmt.Sprintf("%.0f %%", 100*rest.Bend(t, d)))
	}
	end := leaf.Table(c, columns, rows, 6, -1, x, y-1)
	end = leaf.Lines(c, fmt.Sprintf("By so much the outer face would be stretched over the inner one if the %s mm of cloth and tissue bent as one: t/(D+t). A sharp fold breaks silk; a pad of %s mm does not ask more than %.0f %%, "+
		"and tissue between the layers lets them slide, so that each bears only its own part. Roll soft tissue or wadding in washed cotton, as long as the fold, loose enough to give under a hand. "+
		"Pads also go into sleeve heads, the bust and gathers.", mm(t), mm(pad), math.Ceil(100*rest.Bend(t, pad))), leaf.Text, x, leaf.Right, end-1.5)
	return math.Min(end, foot-5)
}

// rolled says what the skirt, or a flat piece as long, comes to on a roll, and draws it cut across.
func (s *sheet) rolled(c drawing.Canvas, y float64) float64 {
	y = leaf.Section(c, "On a roll", leaf.Left, leaf.Right, y)
	long := 0.0
	for _, k := range []measure.Key{measure.FrontLength, measure.SideLength, measure.BackLength} {
		long = math.Max(long, s.garment.Skirt[k])
	}
	switch {
	case long == 0:
		return leaf.Lines(c, "A garment with sleeves or a shaped body is not rolled. Sashes, shawls and lengths of cloth are.", leaf.Text, leaf.Left, leaf.Right, y)
	case s.Strength == "weak":
		return leaf.Lines(c, "Not for cloth as weak as this: winding pulls, and every turn lies tighter than the one above it.", leaf.Text, leaf.Left, leaf.Right, y)
	}
	r := rest.Roll{Tube: s.tube, Thickness: s.cloth.Thickness, Length: long}
	turns, err := r.Turns()
	if err != nil {
		return leaf.Lines(c, err.Error(), leaf.Text, leaf.Left, leaf.Right, y)
	}
	full := r.Diameter(turns)
	scale := scaleFor(plane.Point{X: full, Y: full}, plane.Point{X: 34, Y: 34})
	at := plane.Point{X: leaf.Left + 22, Y: y - 2 - full/2/scale}
	spiral(c, at, r, turns, scale)
	c.Word(leaf.Word(fmt.Sprintf("1 : %.0f", scale), leaf.Small, leaf.Left+2, at.Y-full/2/scale-4))
	x := leaf.Left + 46
	end := leaf.Lines(c, fmt.Sprintf("Only a skirt of straight breadths or another flat piece, without sewn pleats, beads or stiffening. A tube %s mm across, padded and covered, %s mm long (the cloth lies %s mm broad, and 50 mm stand free at each end); "+
		"%s mm of cloth with tissue go round it %.1f times and make a roll %s mm across.", mm(s.tube), mm(s.flat.Body+100), mm(s.flat.Body), mm(long), turns, mm(full)), leaf.Text, x, leaf.Right, y)
	end = leaf.Lines(c, "Face outward where there is pile or paint; along the warp; tissue first, under and over the cloth, without pulling. Wrap the roll in washed cotton, tie it with broad tape, and hold it by the ends of its tube so that it lies on nothing.",
		leaf.Text, x, leaf.Right, end)
	return math.Min(end, at.Y-full/2/scale-5)
}

// spiral draws a tube and what is wound on it.
func spiral(c drawing.Canvas, at plane.Point, r rest.Roll, turns, scale float64) {
	const steps = 60 // a turn
	off := func(i int, radius float64) plane.Point {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / steps)
		return at.Add(plane.Point{X: cos, Y: sin}.Mul(radius / scale))
	}
	var cloth, tube []plane.Point
	for i := range int(turns*steps) + 1 {
		cloth = append(cloth, off(i, r.Tube/2+r.Thickness*float64(i)/steps))
	}
	c.Line(cloth, false, leaf.Fine)
	for i := range steps {
		tube = append(tube, off(i, r.Tube/2))
	}
	c.Fill(tube, drawing.Pale)
	c.Line(tube, true, leaf.Firm)
	w := leaf.Word(mm(r.Tube), leaf.Small, at.X, at.Y-0.9)
	c.Word(w.Back(0.5))
}

// hung says how broad a hanger is, where one may be used.
func (s *sheet) hung(c drawing.Canvas, y float64) float64 {
	y = leaf.Section(c, "On a hanger", leaf.Left, leaf.Right, y)
	if s.Strength != "sound" {
		return leaf.Lines(c, "Not this one: hanging is for sound cloth with sound shoulders and waist, and never for knits, beads, a bias cut or what was cut without a waist tape.", leaf.Text, leaf.Left, leaf.Right, y)
	}
	return leaf.Lines(c, fmt.Sprintf("Only while shoulders and waist stay sound. The hanger is %s mm broad: 25 mm less than the %s mm from shoulder point to shoulder point. Pad it round, %s mm thick at the shoulders, in the slope of the shoulder, "+
		"and cover it with washed cotton; no thin wire. Loops sewn to a tape at the waist take the weight of a skirt. Leave room on the rail, and a washed cotton cover over all.",
		mm(s.flat.Across-25), mm(s.flat.Across), mm(math.Max(40, s.pad-10))), leaf.Text, leaf.Left, leaf.Right, y)
}

// Common practice, no published source, but where the sources below say so.
var materials = []string{
	"Tissue that is free of acid: unbuffered for silk and wool. Change it when it yellows or crackles.",
	"Cotton washed hot without softener, for covers, and for the sheet under the garment by which it is lifted.",
	"Inert foam or corrugated plastic, covered, where a form is needed inside; no bare foam at the cloth.",
	"A box of acid-free board or inert plastic, not airtight. The heaviest garment lies undermost; nothing lies on this one.",
	"No pins, no staples, no plastic bags from cleaners, no wood without a barrier, no cardboard of unknown make.",
	"A label outside: number, picture, set of folds, date; so that nobody opens it to look.",
}

var cautions = []string{
	"Old garments may carry pesticides, mercury or lead, and green and some other dyes arsenic. Ask for the record, have it tested where there is doubt, and mark the box.",
	"Gloves of nitrile, or clean dry hands; no rings, watches, lanyards. Wash hands afterwards.",
	"A mask where there is dust; none of the dust masks keeps vapour out. Mould: stop, bag, isolate, ask.",
	"Look for insects and damp before it goes in, and each time it comes out.",
	"Clear and cover the table before you lift. Long boxes are for two people; none is lifted above the shoulders.",
	"Local rules and the conservator in charge decide, whatever is printed here.",
}

// sources says what is whose (the third is quoted for its two figures alone).
const sources = "Sources. Tubes of 50 to 150 mm: Canadian Conservation Institute, CCI Notes 13/3, Rolled Storage for Textiles. Tube longer than the cloth by 100 mm: Milwaukee Public Museum, on rolled storage. " +
	"What lies and what hangs: CCI Notes 13/2, Flat Storage for Textiles, and 13/5. Hanger narrower by 20 to 30 mm: a garment hanger in Storage Techniques for Art, Science and History Collections, 1992. " +
	"From memory, as advice and not as a rule: diameters of pads, sizes of common boxes, how thick cloth lies (250 kg in a cubic metre), once a year, 3 kg for two people. Fold places, heights, turns and stretch are arithmetic."
