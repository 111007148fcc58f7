package ui

import (
	"context"
	"reflect"

	"understructure/app/document"
	"understructure/app/fitting"
	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/patterns/plan"
)

// before is the mount that was tried on, computed from the record without the fitting, and what has changed
// since. Both are found in the background; of two that are asked for the later counts.
type before struct {
	rooms  document.Rooms
	come   func() // something has come
	record record.Record
	plan   plan.Plan
	err    error
	ready  bool
	number int
	cancel context.CancelFunc

	since   record.Record // that the changes lead to
	changes *fitting.Changes
	asked   bool // the changes are asked for
}

func newBefore(rooms document.Rooms, come func()) *before {
	return &before{rooms: rooms, come: come, cancel: func() {}}
}

// without is a record as it was before a fitting, by its place.
func without(r record.Record, at int) record.Record {
	if at = min(at, len(r.Fittings)); at == 0 {
		r.Fittings = nil
		return r
	}
	r.Fittings = r.Fittings[:at:at]
	return r
}

// is takes a plan that is known to be that of a record.
func (b *before) is(r record.Record, p plan.Plan) {
	if b.ready && b.err == nil && reflect.DeepEqual(b.record, r) {
		return
	}
	b.turn(r)
	b.plan, b.err, b.ready = p, nil, true
}

// ask computes the mount of a record, unless it is there or being computed.
func (b *before) ask(r record.Record) {
	if b.number > 0 && reflect.DeepEqual(b.record, r) {
		return
	}
	ctx := b.turn(r)
	go func(number int) {
		p, err := b.rooms.Compute(ctx, r)
		b.rooms.Post(func() {
			if number == b.number {
				b.plan, b.err, b.ready = p, err, true
				b.come()
			}
		})
	}(b.number)
}

// turn gives up what was asked for before.
func (b *before) turn(r record.Record) context.Context {
	b.cancel()
	ctx, cancel := context.WithCancel(context.Background())
	b.number++
	b.record, b.cancel, b.ready, b.changes, b.asked = r, cancel, false, nil, false
	return ctx
}

// compare finds what has changed up to the plan of another record, unless it has or is doing so.
func (b *before) compare(since record.Record, after plan.Plan) {
	if !b.ready || b.err != nil || b.asked && reflect.DeepEqual(b.since, since) {
		return
	}
	b.number++
	b.since, b.changes, b.asked = since, nil, true
	go func(number int, from plan.Plan) {
		c := fitting.Compare(from, after)
		b.rooms.Post(func() {
			if number == b.number {
				b.changes = &c
				b.come()
			}
		})
	}(b.number, b.plan)
}

// changesTo is what has changed up to the plan of another record, nil while that is not known.
func (b *before) changesTo(r record.Record) *fitting.Changes {
	if !b.asked || !reflect.DeepEqual(b.since, r) {
		return nil
	}
	return b.changes
}

// built is the girth at a level of the mount of a record, nil where it is not known yet.
func (b *before) built(r record.Record, l measure.Level) *float64 {
	if !b.ready || b.err != nil || !reflect.DeepEqual(b.record, r) {
		return nil
	}
	for _, each := range b.plan.Levels {
		if each.Name == string(l) {
			return each.BuiltGirth
		}
	}
	return nil
}

// compare asks for the mount before the fitting in hand, and for what it has changed since. Before a new
// fitting it is the mount as it is.
func (p *fittingPlace) compare(r record.Record) {
	now, err := p.doc.Plan()
	known := !p.doc.Busy() && err == nil
	switch tried := without(r, p.hand.at); {
	case p.hand.at < len(r.Fittings):
		p.before.ask(tried)
		if known {
			p.before.compare(r, now)
		}
	case known:
		p.before.is(tried, now)
	}
}
