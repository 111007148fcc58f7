// Package eyetest says how different two colours look, to eyes of every kind and on a grey print,
// for tests. It does not choose colours.
package eyetest

import (
	"fmt"
	"image/color"
	"math"
)

// Sight is a kind of eye, or a printer.
type Sight struct {
	Name string
	see  func(linear [3]float64) [3]float64
}

// Sights are eyes that see all colours, eyes that lack one kind of cone, and a print without colour.
//
// The matrices are those for a severity of 1 in G. M. Machado, M. M. Oliveira and L. A. F. Fernandes,
// "A physiologically-based model for simulation of color vision deficiency", IEEE Transactions on
// Visualization and Computer Graphics 15, 2009, supplementary tables; they apply to linear RGB. Grey is
// the luminance of Recommendation ITU-R BT.709.
var Sights = []Sight{
	{"all colours", func(c [3]float64) [3]float64 { return c }},
	{"no red (protanopia)", times([3][3]float64{{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}})},
	{"no green (deuteranopia)", times([3][3]float64{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}})},
	{"no blue (tritanopia)", times([3][3]float64{{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}})},
	{"grey", func(c [3]float64) [3]float64 {
		y := 0.2126*c[0] + 0.7152*c[1] + 0.0722*c[2]
		return [3]float64{y, y, y}
	}},
}

func times(m [3][3]float64) func([3]float64) [3]float64 {
	return func(c [3]float64) (out [3]float64) {
		for i, row := range m {
			out[i] = min(1, max(0, row[0]*c[0]+row[1]*c[1]+row[2]*c[2]))
		}
		return out
	}
}

// Lab is a colour in CIELAB (CIE 15:2004) under the white of sRGB, D65.
type Lab struct{ L, A, B float64 }

// Sees is how a colour looks to this sight.
func (s Sight) Sees(c color.NRGBA) Lab {
	linear := func(v uint8) float64 { // IEC 61966-2-1
		x := float64(v) / 255
		if x <= 0.04045 {
			return x / 12.92
		}
		return math.Pow((x+0.055)/1.055, 2.4)
	}
	p := s.see([3]float64{linear(c.R), linear(c.G), linear(c.B)})
	x := 0.4124*p[0] + 0.3576*p[1] + 0.1805*p[2]
	y := 0.2126*p[0] + 0.7152*p[1] + 0.0722*p[2]
	z := 0.0193*p[0] + 0.1192*p[1] + 0.9505*p[2]
	f := func(t float64) float64 {
		if t > 216.0/24389 {
			return math.Cbrt(t)
		}
		return (24389.0/27*t + 16) / 116
	}
	fx, fy, fz := f(x/0.9505), f(y), f(z/1.0890)
	return Lab{116*fy - 16, 500 * (fx - fy), 200 * (fy - fz)}
}

// Difference is CIEDE2000: about 1 is the least that is seen side by side, 10 is plain at a glance.
//
// After G. Sharma, W. Wu and E. N. Dalal, "The CIEDE2000 color-difference formula: implementation
// notes, supplementary test data, and mathematical observations", Color Research and Application 30, 2005.
func Difference(p, q Lab) float64 {
	c := (math.Hypot(p.A, p.B) + math.Hypot(q.A, q.B)) / 2
	g := 1.5 - 0.5*math.Sqrt(seventh(c))
	pa, qa := p.A*g, q.A*g
	pc, qc := math.Hypot(pa, p.B), math.Hypot(qa, q.B)
	ph, qh := hue(pa, p.B), hue(qa, q.B)
	dh, mh := qh-ph, ph+qh
	switch {
	case pc*qc == 0:
		dh = 0
	case math.Abs(dh) <= 180:
		mh /= 2
	default:
		dh -= math.Copysign(360, dh)
		mh = math.Mod(mh+360, 720) / 2
	}
	dL, dC := q.L-p.L, qc-pc
	dH := 2 * math.Sqrt(pc*qc) * math.Sin(radians(dh/2))
	mL, mC := (p.L+q.L)/2, (pc+qc)/2
	t := 1 - 0.17*math.Cos(radians(mh-30)) + 0.24*math.Cos(radians(2*mh)) + 0.32*math.Cos(radians(3*mh+6)) - 0.20*math.Cos(radians(4*mh-63))
	sL := 1 + 0.015*(mL-50)*(mL-50)/math.Sqrt(20+(mL-50)*(mL-50))
	sC, sH := 1+0.045*mC, 1+0.015*mC*t
	turn := 30 * math.Exp(-math.Pow((mh-275)/25, 2))
	r := -2 * math.Sqrt(seventh(mC)) * math.Sin(radians(2*turn))
	l, k, h := dL/sL, dC/sC, dH/sH
	return math.Sqrt(l*l + k*k + h*h + r*k*h)
}

// seventh is c⁷ / (c⁷ + 25⁷).
func seventh(c float64) float64 { return 1 / (1 + math.Pow(25/max(c, 1e-9), 7)) }

// hue is in degrees, 0 to 360.
func hue(a, b float64) float64 {
	h := math.Atan2(b, a) * 180 / math.Pi
	if h < 0 {
		h += 360
	}
	return h
}

func radians(degrees float64) float64 { return degrees * math.Pi / 180 }

// The least differences at which colours count as told apart at a glance: our choice, well above the 1
// that is just seen side by side. In grey, where only lightness is left, less must do.
const leastSeen, leastGrey = 8.0, 5.0

// TooAlike lists the pairs of colours, by number, that some sight does not tell apart at a glance, and says how
// different they look to it.
func TooAlike(colours ...color.NRGBA) []string {
	var out []string
	for _, s := range Sights {
		least := leastSeen
		if s.Name == "grey" {
			least = leastGrey
		}
		for i := range colours {
			for j := range i {
				if d := Difference(s.Sees(colours[i]), s.Sees(colours[j])); d < least {
					out = append(out, fmt.Sprintf("%s: colours %d and %d differ by %.1f, want %g", s.Name, j, i, d, least))
				}
			}
		}
	}
	return out
}
