package record

import "fmt"

// items reads a list of things of one kind; an empty one stays nil.
func items[T any](d *decoder, into *[]T, most int, things string, read func(string, node) T) func(string, node) {
	return func(path string, n node) {
		l, ok := n.(list)
		if !ok {
			d.refuse(path, written(n), "is not possible", "a list")
			return
		}
		if !d.atMost(path, l, most, things) {
			return
		}
		for i, n := range l {
			*into = append(*into, read(fmt.Sprintf("%s[%d]", path, i), n))
		}
	}
}

// atMost refuses a list that is too long, and reports whether it is not.
func (d *decoder) atMost(path string, l list, most int, things string) bool {
	if len(l) <= most {
		return true
	}
	d.refuse(path, fmt.Sprintf("a list of %d", len(l)), "is not possible", fmt.Sprintf("at most %d %s", most, things))
	return false
}

// listed writes a list; one without items is nothing to say.
func listed[T any](all []T, write func(T) node) node {
	if len(all) == 0 {
		return nil
	}
	var l list
	for _, v := range all {
		l = append(l, write(v))
	}
	return l
}

// check lets a decoder judge what an encoder writes of a part of a record, without the rest.
func check(word string, part func(*decoder, encoder)) error {
	d := decoder{unit: word}
	part(&d, encoder{unit: word})
	if d.err != nil {
		return d.err
	}
	return nil
}
