// Package localeenv gives the toolkit a language it can read where the environment names none,
// or names one with a modifier: it would complain on the terminal otherwise. It works by being imported.
// It does not change the language of anything else.
package localeenv

import (
	"os"
	"strings"
)

func init() {
	if name, value := plain(os.Getenv); name != "" {
		_ = os.Setenv(name, value) // at worst the toolkit complains
	}
}

// otherwise is the language of the program's own words.
const otherwise = "en_US.UTF-8"

// plain returns the variable that decides on the language and what it should say; no name when it is well.
func plain(env func(string) string) (name, value string) {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		value := env(name)
		if value == "" {
			continue
		}
		language, _, _ := strings.Cut(value, ".")
		language, _, modified := strings.Cut(language, "@")
		switch {
		case language == "C" || language == "POSIX":
			return name, otherwise
		case modified || strings.Contains(value, "@"):
			return name, language + ".UTF-8"
		}
		return "", ""
	}
	return "LANG", otherwise
}
