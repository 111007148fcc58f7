package main

import (
	"fmt"

	"understructure/assets"
)

type showLicences struct{}

// Run prints the terms of every work of others that the program is built with.
func (showLicences) Run(s surroundings) error {
	_, err := fmt.Fprint(s.out, assets.Licences)
	return err
}
