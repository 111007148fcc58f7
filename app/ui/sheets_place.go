package ui

import (
	"reflect"

	"fyne.io/fyne/v2"

	"understructure/app/document"
	"understructure/app/record"
	"understructure/patterns/plan"
)

// sheetsPlace is where one sees every page as it will be printed, chooses the paper, and prints.
type sheetsPlace struct {
	window *Window
	doc    *document.Document
	laying *laying
	laid   laid
	of     *record.Record // that the pages laid, or being laid, are of; nil while there are none
	whole  *plan.Plan     // the newest plan with pieces
	from   record.Record  // that it was computed from
	open   openRecord

	at     int    // the page that is looked at
	picked string // ID of a piece on it, or ""

	column *sheetsColumn
	desk   *sheetsDesk
}

func newSheetsPlace(w *Window) *sheetsPlace {
	s := &sheetsPlace{window: w, doc: w.doc, laying: &laying{post: w.options.Rooms.Post}}
	s.column = newSheetsColumn(s)
	s.desk = newSheetsDesk(s)
	return s
}

func (s *sheetsPlace) name() string            { return "Sheets" }
func (s *sheetsPlace) side() fyne.CanvasObject { return s.column.box }

// stage gives the keys to the page, as soon as it is on the screen.
func (s *sheetsPlace) stage() fyne.CanvasObject {
	s.window.options.Rooms.Post(s.desk.focus)
	return s.desk.box
}

// show lays the pages anew where the record has changed, as soon as there is a plan with its pieces. Another
// paper needs no other plan.
func (s *sheetsPlace) show() {
	r := s.doc.Record()
	if open := opened(s.doc); open != s.open {
		s.open = open
		if s.of != nil && !reflect.DeepEqual(*s.of, r) { // not merely another name for it
			s.clear()
		}
	}
	if now, err := s.doc.Plan(); err == nil && !s.doc.Busy() {
		s.whole, s.from = &now, r
	}
	if s.whole != nil && sameButPaper(r, s.from) && (s.of == nil || !reflect.DeepEqual(*s.of, r)) {
		s.of = &r
		s.begin()
	}
	s.column.show()
}

// clear takes the pages of another record away.
func (s *sheetsPlace) clear() {
	s.of, s.whole, s.picked = nil, nil, ""
	s.laying.stop()
	s.take(laid{})
}

// sameButPaper reports whether two records ask for the same pieces.
func sameButPaper(a, b record.Record) bool {
	a.Mount.Paper = b.Mount.Paper
	return reflect.DeepEqual(a, b)
}

// current reports whether the pages shown are those of the record as it is now.
func (s *sheetsPlace) current() bool {
	return !s.laying.busy && len(s.laid.pages) > 0 && s.of != nil && reflect.DeepEqual(*s.of, s.doc.Record())
}

func (s *sheetsPlace) begin() {
	p := *s.whole
	stock, _ := s.of.Mount.Stocked(s.of.Garment.Strength)
	p.Paper = stock.Paper
	s.laying.begin(p, s.column.progress, s.take)
}

// again lays the pages after that was stopped.
func (s *sheetsPlace) again() {
	if s.whole != nil && s.of != nil {
		s.begin()
		s.column.show()
	}
}

// stop gives up laying.
func (s *sheetsPlace) stop() {
	s.laying.stop()
	s.column.show()
}

// take shows pages that were laid: the one with the piece that is picked, or the one that was looked at.
func (s *sheetsPlace) take(l laid) {
	s.laid = l
	s.desk.draw()
	at := min(s.at, len(l.pages)-1)
	if s.picked != "" {
		at = max(l.pageOf(s.picked), 0)
	}
	s.turnTo(max(at, 0))
	s.column.show()
}

// turn goes on by so many pages.
func (s *sheetsPlace) turn(by int) {
	if to := max(0, min(s.at+by, len(s.laid.pages)-1)); to != s.at {
		s.turnTo(to)
	}
}

// turnTo looks at a page.
func (s *sheetsPlace) turnTo(i int) {
	s.at = i
	if !s.onPage(s.picked) {
		s.picked = ""
	}
	s.desk.turnTo(i)
	s.column.turnTo(i)
}

// onPage reports whether a piece is on the page that is looked at.
func (s *sheetsPlace) onPage(id string) bool {
	if s.at >= len(s.laid.pages) {
		return false
	}
	for _, it := range s.laid.pages[s.at].Items {
		if it.Piece.ID == id {
			return true
		}
	}
	return false
}

// pick marks a piece on the page, "" for none.
func (s *sheetsPlace) pick(id string) {
	if id != s.picked {
		s.picked = id
		s.desk.view.Again()
		s.column.mark()
	}
}

// print prints what is shown where that is the record as it is now, otherwise what the record asks for.
func (s *sheetsPlace) print() {
	if s.current() {
		s.window.print(s.laid.pages)
		return
	}
	s.window.print(nil)
}
