package main

import (
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"
)

// run starts a reference and returns the words of the line of its answer that begins with what.
func (w *work) run(what, program string, args ...string) ([]float64, error) {
	answer, err := exec.Command(filepath.Join(w.folder, program), args...).Output()
	if err != nil {
		return nil, err
	}
	for line := range strings.Lines(string(answer)) {
		rest, ok := strings.CutPrefix(line, what+" ")
		if !ok {
			continue
		}
		var values []float64
		for _, word := range strings.Fields(rest) {
			var v float64
			if _, err := fmt.Sscan(word, &v); err != nil {
				return nil, fmt.Errorf("%s says %q", program, strings.TrimSpace(line))
			}
			values = append(values, v)
		}
		if len(values) < 2 {
			return nil, fmt.Errorf("%s says %q", program, strings.TrimSpace(line))
		}
		return values, nil
	}
	return nil, fmt.Errorf("%s says nothing of %s", program, what)
}

func (w *work) input(name string) string { return filepath.Join(w.folder, name) }

func (w *work) geos(what string) func() (float64, error) {
	return func() (float64, error) {
		v, err := w.run(what, "geos", w.input("sections.txt"), "5")
		if err != nil {
			return 0, err
		}
		return v[0], nil
	}
}

func (w *work) cgal(what string) func() (float64, error) {
	return func() (float64, error) {
		v, err := w.run(what, "cgal", w.input("panel.off"))
		if err != nil {
			return 0, err
		}
		if len(v) == 3 {
			w.note("Strain of the panel: CGAL %s greatest %.1f %%, 95 %% of the area under %.2f %%", strings.ToUpper(what), 100*v[1], 100*v[2])
		}
		return v[0], nil
	}
}

func (w *work) cairo() (float64, error) {
	v, err := w.run("pdf", "cairo", w.input("outlines.txt"), w.input("outlines.pdf"))
	if err != nil {
		return 0, err
	}
	w.note("PDF: Cairo %.1f MB", v[1]/1e6)
	return v[0], nil
}
