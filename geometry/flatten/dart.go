package flatten

// cut is a patch after cutting, with the vertex of the original that each of its vertices came from.
type cut struct {
	patch  Patch
	source []int
}

// whole is the patch as given, checked.
func whole(p Patch) (cut, error) {
	if _, err := p.Boundary(); err != nil {
		return cut{}, err
	}
	c := cut{patch: p, source: make([]int, len(p.Points))}
	for i := range c.source {
		c.source[i] = i
	}
	return c, nil
}
