package keep

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"understructure/app/killtest"
)

func TestMain(m *testing.M) {
	killtest.Main(m, func(path string, n int) error {
		return File(path, func(w io.Writer) error { _, err := io.WriteString(w, version(n)); return err })
	})
}

// version is a text that shows when a part of it is missing.
func version(n int) string {
	return fmt.Sprintf("%d\n%send %d\n", n, strings.Repeat("all that was taken of this garment\n", 2000), n)
}

// After every kill the file is one that was written whole, and none older than the last that was said to be safe.
func TestKilledWhileSaving(t *testing.T) {
	path := filepath.Join(t.TempDir(), "dress.json")
	next := 1
	for k := range killtest.Times(t) {
		safe := killtest.Kill(t, path, next, uint64(k))
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatalf("kill %d: %v", k, err)
		}
		var n int
		if _, err := fmt.Sscan(string(text), &n); err != nil || string(text) != version(n) {
			t.Fatalf("kill %d: the file is %d bytes that were never written whole", k, len(text))
		}
		if n < safe {
			t.Fatalf("kill %d: the file holds version %d, and %d was safe", k, n, safe)
		}
		next = n + 1
	}
}
