package document

import (
	"crypto/sha256"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// Overtaken says that a file is no longer what this window read or wrote: somebody else has saved it.
type Overtaken struct{ Path string }

func (o *Overtaken) Error() string {
	return fmt.Sprintf("%s was changed by somebody else since it was opened here; saving would lose their changes", filepath.Base(o.Path))
}

// Save writes the record to its file, unless somebody else has changed that: then the error is an *Overtaken.
func (d *Document) Save() error {
	if now := stateOf(d.path); now != "" && d.state != "" && now != d.state {
		return &Overtaken{d.path}
	}
	return d.SaveAs(d.path)
}

// SaveAs writes the record to a file, which from then on is its file.
func (d *Document) SaveAs(path string) error {
	if err := d.rooms.Save(path, d.Record()); err != nil {
		return err
	}
	d.forgetCopy()
	moved := path != d.path
	d.path, d.title, d.state = path, "", stateOf(path)
	if moved {
		d.claim(false)
	}
	d.history.Mark()
	d.Changed()
	return nil
}

// state is the fingerprint of a file; "" for one that is not there.
type state string

func stateOf(path string) state {
	f, err := os.Open(path)
	if err != nil {
		return ""
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, io.LimitReader(f, mostRead)); err != nil {
		return ""
	}
	return state(h.Sum(nil))
}

// mostRead is more than any record has, bytes.
const mostRead = 16 << 20
