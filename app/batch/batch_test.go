package batch

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"unicode/utf8"
)

func items(n int) []Item {
	var out []Item
	for i := range n {
		out = append(out, Item{fmt.Sprintf("in/%d.json", i), fmt.Sprint(i)})
	}
	return out
}

func TestOneThatFailsDoesNotStopTheRest(t *testing.T) {
	broken := errors.New("broken")
	var heard []int
	out := Run(context.Background(), items(20), func(_ context.Context, it Item) (Made, error) {
		switch it.Name {
		case "3":
			return Made{}, broken
		case "7":
			panic("a fault")
		}
		return Made{Pieces: len(it.Path), Strains: it.Name == "5"}, nil
	}, func(done, failed int) { heard = append(heard, done) })
	for i, o := range out {
		switch {
		case o.Item != items(20)[i]:
			t.Errorf("outcome %d is of %s", i, o.Path)
		case i == 3:
			if !errors.Is(o.Err, broken) {
				t.Errorf("3: %v", o.Err)
			}
		case i == 7:
			if o.Err == nil || !strings.Contains(o.Err.Error(), "in/7.json: a fault of this program: a fault") {
				t.Errorf("7: %v", o.Err)
			}
		case o.Err != nil || o.Pieces != len(o.Path) || o.Strains != (i == 5):
			t.Errorf("%d: %+v", i, o)
		}
	}
	if len(heard) != 20 || !slices.IsSorted(heard) || heard[19] != 20 {
		t.Errorf("heard %v", heard)
	}
}

func TestNothingIsBegunAfterTheWorkIsCalledOff(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	var begun atomic.Int64
	out := Run(ctx, items(1000), func(ctx context.Context, it Item) (Made, error) {
		switch n := begun.Add(1); {
		case n == 5:
			cancel()
		case n > 5:
			<-ctx.Done() // whoever is at work meanwhile is not quicker than the call
		}
		return Made{}, ctx.Err()
	}, func(int, int) {})
	if n := begun.Load(); n > int64(5+runtime.GOMAXPROCS(0)) {
		t.Errorf("%d were begun", n)
	}
	if len(out) != 1000 || !errors.Is(out[999].Err, context.Canceled) {
		t.Errorf("%d outcomes, the last %+v", len(out), out[len(out)-1])
	}
}

func TestNoMoreAtATimeThanWorkers(t *testing.T) {
	var now, most atomic.Int64
	Each(context.Background(), 200, 3, func(int) int {
		n := now.Add(1)
		for m := most.Load(); n > m && !most.CompareAndSwap(m, n); m = most.Load() {
		}
		runtime.Gosched()
		now.Add(-1)
		return 0
	}, func(int, int) {})
	if m := most.Load(); m > 3 || m < 1 {
		t.Errorf("%d at a time", m)
	}
}

// A thousand records, each of which needs 8 MB while it is worked on: what stays is not a part of that.
func TestMemoryStaysFlat(t *testing.T) {
	var before, now runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	most := uint64(0)
	Run(context.Background(), items(1000), func(context.Context, Item) (Made, error) {
		b := make([]byte, 8<<20)
		for i := range 1000 {
			b[i*4096] = 1
		}
		return Made{Pieces: len(b)}, nil
	}, func(done, _ int) {
		if done%100 == 0 {
			runtime.GC()
			runtime.ReadMemStats(&now)
			most = max(most, now.HeapAlloc)
		}
	})
	if limit := before.HeapAlloc + uint64(runtime.GOMAXPROCS(0)+2)*8<<20; most > limit {
		t.Errorf("%d MB in use, more than the workers need", most>>20)
	}
}

func TestFind(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"b.json", "a.JSON", ".hidden.json", "notes.txt", "sub/c.json"} {
		path := filepath.Join(dir, name)
		if err := errors.Join(os.MkdirAll(filepath.Dir(path), 0o755), os.WriteFile(path, nil, 0o600)); err != nil {
			t.Fatal(err)
		}
	}
	in := func(name string) string { return filepath.Join(dir, name) }
	got, err := Find([]string{in("sub"), dir, "nowhere.json"})
	want := []Item{{in("sub/c.json"), "c"}, {in("a.JSON"), "a"}, {in("b.json"), "b"}, {"nowhere.json", "nowhere"}}
	if err != nil || !slices.Equal(got, want) {
		t.Errorf("%v, %v; want %v", got, err, want)
	}
	for paths, message := range map[string]string{
		in("b.json") + " " + dir:             "would be kept under one name, b; please rename one",
		"x/Dress.json y/dress.json":          "x/Dress.json and y/dress.json would be kept under one name",
		filepath.Dir(in("sub/c.json")) + "/": "",
	} {
		_, err := Find(strings.Fields(paths))
		if (err == nil) != (message == "") || err != nil && !strings.Contains(err.Error(), message) {
			t.Errorf("%s: %v", paths, err)
		}
	}
	empty := t.TempDir()
	if _, err := Find([]string{empty}); err == nil || !strings.Contains(err.Error(), "holds no records") {
		t.Errorf("an empty folder: %v", err)
	}
}

func TestSafeName(t *testing.T) {
	for text, want := range map[string]string{
		"T.1872-4": "T.1872-4", "Kleid grün": "Kleid_grün", "服": "服", "": Unnamed, "...": Unnamed, "   ": Unnamed, "/": Unnamed,
		"../../etc/passwd": "_.._etc_passwd", `C:\x`: "C__x", "a\nb\x1b[2J": "a_b__2J", "CON": "_CON", "nul.txt": "_nul.txt", "-rf": "rf",
		"$(reboot);`x`": "__reboot___x_", "x.": "x", "\xff": Unnamed, "a\u202eb": "a_b", strings.Repeat("ü", 80): strings.Repeat("ü", 50),
	} {
		if got := SafeName(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}

func FuzzSafeName(f *testing.F) {
	for _, s := range []string{"", "con." + strings.Repeat("x", 120), "../..", "a/b\\c:d", strings.Repeat("ü.", 60)} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		name := SafeName(s)
		if name == "" || len(name) > longest || !utf8.ValidString(name) || strings.ContainsAny(name, "/\\:*?\"<>| \n\x00$`;&'()") || !filepath.IsLocal(name) ||
			strings.HasPrefix(name, ".") || strings.HasPrefix(name, "-") || strings.HasSuffix(name, ".") {
			t.Errorf("%q becomes %q", s, name)
		}
		if again := SafeName(name); again != name {
			t.Errorf("%q becomes %q and then %q", s, name, again)
		}
	})
}
