package fitting

import (
	"cmp"
	"math"
	"slices"

	"understructure/patterns/piece"
	"understructure/patterns/plan"
)

// Doing is what is to be done with a piece of a mount that stands.
type Doing string

// What can be done, in the order in which it is done.
const (
	TakeOff Doing = "take off" // it is not wanted any more
	Trim    Doing = "trim"     // cut wadding, or sewn cover taken in, back to the new line
	Carve   Doing = "carve"    // foam, to the new line
	Replace Doing = "replace"  // it is too small somewhere: cut the new template
	Add     Doing = "add"      // there was none
)

var doings = []Doing{TakeOff, Trim, Carve, Replace, Add}

// Change is what is to be done with one piece.
type Change struct {
	Do       Doing
	Was, Is  string   // IDs on the mount that stands and in the new plan; "" where there is none
	Name     string   // in words, on the mount that stands; of an added piece in the new plan
	Material string   //
	Layer    int      // in the plan that Name is from
	Less     float64  // the most that is cut away, mm
	More     float64  // the most that it is to be larger, mm
	Edges    []string // along which of its edges, as piece marks them; for a slice the sides of the figure
	Low, Top string   // the levels between which; the same for at one, "" for beyond all or not known
}

// Girth is the tape round the mount at one level, nil where it has none.
type Girth struct {
	Level         string
	Before, After *float64 // as built
	Inside        *float64 // of the garment, as now known
}

// Changes is what is to be done with a mount so that it becomes another.
type Changes struct {
	Girths []Girth  // from the neck down
	Pieces []Change // in the order of Doing, then as they are laid
	Kept   int      // pieces that stay as they are
}

// Compare says how the mount of one plan becomes that of another. A piece stays that, laid on its new
// template, is nowhere more than half a millimetre larger, and so little smaller that it does not matter.
func Compare(before, after plan.Plan) Changes {
	var c Changes
	for _, l := range after.Levels {
		g := Girth{Level: l.Name, After: l.BuiltGirth, Inside: l.GarmentGirth}
		if i := slices.IndexFunc(before.Levels, func(o plan.Level) bool { return o.Name == l.Name }); i >= 0 {
			g.Before = before.Levels[i].BuiltGirth
		}
		c.Girths = append(c.Girths, g)
	}
	for _, p := range paired(before.Pieces, after.Pieces) {
		switch {
		case p.is < 0:
			c.Pieces = append(c.Pieces, whole(TakeOff, before.Pieces[p.was], before))
		case p.was < 0:
			c.Pieces = append(c.Pieces, whole(Add, after.Pieces[p.is], after))
		default:
			if change, ok := altered(before.Pieces[p.was], after.Pieces[p.is], before); ok {
				c.Pieces = append(c.Pieces, change)
				continue
			}
			c.Kept++
		}
	}
	slices.SortStableFunc(c.Pieces, func(a, b Change) int {
		return cmp.Or(slices.Index(doings, a.Do)-slices.Index(doings, b.Do), a.Layer-b.Layer)
	})
	return c
}

// whole is a change of a piece as a whole.
func whole(do Doing, p piece.Piece, in plan.Plan) Change {
	c := Change{Do: do, Was: p.ID, Name: p.Name, Material: p.Material, Layer: p.Layer}
	if do == Add {
		c.Was, c.Is = "", p.ID
	}
	if !isSlice(p) {
		c.Low, c.Top = levelsOf(spots(p), in.Levels)
	}
	return c
}

// altered is what becomes of a piece that stays in some form; false where it stays as it is.
func altered(was, is piece.Piece, in plan.Plan) (Change, bool) {
	t := register(was, is)
	grown, less := spotsOf(was, t, is.Outline) // the old edge inside the new one is where it is to grow
	cut, more := spotsOf(is, t.back(), was.Outline)
	c := Change{Do: Trim, Was: was.ID, Is: is.ID, Name: was.Name, Material: was.Material, Layer: was.Layer, Less: most(less), More: most(more)}
	give, at, on := gives, cut, is
	if isSlice(was) {
		c.Do, give = Carve, giveRound
	}
	if c.More > give || math.Abs(was.Thickness-is.Thickness) > gives {
		c.Do, at, on = Replace, grown, was
	}
	if len(less) == 0 && c.Do != Replace {
		return Change{}, false
	}
	c.Edges = edges(on, at)
	if !isSlice(was) {
		c.Low, c.Top = levelsOf(at, in.Levels)
	}
	return c, true
}

// Only is the plan p, which the changes lead to, with no pieces but those that are cut or trimmed; what is to
// be done stands first among its warnings.
func (c Changes) Only(p plan.Plan) plan.Plan {
	changed := map[string]bool{}
	for _, each := range c.Pieces {
		changed[each.Is] = each.Is != ""
	}
	all := p.Pieces
	p.Pieces = []piece.Piece{}
	for _, each := range all {
		if changed[each.ID] {
			p.Pieces = append(p.Pieces, each)
		}
	}
	var notes []plan.Warning
	for _, line := range c.Lines() {
		notes = append(notes, plan.Warning{Code: "fitting-change", Message: line.Text})
	}
	p.Warnings = append(notes, p.Warnings...)
	p.Layers = slices.DeleteFunc(slices.Clone(p.Layers), func(l plan.Layer) bool {
		return !slices.ContainsFunc(p.Pieces, func(q piece.Piece) bool { return q.Layer == l.Number && q.Material == l.Material })
	})
	return p
}
