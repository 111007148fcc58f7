// Package plan holds the mount as computed from one record: the value that is written as
// plan.json, drawn in the papers and shown in the window. All lengths are millimetres.
// It does not compute anything.
package plan

import (
	"understructure/geometry/plane"
	"understructure/patterns/piece"
)

// Version is the number at the head of every plan.
const Version = 1

// Plan is one mount. The zero Plan is empty.
type Plan struct {
	Understructure int               `json:"understructure"`
	Object         Object            `json:"object"`
	Measured       Measured          `json:"measured"`
	Build          string            `json:"build"` // "padded" or "slices"
	StandHeight    float64           `json:"stand_height"`
	Levels         []Level           `json:"levels"` // from the neck down
	Doubt          Doubt             `json:"doubt"`
	Surface        Surface           `json:"surface"`
	AsBuilt        *AsBuilt          `json:"as_built,omitempty"` // nil where no pieces were cut
	Skirt          *Skirt            `json:"skirt,omitempty"`    // nil where there is none, or it cannot hang
	Sleeves        *Sleeves          `json:"sleeves,omitempty"`  // nil where there are none
	Pieces         []piece.Piece     `json:"pieces"`
	Cuts           []Cut             `json:"cuts"`     // of supports: what needs no template
	Cautions       []string          `json:"cautions"` // about what was drafted, where work can hurt people or cloth
	Warnings       []Warning         `json:"warnings"`
	Taken          map[string]Value  `json:"taken"` // by key path: came from the record
	Drawn          map[string]Value  `json:"drawn"` // by key path: came from statistics
	Stock          map[string]Value  `json:"stock"` // by key path: a default of the program was used
	Layers         []Layer           `json:"layers"`
	Stages         []Stage           `json:"stages"` // how the mount builds up, from the bare form or the first slice
	Lengths        []Length          `json:"lengths"`
	Standing       Standing          `json:"standing"`
	Materials      []Material        `json:"materials"`
	Layouts        []Layout          `json:"layouts,omitempty"` // on planks and rolls; nil where nothing was laid
	Paper          Paper             `json:"paper"`
	Volumes        map[string]Volume `json:"volumes"`
}

// Object is the garment.
type Object struct {
	Number string `json:"number"`
	Title  string `json:"title"`
	Year   int    `json:"year"` // 0 when not known
	Wearer string `json:"wearer"`
	Notice string `json:"notice,omitempty"` // such as "invented for demonstration"

	Strength string   `json:"strength,omitempty"` // "sound", "fair" or "weak"; absent where nobody said
	MassKg   *float64 `json:"mass_kg,omitempty"`  // absent where it was not weighed
}

// Measured says who took the tape readings, when, and on which side of the cloth.
type Measured struct {
	By   string `json:"by"`
	On   string `json:"on"`
	Side string `json:"side"`
}

// Level is one row of the fit table. A nil length does not apply there.
type Level struct {
	Name         string   `json:"name"`
	Height       float64  `json:"height"`
	GarmentGirth *float64 `json:"garment_girth"` // inside girth of the garment
	Taken        bool     `json:"taken"`         // the garment girth was taken, not drawn
	Ease         float64  `json:"ease"`
	TargetGirth  *float64 `json:"target_girth"`
	FormGirth    *float64 `json:"form_girth"`
	BuiltGirth   *float64 `json:"built_girth"`
	Clearance    *float64 `json:"clearance"`    // garment girth less built girth; negative is strain
	ClearanceSD  *float64 `json:"clearance_sd"` // one standard deviation of it, from all that is uncertain
	StrainChance *float64 `json:"strain_chance"`
	// EaseForOnePercent is the ease with which the chance of strain at this level is 1 %.
	EaseForOnePercent *float64   `json:"ease_for_one_percent"`
	Section           plane.Ring `json:"section"` // the wanted outline
}

// Surface holds the outlines at many heights, bottom to top; nil where a height has none.
type Surface struct {
	Heights []float64    `json:"heights"`
	Form    []plane.Ring `json:"form,omitempty"` // absent in a slice build
	Core    []plane.Ring `json:"core,omitempty"` // the raw foam of a slice build
	Garment []plane.Ring `json:"garment"`        // the garment's inside as measured and drawn
	Target  []plane.Ring `json:"target"`
	Built   []plane.Ring `json:"built"`
}

// AsBuilt is the mount made a second time, from its pieces alone: a check that shares no step with the
// way in which they were found.
type AsBuilt struct {
	Heights    []float64   `json:"heights"`
	Girths     []float64   `json:"girths"` // of a tape round the mount at each height
	Objections []Objection `json:"objections"`
}

// Objection is why the templates must not be cut: a piece, or "" for the whole, and what is wrong.
type Objection struct {
	Piece   string `json:"piece"`
	Message string `json:"message"`
}

// Warning is something the maker should know. Code is stable, Message is a plain sentence.
type Warning struct {
	Code    string  `json:"code"`
	Level   string  `json:"level"`            // level name, or "" when it is about the whole
	Key     string  `json:"key,omitempty"`    // key path in the record, where one value is meant
	Amount  float64 `json:"amount,omitempty"` // millimetres
	Message string  `json:"message"`
}

// Value is a number, or a choice in words, used in the plan and where it came from.
type Value struct {
	Value  float64 `json:"value"`          // millimetres, or degrees for slopes; 0 beside a choice in words
	Text   string  `json:"text,omitempty"` // such as "A4"
	Source string  `json:"source"`
	// Spread is how far people are from a value that was drawn, one standard deviation, in its unit; 0 where it does not count.
	Spread float64 `json:"spread,omitempty"`
}

// Layer sums up one layer of wadding, or one slice, in order of building.
type Layer struct {
	Number    int     `json:"number"`
	Material  string  `json:"material"`
	Thickness float64 `json:"thickness"`
	Area      float64 `json:"area"` // square millimetres
	Pieces    int     `json:"pieces"`
}

// Length is a tape length along the surface: as taken, and as the figure has it.
type Length struct {
	Key   string  `json:"key"`
	Taken float64 `json:"taken"`
	Built float64 `json:"built"`
}

// Volume compares the space that pieces fill with the space they are meant to fill, in cubic millimetres.
type Volume struct {
	Space  float64 `json:"space"`
	Pieces float64 `json:"pieces"`
}

// Standing is the self-check against tipping; local rules decide.
type Standing struct {
	MassKg       float64     `json:"mass_kg"`
	CentreHeight float64     `json:"centre_height"`
	TiltBase     float64     `json:"tilt_base"`   // least radius of a base about the mount's axis for a 10 degree plane
	PushBase     float64     `json:"push_base"`   // least radius of base for 13 % of the weight at 1.5 m
	Base         float64     `json:"base"`        // the larger of the two
	SquareBase   float64     `json:"square_base"` // least side of a square base
	Under        plane.Point `json:"under"`       // where, from the mount's axis, the middle of a base lies under the centre of gravity
	Note         string      `json:"note"`
}

// Material is one line of the shopping list.
type Material struct {
	Name     string  `json:"name"`
	Quantity float64 `json:"quantity"`
	Unit     string  `json:"unit"`
	Note     string  `json:"note"`
	// WithWaste is how much must be had, as the layouts have it; nil where nothing was laid.
	WithWaste *float64 `json:"with_waste,omitempty"`
	MassKg    float64  `json:"mass_kg,omitempty"`  // of the quantity; 0 where it is not known
	Cost      *float64 `json:"cost,omitempty"`     // of WithWaste, of the quantity where there is none; nil where no price is known
	Currency  string   `json:"currency,omitempty"` // ISO 4217, "" where it goes without saying
	Asks      string   `json:"asks,omitempty"`     // what conservation asks of it, in words, with the usual tests
}

// Paper is the sheet that templates are printed on, in millimetres; a roll has its usable length.
type Paper struct {
	Name   string  `json:"name"`
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
	Roll   bool    `json:"roll"` // Height is then the longest page
	// By how much templates are drawn larger for a printer that does not print true, 100 mm over what a rule of
	// 100 mm measures; 0 where none was measured.
	ScaleX float64 `json:"scale_x,omitempty"` // across
	ScaleY float64 `json:"scale_y,omitempty"` // up
}
