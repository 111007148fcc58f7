// Package history keeps undo and redo as a line of values: each step is a whole value,
// and where one stands on the line is what one sees.
// It does not copy values; a value on the line must not be written to.
package history

// Of is a line of values of one type, each with the name of the step that led to it.
// The zero Of is not usable; start with From.
type Of[T any] struct {
	line []step[T]
	at   int // where one stands
	mark int // the step that was last marked, -1 when it can no longer be reached
	open bool
}

type step[T any] struct {
	key   string // what Amend knows it by
	name  string
	value T
}

// From starts a line at v, marked.
func From[T any](v T) *Of[T] {
	return &Of[T]{line: []step[T]{{value: v}}}
}

// Now returns the value where one stands.
func (h *Of[T]) Now() T { return h.line[h.at].value }

// Push takes a new step; what could have been redone is gone.
func (h *Of[T]) Push(name string, v T) {
	if h.mark > h.at {
		h.mark = -1
	}
	h.line = append(h.line[:h.at+1], step[T]{name, name, v})
	h.at++
	h.open = false
}

// Amend takes a step that belongs to the one before when that has the same name and was not
// closed, so that a word typed letter by letter, or a drag, is one step.
func (h *Of[T]) Amend(name string, v T) {
	h.AmendNamed(name, v, func(T, T) string { return name })
}

// AmendNamed is Amend for a step that is known by a key and named for what has changed from
// where it began to where it now is.
func (h *Of[T]) AmendNamed(key string, v T, name func(from, to T) string) {
	if !h.open || h.line[h.at].key != key || h.mark == h.at {
		h.Push(key, v)
		h.open = true
	}
	now := &h.line[h.at]
	now.value, now.name = v, name(h.line[h.at-1].value, v)
}

// Close ends a step that Amend would go on with.
func (h *Of[T]) Close() { h.open = false }

// Undo goes one step back and reports whether there was one.
func (h *Of[T]) Undo() bool { return h.move(-1) }

// Redo goes one step forward and reports whether there was one.
func (h *Of[T]) Redo() bool { return h.move(+1) }

func (h *Of[T]) move(by int) bool {
	to := h.at + by
	if to < 0 || to >= len(h.line) {
		return false
	}
	h.at, h.open = to, false
	return true
}

// Undoes names the step that Undo would take back; false when there is none.
func (h *Of[T]) Undoes() (string, bool) {
	return h.line[h.at].name, h.at > 0
}

// Redoes names the step that Redo would take again; false when there is none.
func (h *Of[T]) Redoes() (string, bool) {
	if h.at+1 >= len(h.line) {
		return "", false
	}
	return h.line[h.at+1].name, true
}

// Mark remembers where one stands, as the state that was saved.
func (h *Of[T]) Mark() { h.mark = h.at }

// AtMark reports whether one stands at the mark.
func (h *Of[T]) AtMark() bool { return h.at == h.mark }
