package ui

import (
	"fmt"
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/app/ui/picture"
	"understructure/geometry/plane"
	"understructure/patterns/plan"
)

// sleevePlace is where it is chosen what fills the sleeves, and which loose pads go with them.
type sleevePlace struct {
	*support
	drawn   *control.SleeveStage
	words   *telling
	content fyne.CanvasObject
}

func newSleevePlace(d *document.Document) *sleevePlace {
	p := &sleevePlace{drawn: control.NewSleeveStage(), words: newTelling()}
	fills := newYesNo("soft fills", lang.L("soft fills"), d, func(r *record.Record) *bool { return &r.Mount.Pads.Fill }, false,
		func(r *record.Record, b bool) { r.Mount.Pads.Fill = b })
	p.support = newSupport(d, func(r record.Record) []document.Field {
		return append(document.SleeveSupportFields(r), document.SleeveFields(r)...)
	}, fills, newChoice("what fills them", "mount.sleeves.support", record.SleeveSupports, func(r *record.Record) *string { return &r.Mount.Sleeves.Support }, d))
	p.content = container.New(figureColumns{}, p.drawn, container.NewVScroll(p.words.box))
	return p
}

func (p *sleevePlace) name() string             { return "Sleeves" }
func (p *sleevePlace) side() fyne.CanvasObject  { return p.values.list }
func (p *sleevePlace) stage() fyne.CanvasObject { return p.content }

func (p *sleevePlace) show() {
	p.support.show()
	pl, _ := p.doc.Plan()
	p.words.clear()
	if pl.Sleeves == nil {
		p.drawn.Draw(control.SleevePicture{Body: new(picture.Body), Bare: new(picture.Body)})
		p.words.say(lang.L("Nothing was taken of the sleeves, or nothing fits into them as they were taken."))
	} else {
		p.draw(pl.Sleeves, p.doc.Record().Unit)
		p.words.say(filledBy(pl.Sleeves))
	}
	p.words.notes(pl, "garment.sleeve", "mount.sleeves", "mount.pads")
	if pl.Sleeves != nil {
		p.words.cautions(pl.Sleeves.Cautions)
	}
}

// draw shows the sleeve with its girths; what would not pass the sleeve above it stands in bold.
func (p *sleevePlace) draw(s *plan.Sleeves, u string) {
	var body plan.Surface
	for i := len(s.Places) - 1; i >= 0; i-- {
		x := s.Places[i]
		body.Heights = append(body.Heights, -x.At)
		body.Garment = append(body.Garment, hoop(x.Garment))
		var built plane.Ring
		if x.Support != nil {
			built = hoop(*x.Support)
		}
		body.Built = append(body.Built, built)
	}
	if girthAt(s, 0) == 0 { // nothing but the sleeve is to be seen
		body.Built = body.Garment
	}
	var frills []control.SleeveFrill
	for _, f := range s.Frills {
		arm := max(girthAt(s, f.At), f.Gather) / (2 * math.Pi)
		frills = append(frills, control.SleeveFrill{At: f.At, From: arm, To: arm + f.Deep})
	}
	bare := body
	bare.Garment = nil // a full sleeve is not slack: its puff fills it
	shown := control.SleevePicture{
		Body: picture.NewBody(body), Bare: picture.NewBody(bare), Heads: []string{lang.L("sleeve, inside"), lang.L("must pass"), lang.L("support")}, Rows: sleeveRows(s, u), Frills: frills,
	}
	if s.Elbow != nil && s.BendDeg > 0 {
		shown.Caption = lang.L("drawn straight; it hangs bent at the elbow")
	}
	p.drawn.Draw(shown)
}

// girthAt is that of the support at a place, 0 where there is none.
func girthAt(s *plan.Sleeves, at float64) float64 {
	best, girth := math.Inf(1), 0.0
	for _, x := range s.Places {
		if d := math.Abs(x.At - at); d < best && x.Support != nil {
			best, girth = d, *x.Support
		}
	}
	return girth
}

// hoop is a round outline.
func hoop(girth float64) plane.Ring {
	const corners = 64
	r := make(plane.Ring, corners)
	for i := range r {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / corners)
		r[i] = plane.Point{X: cos, Y: sin}
		r[i] = r[i].Mul(girth / (2 * math.Pi))
	}
	return r
}

// tight is how near the support may come to what must pass before it is marked, mm: less than a tape can tell.
const tight = 1.0

// sleeveRows names the shoulder seam, the armhole, the elbow and the end, and says the distance of places between them.
func sleeveRows(s *plan.Sleeves, u string) []control.SleeveRow {
	named := map[float64]string{0: lang.L("armhole")}
	if s.Elbow != nil {
		named[*s.Elbow] = lang.L("elbow")
	}
	last := len(s.Places) - 1
	var rows []control.SleeveRow
	for i, x := range s.Places {
		name := named[x.At]
		switch {
		case i == 0:
			name = lang.L("shoulder seam")
		case i == last:
			name = lang.L("end")
		case name == "" && (x.At < 0 || i%4 != 0 || near(x.At, s)):
			continue
		case name == "":
			name = lang.L("{{.Length}} {{.Unit}} down", map[string]any{"Length": length(&x.At, u), "Unit": u})
		}
		rows = append(rows, control.SleeveRow{
			At: x.At, Name: name, Numbers: []string{length(&x.Garment, u), length(&x.Passage, u), length(x.Support, u)},
			Strong: x.Support != nil && *x.Support > x.Passage+tight,
		})
	}
	return rows
}

// near reports whether a place lies so near to one that has a name that it needs no line of its own.
func near(at float64, s *plan.Sleeves) bool {
	const apart = 35.0
	if math.Abs(at) < apart || s.Places[len(s.Places)-1].At-at < apart {
		return true
	}
	return s.Elbow != nil && math.Abs(at-*s.Elbow) < apart
}

// filledBy says what fills the sleeves.
func filledBy(s *plan.Sleeves) string {
	words := map[string]string{
		record.Arm: lang.L("A soft arm in each sleeve."), record.Tube: lang.L("A tube in each sleeve."),
		record.Puff: lang.L("A puff of net in each sleeve."), record.NoSupport: lang.L("Nothing fills the sleeves."),
	}
	text := words[s.Support]
	if n := len(s.Frills); n > 0 && s.Support != record.Puff {
		text += " " + lang.L("They are full: {{.Count}} frills of net go round it.", map[string]any{"Count": n})
	}
	if s.MassKg > 0 {
		text += " " + lang.L("Together {{.Weight}} kg.", map[string]any{"Weight": fmt.Sprintf("%.2f", s.MassKg)})
	}
	return text
}
