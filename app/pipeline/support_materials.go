package pipeline

import (
	"fmt"
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
			b.rows = append(b.rows, plan.Material{Name: c.Material, Quantity: float64(c.Count), Unit: "lot", Note: c.Name + ": " + c.Note})
		}
	}
	for i := range b.rows {
		b.note(i)
	}
	return b.rows
}

// basket adds up quantities of one material in one unit.
type basket struct {
	rows  []plan.Material
	parts []int
}

func (b *basket) add(name, unit string, quantity float64, parts int) {
	for i := range b.parts {
		if b.rows[i].Name == name && b.rows[i].Unit == unit {
			b.rows[i].Quantity += quantity
			b.parts[i] += parts
			return
		}
	}
	b.rows, b.parts = append(b.rows, plan.Material{Name: name, Quantity: quantity, Unit: unit}), append(b.parts, parts)
}

// note says of what is sold by area or length how it is needed.
func (b *basket) note(i int) {
	m := &b.rows[i]
	switch m.Unit {
	case "m²":
		m.Note = "area to be cut, allowances included; allow for waste"
		if strings.HasSuffix(m.Name, "net") {
			m.Note += fmt.Sprintf("; weighs about %.0f g", 1000*fit.Net.OfArea(m.Quantity*1e6))
		}
	case "m":
		m.Note = fmt.Sprintf("in %d lengths; see the cutting table", b.parts[i])
	}
}
