package pipeline

import (
	"fmt"
	"math"
	"slices"

	"understructure/app/record"
	"understructure/patterns/plan"
)

// counted is a shopping list with what the layouts say must be had. Planks are listed by their sizes, as many as
// are cut, and the material in them is shared out by the area that each gives.
func counted(all []plan.Material, layouts []plan.Layout) []plan.Material {
	var out []plan.Material
	for _, m := range all {
		switch {
		case m.Unit == unitPlanks && slices.ContainsFunc(layouts, ofFoam):
			out = append(out, ofPlanks(m, layouts)...)
		case m.Unit == unitArea:
			out = append(out, offRoll(m, layouts))
		default:
			out = append(out, m)
		}
	}
	return out
}

func ofFoam(l plan.Layout) bool { return l.Kind != plan.OnRoll }

func pieces(l plan.Layout) float64 { return l.Length * l.Width * l.Utilisation }

// ofPlanks has a row for every size of plank and offcut that is cut.
func ofPlanks(m plan.Material, layouts []plan.Layout) []plan.Material {
	var out []plan.Material
	whole := 0.0
	for _, l := range layouts {
		if ofFoam(l) {
			whole += pieces(l)
		}
	}
	for _, l := range layouts {
		if !ofFoam(l) {
			continue
		}
		i := slices.IndexFunc(out, func(o plan.Material) bool { return o.Name == l.Stock })
		if i < 0 {
			none := 0.0
			i = len(out)
			out = append(out, plan.Material{Name: l.Stock, Unit: unitPlanks, WithWaste: &none, Asks: m.Asks, Note: "see cutting.pdf"})
			if l.Kind == plan.OnOffcut {
				out[i].Unit, out[i].Note = "offcuts", "in store; see cutting.pdf"
			}
		}
		out[i].Quantity += l.Utilisation
		out[i].MassKg += m.MassKg * pieces(l) / whole
		*out[i].WithWaste++
	}
	for i := range out {
		out[i].Quantity, out[i].MassKg = toGrain(out[i].Quantity), toGrain(out[i].MassKg)
	}
	return out
}

// offRoll says how much of a roll a material needs.
func offRoll(m plan.Material, layouts []plan.Layout) plan.Material {
	i := slices.IndexFunc(layouts, func(l plan.Layout) bool { return l.Kind == plan.OnRoll && l.Stock == m.Name })
	if i < 0 {
		return m
	}
	l := layouts[i]
	m.WithWaste = number(math.Ceil(l.Length*l.Width*1e-6*grains) / grains)
	m.Note = fmt.Sprintf("%.2f m of a roll %.0f mm wide, %.0f %% of it used; see cutting.pdf", math.Ceil(l.Length/10)/100, l.Width, 100*l.Utilisation)
	return m
}

// priced is a shopping list with what it costs, as far as prices are known. Nothing is paid for an offcut.
func priced(all []plan.Material, m record.Mount, s record.Stock) []plan.Material {
	for i := range all {
		a := &all[i]
		price := priceOf(*a, m, s)
		if price == nil {
			continue
		}
		much := a.Quantity
		if a.WithWaste != nil {
			much = *a.WithWaste
		}
		a.Cost, a.Currency = number(math.Round(much**price*100)/100), m.Prices.Currency
	}
	return all
}

// priceOf is what one, a metre or a square metre costs; nil where nobody said.
func priceOf(a plan.Material, m record.Mount, s record.Stock) *float64 {
	if a.Unit == unitPlanks {
		for _, k := range m.Planks {
			if k.Price != nil && a.Name == plankName(k.Thickness, k.Length, k.Width) {
				return k.Price
			}
		}
		if b := s.Plank; a.Name != plankName(b.Thickness, b.Length, b.Width) {
			return nil
		}
	}
	price := matterOf(a.Name).price
	sold := a.Unit == unitPlanks || a.Unit == unitArea || a.Unit == unitLength && matterOf(a.Name).word == "pole"
	if price == nil || !sold {
		return nil
	}
	return price(m.Prices)
}
