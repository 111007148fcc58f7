package nest

import "context"

// meter counts the work and tells when it must end.
type meter struct {
	ctx      context.Context
	spent    int // places tried, each counted once more for every item that it was tried against
	effort   int // when everything ends
	until    int // when the present stage ends
	told     int
	progress func(float64)
}

// over reports whether the present stage is to end. It also tells how far the work is.
func (m *meter) over() bool {
	if step := m.effort / 100; m.progress != nil && m.spent >= m.told+step {
		m.told = m.spent
		m.progress(min(1, float64(m.spent)/float64(m.effort)))
	}
	return m.spent >= m.until || m.ctx.Err() != nil
}

// stage lets the present stage take a part of what effort is left.
func (m *meter) stage(part float64) {
	m.until = m.spent + int(part*float64(max(0, m.effort-m.spent)))
}
