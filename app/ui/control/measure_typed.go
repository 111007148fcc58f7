package control

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2/lang"
)

// all are the readings: several, one or none.
func (m Measure) all() []float64 {
	switch {
	case len(m.Readings) > 1:
		return m.Readings
	case m.Value != nil:
		return []float64{*m.Value}
	}
	return nil
}

// read takes what was typed, one reading or several with semicolons between them.
func (r *measureRow) read(text string) ([]float64, error) {
	parts := []string{text}
	if r.measure.Most > 1 && strings.Contains(text, ";") {
		parts = strings.FieldsFunc(text, func(c rune) bool { return c == ';' })
	}
	return r.readAll(parts)
}

// readAll takes each text as a reading; those that are empty do not count.
func (r *measureRow) readAll(texts []string) ([]float64, error) {
	var all []float64
	for _, text := range texts {
		if text = strings.TrimSpace(text); text == "" {
			continue
		}
		v, err := r.list.Read(r.measure.Key, text)
		if err != nil {
			return nil, err
		}
		all = append(all, *v)
	}
	switch {
	case len(all) > max(r.measure.Most, 1):
		return nil, errors.New(lang.L("at most {{.N}} readings can be kept", map[string]any{"N": r.measure.Most}))
	case len(all) == 0:
		_, err := r.list.Read(r.measure.Key, "") // whether it can do without
		return nil, err
	}
	return all, nil
}

func (r *measureRow) typed(text string) {
	if r.measure.Most > 1 && strings.Contains(text, ";") {
		r.open(true)
	}
	r.take(r.read(text))
}

// take passes on what was typed, unless it cannot be read.
func (r *measureRow) take(all []float64, err error) {
	r.err = err
	switch key := r.measure.Key; {
	case err != nil:
	case len(all) > 1:
		r.list.OnReadings(key, all)
	case len(all) == 1:
		r.list.OnChanged(key, &all[0])
	default:
		r.list.OnChanged(key, nil)
	}
	r.tell()
}

// alike compares readings as finely as they are written.
func alike(a, b []float64) bool {
	const apart = 0.01 // millimetres: finer than three decimals of an inch
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if d := a[i] - b[i]; !(d < apart && d > -apart) {
			return false
		}
	}
	return true
}
