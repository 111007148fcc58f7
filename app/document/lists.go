package document

import (
	"fmt"
	"reflect"
	"slices"

	"understructure/app/record"
)

// kept is what a record has a list of.
type kept[T any] interface {
	Check(unit string) error
	Clone() T
}

// listed is one list of a record.
type listed[T kept[T]] struct {
	noun string
	most int
	in   func(*record.Record) *[]T
	done func(*Document) // what follows a change
}

var (
	fittings    = listed[record.Fitting]{"fitting", record.MostFittings, func(r *record.Record) *[]record.Fitting { return &r.Fittings }, (*Document).changed}
	photographs = listed[record.Photograph]{"photograph", record.MostPhotographs, func(r *record.Record) *[]record.Photograph { return &r.Photographs }, (*Document).noted}
)

// AddFitting adds a fitting at the end. It refuses what a record cannot hold.
func (d *Document) AddFitting(f record.Fitting) error { return fittings.add(d, f) }

// ChangeFitting puts f in the place of fitting i, counted from 0. Until Settle, changing the same
// fitting again belongs to the same step. It refuses what a record cannot hold.
func (d *Document) ChangeFitting(i int, f record.Fitting) error { return fittings.change(d, i, f) }

// RemoveFitting takes fitting i out.
func (d *Document) RemoveFitting(i int) error { return fittings.remove(d, i) }

// AddPhotograph adds a photograph at the end. It refuses what a record cannot hold.
func (d *Document) AddPhotograph(p record.Photograph) error { return photographs.add(d, p) }

// ChangePhotograph puts p in the place of photograph i, counted from 0. Until Settle, changing the
// same photograph again belongs to the same step. It refuses what a record cannot hold.
func (d *Document) ChangePhotograph(i int, p record.Photograph) error {
	return photographs.change(d, i, p)
}

// RemovePhotograph takes photograph i out of the record; its file stays.
func (d *Document) RemovePhotograph(i int) error { return photographs.remove(d, i) }

func (l listed[T]) add(d *Document, v T) error {
	r := clone(d.Record())
	if err := v.Check(r.Unit); err != nil {
		return err
	}
	all := l.in(&r)
	if len(*all) >= l.most {
		return fmt.Errorf("a record holds at most %d %ss", l.most, l.noun)
	}
	*all = append(*all, v.Clone())
	d.history.Push("new "+l.noun, r)
	l.done(d)
	return nil
}

func (l listed[T]) change(d *Document, i int, v T) error {
	r := clone(d.Record())
	if err := l.there(r, i); err != nil {
		return err
	}
	if err := v.Check(r.Unit); err != nil {
		return err
	}
	all := *l.in(&r)
	if reflect.DeepEqual(all[i], v) {
		return nil
	}
	all[i] = v.Clone()
	d.history.Amend(fmt.Sprintf("%s %d", l.noun, i+1), r)
	l.done(d)
	return nil
}

func (l listed[T]) remove(d *Document, i int) error {
	r := clone(d.Record())
	if err := l.there(r, i); err != nil {
		return err
	}
	all := l.in(&r)
	*all = slices.Delete(*all, i, i+1)
	d.history.Push(fmt.Sprintf("%s %d taken out", l.noun, i+1), r)
	l.done(d)
	return nil
}

func (l listed[T]) there(r record.Record, i int) error {
	if n := len(*l.in(&r)); i < 0 || i >= n {
		return fmt.Errorf("there is no %s %d; the record has %d", l.noun, i+1, n)
	}
	return nil
}
