// Package assets holds what the program carries inside itself: the records that it shows
// before anyone has measured anything. All of them are invented.
// It does not read them; package record does.
package assets

import "embed"

// Demos holds the demonstration records.
//
//go:embed demo-*.json
var Demos embed.FS

// First is the name of the record that opens where none is named.
const First = "demo-1872-bodice.json"
