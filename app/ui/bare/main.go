//go:build cgo

// Command bare opens a window with one word in it, the least that the toolkit can do. The start of the program's
// own window is timed against it; see .ci/start.
package main

import (
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/widget"

	_ "understructure/app/ui/localeenv" // before the toolkit looks at the language
)

func main() {
	w := app.NewWithID("bare").NewWindow("Bare")
	w.SetContent(widget.NewLabel("bare"))
	w.ShowAndRun()
}
