package measure

import "math"

// agree is how far two readings of one length may lie apart and still be the same, in
// millimetres: a reading is good to some 3 mm, so two differ by up to 5 (workshop habit,
// from memory).
const agree = 5

// CheckSkirt compares a skirt with itself and with the bodice that it belongs to. The keys of
// its notices are the skirt's. Either sheet may be empty.
func CheckSkirt(bodice, skirt Sheet) []Notice {
	f, _ := skirtFindings(bodice, skirt)
	return notices(f)
}

// TrustedSkirt returns bodice and skirt with the smaller reading trusted: one mount stands in
// both, so the bodice gets the smaller of the two waists and hips (a bodice without a reading
// stays without), and a skirt back that makes the whole too long is brought down.
func TrustedSkirt(bodice, skirt Sheet) (Sheet, Sheet) {
	onSkirt, onBodice := skirtFindings(bodice, skirt)
	return settle(bodice, onBodice), settle(skirt, onSkirt)
}

// CheckSleeve compares the readings of one sleeve.
func CheckSleeve(s Sheet) []Notice { return notices(sleeveFindings(s)) }

// TrustedSleeve returns the sleeve with the smaller reading trusted.
func TrustedSleeve(s Sheet) Sheet { return settle(s, sleeveFindings(s)) }

func skirtFindings(bodice, skirt Sheet) (onSkirt, onBodice []finding) {
	for _, g := range []struct {
		key  Key
		code string
		l    Level
	}{{WaistGirth, "waists-differ", Waist}, {HipGirth, "skirt-hip-below-bodice-hip", Hip}} {
		b, okB := bodice[g.key]
		s, okS := skirt[g.key]
		if !okB || !okS {
			continue
		}
		least := math.Min(b, s)
		onBodice = append(onBodice, finding{}.setting(g.key, least))
		// A skirt's fullness at the hip is no contradiction; a waistband looser than the bodice is one.
		if b-s > agree || g.key == WaistGirth && s-b > agree {
			onSkirt = append(onSkirt, found(g.code, g.l, g.key, math.Abs(b-s),
				"The bodice measures %.0f mm round at the %s and the skirt %.0f mm; the smaller governs.", b, g.l, s))
		}
	}
	if hip, waist, ok := skirt.both(HipGirth, WaistGirth); ok && hip < waist {
		onSkirt = append(onSkirt, found("skirt-hip-below-waist", Hip, HipGirth, waist-hip,
			"The skirt measures %.0f mm round at the hip, less than its waistband, %.0f mm; please take both again.", hip, waist))
	}
	return append(onSkirt, hemLengths(bodice, skirt)...), onBodice
}

// hemLengths closes the sum nape to waist + waist to hem against nape to hem.
func hemLengths(bodice, skirt Sheet) []finding {
	whole, upper, ok := bodice.both(NapeToHem, BackWaist)
	lower, taken := skirt[BackLength]
	if !ok || !taken {
		return nil
	}
	gap := upper + lower - whole
	switch {
	case gap > agree && whole > upper:
		return []finding{found("lengths-disagree", "", BackLength, gap,
			"Nape to waist, %.0f mm, and waist to hem, %.0f mm, make %.0f mm, but nape to hem is %.0f mm: %.0f mm less. The smaller is trusted, so the skirt's back is taken as %.0f mm.",
			upper, lower, upper+lower, whole, gap, whole-upper).setting(BackLength, whole-upper)}
	case math.Abs(gap) > agree:
		return []finding{found("lengths-disagree", "", BackLength, math.Abs(gap),
			"Nape to waist, %.0f mm, and waist to hem, %.0f mm, make %.0f mm, but nape to hem is %.0f mm. The first two are kept.",
			upper, lower, upper+lower, whole)}
	}
	return nil
}

func sleeveFindings(s Sheet) []finding {
	under, length, ok := s.both(UnderLength, SleeveLength)
	if !ok || under < length {
		return nil
	}
	return []finding{found("under-sleeve-not-below-sleeve", "", UnderLength, under-length,
		"The under-sleeve length, %.0f mm, is not shorter than the sleeve length, %.0f mm; it is left out.", under, length).leaving(UnderLength)}
}
