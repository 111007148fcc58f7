package assets

import _ "embed"

// Licences are the terms of every work of others that the program is built with; cmd/licences writes them.
//
//go:embed licences.txt
var Licences string
