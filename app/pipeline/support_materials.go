package pipeline

import (
	"fmt"
	"math"
	"strings"

	"understructure/geometry/fit"
	"understructure/patterns/plan"
)

// supportMaterials is what the supports are made of, in the order in which they need it.
func (j *job) supportMaterials() []plan.Material {
	var b basket
	for _, p := range j.supports {
		b.add(p.Material, "m²", p.CutLine().Area()*float64(p.Count)*1e-6, 1)
	}
	for _, c := range j.cuts {
		switch a := area(c); {
		case a > 0:
			b.add(c.Material, "m²", a*1e-6, c.Count)
		case c.Length > 0:
			b.add(c.Material, "m", c.Length*float64(c.Count)/1000, c.Count)
		default:
			b = append(b, goods{plan.Material{Name: c.Material, Quantity: float64(c.Count), Unit: "lot", Note: c.Name + ": " + c.Note}, c.Count})
		}
	}
	return b.list()
}

// goods is a material in a number of parts.
type goods struct {
	plan.Material
	parts int
}

// basket adds up quantities of one material in one unit.
type basket []goods

func (b *basket) add(name, unit string, quantity float64, parts int) {
	for i, g := range *b {
		if g.Name == name && g.Unit == unit {
			(*b)[i].Quantity += quantity
			(*b)[i].parts += parts
			return
		}
	}
	*b = append(*b, goods{plan.Material{Name: name, Quantity: quantity, Unit: unit}, parts})
}

// grains are the steps in a metre, or a square metre, in which a quantity is worth saying.
const grains = 1000

// list says of what is sold by area or length how it is needed.
func (b basket) list() []plan.Material {
	var out []plan.Material
	for _, g := range b {
		switch g.Unit {
		case "m²":
			g.Note = "area to be cut, allowances included; allow for waste"
			if strings.HasSuffix(g.Name, "net") {
				g.Note += fmt.Sprintf("; weighs about %.0f g", 1000*fit.Net.OfArea(g.Quantity*1e6))
			}
		case "m":
			g.Note = "in one length; see the cutting table"
			if g.parts > 1 {
				g.Note = fmt.Sprintf("in %d lengths; see the cutting table", g.parts)
			}
		}
		g.Quantity = math.Round(g.Quantity*grains) / grains
		out = append(out, g.Material)
	}
	return out
}
