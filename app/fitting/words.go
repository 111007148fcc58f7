package fitting

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// Line is one thing to do, in a sentence.
type Line struct {
	Do   Doing
	Text string
}

// little is what hands hardly cut off soft stuff, mm. From memory.
const little = 2.0

// Lines says what is to be done, one sentence each. What is alike on the left and on the right is said once,
// and all trimming by very little in one line.
func (c Changes) Lines() []Line {
	var out []Line
	var small []string
	said := map[string]bool{}
	for i, each := range c.Pieces {
		switch {
		case said[each.id()]:
		case each.Do == Trim && each.Less < little:
			small = append(small, each.Was)
		default:
			text := each.String()
			if slices.ContainsFunc(c.Pieces[i+1:], each.alike) {
				said[otherSide(each.id())] = true
				text += " The same on the other side."
			}
			out = append(out, Line{each.Do, text})
		}
	}
	if len(small) > 0 {
		out = append(out, Line{Trim, fmt.Sprintf("Trim by less than %.0f mm where that is easily done: %s.", little, listed(small))})
	}
	return out
}

func (c Change) id() string { return c.Was + " " + c.Is }

// otherSide is what a piece is called on the other side.
func otherSide(id string) string {
	return strings.NewReplacer("left", "right", "right", "left").Replace(id)
}

// alike reports whether as much is to be done with the piece of the other side.
func (c Change) alike(o Change) bool {
	const apart = 1 // millimetres: amounts are said in whole ones
	return o.id() != c.id() && o.id() == otherSide(c.id()) && o.Do == c.Do && math.Abs(o.Less-c.Less) <= apart && math.Abs(o.More-c.More) <= apart
}

// String is the change in a sentence: the piece as it is called on the mount that stands, what is to be
// done with it, where, and its new template.
func (c Change) String() string {
	name := strings.Replace(c.Name, ": ", ", ", 1)
	what := string(c.Do)
	switch c.Do {
	case Trim, Carve:
		what = fmt.Sprintf("%s up to %.0f mm", c.verb(), max(c.Less, 1))
	case Replace:
		what = fmt.Sprintf("replace, up to %.0f mm larger", max(c.More, 1))
		if c.More <= same {
			what = "replace, of another thickness"
		}
	}
	text := capital(name) + ": " + what + c.along() + c.between()
	if c.Is != "" {
		text += "; template " + c.Is
	}
	return text + "."
}

// verb is what is done to make a piece smaller: a cover is sewn.
func (c Change) verb() string {
	if strings.HasPrefix(c.Material, "cover") {
		return "take in"
	}
	return string(c.Do)
}

// along says at which edges, or on which sides of a slice.
func (c Change) along() string {
	slice := strings.HasPrefix(c.Material, "plank")
	switch n := len(c.Edges); {
	case n == 0:
		return ""
	case n > 2:
		return " nearly all round"
	case slice:
		return " at the " + listed(c.Edges)
	case n == 1:
		return " along the " + c.Edges[0] + " edge"
	default:
		return " along the " + listed(c.Edges) + " edges"
	}
}

func listed(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// between says at which height on the figure.
func (c Change) between() string {
	switch {
	case c.Low == "" && c.Top == "":
		return ""
	case c.Low == c.Top:
		return ", at the " + c.Low
	case c.Low == "":
		return ", below the " + c.Top
	case c.Top == "":
		return ", above the " + c.Low
	}
	return ", between " + c.Low + " and " + c.Top
}
