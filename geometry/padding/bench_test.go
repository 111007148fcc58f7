package padding

import (
	"testing"

	"understructure/geometry/measure"
	"understructure/geometry/section"
	"understructure/geometry/surface"
	"understructure/geometry/torso"
)

// pair is a figure and a form smaller than it, each as 200 slices of 256 directions.
func pair(b *testing.B) (figure, form surface.Surface) {
	b.Helper()
	skin := func(bust, waist, hip float64) surface.Surface {
		t, err := torso.Build(measure.Sheet{
			measure.BustGirth: bust, measure.WaistGirth: waist, measure.HipGirth: hip, measure.BackWaist: 385,
		}, measure.Woman, 1872, nil)
		if err != nil {
			b.Fatal(err)
		}
		lo, hi := t.At(measure.Hip).Height, t.At(measure.NeckBase).Height
		rows := make([]float64, 200)
		for i := range rows {
			rows[i] = lo + (hi-lo)*float64(i)/199
		}
		return t.Skin.Resampled(rows)
	}
	return skin(840, 620, 950), skin(780, 570, 870)
}

// The parts of padding a whole torso, 200 slices of 256 directions, and the whole.
func BenchmarkTorso(b *testing.B) {
	figure, form := pair(b)
	slices := make([]section.Section, 0, len(form.R))
	slices = append(slices, form.R...)
	job := Job{Base: form, Wanted: figure, Stock: []Sheet{{6}, {3}}, Cover: 1, From: form.Bottom(), To: form.Top()}
	b.Run("surface", func(b *testing.B) {
		for b.Loop() {
			surface.Through(form.Z, slices, form.Z)
		}
	})
	b.Run("normals", func(b *testing.B) {
		for b.Loop() {
			form.Normals()
		}
	})
	b.Run("thickness", func(b *testing.B) {
		m := &Mount{Job: job}
		m.Normals = form.Normals()
		for b.Loop() {
			m.thickness()
		}
	})
	b.Run("tapes", func(b *testing.B) {
		for b.Loop() {
			for i := range figure.R {
				figure.R[i].Tape()
			}
		}
	})
	b.Run("parallels", func(b *testing.B) {
		for b.Loop() {
			for i := range form.R {
				form.R[i].Parallel(6)
			}
		}
	})
	b.Run("whole", func(b *testing.B) {
		for b.Loop() {
			s := surface.Through(form.Z, slices, form.Z)
			job.Base = s
			m := Lay(job)
			for i := range m.Built.R {
				m.Built.R[i].Tape()
			}
		}
	})
}
