package batch

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// Item is a record file, and the name under which what is made from it is kept.
type Item struct{ Path, Name string }

// Extension is how the name of a record ends.
const Extension = ".json"

// Find lists the records that paths name: files as they are given, and of a folder every file that ends
// in .json and is not hidden, by name. A file that is not there is listed, so that it fails alone; a folder without
// records, and two records that would be kept under one name, are errors.
func Find(paths []string) ([]Item, error) {
	var items []Item
	for _, path := range paths {
		if info, err := os.Stat(path); err != nil || !info.IsDir() {
			items = append(items, itemOf(path))
			continue
		}
		inside, err := inFolder(path)
		if err != nil {
			return nil, err
		}
		items = append(items, inside...)
	}
	return items, distinct(items)
}

func itemOf(path string) Item {
	base := filepath.Base(path)
	return Item{path, SafeName(strings.TrimSuffix(base, filepath.Ext(base)))}
}

func inFolder(dir string) ([]Item, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	var items []Item
	for _, e := range entries {
		name := e.Name()
		if !e.IsDir() && !strings.HasPrefix(name, ".") && strings.EqualFold(filepath.Ext(name), Extension) {
			items = append(items, itemOf(filepath.Join(dir, name)))
		}
	}
	if len(items) == 0 {
		return nil, fmt.Errorf("%s holds no records (files that end in %s)", dir, Extension)
	}
	return items, nil
}

// distinct refuses names that one file system would take for the same.
func distinct(items []Item) error {
	first := map[string]string{}
	for _, it := range items {
		name := strings.ToLower(it.Name)
		if other, twice := first[name]; twice {
			return fmt.Errorf("%s and %s would be kept under one name, %s; please rename one", other, it.Path, it.Name)
		}
		first[name] = it.Path
	}
	return nil
}
