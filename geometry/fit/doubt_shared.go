package fit

import "math"

// sharedPart is the one common factor of a table of correlations: the shares whose products come nearest to the
// correlations of different levels (principal axes, repeated with the shares' own squares on the diagonal; L. L.
// Thurstone, Multiple-Factor Analysis, 1947).
func sharedPart(r [][]float64) []float64 {
	n := len(r)
	part := make([]float64, n)
	if n < 2 {
		return part
	}
	first, most := 0, 0.0 // the level that shares most, by which the signs are told
	for i := range part {
		sum := 0.0
		for k := range part {
			if k != i {
				part[i] = math.Max(part[i], math.Sqrt(math.Abs(r[i][k])))
				sum += math.Abs(r[i][k])
			}
		}
		if sum > most {
			first, most = i, sum
		}
	}
	for i := range part {
		part[i] = math.Copysign(part[i], r[first][i])
	}
	const rounds, settled = 60, 1e-4
	for range rounds {
		next := axis(r, part)
		moved := 0.0
		for i := range next {
			moved = math.Max(moved, math.Abs(next[i]-part[i]))
		}
		if part = next; moved < settled {
			break
		}
	}
	return part
}

// axis is the principal axis of r with squares of part on the diagonal, as long as its root; found by
// multiplying again and again.
func axis(r [][]float64, part []float64) []float64 {
	v, out := append([]float64(nil), part...), make([]float64, len(part))
	value := 0.0
	const times = 8 // from round to round it changes little
	for range times {
		length := norm(v)
		if length == 0 {
			return out
		}
		next := make([]float64, len(v))
		for i := range next {
			for k := range v {
				c := r[i][k]
				if i == k {
					c = part[i] * part[i]
				}
				next[i] += c * v[k] / length
			}
		}
		v, value = next, norm(next)
	}
	for i := range out {
		out[i] = math.Max(-1, math.Min(1, v[i]/math.Max(value, math.SmallestNonzeroFloat64)*math.Sqrt(value)))
	}
	return out
}

func norm(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x * x
	}
	return math.Sqrt(sum)
}
