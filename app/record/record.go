// Package record is the file of one garment on its mount: all that was taken and chosen,
// as one plain value. Inside the program every length is in millimetres, whatever the
// unit of the file; the unit is kept so that the file is written back in it.
// It does not compute a figure.
package record

import "understructure/geometry/measure"

// Record is one garment on its mount. A pointer that is nil, or a key that is absent,
// was not taken or not chosen.
type Record struct {
	Unit    string // "mm", "cm" or "in": the unit of the file
	Object  Object
	Taken   Taken
	Garment Garment
	Form    *Form // nil where there is no form
	Mount   Mount

	Fittings    []Fitting // in the order in which they took place
	Photographs []Photograph
}

// Object is the garment as the museum knows it.
type Object struct {
	Number string
	Title  string
	Year   int // 0 when not known
	Wearer measure.Wearer
	Notice string // such as "invented for demonstration"
}

// Taken says who measured, when (yyyy-mm-dd) and on which side of the cloth.
type Taken struct {
	By, On, Side string
}

// Garment is what was measured of it.
type Garment struct {
	Strength string // "sound", "fair" or "weak"
	MassKg   *float64
	Bodice   measure.Sheet
	Skirt    measure.Sheet
	Sleeve   measure.Sheet
	Readings GarmentReadings // of what was taken more than once
}

// Form is what the maker already has, measured bare.
type Form struct {
	Label    string
	Bodice   measure.Sheet
	Readings Readings // of what was taken more than once
}

// Mount is how it is to be built.
type Mount struct {
	Build        string // "padded" or "slices"
	Ease         Ease
	Shape        measure.Shape // what was set by hand, by level
	TapeError    *float64
	HeightError  *float64 // of the tape: how far off its level it lies
	CuttingError *float64 // of an edge
	Wadding      []Wadding
	Cover        *float64 // thickness
	CoverSpread  *float64 // of the cover's thickness
	CoverWidth   *float64 // of its roll
	CoverNap     bool     // its cloth has a nap, so that every panel lies the same way
	Plank        *Plank
	Planks       []Sheet // other sizes that can be had
	Offcuts      []Offcut
	Prices       Prices
	Step         string // "inside", "flush" or "bevel": how the step between two slices is treated
	Skirt        SkirtMount
	Sleeves      SleeveMount
	Pads         Pads
	Paper        Paper
	Printer      Printer
}

// Ease is one ease for the whole, or one a level; both may be absent.
type Ease struct {
	All     *float64
	ByLevel map[measure.Level]float64
}

// Wadding is one thickness that the maker has, with its spread (one standard deviation) and the width of its roll.
type Wadding struct {
	Thickness float64
	Spread    *float64
	Width     *float64
}

// Plank is foam sheet stock and the diameter of the pole that goes through it.
type Plank struct {
	Thickness, Length, Width, Pole *float64
}

// Paper is a named size, or a width and height where Name is empty.
type Paper struct {
	Name          string
	Width, Height float64
}
