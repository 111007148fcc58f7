package ui

import (
	"path/filepath"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
)

// Recent files are kept in the preferences, the newest first.
const (
	recentKey  = "recent files"
	mostRecent = 8
)

func (w *Window) recent() []string { return w.app.Preferences().StringList(recentKey) }

// remember puts a file at the head of the recent ones.
func (w *Window) remember(path string) {
	path, err := filepath.Abs(path)
	if err != nil {
		return // a file whose place is not known cannot be offered again
	}
	files := slices.DeleteFunc(w.recent(), func(p string) bool { return p == path })
	files = append([]string{path}, files...)
	w.app.Preferences().SetStringList(recentKey, files[:min(len(files), mostRecent)])
	w.menu.showRecent(w)
}

// forget takes a file that can no longer be opened from the recent ones.
func (w *Window) forget(path string) {
	w.app.Preferences().SetStringList(recentKey, slices.DeleteFunc(w.recent(), func(p string) bool { return p == path }))
	w.menu.showRecent(w)
}

// recentItems open the recent files. Two of one name are told apart by their folders.
func (w *Window) recentItems() []*fyne.MenuItem {
	var items []*fyne.MenuItem
	for _, path := range w.recent() {
		label := filepath.Base(path) + " – " + filepath.Dir(path)
		items = append(items, w.item(label, nil, func() { w.leave(func() { w.openRecent(path) }) }))
	}
	return items
}

func (w *Window) openRecent(path string) {
	if err := w.open(path); err != nil {
		w.forget(path)
		w.failed(err)
	}
}

// showRecent brings the menu to the recent files.
func (m *menus) showRecent(w *Window) {
	m.recent.ChildMenu.Items = w.recentItems()
	m.recent.Disabled = len(m.recent.ChildMenu.Items) == 0
	m.main.Refresh()
}

func newRecentItem(w *Window) *fyne.MenuItem {
	i := fyne.NewMenuItem(lang.L("Open recent"), nil)
	i.ChildMenu = fyne.NewMenu("", w.recentItems()...)
	i.Disabled = len(i.ChildMenu.Items) == 0
	return i
}
