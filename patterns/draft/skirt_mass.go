package draft

import (
	"fmt"

	"understructure/geometry/fit"
)

// stuffing is loose polyester; from memory.
var stuffing = fit.Stuff{Name: "loose polyester stuffing", Solid: 20, Source: "from memory"}

// steelSection is that of a hoop's steel without its cover, mm²: 4.8 by 0.5 (the thickness from memory). A
// cage of 29 hoops then weighs near the 0.45 to 0.9 kg that such cages do (Five Colleges museums).
const steelSection = steelWidth * 0.5

// What makes a skirt heavy or full, so that a second person is wanted: as heavy as the lighter
// of the dresses weighed in 1883 (2.35 kg, New York Times), or 3 m at the hem. Common practice,
// no published source for the figures; that two people dress such a skirt is published (Interpret and Display Historic Dress).
const heavy, full = 2.35, 3000.0

// weigh adds up the mass of all that was drafted, kg.
func (b *supporter) weigh() {
	b.out.MassKg += fit.Steel.OfVolume(b.steel * steelSection)
	for _, p := range b.out.Pieces {
		cloth := fit.Cotton
		if p.ID[0] == 'N' {
			cloth = fit.Net
		}
		b.out.MassKg += cloth.OfArea(p.Area() * float64(p.Count))
	}
}

// caution says what can hurt people or cloth.
func (b *supporter) caution() {
	say := func(format string, args ...any) {
		b.out.Cautions = append(b.out.Cautions, fmt.Sprintf(format, args...))
	}
	if b.steel > 0 {
		say("Cap or bind both ends of every cut steel before it goes into its channel: a bare end works through cloth. Wear gloves and eye protection when cutting; a coiled steel springs open.")
	}
	garment := ""
	if b.stock.GarmentMassKg > 0 {
		garment = fmt.Sprintf(" and the garment %.1f kg", b.stock.GarmentMassKg)
	}
	say("The support weighs about %.1f kg%s. Hang it from the mount's padded waist, never from the garment, and see that the stand carries both.", b.out.MassKg, garment)
	if hem := b.skirt.Girths[len(b.skirt.Girths)-1].Garment; b.stock.GarmentMassKg >= heavy || hem >= full {
		say("Heavy or full: dress it with two people, one of them to lift the skirt clear of steels and net.")
	}
	if len(b.out.Pieces) > 0 {
		say("The last layer under the skirt is smooth cloth, never net, steel or wadding. Never use underwear from a collection as a support.")
	}
	if b.skirt.Trained {
		say("A train and its support lie where people step: keep the floor round them clear.")
	}
}
