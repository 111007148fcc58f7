package history

import (
	"math/rand/v2"
	"testing"
)

func TestUndoAndRedoWalkTheLine(t *testing.T) {
	h := From(1)
	h.Push("two", 2)
	h.Push("three", 3)
	if h.Redo() {
		t.Error("Redo at the end of the line went somewhere")
	}
	if !h.Undo() || h.Now() != 2 {
		t.Errorf("after Undo: %d, want 2", h.Now())
	}
	if name, ok := h.Undoes(); name != "two" || !ok {
		t.Errorf("Undoes %q %v, want two", name, ok)
	}
	if name, ok := h.Redoes(); name != "three" || !ok {
		t.Errorf("Redoes %q %v, want three", name, ok)
	}
	h.Push("four", 4)
	if _, ok := h.Redoes(); ok {
		t.Error("a new step must drop what could have been redone")
	}
	h.Undo()
	h.Undo()
	if h.Undo() || h.Now() != 1 {
		t.Errorf("the line must stop at its start, got %d", h.Now())
	}
}

func TestAmendIsOneStepUntilClosed(t *testing.T) {
	h := From("")
	h.Amend("waist", "5")
	h.Amend("waist", "58")
	h.Close()
	h.Amend("waist", "59")
	h.Amend("hip", "9")
	for _, want := range []string{"59", "58", ""} {
		h.Undo()
		if h.Now() != want {
			t.Errorf("undo to %q, want %q", h.Now(), want)
		}
	}
}

func TestAStepIsNamedForWhatChangedSinceItBegan(t *testing.T) {
	h := From("")
	name := func(from, to string) string { return from + "→" + to }
	for _, v := range []string{"a", "ab", "b"} {
		h.AmendNamed("waist", v, name)
	}
	if got, _ := h.Undoes(); got != "→b" {
		t.Errorf("the step is named %q", got)
	}
	h.Close()
	h.AmendNamed("waist", "c", name)
	if got, _ := h.Undoes(); got != "b→c" {
		t.Errorf("the next step is named %q", got)
	}
	h.Undo()
	h.Undo()
	if h.Now() != "" {
		t.Errorf("two steps back lead to %q", h.Now())
	}
}

func TestAmendNeverChangesTheMarkedValue(t *testing.T) {
	h := From(0)
	h.Amend("waist", 1)
	h.Mark()
	h.Amend("waist", 2)
	if h.AtMark() {
		t.Error("an amended value still counts as saved")
	}
	h.Undo()
	if !h.AtMark() || h.Now() != 1 {
		t.Errorf("undo must come back to what was saved, got %d", h.Now())
	}
}

func TestMarkIsLostWithItsBranch(t *testing.T) {
	h := From(0)
	h.Push("a", 1)
	h.Mark()
	h.Undo()
	h.Push("b", 2)
	if h.AtMark() {
		t.Error("another value at the place of the mark counts as saved")
	}
	for h.Undo() {
		if h.AtMark() {
			t.Error("the mark's branch is gone, nothing may stand at it")
		}
	}
}

// Whatever one does, the value seen is that of a plain list with a cursor.
func TestAgainstAPlainList(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	h, list, at := From(0), []int{0}, 0
	for i := 1; i < 5000; i++ {
		switch rng.IntN(3) {
		case 0:
			h.Push("", i)
			list = append(list[:at+1], i)
			at++
		case 1:
			h.Undo()
			at = max(at-1, 0)
		case 2:
			h.Redo()
			at = min(at+1, len(list)-1)
		}
		if h.Now() != list[at] {
			t.Fatalf("step %d: %d, want %d", i, h.Now(), list[at])
		}
	}
}
