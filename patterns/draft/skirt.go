package draft

import (
	"fmt"
	"maps"
	"math"

	"understructure/geometry/skirt"
	"understructure/patterns/piece"
)

// Cut is a row of a cutting table: something too long and narrow for a template, such as a steel or a tape. Lengths are mm.
type Cut struct {
	Name     string
	Material string
	Length   float64 // of one
	Width    float64 // 0 where it has none
	Count    int
	Note     string
}

// Support is all that holds a skirt, ready to be cut.
type Support struct {
	Pieces   []piece.Piece
	Cuts     []Cut
	LeftOut  []string // what was asked for and cannot be, in words, with the reason
	Cautions []string
	MassKg   float64          // of cloth, net, stuffing, steels
	Shape    skirt.Petticoat  // of the outermost petticoat with steels; nil where there is none
	Frame    []skirt.HalfHoop // of a bustle frame, from the top; nil where there is none
}

// SkirtStock is what a support is made from, and under what. The zero of a field is its default.
type SkirtStock struct {
	Hold          []skirt.Hold // from the inside out
	Layer         int          // number of the first layer; 0 is 1
	PaddedHip     float64      // tape round the padded mount at the hip, mm; 0 takes the body's own
	Waist         float64      // girth of the skirt's waistband, mm; 0 takes the mount's own
	Hoops         int          // steels of a hooped petticoat; 0 is DefaultHoops
	NetWidth      float64      // of the net in stock, mm; 0 is DefaultNetWidth
	PadThickness  float64      // mm; 0 is half of what the pad stands out
	FrameLength   float64      // of a bustle frame, mm; 0 is skirt.FrameLength, or what the skirt has room for
	GarmentMassKg float64      // 0 where it is not known
	BandFastens   bool         // the skirt's waistband closes by itself
}

// DefaultHoops is a hem steel and four more (Interpret and Display Historic Dress, chapter 8).
// DefaultNetWidth is in the range of 1370 to 1500 mm that net is sold in (from memory).
const (
	DefaultHoops    = 5
	DefaultNetWidth = 1400.0
)

func (o SkirtStock) filled(s skirt.Skirt) SkirtStock {
	if o.Layer == 0 {
		o.Layer = 1
	}
	if o.Waist == 0 {
		o.Waist = s.Waist().Girth()
	}
	if o.PaddedHip == 0 {
		o.PaddedHip = s.Hip().Girth()
	}
	if o.Hoops == 0 {
		o.Hoops = DefaultHoops
	}
	if o.NetWidth == 0 {
		o.NetWidth = DefaultNetWidth
	}
	if o.FrameLength == 0 {
		o.FrameLength = math.Min(skirt.FrameLength, -s.Lowest()-skirt.Shorter)
	}
	return o
}

func (o SkirtStock) check() error {
	for _, v := range []struct {
		name        string
		value, most float64
	}{
		{"padded hip", o.PaddedHip, 3000}, {"waist", o.Waist, 3000}, {"net width", o.NetWidth, 6000}, {"pad thickness", o.PadThickness, 500},
		{"frame length", o.FrameLength, 2000}, {"garment mass", o.GarmentMassKg, 50}, {"layer", float64(o.Layer), 1000}, {"hoops", float64(o.Hoops), 1000},
	} {
		if !(v.value >= 0 && v.value <= v.most) {
			return fmt.Errorf("draft: skirt support, %s: %.6g, want 0 to %g", v.name, v.value, v.most)
		}
	}
	return nil
}

// SkirtSupport drafts what holds a skirt. What cannot be, such as a pad where there is no
// room for one, is left out and said; an error names a stock that cannot be, or a shape that cannot be laid flat.
func SkirtSupport(s skirt.Skirt, o SkirtStock) (Support, error) {
	if err := o.check(); err != nil {
		return Support{}, err
	}
	if len(s.Cloth) == 0 {
		return Support{}, fmt.Errorf("draft: skirt support: there is no skirt")
	}
	b := supporter{skirt: s, stock: o.filled(s), numbers: map[byte]int{}}
	for _, h := range o.Hold {
		draw, ok := makers[h]
		if !ok {
			return Support{}, fmt.Errorf("draft: skirt support: nothing is called %q", h)
		}
		before := b
		before.numbers = maps.Clone(b.numbers)
		if err := draw(&b); err != nil {
			b = before
			b.out.LeftOut = append(b.out.LeftOut, fmt.Sprintf("%s: %v", h, err))
			continue
		}
		b.layer++
	}
	b.waistTapes()
	b.carry()
	b.weigh()
	b.caution()
	return b.out, nil
}

// makers drafts each thing that can hold a skirt; an error says why it cannot be here.
var makers = map[skirt.Hold]func(*supporter) error{
	skirt.Tube: (*supporter).tube, skirt.Legs: (*supporter).legs, skirt.Base: (*supporter).base, skirt.Hooped: (*supporter).hooped, skirt.Netted: (*supporter).net,
	skirt.Pad: (*supporter).pad, skirt.Framed: (*supporter).frame, skirt.TrainHold: (*supporter).train,
}

// supporter is a support in the making.
type supporter struct {
	skirt      skirt.Skirt
	stock      SkirtStock
	out        Support
	layer      int          // things made so far
	petticoats []string     // of them, those with a tape at the waist
	numbers    map[byte]int // given to pieces, by the letter of their names
	steel      float64      // length of all steels, mm
}

// cut adds a row to the cutting table.
func (b *supporter) cut(c Cut) { b.out.Cuts = append(b.out.Cuts, c) }

// hoopSteel adds a steel to the cutting table.
func (b *supporter) hoopSteel(name string, length float64, note string) {
	b.steel += length
	b.cut(Cut{Name: name, Material: "hoop steel, covered", Length: length, Width: steelWidth, Count: 1, Note: note})
}

// steelWidth is that of the lower hoops of a cage of 1865, 3/16 inch, mm (hopkinscostumetrust.org).
const steelWidth = 4.8

// add adds pieces of the layer in the making.
func (b *supporter) add(p ...piece.Piece) {
	for i := range p {
		p[i].Layer = b.stock.Layer + b.layer
	}
	b.out.Pieces = append(b.out.Pieces, p...)
}

// number is the next short name with a letter: "P03".
func (b *supporter) number(letter byte) string {
	b.numbers[letter]++
	return fmt.Sprintf("%c%02d", letter, b.numbers[letter])
}
