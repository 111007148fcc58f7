package ui

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/record"
)

// head says which garment it is.
type head struct {
	title, about *widget.Label
	box          fyne.CanvasObject
}

func newHead() *head {
	h := &head{title: widget.NewLabel(""), about: widget.NewLabel("")}
	h.title.TextStyle.Bold = true
	h.title.Truncation = fyne.TextTruncateEllipsis
	h.about.Truncation = fyne.TextTruncateEllipsis
	h.about.SizeName = theme.SizeNameCaptionText
	h.box = together(h.title, h.about)
	return h
}

func (h *head) show(r record.Record) {
	o := r.Object
	title := o.Title
	if title == "" {
		title = lang.L("Garment without a title")
	}
	var about []string
	if o.Number != "" {
		about = append(about, o.Number)
	}
	if o.Year != 0 {
		about = append(about, fmt.Sprint(o.Year))
	}
	if o.Wearer != "" {
		about = append(about, lang.L(string(o.Wearer)))
	}
	if o.Notice != "" {
		about = append(about, o.Notice)
	}
	set(h.title, title)
	set(h.about, strings.Join(about, " · "))
}

// together puts labels under each other as lines of one text.
func together(labels ...fyne.CanvasObject) *fyne.Container {
	return container.New(layout.NewCustomPaddedVBoxLayout(-8), labels...)
}

// set changes a label only where it says something else, which spares redrawing it.
func set(l *widget.Label, text string) {
	if l.Text != text {
		l.SetText(text)
	}
}
