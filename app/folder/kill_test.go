package folder

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"understructure/app/killtest"
)

func TestMain(m *testing.M) {
	killtest.Main(m, func(dir string, n int) error { return put(dir, edition(n)...) })
}

// edition is what the n-th export writes; one file comes and goes.
func edition(n int) []File {
	files := []File{file("plan.json", filled("plan", n)), file("templates.pdf", filled("templates", n)), file("svg/A.svg", filled("A", n))}
	if n%2 == 0 {
		files = append(files, file("svg/B.svg", filled("B", n)))
	}
	return files
}

func filled(name string, n int) string {
	return fmt.Sprintf("%d\n%send of %s", n, strings.Repeat("a line of this file\n", 500), name)
}

// After every kill each file is whole, what the program did not make is untouched, and the next export
// brings the folder to what it should hold.
func TestKilledWhileExporting(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "templates")
	if err := os.MkdirAll(filepath.Join(dir, "svg"), 0o755); err != nil {
		t.Fatal(err)
	}
	mine := filepath.Join(dir, "svg", "mine.svg")
	if err := os.WriteFile(mine, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	next := 1
	for k := range killtest.Times(t) {
		safe := killtest.Kill(t, dir, next, uint64(k))
		for _, name := range []string{"plan.json", "templates.pdf", "svg/A.svg", "svg/B.svg"} {
			whole(t, k, filepath.Join(dir, name), name)
		}
		if text, _ := os.ReadFile(mine); string(text) != "mine" {
			t.Fatalf("kill %d: a file that is not the program's became %q", k, text)
		}
		next = safe + 2
		if err := put(dir, edition(next)...); err != nil {
			t.Fatalf("kill %d: the next export: %v", k, err)
		}
		holds(t, dir, expected(next)...)
		next++
	}
}

// expected is what the folder holds after an edition, as holds lists it.
func expected(n int) []string {
	out := []string{"plan.json " + filled("plan", n), "svg/A.svg " + filled("A", n)}
	if n%2 == 0 {
		out = append(out, "svg/B.svg "+filled("B", n))
	}
	return append(out, "svg/mine.svg mine", "templates.pdf "+filled("templates", n))
}

func whole(t *testing.T, k int, path, name string) {
	t.Helper()
	text, err := os.ReadFile(path)
	if os.IsNotExist(err) {
		return
	}
	var n int
	short := strings.TrimSuffix(filepath.Base(name), filepath.Ext(name))
	if _, scan := fmt.Sscan(string(text), &n); err != nil || scan != nil || string(text) != filled(short, n) {
		t.Fatalf("kill %d: %s is %d bytes that were never written whole (%v)", k, name, len(text), err)
	}
}
