package judge

import (
	"regexp"
	"strconv"
	"testing"
)

var figure = regexp.MustCompile(`(?m)([A-Z][A-Za-z0-9 ]+?) *[:=] *(-?[0-9.]+)`)

// Mesh has admesh look for what is to be mended in an STL and returns its figures by their names, as found at first.
func Mesh(t testing.TB, stl string) map[string]float64 {
	t.Helper()
	figures := map[string]float64{}
	for _, m := range figure.FindAllStringSubmatch(string(Run(t, "admesh", stl)), -1) {
		if _, twice := figures[m[1]]; !twice {
			figures[m[1]], _ = strconv.ParseFloat(m[2], 64)
		}
	}
	return figures
}
