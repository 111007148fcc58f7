package flatten

import "math"

// The dense work of one front. Its blocks are small, a few dozen rows, so that the calls of a general library cost
// more than the sums; here four rows are worked on together and stay in registers.

// cholesky decomposes the own block of a panel, A = LLᵀ, whose rows follow one another n apart, in place, and
// solves the rows below for L: X·Lᵀ = B. It reports whether the block is positive definite.
func cholesky(panel []float64, n int) bool {
	for c := range n {
		row := panel[c*n : c*n+c+1]
		for k := range c {
			row[k] = (row[k] - dot(row[:k], panel[k*n:])) / panel[k*n+k]
		}
		d := row[c] - dot(row[:c], row)
		if !(d > 0) {
			return false
		}
		row[c] = math.Sqrt(d)
	}
	rows := panel[n*n:]
	for ; len(rows) >= 4*n; rows = rows[4*n:] {
		solveFour(rows[:n], rows[n:2*n], rows[2*n:3*n], rows[3*n:4*n], panel, n)
	}
	for ; len(rows) > 0; rows = rows[n:] {
		row := rows[:n]
		for k := range row {
			row[k] = (row[k] - dot(row[:k], panel[k*n:])) / panel[k*n+k]
		}
	}
	return true
}

// solveFour solves four rows for the triangle l.
func solveFour(a, b, c, d, l []float64, n int) {
	for k := range n {
		row := l[k*n : k*n+k+1]
		s, t, u, v := a[k], b[k], c[k], d[k]
		p, q, r, w := a[:k], b[:k], c[:k], d[:k]
		for i, x := range row[:k] {
			s -= x * p[i]
			t -= x * q[i]
			u -= x * r[i]
			v -= x * w[i]
		}
		i := 1 / row[k]
		a[k], b[k], c[k], d[k] = s*i, t*i, u*i, v*i
	}
}

// dot is the product of a with the beginning of b.
func dot(a, b []float64) float64 {
	sum := 0.0
	b = b[:len(a)]
	for i, x := range a {
		sum += x * b[i]
	}
	return sum
}

// downdate takes X·Xᵀ off the lower half of a square, X being its rows of n numbers.
func downdate(square, rows []float64, n int) {
	m := len(rows) / n
	for i := 0; i < m; i += 2 {
		p := rows[i*n : i*n+n]
		if i+1 == m {
			for j := range i + 1 {
				square[i*m+j] -= dot(p, rows[j*n:])
			}
			break
		}
		q := rows[i*n+n : i*n+2*n]
		j := 0
		for ; j+3 <= i; j += 3 {
			twoByThree(square[i*m+j:], square[i*m+m+j:], p, q, rows[j*n:j*n+n], rows[j*n+n:j*n+2*n], rows[j*n+2*n:j*n+3*n])
		}
		for ; j <= i+1; j++ {
			r := rows[j*n : j*n+n]
			if j <= i {
				square[i*m+j] -= dot(p, r)
			}
			square[i*m+m+j] -= dot(q, r)
		}
	}
}

// twoByThree takes the products of p and q with a, b and c off two rows of the square.
func twoByThree(sp, sq, p, q, a, b, c []float64) {
	var pa, pb, pc, qa, qb, qc float64
	q, a, b, c = q[:len(p)], a[:len(p)], b[:len(p)], c[:len(p)]
	for i, x := range p {
		y := q[i]
		u, v, w := a[i], b[i], c[i]
		pa += x * u
		pb += x * v
		pc += x * w
		qa += y * u
		qb += y * v
		qc += y * w
	}
	sp[0], sp[1], sp[2] = sp[0]-pa, sp[1]-pb, sp[2]-pc
	sq[0], sq[1], sq[2] = sq[0]-qa, sq[1]-qb, sq[2]-qc
}
