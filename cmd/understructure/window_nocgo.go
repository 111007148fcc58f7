//go:build !cgo

package main

// openWindow says that there is none in a build without a C compiler.
func openWindow(string) error {
	return exit{noWindow, "this build has no window; its verbs are templates, fit and measuring-sheet (see --help)"}
}
