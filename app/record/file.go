package record

import (
	"fmt"
	"io"
	"os"

	"understructure/app/keep"
)

// Load reads the record in a file. The error names the file; behind it stands the *Refusal.
func Load(path string) (Record, error) { return load(path, Decode) }

// LoadDraft is Load for work in progress: what every mount needs may still be missing.
func LoadDraft(path string) (Record, error) { return load(path, DecodeDraft) }

func load(path string, read func(io.Reader) (Record, error)) (Record, error) {
	f, err := os.Open(path)
	if err != nil {
		return Record{}, err
	}
	defer f.Close()
	r, err := read(f)
	if err != nil {
		return Record{}, fmt.Errorf("%s: %w", path, err)
	}
	return r, nil
}

// Save writes the record to a file: whole, or not at all.
func Save(path string, r Record) error {
	return keep.File(path, func(w io.Writer) error { return Encode(w, r) })
}

// SaveDraft is Save for work in progress, such as a safety copy.
func SaveDraft(path string, r Record) error {
	return keep.File(path, func(w io.Writer) error { return EncodeDraft(w, r) })
}
