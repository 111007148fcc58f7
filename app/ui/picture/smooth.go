package picture

import "image"

// A pixel shows the face under its middle, so that the edge of the figure, and of every part that stands
// before another, is a staircase. Here each pixel that such an edge runs through is mixed from the
// colours on either side, by how much of it lies on which. The idea of doing this after the picture is drawn, from
// the edges of the faces themselves, is E. Persson's, "Geometric post-process anti-aliasing", 2011.

// mend is a pixel to be mixed anew: so much of a face over what lies beside it.
type mend struct {
	at, face, ground int32 // numbers of samples
	cover            uint8
	mixed            [4]uint8
}

// whole is the cover of a pixel of which nothing but the face is seen.
const whole = 255

// smooth mends every edge at which a skin turns away from the viewer, its rims included.
func (p *Painter) smooth(img *image.RGBA, m mesh, f Frame) {
	e := edges{seen: p.seen, front: p.front, grid: &p.grid, mends: p.mends[:0], deep: float32(20 + 15/f.Scale)}
	for i := 0; i < len(m.nets); i += 3 {
		side, lower, upper := m.nets[i], m.nets[i+1], m.nets[i+2]
		for row := side.first; row+1 < side.end; row++ {
			e.row(row, row == side.first)
		}
		e.rim(side.first, side.first, 0, lower.first, 1)
		e.rim(side.end-1, side.end-2, 1, upper.first, 0)
	}
	e.apply(img)
	p.mends = e.mends
}

// edges looks for the edges of the mesh that are seen against something else.
type edges struct {
	seen  []corner
	front []bool
	grid  *grid
	mends []mend
	deep  float32 // how much nearer than an edge the face beside it may lie, mm, and still belong to it
}

// row looks at the lower edge, the diagonal and the left edge of every cell between a row and the next.
func (e *edges) row(row int, lowest bool) {
	left := (row+1)*columns - 1
	before := left - 1 // where the cell to the left begins
	for right := row * columns; right < (row+1)*columns; right++ {
		under, over := e.front[2*left], e.front[2*left+1]
		if !lowest {
			e.between(left, right, under, right+columns, e.front[2*(left-columns)+1], left-columns)
		}
		e.between(left, right+columns, over, left+columns, under, right)
		e.between(left, left+columns, over, right+columns, e.front[2*before], before)
		before, left = left, right
	}
}

// rim looks at the edges of a row in which a side, whose cells there begin at row cells, meets the flat end
// that begins at row flat. Of both the number of the triangle that has the edge is given: 0 or 1.
func (e *edges) rim(row, cells, triangle, flat, other int) {
	middle := flat * columns
	if other == 0 {
		middle += columns
	}
	for j := range columns {
		left, right := (j+columns-1)%columns, j
		third := cells*columns + right
		if triangle == 0 {
			third += columns
		}
		e.between(row*columns+left, row*columns+right, e.front[2*(cells*columns+left)+triangle], third, e.front[2*(flat*columns+left)+other], middle)
	}
}

// between follows the edge from corner a to b if one of the faces on either side, with the third corners c
// and d, is turned to the viewer and the other is not.
func (e *edges) between(a, b int, front bool, c int, other bool, d int) {
	if front == other {
		return
	}
	if other {
		c = d
	}
	e.follow(&e.seen[a], &e.seen[b], &e.seen[c])
}

// follow mends the pixels on the edge from a to b of a face that lies on the side of c.
func (e *edges) follow(a, b, c *corner) {
	dx, dy := b.x-a.x, b.y-a.y
	right := dx*(c.y-a.y)-dy*(c.x-a.x) < 0 // the face, of an edge that runs down
	if max(dy, -dy) >= max(dx, -dx) {
		if dy < 0 {
			a, b, dx, dy, right = b, a, -dx, -dy, !right
		}
		for y := max(firstCentre(a.y), 0); y < min(firstCentre(b.y), e.grid.h); y++ {
			t := (float32(y) + 0.5 - a.y) / dy
			e.mend(a.x+t*dx, e.grid.w, y*e.grid.w, 1, right, a.near+t*(b.near-a.near))
		}
		return
	}
	below := !right // of an edge that runs to the right
	if dx < 0 {
		a, b, dx, dy, below = b, a, -dx, -dy, !below
	}
	for x := max(firstCentre(a.x), 0); x < min(firstCentre(b.x), e.grid.w); x++ {
		t := (float32(x) + 0.5 - a.x) / dx
		e.mend(a.y+t*dy, e.grid.h, x, e.grid.w, below, a.near+t*(b.near-a.near))
	}
}

// mend notes the pixel in which an edge crosses a row or column of so many pixels at v. The row begins with
// sample number first and goes on in steps; onward says whether the face lies toward its end.
func (e *edges) mend(v float32, most, first, step int, onward bool, near float32) {
	cell := int(v)
	if v < 1 || cell+1 >= most {
		return
	}
	at := first + cell*step
	cover := v - float32(cell)
	shown := cover > 0.5 // the face holds the middle of the pixel
	if onward {
		cover, shown = 1-cover, !shown
	} else {
		step = -step
	}
	m := mend{at: int32(at), face: int32(at), ground: int32(at - step), cover: uint8(cover * whole)}
	if !shown {
		m.face, m.ground = int32(at+step), int32(at)
	}
	if e.shows(m.face, m.ground, near) {
		e.note(m)
		e.note(mend{at: int32(at + step), cover: whole})
	}
}

// shows reports whether the edge is in sight: the face beside it is seen, and nothing nearer is seen past it.
func (e *edges) shows(face, ground int32, near float32) bool {
	s := e.grid.samples
	return s[face].near != nothing && s[face].near < near+e.deep && s[ground].near < near+1
}

// note keeps the mend. Of several of one pixel the one with most cover counts: the others are edges behind it.
func (e *edges) note(m mend) {
	e.grid.cover[m.at] = max(e.grid.cover[m.at], m.cover)
	e.mends = append(e.mends, m)
}

// apply mixes the colours of all pixels before it changes any.
func (e *edges) apply(img *image.RGBA) {
	pixel := func(sample int32) []uint8 {
		i := int(sample)/e.grid.w*img.Stride + int(sample)%e.grid.w*4
		return img.Pix[i : i+4 : i+4]
	}
	for i := range e.mends {
		m := &e.mends[i]
		if m.cover == whole || m.cover < e.grid.cover[m.at] {
			m.cover = whole
			continue
		}
		face, ground := pixel(m.face), pixel(m.ground)
		for k := range m.mixed {
			m.mixed[k] = uint8((int32(ground[k])*(whole-int32(m.cover)) + int32(face[k])*int32(m.cover)) / whole)
		}
	}
	for i := range e.mends {
		m := &e.mends[i]
		e.grid.cover[m.at] = 0
		if m.cover != whole {
			copy(pixel(m.at), m.mixed[:])
		}
	}
}
