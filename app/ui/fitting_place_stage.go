package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/fitting"
	"understructure/app/ui/control"
	"understructure/patterns/plan"
)

// changing is the stage of a fitting: the girths before and after, and what to do with which piece.
type changing struct {
	head, state *widget.Label
	export      *widget.Button
	girths      *control.Table
	lists       *fyne.Container
	said        []string // lines of the lists
	box         fyne.CanvasObject
}

func newChanging(export func()) *changing {
	c := &changing{head: widget.NewLabel(""), state: widget.NewLabel(""), girths: control.NewTable(), lists: container.New(layout.NewCustomPaddedVBoxLayout(-6))}
	c.head.TextStyle.Bold = true
	c.head.SizeName = theme.SizeNameSubHeadingText
	c.head.Truncation = fyne.TextTruncateEllipsis
	c.state.SizeName = theme.SizeNameCaptionText
	c.state.Wrapping = fyne.TextWrapWord
	c.export = widget.NewButton(lang.L("Export changed templates…"), export)
	advice := widget.NewLabel(lang.L("Look from all angles, and stand back. Button up only when everything else is right. A bodice that looks limp wants a little more under shoulders and bust.") + " " +
		lang.L("Two pairs of hands. Aim at two fittings, at most three with the object itself; try everything else on with a toile."))
	advice.Wrapping = fyne.TextWrapWord
	advice.SizeName = theme.SizeNameCaptionText
	top := container.NewBorder(nil, nil, nil, c.export, c.head)
	table := container.NewBorder(c.girths, nil, nil, nil, container.NewVScroll(c.state))
	body := container.New(girthsAndLists{}, table, container.NewVScroll(c.lists))
	foot := container.NewVBox(widget.NewSeparator(), advice)
	c.box = container.New(layout.NewCustomPaddedLayout(4, 0, 0, 12), container.NewBorder(top, foot, nil, nil, body))
	return c
}

// showChanges says what the fitting in hand has changed.
func (p *fittingPlace) showChanges() {
	r := p.doc.Record()
	now, err := p.doc.Plan()
	c := p.stand
	c.lists.Objects, c.said = nil, nil
	set(c.head, p.changesTitle(len(r.Fittings)))
	changes := p.before.changesTo(r)
	switch {
	case p.hand.at >= len(r.Fittings):
		c.table(now.Levels, nil, r.Unit)
		set(c.state, lang.L("Type what you see, level by level. This is the mount that is tried on; what a fitting changes stands here afterwards."))
		c.prepare(len(r.Fittings))
	case err != nil:
		set(c.state, err.Error())
	case p.before.err != nil:
		set(c.state, p.before.err.Error())
	case changes == nil:
		c.table(now.Levels, nil, r.Unit)
		set(c.state, lang.L("Comparing with the mount before this fitting …"))
	default:
		c.table(now.Levels, changes.Girths, r.Unit)
		set(c.state, ofFittings(now.Warnings))
		c.list(*changes)
	}
	c.export.Disable()
	if p.ready() != nil {
		c.export.Enable()
	}
	c.box.Refresh()
}

func (p *fittingPlace) changesTitle(fittings int) string {
	if p.hand.at >= fittings {
		return lang.L("The mount to be tried on")
	}
	return lang.L("Changes since fitting {{.Number}}", map[string]any{"Number": p.hand.at + 1})
}

// ofFittings are the words of the plan about its fittings.
func ofFittings(all []plan.Warning) string {
	var lines []string
	for _, w := range all {
		if strings.HasPrefix(w.Code, "fitting-") {
			lines = append(lines, w.Message)
		}
	}
	return strings.Join(lines, "\n")
}

// table shows the girths of the levels, and where they are known those before.
func (c *changing) table(now []plan.Level, since []fitting.Girth, u string) {
	heads := []string{lang.L("level"), lang.L("garment, inside"), lang.L("mount"), lang.L("ease left"), lang.L("strain?"), lang.L("ease for 1 %")}
	if since != nil {
		heads = []string{lang.L("level"), lang.L("garment, inside"), lang.L("mount before"), lang.L("mount now"), lang.L("change")}
	}
	var rows []control.TableRow
	for i, l := range now {
		row := control.TableRow{Name: lang.L(l.Name), Numbers: []string{length(l.GarmentGirth, u), length(l.BuiltGirth, u), length(l.Clearance, u), chance(l.StrainChance), length(l.EaseForOnePercent, u)}}
		if since != nil {
			change, strong := changed(since[i], u)
			row = control.TableRow{Name: row.Name, Strong: strong, Numbers: []string{length(l.GarmentGirth, u), length(since[i].Before, u), length(since[i].After, u), change}}
		}
		rows = append(rows, row)
	}
	c.girths.Draw(heads, rows)
}

// shown is a change of girth that a tape can tell, mm.
const shown = 1.0

// changed is by how much a girth changes, with its sign, and whether a tape can tell.
func changed(g fitting.Girth, u string) (string, bool) {
	if g.Before == nil || g.After == nil {
		return "–", false
	}
	by := *g.After - *g.Before
	text := length(&by, u)
	if by > 0 && strings.Trim(text, "0.") != "" {
		text = "+" + text
	}
	return text, by >= shown || by <= -shown
}

// mostFittings is how often an object should be tried on at most. Common practice, no published source.
const mostFittings = 3

// prepare says what comes before a fitting. Cover, height, order and second person: Museum of New Zealand Te
// Papa Tongarewa, how-to guides on mounting costume, and Interpret and Display Historic Dress, handbook, ch. 6;
// gloves: common practice where pesticides or arsenic greens are suspected.
func (c *changing) prepare(fittings int) {
	c.lists.Add(control.NewGroup(lang.L("before anything is tried on")))
	if fittings >= mostFittings {
		c.say(lang.L("Three fittings or more are noted already: try on a toile rather than the object."))
	}
	for _, line := range []string{
		lang.L("All wadding is under a smooth cover."),
		lang.L("The stand is at its height. A form that is moved when dressed crushes the skirt, and a padded one is heavy."),
		lang.L("A second person lifts with you; a heavy or full skirt is never put on alone."),
		lang.L("Under the arms, at the shoulders and at the fastenings one looks first."),
		lang.L("Where pesticides or arsenic greens may be in the cloth, wear gloves and wash your hands."),
	} {
		c.say(line)
	}
}

// doing is the head over what is to be done alike.
func doing(do fitting.Doing) string {
	switch do {
	case fitting.TakeOff:
		return lang.L("take off")
	case fitting.Trim:
		return lang.L("trim")
	case fitting.Carve:
		return lang.L("carve")
	case fitting.Replace:
		return lang.L("replace")
	}
	return lang.L("add")
}

// list shows what is to be done with which piece.
func (c *changing) list(changes fitting.Changes) {
	kept := lang.L("{{.Count}} pieces stay as they are.", map[string]any{"Count": changes.Kept})
	if changes.Kept == 1 {
		kept = lang.L("1 piece stays as it is.")
	}
	c.say(kept + " " + lang.L("Work from the outside in: what lies over a piece comes off first."))
	var do fitting.Doing
	for _, l := range changes.Lines() {
		if l.Do != do {
			do = l.Do
			c.lists.Add(control.NewGroup(doing(do)))
		}
		c.say(l.Text)
	}
	if len(changes.Pieces) == 0 {
		c.say(lang.L("No piece changes."))
	}
}

func (c *changing) say(text string) {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	l.SizeName = theme.SizeNameCaptionText
	c.lists.Add(l)
	c.said = append(c.said, text)
}

// girthsAndLists are two columns: the table takes what it needs and a little of what there is more.
type girthsAndLists struct{}

const leastLists = 300

// MinSize is that of both together.
func (girthsAndLists) MinSize(o []fyne.CanvasObject) fyne.Size {
	table, lists := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(table.Width+columnGap+max(leastLists, lists.Width), max(table.Height, lists.Height))
}

// Layout gives the table two fifths.
func (girthsAndLists) Layout(o []fyne.CanvasObject, size fyne.Size) {
	left := max(o[0].MinSize().Width, 0.4*size.Width)
	o[0].Resize(fyne.NewSize(left, size.Height))
	o[1].Move(fyne.NewPos(left+columnGap, 0))
	o[1].Resize(fyne.NewSize(size.Width-left-columnGap, size.Height))
}
