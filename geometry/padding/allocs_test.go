package padding

import "testing"

// The search for where sheets end measures the face of the mount some thousand times: it must need no memory of its own.
func TestSettlingAllocatesNothing(t *testing.T) {
	m := &Mount{Job: Job{Base: barrel(waisted(120, 15), 0.8), Wanted: barrel(waisted(140, 25), 0.9), Stock: []Sheet{{6}}, Cover: 1, From: 0, To: 400}}
	m.Normals = m.Base.Normals()
	m.Thickness = m.thickness()
	s := m.newSolver()
	faces := s.faces()
	middle := len(faces) / 2
	if n := testing.AllocsPerRun(20, func() { s.settle(&faces[middle], s.want[middle]-slackest, 0, 40) }); n != 0 {
		t.Errorf("%v allocations a height", n)
	}
}
