package fitting

import (
	"fmt"
	"strings"

	"understructure/app/record"
)

// Entry is one fitting in words, for the mount record: lengths are in millimetres, as on all papers.
type Entry struct {
	On, By, Note string
	Seen         []string // one sentence each
}

// Log tells the fittings of a record, in the order in which they took place.
func Log(r record.Record) []Entry {
	var out []Entry
	for _, f := range r.Fittings {
		e := Entry{On: f.On, By: f.By, Note: f.Note}
		for _, s := range f.Seen {
			e.Seen = append(e.Seen, sentence(s))
		}
		out = append(out, e)
	}
	return out
}

// sentence says what was seen, such as "Waist fails to meet by 20 mm, front; tried on a mount of 603 mm."
func sentence(s record.Seen) string {
	text := strings.TrimSpace(string(s.Level) + " " + s.What)
	if s.By != nil {
		text += fmt.Sprintf(" by %.0f mm", *s.By)
	}
	if s.Where != "" {
		text += ", " + s.Where
	}
	if s.Built != nil {
		text += fmt.Sprintf("; tried on a mount of %.0f mm", *s.Built)
	}
	return capital(text) + "."
}

// capital begins a text with a capital letter.
func capital(s string) string {
	n := min(1, len(s))
	return strings.ToUpper(s[:n]) + s[n:]
}
