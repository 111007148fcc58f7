// Package words holds the window's words in other languages than English, which is the key of each. A
// language is a file of its own; the toolkit chooses it by the desktop's.
// It does not know where a word stands.
package words

import (
	"embed"

	"fyne.io/fyne/v2/lang"
)

//go:embed tr/*.json
var files embed.FS

// Load hands the languages to the toolkit, once, before the first window.
func Load() error { return lang.AddTranslationsFS(files, "tr") }
