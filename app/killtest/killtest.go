// Package killtest lets a test write in a process of its own and kill that at a random moment, as a power
// cut would. It is for tests only.
// It does not know what is written.
package killtest

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"strconv"
	"testing"
	"time"
)

// child names, in the environment of the process that writes, where it writes.
const child = "KILLTEST_AT"

// Main runs the tests of a package, or, in the process that is to be killed, write(at, n) for n = from, from+1, …
// without end; n is reported once it is safely written.
func Main(m *testing.M, write func(at string, n int) error) {
	at := os.Getenv(child)
	if at == "" {
		os.Exit(m.Run())
	}
	from, _ := strconv.Atoi(os.Args[len(os.Args)-1])
	for n := from; ; n++ {
		if err := write(at, n); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		fmt.Println(n)
	}
}

// Times is how often to kill: KILLS=500 for a long test, else a few.
func Times(t *testing.T) int {
	text := os.Getenv("KILLS")
	if text == "" {
		return 12
	}
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatalf("KILLS=%q is not a number", text)
	}
	return n
}

// longest is the most that a process may live, beyond the first thing that it has written.
const longest = 40 * time.Millisecond

// Kill starts writing at a place, from a number on, kills the process at a moment that the k-th random number
// decides, and returns the last number that it reported as written.
func Kill(t *testing.T, at string, from int, k uint64) int {
	t.Helper()
	c := exec.Command(os.Args[0], strconv.Itoa(from))
	c.Env = append(os.Environ(), child+"="+at)
	c.Stderr = os.Stderr
	out, err := c.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	last := 0
	wait := time.Duration(rand.New(rand.NewPCG(1872, k)).Int64N(int64(longest)))
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if last == 0 {
			time.AfterFunc(wait, func() { _ = c.Process.Kill() }) // it may have died by itself
		}
		if last, err = strconv.Atoi(lines.Text()); err != nil {
			t.Fatalf("the process that writes says %q", lines.Text())
		}
	}
	if err := c.Wait(); last == 0 {
		t.Fatalf("nothing was written before the process ended: %v", err)
	}
	return last
}
