// Package fit says how a mount as built would fit: clearance, strain and its chance, and
// how it stands.
//
// Clearance is the garment's inside girth less the tape round the mount; negative
// clearance is strain. A Doubt says how sure a clearance is. Its errors are normal and act to first order:
//
//   - every tape reading errs apart from every other, by the error given for the tape and by lying off its
//     height where the girth changes with height; what hangs on it, its own level, levels drawn from it and
//     levels whose height it settles, errs with it;
//   - of readings taken more than once the spread is evidence of the error, and the smallest, which counts, lies below the best estimate;
//   - what was drawn errs by the spread of people about it;
//   - every layer of wadding is thicker or thinner than its word all over, for it is cut from one roll and pressed by
//     one cover: its error is shared by all heights that it covers, 2π times its share of the way round (J. Steiner);
//     layers err apart from one another;
//   - the cover errs everywhere together; the edge of every slice, and of every layer at every level, apart.
//
// It knows nothing of outlines that are wrong while their tape is right, of stretch in the cloth, of a garment that
// hangs askew, and of heights between the levels. What a level that is fullest costs whichever way its height is missed is for
// whoever lists the sources to add. It does not draw, nor decide what is acceptable.
package fit

// Strain reports whether a clearance would strain: it is negative by more than can be
// read off a tape.
func Strain(clearance float64) bool { return clearance < -readable }

// readable is the least that a tape can tell, mm.
const readable = 0.5
