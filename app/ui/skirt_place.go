package ui

import (
	"fmt"
	"strings"

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

// tell says in words how the skirt hangs, what holds it, and which years it is like.
func (p *skirtPlace) tell(pl plan.Plan, u string) {
	k := pl.Skirt
	text := lang.L("Support at the hem: {{.Girth}} {{.Unit}} round.", map[string]any{"Girth": length(&k.Hem.Support, u), "Unit": u})
	if k.Hem.Girth != nil && k.Hem.Gather != nil {
		text += " " + lang.L("The hem has {{.Girth}} {{.Unit}}, {{.Times}} times as much.", map[string]any{"Girth": length(k.Hem.Girth, u), "Unit": u, "Times": fmt.Sprintf("%.2f", *k.Hem.Gather)})
	}
	p.words.say(text)
	p.words.say(heldBy(k))
	p.words.notes(pl, "garment.skirt", "mount.skirt")
	p.compare(k)
	p.words.cautions(k.Cautions)
}

// heldBy names what holds a skirt, and what it weighs once that is known.
func heldBy(k *plan.Skirt) string {
	kinds := map[string]string{
		"tube": lang.L("tube petticoat"), "legs": lang.L("leg tubes"), "petticoat": lang.L("base petticoat"), "hoops": lang.L("hooped petticoat"),
		"net": lang.L("tiers of net"), "pad": lang.L("stuffed pad"), "frame": lang.L("bustle frame"), "train": lang.L("train support"),
	}
	var names []string
	for _, s := range k.Supports {
		names = append(names, kinds[s])
	}
	switch what := map[string]any{"What": strings.Join(names, ", "), "Weight": fmt.Sprintf("%.1f", k.MassKg)}; {
	case len(names) == 0:
		return lang.L("Nothing holds it.")
	case k.MassKg == 0:
		return lang.L("From the inside out: {{.What}}.", what)
	default:
		return lang.L("From the inside out: {{.What}}; {{.Weight}} kg.", what)
	}
}

// compare sets the skirt beside the years.
func (p *skirtPlace) compare(k *plan.Skirt) {
	p.words.head(lang.L("beside the years"))
	if rows := yearRows(k.Comparison); len(rows) > 0 {
		p.years.Draw([]string{lang.L("years"), lang.L("lengths"), lang.L("hem"), lang.L("both")}, rows)
		p.words.add(p.years)
		p.words.say(lang.L("0 is within what those years have, 1 a difference that one would see."))
	}
	for _, x := range k.Practices {
		p.words.say(fmt.Sprintf("%s %s: %s (%s)", x.Years, x.Finding, x.Says, x.Source))
	}
	p.words.say(k.Dating)
}

// mostYears is how many rows of the comparison are worth a look.
const mostYears = 6

// yearRows has a row for each span of years, the likest first.
func yearRows(all []plan.Likeness) []control.TableRow {
	column := map[string]int{"lengths": 0, "hem": 1, "both": 2}
	at := map[string]int{}
	var rows []control.TableRow
	for _, l := range all {
		i, known := at[l.Years]
		if !known {
			if len(rows) == mostYears {
				continue
			}
			i = len(rows)
			at[l.Years] = i
			rows = append(rows, control.TableRow{Name: l.Years, Numbers: []string{"–", "–", "–"}, Strong: i == 0})
		}
		rows[i].Numbers[column[l.By]] = fmt.Sprintf("%.1f", l.Off)
	}
	return rows
}
