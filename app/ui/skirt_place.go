package ui

import (
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

// skirtPlace is where it is chosen what holds the skirt, and seen how it hangs.
type skirtPlace struct {
	*support
	stand   *control.SkirtStage
	falls   *control.Table
	years   *control.Table
	words   *telling
	beside  fyne.CanvasObject
	content fyne.CanvasObject
}

func newSkirtPlace(d *document.Document) *skirtPlace {
	p := &skirtPlace{stand: control.NewSkirtStage(), falls: control.NewTable(), years: control.NewTable(), words: newTelling()}
	fastens := newYesNo("band fastens", lang.L("band fastens"), d, func(r *record.Record) *bool { return r.Mount.Skirt.BandFastens }, true,
		func(r *record.Record, b bool) { r.Mount.Skirt.BandFastens = &b })
	p.support = newSupport(d, func(r record.Record) []document.Field {
		return append(document.SkirtSupportFields(r), document.SkirtFields(r)...)
	}, fastens,
		newChoice("what holds it", "mount.skirt.support", record.SkirtSupports, func(r *record.Record) *string { return &r.Mount.Skirt.Support }, d),
		newChoice("what is fixed", "mount.skirt.hold", record.Holds, func(r *record.Record) *string { return &r.Mount.Skirt.Hold }, d),
		newChoice("cut of the skirt", "mount.skirt.cut", record.Cuts, func(r *record.Record) *string { return &r.Mount.Skirt.Cut }, d),
		newChoice("train", "mount.skirt.train", record.Trains, func(r *record.Record) *string { return &r.Mount.Skirt.Train }, d),
	)
	p.beside = container.NewBorder(p.falls, nil, nil, nil, container.NewVScroll(p.words.box))
	p.content = container.New(figureColumns{}, p.stand, p.beside)
	return p
}

func (p *skirtPlace) name() string             { return "Skirt" }
func (p *skirtPlace) side() fyne.CanvasObject  { return p.values.list }
func (p *skirtPlace) stage() fyne.CanvasObject { return p.content }

func (p *skirtPlace) show() {
	p.support.show()
	pl, _ := p.doc.Plan()
	p.words.clear()
	p.falls.Hide()
	if pl.Skirt == nil {
		none := new(picture.Body)
		p.stand.Draw(control.SkirtPicture{Whole: none, Bare: none, Hem: none})
		p.words.say(lang.L("Nothing was taken of a skirt, or it cannot hang as it was taken."))
		p.words.notes(pl, "garment.skirt", "mount.skirt")
		return
	}
	u := p.doc.Record().Unit
	p.draw(pl, u)
	p.falls.Show()
	var rows []control.TableRow
	for _, f := range pl.Skirt.Falls {
		rows = append(rows, control.TableRow{Name: lang.L(f.Name), Numbers: []string{length(&f.Length, u), length(&f.Reach, u), length(&f.Above, u), length(&f.Train, u)}})
	}
	p.falls.Draw([]string{u, lang.L("long"), lang.L("reach"), lang.L("above"), lang.L("train")}, rows)
	p.tell(pl, u)
}

// draw shows the skirt on its stand.
func (p *skirtPlace) draw(pl plan.Plan, u string) {
	k := pl.Skirt
	whole := skirted(pl)
	bare := whole
	bare.Garment = nil // what touches where is a matter of girths, which the table tells
	shown := control.SkirtPicture{
		Whole: picture.NewBody(whole), Bare: picture.NewBody(bare), Hem: picture.NewBody(hemOf(k)), Waist: pl.StandHeight,
		Stand: lang.L("waist {{.Height}} {{.Unit}}", map[string]any{"Height": length(&pl.StandHeight, u), "Unit": u}),
	}
	for _, h := range k.Hoops {
		if h.Steel {
			shown.Steels = append(shown.Steels, h.Height)
		}
	}
	p.stand.Draw(shown)
}

// skirted is the mount with its skirt below it: the skirt's own outlines as far up as they go.
func skirted(p plan.Plan) plan.Surface {
	k := p.Skirt
	s := plan.Surface{Heights: append([]float64{}, k.Heights...), Garment: append([]plane.Ring{}, k.Garment...)}
	for i, r := range k.Support { // where nothing is built the cloth hangs over the mount itself, or free
		if len(r) == 0 {
			r = k.Garment[i]
		}
		s.Built = append(s.Built, r)
	}
	for i, z := range p.Surface.Heights {
		if n := len(k.Heights); n > 0 && z > k.Heights[n-1]+1 {
			s.Heights, s.Garment, s.Built = append(s.Heights, z), append(s.Garment, p.Surface.Garment[i]), append(s.Built, p.Surface.Built[i])
		}
	}
	return s
}

// hemOf is the hem from above, and what of the support stands lowest.
func hemOf(k *plan.Skirt) plan.Surface {
	lowest := k.Hem.Foot
	for _, r := range k.Support {
		if len(r) > 0 {
			lowest = r
			break
		}
	}
	flat := func(r plane.Ring) []plane.Ring { return []plane.Ring{r, r} }
	return plan.Surface{Heights: []float64{0, 1}, Built: flat(lowest), Target: flat(k.Hem.Outline)}
}
