package padding

// Short is how much of the thickest place is left unfilled because the work is bounded to so many layers, in
// mm; 0 on any form that is of use.
func (m Mount) Short() (short float64, layers int) {
	seq := m.sequence()
	if len(seq) < mostLayers {
		return 0, len(seq)
	}
	filled, most := 0.0, 0.0
	for _, t := range seq {
		filled += t
	}
	for i := range m.Thickness {
		for j, t := range m.Thickness[i] {
			if m.open(i, j) {
				most = max(most, t)
			}
		}
	}
	return max(0, most-filled), len(seq)
}
