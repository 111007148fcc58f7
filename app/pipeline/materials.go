package pipeline

import (
	"fmt"
	"math"
	"strings"

	"understructure/geometry/fit"
	"understructure/geometry/measure"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// materials is the shopping list: what is cut, waste not counted, since Lay counts that.
func (j *job) materials() []plan.Material {
	var b basket
	for _, p := range j.pieces {
		if k := j.stock.Plank; isSlice(p) {
			foam := p.Area() * float64(p.Count)
			b.add(plankName(k.Thickness, k.Length, k.Width), unitPlanks, foam/(k.Length*k.Width), fit.Foam.OfVolume(foam*p.Thickness), p.Count)
		} else {
			b.piece(p)
		}
	}
	if pole := j.stock.Plank.Pole; j.slices != nil && pole > 0 {
		b.add(fmt.Sprintf("pole, %g mm across", pole), "m", (j.waist+j.height(measure.NeckBase))/1000, 0, 1)
	}
	for _, p := range j.supports {
		b.piece(p)
	}
	for _, c := range j.cuts {
		b.row(c)
	}
	return b.list()
}

// The units in which materials are counted. Of planks parts count as well.
const unitPlanks, unitArea, unitLength = "planks", "m²", "m"

// goods is a material in a number of parts.
type goods struct {
	plan.Material
	parts int
}

// basket adds up quantities of one material in one unit.
type basket []goods

func (b *basket) add(name, unit string, quantity, mass float64, parts int) {
	for i, g := range *b {
		if g.Name == name && g.Unit == unit {
			(*b)[i].Quantity += quantity
			(*b)[i].MassKg += mass
			(*b)[i].parts += parts
			return
		}
	}
	*b = append(*b, goods{plan.Material{Name: name, Quantity: quantity, Unit: unit, MassKg: mass, Asks: matterOf(name).asks}, parts})
}

// piece adds what is cut for a piece.
func (b *basket) piece(p piece.Piece) {
	name, area := soldAs(p.Material), math.Abs(p.CutLine().Area())*float64(p.Count) // a mirrored allowance runs the other way round
	b.add(name, unitArea, area*1e-6, matterOf(name).mass(area, p.Thickness), p.Count)
}

// row adds a row of the cutting table: by its area, its length, or as a lot of which no more is known.
func (b *basket) row(c plan.Cut) {
	switch a := area(c); {
	case a > 0:
		b.add(c.Material, unitArea, a*1e-6, matterOf(c.Material).mass(a, 0), c.Count)
	case c.Length > 0:
		b.add(c.Material, unitLength, c.Length*float64(c.Count)/1000, 0, c.Count)
	default:
		*b = append(*b, goods{plan.Material{Name: c.Material, Quantity: float64(c.Count), Unit: "lot", Note: c.Name + ": " + c.Note, Asks: matterOf(c.Material).asks}, c.Count})
	}
}

// grains are the steps in a metre, a square metre or a kilogram in which a quantity is worth saying.
const grains = 1000

func toGrain(x float64) float64 { return math.Round(x*grains) / grains }

// list says of what is sold by area or length how it is needed.
func (b basket) list() []plan.Material {
	var out []plan.Material
	for _, g := range b {
		switch g.Unit {
		case unitArea:
			g.Note = "area to be cut, allowances included; waste not counted"
		case unitPlanks:
			g.Note = "area of the slices in planks; waste not counted"
		case unitLength:
			g.Note = "in one length"
			if g.parts > 1 {
				g.Note = fmt.Sprintf("in %d lengths; see the cutting table", g.parts)
			}
		}
		g.Quantity, g.MassKg = toGrain(g.Quantity), toGrain(g.MassKg)
		out = append(out, g.Material)
	}
	return out
}

const coverName = "smooth cover (cotton jersey or silk), washed"

func plankName(thickness, length, width float64) string {
	return fmt.Sprintf("closed-cell polyethylene plank, %g × %g × %g mm", thickness, length, width)
}

// soldAs is what the material of a piece is called in a shop.
func soldAs(material string) string {
	if rest, ok := strings.CutPrefix(material, "wadding "); ok {
		return "needle-punched polyester wadding, " + rest
	}
	if material == "cover" {
		return coverName
	}
	return material
}
