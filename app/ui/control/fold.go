package control

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Fold is a part of a column that can be folded away behind its name.
type Fold struct {
	widget.BaseWidget
	OnFolded func(open bool)

	button  *widget.Button
	content fyne.CanvasObject
}

// NewFold returns a part that is open.
func NewFold(name string, content fyne.CanvasObject) *Fold {
	f := &Fold{OnFolded: func(bool) {}, content: content}
	f.button = widget.NewButtonWithIcon(name, theme.MenuDropDownIcon(), func() { f.Fold(f.Open()) })
	f.button.Importance = widget.LowImportance
	f.button.Alignment = widget.ButtonAlignLeading
	f.ExtendBaseWidget(f)
	return f
}

// Open reports whether its content is seen.
func (f *Fold) Open() bool { return f.content.Visible() }

// Fold folds the content away, or shows it.
func (f *Fold) Fold(away bool) {
	if away != f.Open() {
		return
	}
	icon := theme.MenuDropDownIcon()
	if away {
		icon = theme.MenuExpandIcon()
		f.content.Hide()
	} else {
		f.content.Show()
	}
	f.button.SetIcon(icon)
	f.Refresh()
	f.OnFolded(!away)
}

// CreateRenderer is for the toolkit.
func (f *Fold) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewVBox(f.button, f.content))
}
