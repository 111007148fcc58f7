//go:build !unix

package keep

// Hold always holds: what this system offers instead is not used yet.
func Hold(string) (release func(), held bool) { return func() {}, true }
