package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"understructure/patterns/judge"
)

// Both papers are two pages of A4, with the words in them that a reader looks for; the condition sheet needs no record, or one in which nothing is measured yet.
func TestThePapersForTheStoreRoom(t *testing.T) {
	draft := filepath.Join(t.TempDir(), "draft.json")
	if err := os.WriteFile(draft, []byte(`{"understructure": 1, "unit": "cm", "object": {"number": "1", "title": "not measured yet", "wearer": "man"}}`), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ args, says string }{
		{"condition", "Condition of a garment"},
		{"condition --wearer child", "object number"},
		{"condition " + draft, "not measured yet"},
		{"condition " + demo, "Day dress in two pieces"},
		{"storage " + demo, "Fastened and lying flat"},
	} {
		path := filepath.Join(t.TempDir(), "paper.pdf")
		if code, _, errors := truly(append(strings.Fields(c.args), "--to", path)...); code != done {
			t.Fatalf("%s: exit %d: %s", c.args, code, errors)
		}
		if info := string(judge.Run(t, "pdfinfo", path)); !strings.Contains(info, "(A4)") || !strings.Contains(info, "Pages:           2\n") {
			t.Errorf("%s: %s", c.args, info)
		}
		if text := string(judge.Run(t, "pdftotext", path, "-")); !strings.Contains(text, c.says) {
			t.Errorf("%s: %q is not in the paper", c.args, c.says)
		}
	}
}

func TestThePapersForTheStoreRoomRefuse(t *testing.T) {
	for args, says := range map[string]string{
		"storage --to x.pdf":                "<record>",
		"storage " + demo:                   "--to",
		"storage no.json --to x.pdf":        "no.json",
		"condition no.json --to x.pdf":      "no.json",
		"condition --wearer dog --to x.pdf": "--wearer",
		"condition":                         "--to",
	} {
		if code, _, errors := truly(strings.Fields(args)...); code != refused || !strings.Contains(errors, says) {
			t.Errorf("%s: exit %d: %s", args, code, errors)
		}
	}
}
