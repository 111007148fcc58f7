package sleeve

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
)

func table(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("../../testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// ansurMean is a mean of testdata/ansur.
func ansurMean(t *testing.T, who, measure string) float64 {
	t.Helper()
	for _, row := range table(t, "ansur/summary.csv") {
		if row[0] == who && row[1] == measure && row[2] == "mean" {
			return number(t, row[4])
		}
	}
	t.Fatalf("no mean of %s of %s", measure, who)
	return 0
}

// forearmShare is where the mean forearm lies between mean wrist and mean upper arm, all 507 adults of testdata/body.
func forearmShare(t *testing.T) float64 {
	t.Helper()
	rows := table(t, "body/body.csv")
	sum := map[string]float64{}
	for _, row := range rows[1:] {
		for i, name := range rows[0] {
			sum[name] += number(t, row[i])
		}
	}
	return (sum["ForearmG"] - sum["WristG"]) / (sum["BicepG"] - sum["WristG"])
}
