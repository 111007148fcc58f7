package draft

import (
	"fmt"

	"understructure/geometry/skirt"
	"understructure/patterns/piece"
)

// Steels (Interpret and Display Historic Dress, chapter 8): in a base petticoat the ends overlap
// by 15 cm and the upper steel is 1 cm tighter than that of the hem; in a hooped one they
// overlap by 20 cm at centre front.
const baseOverlap, upperTighter, hoopOverlap = 150.0, 10.0, 200.0

// bellTiers is in how many tiers a base petticoat is cut under a bell, whose sides no straight cloth follows.
const bellTiers = 3

// base drafts the petticoat with two steels in channels at its hem.
func (b *supporter) base() error {
	n := 1
	if sil := b.skirt.Silhouette; sil.Front.Bell+sil.Side.Bell+sil.Back.Bell > 0.5 {
		n = bellTiers
	}
	p, err := b.skirt.Petticoat(n)
	if err != nil {
		return err
	}
	last := len(p) - 1
	around := p.Hem().Oval.Girth()
	err = b.tiers(p, "base petticoat", func(i int, s skirt.Strip) []piece.Mark {
		if i != last {
			return nil
		}
		return []piece.Mark{{Kind: piece.LevelLine, Label: "channel of the upper steel", Points: higher(s, channel)}}
	})
	if err != nil {
		return err
	}
	b.hoopSteel("hem steel of the base petticoat", around+baseOverlap, fmt.Sprintf("circumference %.0f mm, ends overlap by 15 cm, in front (flatter) or behind; tip the ends", around))
	b.hoopSteel("upper steel of the base petticoat", around-upperTighter+baseOverlap, fmt.Sprintf("circumference %.0f mm, 1 cm tighter than the hem's, in the channel 2 cm above it; tip the ends", around-upperTighter))
	b.petticoats, b.out.Shape = append(b.petticoats, "base petticoat"), p
	return nil
}

// hooped drafts the petticoat with steels from the hip to the hem, and its table of tapes.
func (b *supporter) hooped() error {
	p, err := b.skirt.Petticoat(b.stock.Hoops)
	if err != nil {
		return err
	}
	err = b.tiers(p, "hooped petticoat", func(i int, s skirt.Strip) []piece.Mark {
		if !p[i].Steel || i == len(p)-1 {
			return nil
		}
		return []piece.Mark{{Kind: piece.LevelLine, Label: "channel", Points: higher(s, channel/2)}}
	})
	if err != nil {
		return err
	}
	for i, h := range p.Steels() {
		g, o := h.Oval.Girth(), h.Oval
		b.hoopSteel(fmt.Sprintf("H%02d, steel %d of %d from the top", i+1, i+1, b.stock.Hoops), g+hoopOverlap,
			fmt.Sprintf("circumference %.0f mm, %.0f mm wide, %.0f mm deep of which %.0f mm behind the middle, %.0f mm below the waist; ends overlap by 20 cm at centre front; tip the ends",
				g, o.Right+o.Left, o.Front+o.Back, o.Back, -h.Height))
	}
	b.hoopTapes(p)
	b.petticoats, b.out.Shape = append(b.petticoats, "hooped petticoat"), p
	return nil
}

// Tapes between hoops are an inch wide, as on a cage of 1865 (hopkinscostumetrust.org), and are cut
// 2 cm longer at each end, as gathered net is (Interpret and Display Historic Dress, chapter 8).
const tapeWidth, tapeSpare = 25.0, 20.0

// hoopTapes lists the tapes that hold the hoops apart in front, at the sides and behind.
func (b *supporter) hoopTapes(p skirt.Petticoat) {
	from := "waist"
	var down [4]float64
	steel := 0
	for i := 1; i < len(p); i++ {
		front, right, left, back := p.Tape(i)
		for k, l := range []float64{front, right, left, back} {
			down[k] += l
		}
		if !p[i].Steel {
			continue
		}
		steel++
		to := fmt.Sprintf("H%02d", steel)
		for k, where := range []string{"front", "right side", "left side", "back"} {
			b.cut(Cut{Name: fmt.Sprintf("tape, %s, %s to %s", where, from, to), Material: "cotton tape", Length: down[k] + 2*tapeSpare, Width: tapeWidth, Count: 1,
				Note: fmt.Sprintf("%.0f mm between the two, 2 cm spare at each end", down[k])})
		}
		from, down = to, [4]float64{}
	}
}
