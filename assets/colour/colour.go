// Package colour holds the profile that says which colours are meant on paper: sRGB (IEC 61966-2-1:1999), as the
// International Color Consortium publishes it (LICENSE.txt).
// It does not convert colours.
package colour

import _ "embed"

// SRGB is the profile sRGB2014, of version 2 of the ICC's format.
//
//go:embed sRGB2014.icc
var SRGB []byte
