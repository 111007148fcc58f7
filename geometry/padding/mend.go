package padding

import (
	"math"
	"slices"
)

// lower takes wadding away round every height where the tape is still longer than wanted:
// rather slack than strain. It goes gently, so as not to leave more slack than it must, and
// looks farther up and down the longer that does not help.
func (s *solver) lower() {
	bare := s.around(s.m.Base.Displaced(s.m.Normals, func(int, int) float64 { return s.m.Cover }))
	for round := range mostLowering {
		got := s.tapes()
		down := make([]float64, len(got))
		for i := range got {
			over := got[i] - s.want[i]
			if over <= 0 || !s.counts(i) || bare[i] > s.want[i] { // no wadding to take away would help
				continue
			}
			far := 1 + round/4
			for k := max(i-far, 0); k <= min(i+far, len(got)-1); k++ {
				down[k] = math.Max(down[k], gentle+over/(2*math.Pi*s.step()))
			}
		}
		lowered := false
		for k, d := range down {
			if d > 0 && s.round[k] > leastRound {
				s.round[k] = math.Max(leastRound, s.round[k]-d)
				lowered = true
			}
		}
		if !lowered {
			return
		}
	}
}

// raise adds wadding back where the mount has been left slacker than it may be, as long as
// no height near by comes out too long for it.
func (s *solver) raise() {
	settled := make([]bool, len(s.round)) // rows that can take no more
	got := s.tapes()
	for range mostRaising {
		before := slices.Clone(s.round)
		if !s.add(got, settled) {
			return
		}
		now := s.tapes()
		if s.undo(now, got, before, settled) {
			now = s.tapes()
		}
		if s.undo(now, got, before, settled) { // its neighbours alone were too much
			s.round = before
			return
		}
		got = now
	}
}

// add raises the rounding of slack rows and their neighbours, and reports whether there were any.
func (s *solver) add(got []float64, settled []bool) bool {
	up := make([]float64, len(got))
	for i := range got {
		slack := s.want[i] - got[i]
		if slack <= slackest+tight || settled[i] || !s.counts(i) {
			continue
		}
		for k := max(i-1, 0); k <= min(i+1, len(got)-1); k++ {
			up[k] = max(up[k], min(0.1, slack/(4*math.Pi*s.step())))
		}
	}
	any := false
	for k, d := range up {
		if d > 0 && !settled[k] && s.round[k] < mostRound {
			s.round[k] = min(mostRound, s.round[k]+d)
			any = true
		}
	}
	return any
}

// undo takes back what was added near heights that have become too long, settles those rows
// and reports whether there were any.
func (s *solver) undo(now, got, before []float64, settled []bool) bool {
	const near = 4 // rows; farther off nothing was felt
	any := false
	for i := range now {
		if !s.counts(i) || now[i] <= s.want[i] || now[i] <= got[i] {
			continue
		}
		any = true
		for k := max(i-near, 0); k <= min(i+near, len(now)-1); k++ {
			s.round[k], settled[k] = before[k], true
		}
	}
	return any
}

// mostRaising is how often raise steps.
const mostRaising = 60

// gentle is the least step of lower, as a part of a sheet, and mostLowering how often it steps.
const gentle, mostLowering = 0.005, 40

// step is the thickness of the outermost sheet.
func (s *solver) step() float64 {
	if len(s.seq) == 0 {
		return 1
	}
	return s.seq[0]
}
