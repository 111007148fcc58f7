package control

// spread moves rows that want to stand at the given places, top to bottom, so far apart that none
// comes nearer than gap to the next, all within low and high, and each as near to its place as that
// allows: rows that touch move as one block to the mean of what they want.
func spread(want []float32, gap, low, high float32) []float32 {
	type block struct {
		sum   float32 // of what its rows want, each less its distance from the first
		count int
	}
	var blocks []block
	first := func(b block) float32 {
		most := high - gap*float32(b.count-1)
		return max(low, min(b.sum/float32(b.count), most))
	}
	for _, y := range want {
		b := block{y, 1}
		for len(blocks) > 0 {
			last := blocks[len(blocks)-1]
			if first(last)+gap*float32(last.count) <= first(b) {
				break
			}
			b = block{last.sum + b.sum - gap*float32(last.count*b.count), last.count + b.count}
			blocks = blocks[:len(blocks)-1]
		}
		blocks = append(blocks, b)
	}
	var out []float32
	for _, b := range blocks {
		for i := range b.count {
			out = append(out, first(b)+gap*float32(i))
		}
	}
	return out
}
