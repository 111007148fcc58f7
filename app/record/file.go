package record

import (
	"fmt"
	"io"
	"os"

	"understructure/app/keep"
)

// Load reads the record in a file. The error names the file; behind it stands the *Refusal.
func Load(path string) (Record, error) {
	f, err := os.Open(path)
	if err != nil {
		return Record{}, err
	}
	defer f.Close()
	r, err := Decode(f)
	if err != nil {
		return Record{}, fmt.Errorf("%s: %w", path, err)
	}
	return r, nil
}

// Save writes the record to a file: whole, or not at all.
func Save(path string, r Record) error {
	return keep.File(path, func(w io.Writer) error { return Encode(w, r) })
}
