package flatten

import (
	"math"

	"understructure/geometry/plane"
)

// An energy gives the price g(σ) of a stretch, with its first and second derivatives. It is convex
// with its minimum g(1) = 0 and g″(1) = 1, so that all energies agree on small strains.
type energy interface {
	price(σ float64) (g, dg, ddg float64)
}

// supple is the symmetric Dirichlet energy (σ² + σ⁻² − 2)/8 of Smith and Schaefer, "Bijective
// parameterization with free boundaries", ACM Trans. Graph. 34 (2015). It resists turning over without
// limit; below crushed it goes on as its own second-order Taylor polynomial, so that a triangle which
// starts turned over is pushed back.
type supple struct{}

const crushed = 0.3

func (supple) price(σ float64) (g, dg, ddg float64) {
	s := math.Max(σ, crushed)
	q := 1 / (s * s)
	g, dg, ddg = (s*s+q-2)/8, (s-q/s)/4, (1+3*q*q)/4
	if d := σ - s; d < 0 {
		g, dg = g+d*dg+d*d*ddg/2, dg+d*ddg
	}
	return g, dg, ddg
}

// stiff is (cosh k(σ−1) − 1)/k². As k grows, the triangles of greatest strain outweigh all others, and its
// minimum approaches the least greatest strain, as that of the p-norm does when p grows
// (Pólya's algorithm; J. R. Rice, "The Approximation of Functions", vol. 1, 1964). Unlike the
// p-norm it is nowhere slack.
type stiff struct{ k, limit float64 }

func (s stiff) price(σ float64) (g, dg, ddg float64) {
	d := σ - 1
	c := math.Max(-s.limit, math.Min(s.limit, d))
	e := math.Exp(s.k * c)
	i := 1 / e
	g, dg, ddg = (e+i-2)/(2*s.k*s.k), (e-i)/(2*s.k), (e+i)/2
	if d -= c; d != 0 {
		g, dg = g+d*dg+d*d*ddg/2, dg+d*ddg
	}
	return g, dg, ddg
}

// total is the energy of the laid patch.
func (sh sheet) total(en energy, x []plane.Point) float64 {
	sum := 0.0
	for i := range sh.elements {
		sum += sh.elements[i].energy(en, x)
	}
	return sum
}

func (e *element) energy(en energy, x []plane.Point) float64 {
	σ1, σ2 := e.stretches(x)
	en = e.pick(en)
	g1, _, _ := en.price(σ1)
	g2, _, _ := en.price(σ2)
	return e.area * (g1 + g2)
}

// flap is the energy of a sliver among stiff triangles: supple, until it is about to turn over.
type flap struct{ stiff }

// lifted is the stretch below which a sliver is kept from turning over.
const lifted = 0.2

func (f flap) price(σ float64) (g, dg, ddg float64) {
	g, dg, ddg = supple{}.price(σ)
	if σ < lifted {
		h, dh, ddh := f.stiff.price(1 + σ - lifted)
		g, dg, ddg = g+h, dg+dh, ddg+ddh
	}
	return g, dg, ddg
}

// pick returns the energy for one element.
func (e *element) pick(en energy) energy {
	if s, ok := en.(stiff); ok && e.sliver {
		return flap{s}
	}
	return en
}

// local is the energy, the gradient and the Hessian of one element in the coordinates (x₀, y₀, x₁, y₁, x₂, y₂).
type local struct {
	e float64
	g [6]float64
	h [6][6]float64
}

// add adds s·r·rᵀ to the upper half of the Hessian.
func (l *local) add(s float64, r *[6]float64) {
	for i := range 6 {
		t := s * r[i]
		for j := i; j < 6; j++ {
			l.h[i][j] += t * r[j]
		}
	}
}

// expand gives the energy of element e and differentiates it twice. In the basis of stretching and turning the
// two parts ∂f/∂z and ∂f/∂z̄ the Hessian is diagonal, and its one negative entry, that of a turned part under
// pressure, is set to zero (Smith, de Goes and Kim, "Analytic eigensystems for isotropic
// distortion energies", ACM Trans. Graph. 38, 2019; Teran et al. 2005 for the projection).
func (e *element) expand(en energy, x []plane.Point, l *local) {
	*l = local{}
	ar, ai, br, bi := e.derivatives(x)
	α, β := math.Hypot(ar, ai), math.Hypot(br, bi)
	en = e.pick(en)
	g1, d1, dd1 := en.price(α + β)
	g2, d2, dd2 := en.price(α - β)
	l.e = e.area * (g1 + g2)
	turn, twist := 0.0, 2*dd2
	if α > 1e-12 {
		ar, ai = ar/α, ai/α
		turn = math.Max(0, (d1+d2)/α)
	} else {
		ar, ai = 1, 0
	}
	if β > 1e-9 {
		br, bi = br/β, bi/β
		twist = (d1 - d2) / β
	} else {
		br, bi = 1, 0
	}
	var u, v, tA, tB [6]float64
	for j := range 3 {
		pr, pi := ar*e.cr[j]+ai*e.ci[j], ar*e.ci[j]-ai*e.cr[j]
		qr, qi := br*e.cr[j]-bi*e.ci[j], -br*e.ci[j]-bi*e.cr[j]
		u[2*j], u[2*j+1] = pr+qr, -pi-qi
		v[2*j], v[2*j+1] = pr-qr, -pi+qi
		tA[2*j], tA[2*j+1] = pi, pr
		tB[2*j], tB[2*j+1] = qi, qr
	}
	w := e.area
	for i := range 6 {
		l.g[i] = w * (d1*u[i] + d2*v[i])
	}
	l.add(w*dd1, &u)
	l.add(w*dd2, &v)
	l.add(w*turn, &tA)
	l.add(w*twist, &tB)
}

// conform is the Hessian of the conformal energy ∫|∂f/∂z̄|² (Lévy, Petitjean, Ray and Maillot, "Least squares
// conformal maps for automatic texture atlas generation", ACM Trans. Graph. 21, 2002).
func (e *element) conform(l *local) {
	*l = local{}
	var r, i [6]float64
	for j := range 3 {
		r[2*j], r[2*j+1] = e.cr[j], e.ci[j]
		i[2*j], i[2*j+1] = -e.ci[j], e.cr[j]
	}
	l.add(2*e.area, &r)
	l.add(2*e.area, &i)
}
