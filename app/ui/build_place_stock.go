package ui

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/app/ui/control"
	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// Lay lays the pieces of a record's plan on its stock.
type Lay func(ctx context.Context, r record.Record, p plan.Plan, progress func(done float64)) (plan.Plan, error)

// stock is the foam that there is, and how well it and the rolls are used. Pieces are laid while nobody waits for it: off the
// window's goroutine, when the plan is whole, and only for who looks at this place.
type stock struct {
	doc   *document.Document
	lay   Lay
	post  func(func())
	texts []*text
	used  *widget.Label
	of    []piece.Piece // that are laid, or being laid
	stop  context.CancelFunc
	box   fyne.CanvasObject
}

func newStock(w *Window) *stock {
	s := &stock{doc: w.doc, lay: w.options.Lay, post: w.options.Rooms.Post, used: widget.NewLabel(""), stop: func() {}}
	s.used.SizeName, s.used.Wrapping = theme.SizeNameCaptionText, fyne.TextWrapWord
	s.used.Hide()
	box := container.NewVBox(control.NewGroup(lang.L("stock")))
	for _, t := range document.StockTexts() {
		row := newText(t, w.doc)
		s.texts = append(s.texts, row)
		box.Add(row.row)
	}
	box.Add(s.used)
	s.box = box
	return s
}

// show brings the texts to the record, and lays the pieces of a plan that was not laid yet.
func (s *stock) show(r record.Record) {
	for _, t := range s.texts {
		t.show(r)
	}
	p, err := s.doc.Plan()
	if s.lay == nil || err != nil || s.doc.Busy() || same(p.Pieces, s.of) {
		return
	}
	s.stop()
	ctx, stop := context.WithCancel(context.Background())
	s.of, s.stop = p.Pieces, stop
	s.say("")
	if len(p.Pieces) == 0 {
		return
	}
	go func() {
		laid, err := s.lay(ctx, r, p, nil)
		s.post(func() {
			if ctx.Err() == nil && err == nil {
				s.say(usage(laid.Layouts))
			}
			stop()
		})
	}()
}

func (s *stock) say(text string) {
	set(s.used, text)
	visible(s.used, text != "")
}

// usage has a line for every size of plank and every roll: how much of it is cut, and which share of that is pieces.
func usage(layouts []plan.Layout) string {
	var lines, stocks []string
	for _, l := range layouts {
		if slices.Contains(stocks, l.Stock) {
			continue
		}
		stocks = append(stocks, l.Stock)
		planks, share := 0, 0.0
		for _, k := range layouts {
			if k.Stock == l.Stock {
				planks++
				share += k.Utilisation
			}
		}
		much := fmt.Sprint(planks)
		if l.Kind == plan.OnRoll {
			much = fmt.Sprintf("%.2f m", l.Length/1000)
		}
		lines = append(lines, lang.L("{{.Much}} of {{.Stock}}: {{.Share}} used", map[string]any{"Much": much, "Stock": l.Stock, "Share": fmt.Sprintf("%.0f %%", 100*share/float64(planks))}))
	}
	return strings.Join(lines, "\n")
}
