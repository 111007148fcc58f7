// Package padding lays wadding over a form, or over a core of foam, until it has the wanted
// shape: how thick, in how many layers, and where each layer ends.
//
// Thickness is measured along the normal of what lies beneath. Layers are whole sheets of
// stock; where each ends is chosen so that a tape round the mount as built, cover included,
// stays at or below the wanted tape at every height, and as near to it as the sheets allow.
// It does not lay pieces flat, nor does it know paper.
package padding

import (
	"slices"

	"understructure/geometry/parallel"
	"understructure/geometry/section"
	"understructure/geometry/surface"
)

// Sheet is one thickness of wadding, in millimetres under the cover.
type Sheet struct{ Thickness float64 }

// Job is what is to be padded, to what, and with what.
type Job struct {
	Base     surface.Surface // the form or core, standing where it will stand
	Wanted   surface.Surface // the shape wanted, cover included
	Stock    []Sheet         // at least one
	Cover    float64         // thickness of the cover, mm
	From, To float64         // heights between which wadding may lie, mm

	// Normals are the directions in which wadding builds up, one a point of the base. Nil
	// means the base's own; a stepped core takes those of the smooth one it was cut from.
	Normals surface.Shell
}

// Mount is the padding found. It is not changed once made.
type Mount struct {
	Job
	Thickness Field   // from the base to the wanted shape less the cover, along the normal
	Layers    []Layer // in order of laying: the smallest first, the largest last
	Built     surface.Surface
}

// Field is a number at every row and column of the base.
type Field [][section.Directions]float64

// Layer is one sheet of wadding.
type Layer struct {
	Thickness float64
	Inside    Field // positive where the sheet lies, zero at its edge; mm of thickness
	Under     Field // wadding beneath it, mm
}

// Share is the part of the base, counted in points, that the layer covers: 0 to 1.
func (l Layer) Share() float64 {
	n := 0
	for i := range l.Inside {
		n += count(l.Inside[i][:])
	}
	return float64(n) / float64(len(l.Inside)*section.Directions)
}

// ShareAt is the part of the way round that the layer covers in row i.
func (l Layer) ShareAt(i int) float64 {
	return float64(count(l.Inside[i][:])) / section.Directions
}

func count(inside []float64) int {
	n := 0
	for _, d := range inside {
		if d > 0 {
			n++
		}
	}
	return n
}

// EdgeHalf is half the width over which an edge is feathered, mm: the sheet is thinned to
// nothing from this far inside its outline to as far outside. Common practice is to tear
// and thin edges so that they do not print through, no published figure; 10 mm is ours.
const EdgeHalf = 10.0

// flattest is the slope of thickness below which a feather is made wider, mm a mm.
const flattest = 0.03

// lean is how much of a sheet's thickness the sides are favoured by where the thickness is
// the same all round: without it a whole sheet more or less would be the only choice.
const lean = 0.25

// Lay finds the padding.
func Lay(job Job) Mount {
	m := Mount{Job: job}
	if m.Normals == nil {
		m.Normals = job.Base.Normals()
	}
	m.Thickness = m.thickness()
	m.turnOut()
	s := m.newSolver()
	s.solve()
	s.leaveWisps()
	s.raise()
	m.Layers = s.layers()
	m.Built = s.built()
	return m
}

// thickness measures from every point of the base along its normal to the wanted shape.
func (m *Mount) thickness() Field {
	f := make(Field, len(m.Base.Z))
	parallel.Each(len(f), func(i int) {
		row, _ := m.Wanted.Row(m.Base.Z[i])
		last, before := 0.0, 0.0 // of the neighbours: thickness goes on nearly straight
		for j := range section.Directions {
			f[i][j] = m.fill(i, j, 2*last-before, &row)
			last, before = f[i][j], last
		}
	})
	return f
}

// fill is the thickness at one point; guess and row are where to begin looking for it.
func (m *Mount) fill(i, j int, guess float64, row *int) float64 {
	return reach(m.Wanted, m.Base.Point(i, j), m.Normals[i][j], j, guess+m.Cover, row) - m.Cover
}

// sequence is the thickness of each sheet from the outermost in, enough for the thickest
// place: the thinnest outermost, because the finest step is needed there, the thickest
// stock below it.
func (m *Mount) sequence() []float64 {
	most := 0.0
	for i := range m.Thickness {
		for j, t := range m.Thickness[i] {
			if t > most && m.open(i, j) {
				most = t
			}
		}
	}
	thin := slices.MinFunc(m.Stock, func(a, b Sheet) int { return sign(a.Thickness - b.Thickness) }).Thickness
	thick := slices.MaxFunc(m.Stock, func(a, b Sheet) int { return sign(a.Thickness - b.Thickness) }).Thickness
	var seq []float64
	for next, h := thin, 0.0; h+next*(1-mostRound) < most && len(seq) < mostLayers; next = thick {
		seq = append(seq, next)
		h += next
	}
	return seq
}

// mostLayers bounds the work on a form that is absurdly small.
const mostLayers = 60

func sign(x float64) int {
	switch {
	case x < 0:
		return -1
	case x > 0:
		return 1
	}
	return 0
}

// within is how far, in mm, a point of the base answers to a height between those that
// wadding may lie between; negative outside.
func (m *Mount) within(i, j int) float64 {
	z := m.Base.Z[i] + (m.Thickness[i][j]+m.Cover)*m.Normals[i][j].Z
	return min(z-m.From, m.To-z)
}

// open reports whether wadding may be reckoned with at a point: within the heights and two
// rows of the skin beyond, so that the mount is still whole at those heights themselves.
func (m *Mount) open(i, j int) bool {
	const rows = 8.0 // mm
	return m.within(i, j) >= -rows
}
