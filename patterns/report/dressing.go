package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"understructure/patterns/plan"
)

// dressing is the order in which two people dress a mount: what holds the garment first, from the inside out, then the
// garment, without force. The order is common practice among those who mount dress; no published source.
func dressing(p plan.Plan) []string {
	steps := []string{
		"Cover table and floor with clean sheets; clean hands or gloves, no rings, watches or badges.",
		fmt.Sprintf("Set the covered mount on its stand, the waist %s mm above the floor; tighten it and try it against tipping.", signed(p.StandHeight)),
	}
	steps = append(steps, underSkirt(p.Skirt)...)
	soft := p.Sleeves != nil && (p.Sleeves.Support == "puff" || len(p.Sleeves.Frills) > 0)
	if p.Sleeves != nil && (p.Sleeves.Support == "arm" || p.Sleeves.Support == "tube") {
		steps = append(steps, "Sew the arms to the shoulders, hanging free, and cover them with smooth silk.")
	}
	if soft {
		steps = append(steps, "Keep the net for the sleeves pressed together in a sheet of silk.")
	}
	steps = append(steps, "Two people: open every fastening, and lift the garment with hands under its weight, never by its shoulders.")
	if p.Object.Strength == "weak" {
		steps = append(steps, "The cloth is weak: carry it on a sheet up to the mount, with a third person to hold what hangs, and stop at the first sign of a split.")
	}
	if p.Skirt != nil {
		steps = append(steps, "Where skirt and bodice are separate, the skirt goes on first, over the top or wrapped round; one carries it, the other fastens it.")
	}
	steps = append(steps, "Lay the bodice round the mount from the side away from its opening. Where it catches, stop and take it off.")
	if p.Sleeves != nil {
		steps = append(steps, "Bring one sleeve at a time over its arm, guided from inside through silk. Never push.")
	}
	if soft {
		steps = append(steps, "Draw the silk off the net, and spread it evenly in the sleeve.")
	}
	steps = append(steps, "Fasten from the waist up, one bringing the edges together, the other closing them. What does not meet without a pull stays open.", first(p.Levels))
	return append(steps, atTheHem(p)...)
}

// underSkirt are the steps for what holds a skirt, from the inside out.
func underSkirt(k *plan.Skirt) []string {
	if k == nil {
		return nil
	}
	var steps []string
	for _, s := range k.Supports {
		step, ok := onTheWaist[s]
		if !ok {
			step = "Tie on the " + strings.ReplaceAll(s, "-", " ") + "."
		}
		steps = append(steps, step)
	}
	if len(steps) > 0 {
		steps = append(steps, "Lay smooth cloth over all of it: no net, steel or wadding may touch the garment.")
	}
	return steps
}

// onTheWaist says how each kind of skirt support is put on.
var onTheWaist = map[string]string{
	"tube":      "Tie the tube petticoat round the waist, over the pole.",
	"legs":      "Set the legs under the mount.",
	"pad":       "Tie on the bustle pad, its middle at the centre back.",
	"frame":     "Tie on the bustle frame, its middle at the centre back, its steels bowed out.",
	"petticoat": "Tie on the base petticoat, its opening at the back, its hem level.",
	"hoops":     "Tie on the hooped petticoat, its hoops level.",
	"net":       "Tie on the net, deepest tier last, its fullness where the skirt's is.",
	"train":     "Lay the support of the train behind the mount, and tie it to the waist.",
}

// first says where to feel for strain: where its chance is greatest.
func first(levels []plan.Level) string {
	var at []plan.Level
	for _, l := range levels {
		if l.StrainChance != nil && l.Clearance != nil {
			at = append(at, l)
		}
	}
	slices.SortStableFunc(at, func(a, b plan.Level) int {
		return cmp.Or(cmp.Compare(*b.StrainChance, *a.StrainChance), cmp.Compare(*a.Clearance, *b.Clearance))
	})
	if len(at) == 0 {
		return "Feel for strain with a flat hand all the way down."
	}
	names := []string{}
	for _, l := range at[:min(3, len(at))] {
		names = append(names, l.Name)
	}
	return "Feel for strain, first at the " + strings.Join(names, ", then the ") + "; if anything pulls, undress and take wadding off."
}

// atTheHem are the last steps.
func atTheHem(p plan.Plan) []string {
	var steps []string
	if k := p.Skirt; k != nil {
		train := false
		for _, f := range k.Falls {
			train = train || f.Train > 0
			if f.Name == "front" {
				steps = append(steps, fmt.Sprintf("See that the hem clears the floor by %s mm at the front. Spread the folds from inside, the hand under the cloth.", signed(f.Above)))
			}
		}
		if train {
			steps = append(steps, "Lay the train on its own sheet, and keep people off it.")
		}
	}
	return append(steps, "Step back, compare with the elevations, photograph all sides, and write down below what was changed.")
}
