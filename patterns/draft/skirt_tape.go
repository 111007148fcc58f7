package draft

import "fmt"

// The carrying tape: 2.5 cm wide, with 30 cm at each end to tie. Common practice, no published source.
const carryWidth, carryEnds = 25.0, 300.0

// carry adds the tape that bears the skirt's weight, so that its waistband need not.
func (b *supporter) carry() {
	note := "round the mount's waist inside the skirt's band, tied at its opening, so that the skirt rests on it; common practice, no published source"
	if !b.stock.BandFastens {
		note = "tied over the waistband, which has no fastening of its own, the knot at the opening; common practice, no published source"
	}
	b.cut(Cut{Name: "carrying tape", Material: "cotton tape", Length: b.stock.Waist + 2*carryEnds, Width: carryWidth, Count: 1, Note: note})
}

// The waist tape of a petticoat: 1.75 m of 1 to 1.5 cm, the topmost at the waist, each
// petticoat below it on a slightly longer one (Interpret and Display Historic Dress, chapter 8;
// how much longer is from memory).
const waistTape, waistTapeWidth, waistTapeLonger = 1750.0, 15.0, 30.0

// waistTapes adds the tapes of all petticoats, the innermost first.
func (b *supporter) waistTapes() {
	for i, of := range b.petticoats {
		below := len(b.petticoats) - 1 - i
		note := "lies at the waist"
		if below > 0 {
			note = fmt.Sprintf("%.0f mm longer than the topmost, so that it lies below the tapes over it", waistTapeLonger*float64(below))
		}
		b.cut(Cut{Name: "waist tape, " + of, Material: "cotton tape", Length: waistTape + waistTapeLonger*float64(below), Width: waistTapeWidth, Count: 1, Note: note})
	}
}
