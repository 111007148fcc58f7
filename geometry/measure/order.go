package measure

import "math"

// stout is how far a man's or a child's waist may pass the hip, or the ribs the chest,
// before it looks like a slip: a stout man's does, and a small child's waist is not smaller than
// the chest until about the age of four (W. D. F. Vincent, The Cutter's Practical Guide, 1898, p. 3).
// The figure itself is from memory.
const stout = 1.15

// girthOrder finds girths that stand in the wrong order. They stay as taken.
func girthOrder(s Sheet, w Wearer) []finding {
	factor := 1.0
	if w == Man || w == Child {
		factor = stout
	}
	var f []finding
	for _, o := range []struct {
		code         string
		level        Level
		small, large Key
	}{
		{"hip-below-waist", Hip, WaistGirth, HipGirth},
		{"hip-below-high-hip", Hip, HighHipGirth, HipGirth},
		{"underbust-above-bust", Underbust, UnderbustGirth, BustGirth},
	} {
		small, large, ok := s.both(o.small, o.large)
		if ok && small > factor*large {
			f = append(f, found(o.code, o.level, o.large, small-large,
				"The %s, %.0f mm, is larger than the %s, %.0f mm; please take both again. The mount passes neither.",
				label(o.small), small, label(o.large), large))
		}
	}
	return f
}

// label is the row's own words for a key of the bodice.
func label(k Key) string {
	m, _ := Find(Keys, k)
	return m.Label
}

// The front waist length is usually four fifths of the back (355 to 425 mm, ANSUR II women,
// Gordon and others, NATICK/TR-15/007, 2014; 320 to 400 mm, V&A O368547). Beyond
// half and one and a half one of the two has been read from another point.
const leastFrontWaist, mostFrontWaist = 0.5, 1.5

func waistLengths(s Sheet) []finding {
	front, back, ok := s.both(FrontWaist, BackWaist)
	if !ok {
		return nil
	}
	if most := mostFrontWaist * back; front > most {
		return []finding{found("front-and-back-waist-lengths", Waist, FrontWaist, front-most,
			"The front waist length, %.0f mm, is more than one and a half times the back waist length, %.0f mm; %.0f mm is used.",
			front, back, most).setting(FrontWaist, most)}
	}
	if most := front / leastFrontWaist; back > most {
		return []finding{found("front-and-back-waist-lengths", Waist, BackWaist, back-most,
			"The back waist length, %.0f mm, is more than twice the front waist length, %.0f mm; %.0f mm is used.",
			back, front, most).setting(BackWaist, most)}
	}
	return nil
}

// The neck point lies above the pit of the throat, and a little above the nape, so a tape
// from it to a bust point that lies no lower than the waist may pass the waist lengths by this
// much and no more (from memory).
const neckPointAboveFront, neckPointAboveNape = 100, 50

// mostBustPointShare is the most of the bust girth that lies straight between the bust points:
// a fifth is usual (192.8 of 959 mm, landmarks of Spanish women in the R package Anthropometry).
const mostBustPointShare = 0.35

func bustPoints(s Sheet) []finding {
	var f []finding
	if n, ok := s[NeckToBustPoint]; ok {
		most := math.Inf(1)
		if v, ok := s[FrontWaist]; ok {
			most = v + neckPointAboveFront
		}
		if v, ok := s[BackWaist]; ok {
			most = math.Min(most, v+neckPointAboveNape)
		}
		if n > most {
			f = append(f, found("bust-point-below-waist", Bust, NeckToBustPoint, n-most,
				"By the neck to bust point length, %.0f mm, the bust points would lie below the waist, which is at most %.0f mm away; the length is left out.",
				n, most).leaving(NeckToBustPoint))
		}
	}
	if w, g, ok := s.both(BustPointWidth, BustGirth); ok {
		most := mostBustPointShare * g
		if b, ok := s[BustBreadth]; ok {
			most = math.Min(most, b)
		}
		if w > most {
			f = append(f, found("bust-points-too-wide", Bust, BustPointWidth, w-most,
				"The bust point width, %.0f mm, is too wide for the bust: at most %.0f mm; it is left out.", w, most).leaving(BustPointWidth))
		}
	}
	return f
}

func sides(s Sheet) []finding {
	side, back, ok := s.both(SideLength, BackWaist)
	if !ok || side < back {
		return nil
	}
	return []finding{found("side-not-below-back-waist", Waist, SideLength, side-back,
		"The side length, %.0f mm, is not shorter than the back waist length, %.0f mm, though the armhole lies below the nape; it is left out.",
		side, back).leaving(SideLength)}
}

func hips(s Sheet) []finding {
	var f []finding
	if high, hip, ok := s.both(WaistToHighHip, WaistToHip); ok && high >= hip {
		f = append(f, found("high-hip-not-above-hip", HighHip, WaistToHighHip, high-hip,
			"The waist to high hip length, %.0f mm, is not shorter than the waist to hip length, %.0f mm; it is left out.",
			high, hip).leaving(WaistToHighHip))
	}
	if hip, height, ok := s.both(WaistToHip, WaistHeight); ok && hip >= height {
		f = append(f, found("hip-below-floor", Hip, WaistHeight, hip-height,
			"By the waist height, %.0f mm, the hip would lie below the floor, %.0f mm under the waist; the waist height is left out.",
			height, hip).leaving(WaistHeight))
	}
	return f
}

func shoulders(s Sheet) []finding {
	var f []finding
	for _, k := range []Key{AcrossFront, AcrossBack} {
		if l, a, ok := s.both(ShoulderLength, k); ok && l >= a {
			f = append(f, found("shoulder-not-below-across", Shoulder, ShoulderLength, l-a,
				"One shoulder, %.0f mm, is not shorter than the whole %s, %.0f mm; the shoulder length is left out.", l, label(k), a).leaving(ShoulderLength))
		}
	}
	front, back, ok := s.both(AcrossFront, AcrossBack)
	if g, taken := s[BustGirth]; ok && taken && front+back >= g {
		f = append(f, found("across-not-below-bust", AcrossChest, AcrossBack, front+back-g,
			"Across front and across back together, %.0f mm, are not less than the bust girth, %.0f mm, which also goes under the arms; both are left out.",
			front+back, g).leaving(AcrossFront, AcrossBack))
	}
	return f
}
