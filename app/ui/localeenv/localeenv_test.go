package localeenv

import "testing"

func TestPlain(t *testing.T) {
	for _, c := range []struct{ lcAll, lang, name, value string }{
		{"", "", "LANG", "en_US.UTF-8"},
		{"", "C", "LANG", "en_US.UTF-8"},
		{"", "C.UTF-8", "LANG", "en_US.UTF-8"},
		{"POSIX", "de_DE.UTF-8", "LC_ALL", "en_US.UTF-8"},
		{"", "de_DE.UTF-8@euro", "LANG", "de_DE.UTF-8"},
		{"", "sr_RS@latin", "LANG", "sr_RS.UTF-8"},
		{"", "de_DE.UTF-8", "", ""},
		{"fr_FR.UTF-8", "C", "", ""},
	} {
		name, value := plain(func(n string) string { return map[string]string{"LC_ALL": c.lcAll, "LANG": c.lang}[n] })
		if name != c.name || value != c.value {
			t.Errorf("LC_ALL=%q LANG=%q: set %q to %q, want %q to %q", c.lcAll, c.lang, name, value, c.name, c.value)
		}
	}
}
