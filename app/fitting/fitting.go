// Package fitting turns what was seen at trial fittings into what the mount is computed from, and
// says what a fitting changed: which girths, and which pieces to trim, add or take off.
//
// What she saw outweighs the tape. A garment that was tried on a mount of known girth has been
// measured by that mount, closed as it is worn; a tape in a flat garment has not. So a finding at a level
// says how large the garment really is inside, counted from the tape girth of the mount tried on
// (built), with the ease asked for there and the amount seen, d:
//
//	fails to meet by d    inside = built − d            the mount becomes d and the ease smaller
//	tight by d            inside = built + ease − d     the mount becomes d smaller
//	slack by d            inside = built + ease + d     the mount becomes d larger
//
// A waist was read as 620 mm and 15 mm of ease were asked for; the mount was built 603 mm round, and
// the garment fails to meet on it by 20 mm. Then it is 603 − 20 = 583 mm inside, whatever the tape said, and the
// mount is to be 583 − 15 = 568 mm round: smaller than the one tried on by the gap and the ease, since
// a garment that just meets has none.
//
// What was seen at one level of one fitting adds up, for it is of one mount. Where the built girth
// was not noted, the finding counts from the mount that the readings ask for as the fittings before have left
// them. A pull never makes a mount larger than the tape allows; slack does, for then she says
// so, and where fitting and tape are more than three tape errors apart, or the mount would pass
// the tape, a notice says so. What was seen at one side moves the arc of that side.
//
// A shoulder that is too square or too sloping by a gap d at the shoulder point turns the slope by
// atan(d / shoulder length). A hem that is too short hangs as if the skirt were that much shorter:
// all round the stand goes down with it, on one side the length of that side counts as less. What looks
// limp is filled a little out of the ease, of which at least half stays.
// Later fittings are applied to what earlier ones have left. The record itself is never changed.
//
// It does not compute a mount, and it does not draw.
package fitting

import (
	"maps"

	"understructure/app/record"
	"understructure/geometry/measure"
	"understructure/patterns/plan"
)

// Applied is a record as its fittings leave it.
type Applied struct {
	Record  record.Record         // to compute from; the record given is as it was
	Notices []measure.Notice      // what was changed and what could not be; the keys are paths in the record
	Values  map[string]plan.Value // by key path, what a fitting gave, with a source such as "fitting 2026-03-02"
}

// Apply lets the fittings of a record outweigh its readings, in the order in which they took place. A
// record without anything seen comes back as it is.
func Apply(r record.Record) Applied {
	f := newFitter(r)
	for _, each := range r.Fittings {
		f.apply(each)
	}
	return f.out
}

// Mark says in the plan computed from a.Record which of its values a fitting gave.
func (a Applied) Mark(p plan.Plan) plan.Plan {
	taken := map[string]plan.Value{}
	maps.Copy(taken, p.Taken)
	maps.Copy(taken, a.Values)
	p.Taken = taken
	return p
}
