package assets

import _ "embed"

// Icon is the program's icon, 256 pixels square, drawn from icon.svg.
//
//go:embed icon.png
var Icon []byte
