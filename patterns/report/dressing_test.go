package report

import (
	"strings"
	"testing"

	"understructure/patterns/plan"
	"understructure/patterns/plantest"
)

// dressed is a mount with everything that can be put on one.
func dressed() plan.Plan {
	p := plantest.Plan()
	p.Skirt = &plan.Skirt{
		Supports: []string{"tube", "frame", "petticoat", "net", "train"},
		Falls:    []plan.Fall{{Name: "front", Length: 1010, Reach: 104, Above: 20}, {Name: "back", Length: 1190, Reach: 556, Train: 38}},
		Hem:      plan.Hem{Support: 1908},
	}
	p.Sleeves = &plan.Sleeves{Support: "arm", Frills: []plan.Frill{{At: -75, Length: 400}}}
	return p
}

// Each step is told by a few of its words; what a mount has not is not spoken of.
func TestTheOrderOfDressing(t *testing.T) {
	bodice := plantest.Plan()
	puffed := plantest.Plan()
	puffed.Sleeves = &plan.Sleeves{Support: "puff"}
	petticoat := plantest.Plan()
	petticoat.Skirt = &plan.Skirt{Supports: []string{"tube", "petticoat"}, Falls: []plan.Fall{{Name: "front", Above: 10}, {Name: "back", Above: 12}}}
	weak := plantest.Plan()
	weak.Object.Strength = "weak"
	unknown := plantest.Plan()
	unknown.Skirt = &plan.Skirt{Supports: []string{"new-fashioned"}}
	for name, c := range map[string]struct {
		plan  plan.Plan
		order []string
		never []string
	}{
		"a bodice": {bodice, []string{"clean sheets", "waist 1052 mm above", "Two people", "Lay the bodice", "Fasten", "first at the high hip, then the underbust, then the hip", "photograph"},
			[]string{"skirt", "petticoat", "sleeve", " train", " hem", " net", "weak"}},
		"a dress with a train and full sleeves": {dressed(), []string{"waist 1052 mm above", "tube petticoat", "bustle frame", "base petticoat", "the net, deepest", "support of the train", "smooth cloth over all",
			"Sew the arms", "net for the sleeves pressed", "Two people", "the skirt goes on first", "Lay the bodice", "one sleeve", "Draw the silk off", "Fasten", "clears the floor by 20 mm at the front", "Lay the train", "photograph"}, nil},
		"puffed sleeves":                  {puffed, []string{"pressed together", "Two people", "one sleeve", "Draw the silk off", "Fasten"}, []string{"arms to the shoulders", "petticoat"}},
		"a petticoat":                     {petticoat, []string{"tube petticoat", "base petticoat", "smooth cloth", "Two people", "clears the floor by 10 mm at the front"}, []string{"sleeve", " train", "bustle"}},
		"weak silk":                       {weak, []string{"Two people", "The cloth is weak", "Lay the bodice"}, nil},
		"a support that nobody has named": {unknown, []string{"Tie on the new fashioned.", "Two people"}, nil},
		"nothing known":                   {plan.Plan{}, []string{"clean sheets", "Two people", "with a flat hand all the way down", "photograph"}, []string{"skirt"}},
	} {
		steps := strings.Join(dressing(c.plan), "\n")
		at := 0
		for _, words := range c.order {
			n := strings.Index(steps[at:], words)
			if n < 0 {
				t.Errorf("%s: %q is missing or comes too early in\n%s", name, words, steps)
				continue
			}
			at += n
		}
		for _, words := range c.never {
			if strings.Contains(steps, words) {
				t.Errorf("%s: %q is spoken of in\n%s", name, words, steps)
			}
		}
	}
}
