package ui

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"

	"understructure/app/document"
	"understructure/app/ui/look"
)

// menus are the main menu and those of its items that change.
type menus struct {
	main             *fyne.MainMenu
	save, undo, redo *fyne.MenuItem
	recent           *fyne.MenuItem
	looks            map[look.Appearance]*fyne.MenuItem
}

// item makes an item that does nothing while something is asked: its keys reach the menu even then.
func (w *Window) item(label string, shortcut fyne.Shortcut, do func()) *fyne.MenuItem {
	m := fyne.NewMenuItem(label, func() {
		if w.win.Canvas().Overlays().Top() == nil {
			do()
		}
	})
	m.Shortcut = shortcut
	return m
}

func key(k fyne.KeyName, more fyne.KeyModifier) fyne.Shortcut {
	return &desktop.CustomShortcut{KeyName: k, Modifier: fyne.KeyModifierShortcutDefault | more}
}

func newMenus(w *Window) *menus {
	m := &menus{looks: map[look.Appearance]*fyne.MenuItem{}}
	m.save = w.item(lang.L("Save"), key(fyne.KeyS, 0), w.save)
	m.recent = newRecentItem(w)
	m.undo = w.item(lang.L("Undo"), &fyne.ShortcutUndo{}, w.doc.Undo)
	m.redo = w.item(lang.L("Redo"), &fyne.ShortcutRedo{}, w.doc.Redo)
	quit := w.item(lang.L("Quit"), key(fyne.KeyQ, 0), func() { w.leave(w.close) })
	quit.IsQuit = true
	about := fyne.NewMenuItem(lang.L("About Understructure"), w.about)
	m.main = fyne.NewMainMenu(
		fyne.NewMenu(lang.L("File"),
			w.item(lang.L("New"), key(fyne.KeyN, 0), func() { w.leave(w.blank) }),
			w.item(lang.L("Open…"), key(fyne.KeyO, 0), func() { w.leave(w.chooseFile) }), m.recent, w.demos(),
			fyne.NewMenuItemSeparator(),
			m.save, w.item(lang.L("Save as…"), key(fyne.KeyS, fyne.KeyModifierShift), func() { w.saveAs(func() {}) }),
			fyne.NewMenuItemSeparator(),
			w.item(lang.L("Export templates…"), key(fyne.KeyE, 0), w.export),
			w.item(lang.L("Print templates…"), key(fyne.KeyP, 0), func() { w.print(nil) }),
			w.item(lang.L("Measuring sheet…"), nil, w.measuringSheet),
			w.item(lang.L("Condition sheet…"), nil, w.conditionSheet),
			w.item(lang.L("Storage sheet…"), nil, w.storageSheet),
			fyne.NewMenuItemSeparator(),
			quit),
		fyne.NewMenu(lang.L("Edit"), m.undo, m.redo),
		fyne.NewMenu(lang.L("Go"), w.placeItems()...),
		fyne.NewMenu(lang.L("View"), m.lookItems(w)...),
		fyne.NewMenu(lang.L("Help"), fyne.NewMenuItem(lang.L("Licences…"), w.licences), about),
	)
	return m
}

func (w *Window) demos() *fyne.MenuItem {
	var items []*fyne.MenuItem
	for _, d := range w.options.Demos {
		items = append(items, fyne.NewMenuItem(d.Title, func() { w.leave(func() { w.start(d) }) }))
	}
	m := fyne.NewMenuItem(lang.L("Open a demonstration"), nil)
	m.ChildMenu = fyne.NewMenu("", items...)
	return m
}

// placeItems lead to the places; their keys are the numbers.
func (w *Window) placeItems() []*fyne.MenuItem {
	var items []*fyne.MenuItem
	for i, p := range w.places.all {
		number := fyne.KeyName(fmt.Sprint(i + 1))
		items = append(items, w.item(lang.L(p.name()), key(number, 0), func() { w.places.choose(i) }))
	}
	return items
}

func (m *menus) lookItems(w *Window) []*fyne.MenuItem {
	var items []*fyne.MenuItem
	for _, a := range []look.Appearance{look.AsDesktop, look.Light, look.Dark} {
		label := map[look.Appearance]string{look.AsDesktop: lang.L("Light or dark as the desktop"), look.Light: lang.L("Light"), look.Dark: lang.L("Dark")}[a]
		m.looks[a] = fyne.NewMenuItem(label, func() { w.setAppearance(a) })
		m.looks[a].Checked = a == w.appearance()
		items = append(items, m.looks[a])
	}
	return items
}

// show brings the items that depend on the document up to date; the menu is redrawn only when one changed.
func (m *menus) show(d *document.Document) {
	undoes, canUndo := d.Undoes()
	redoes, canRedo := d.Redoes()
	changed := become(m.undo, lang.L("Undo"), undoes, canUndo)
	changed = become(m.redo, lang.L("Redo"), redoes, canRedo) || changed
	if changed {
		m.main.Refresh()
	}
}

func become(m *fyne.MenuItem, verb, name string, enabled bool) bool {
	label := verb
	if enabled {
		label += " " + lang.L(name)
	}
	changed := m.Label != label || m.Disabled == enabled
	m.Label, m.Disabled = label, !enabled
	return changed
}

const appearanceKey = "appearance"

func (w *Window) appearance() look.Appearance {
	return look.Appearance(w.app.Preferences().StringWithFallback(appearanceKey, string(look.AsDesktop)))
}

func (w *Window) setAppearance(a look.Appearance) {
	w.app.Preferences().SetString(appearanceKey, string(a))
	for other, m := range w.menu.looks {
		m.Checked = other == a
	}
	w.menu.main.Refresh()
	w.app.Settings().SetTheme(look.New(a))
}
