package picture

import "image"

// sample is what is seen at the middle of a pixel.
type sample struct {
	near        float32 // nothing where there is nothing
	light, code float32
}

// grid is one sample a pixel.
type grid struct {
	w, h    int
	origin  image.Point // of the image's corner
	samples []sample
	cover   []uint8         // for smoothing; empty between pictures
	box     image.Rectangle // what may hold anything
}

// begin empties the grid where the corners will fall.
func (g *grid) begin(on image.Rectangle, seen []corner) {
	size := on.Size()
	g.origin = on.Min
	if g.w != size.X || g.h != size.Y {
		g.w, g.h = size.X, size.Y
		g.samples, g.cover = make([]sample, g.w*g.h), make([]uint8, g.w*g.h)
	}
	lx, ly, hx, hy := float32(g.w), float32(g.h), float32(0), float32(0)
	for i := range seen {
		c := &seen[i]
		lx, ly, hx, hy = min(lx, c.x), min(ly, c.y), max(hx, c.x), max(hy, c.y)
	}
	limit := func(v float32, most int) int { return int(max(0, min(float32(most), v))) }
	g.box = image.Rect(limit(lx-1, g.w), limit(ly-1, g.h), limit(hx+2, g.w), limit(hy+2, g.h))
	for y := g.box.Min.Y; y < g.box.Max.Y; y++ {
		row := g.samples[y*g.w+g.box.Min.X : y*g.w+g.box.Max.X]
		for i := range row {
			row[i].near = nothing
		}
	}
}

// fillNets draws the faces that are turned to the viewer and notes which these are: for the cell to the
// right of a corner and above it two triangles, the one below the diagonal first.
func (p *Painter) fillNets(m mesh) {
	for _, n := range m.nets {
		for row := n.first; row+1 < n.end; row++ {
			left := row*columns + columns - 1
			for right := row * columns; right < (row+1)*columns; right++ {
				a, b, c, d := &p.seen[left], &p.seen[right], &p.seen[right+columns], &p.seen[left+columns]
				p.front[2*left] = p.grid.triangle(a, b, c)
				p.front[2*left+1] = p.grid.triangle(a, c, d)
				left = right
			}
		}
	}
}

// triangle draws a triangle given counter-clockwise as seen from outside, and reports whether it is turned
// to the viewer.
func (g *grid) triangle(a, b, c *corner) bool {
	area := (b.x-a.x)*(c.y-a.y) - (c.x-a.x)*(b.y-a.y)
	if area >= 0 { // y runs down
		return false
	}
	p, q, r := a, b, c // from the top down
	if q.y < p.y {
		p, q = q, p
	}
	if r.y < q.y {
		q, r = r, q
		if q.y < p.y {
			p, q = q, p
		}
	}
	top, bottom := firstCentre(p.y), firstCentre(r.y)
	if top = max(top, 0); top >= bottom {
		return true
	}
	bottom = min(bottom, g.h)
	k := 1 / area
	across := func(va, vb, vc float32) float32 { return ((vb-va)*(c.y-a.y) - (vc-va)*(b.y-a.y)) * k }
	down := func(va, vb, vc float32) float32 { return ((vc-va)*(b.x-a.x) - (vb-va)*(c.x-a.x)) * k }
	nearX, nearY := across(a.near, b.near, c.near), down(a.near, b.near, c.near)
	lightX, lightY := across(a.light, b.light, c.light), down(a.light, b.light, c.light)
	codeX, codeY := across(a.code, b.code, c.code), down(a.code, b.code, c.code)
	long := slope(p, r)
	upper, lower := slope(p, q), slope(q, r)
	turn := firstCentre(q.y)
	for y := top; y < bottom; y++ {
		yc := float32(y) + 0.5
		x0 := p.x + (yc-p.y)*long
		x1 := p.x + (yc-p.y)*upper
		if y >= turn {
			x1 = q.x + (yc-q.y)*lower
		}
		if x0 > x1 {
			x0, x1 = x1, x0
		}
		from, to := max(firstCentre(x0), 0), min(firstCentre(x1), g.w)
		if from >= to {
			continue
		}
		dx, dy := float32(from)+0.5-a.x, yc-a.y
		near := a.near + dx*nearX + dy*nearY
		light := a.light + dx*lightX + dy*lightY
		code := a.code + dx*codeX + dy*codeY
		row := g.samples[y*g.w+from : y*g.w+to]
		for i := range row {
			if s := &row[i]; near > s.near {
				s.near, s.light, s.code = near, light, code
			}
			near += nearX
			light += lightX
			code += codeX
		}
	}
	return true
}

// firstCentre is the number of the first pixel whose middle lies at v or beyond.
func firstCentre(v float32) int {
	v -= 0.5
	i := int(v)
	if float32(i) < v {
		i++
	}
	return i
}

func slope(p, q *corner) float32 {
	if p.y == q.y {
		return 0
	}
	return (q.x - p.x) / (q.y - p.y)
}
