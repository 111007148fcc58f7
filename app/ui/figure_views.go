package ui

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"understructure/app/ui/picture"
	"understructure/geometry/unit"
	"understructure/geometry/view"
)

// What the picture shows.
func mountShown() string     { return lang.L("Mount") }
func clearanceShown() string { return lang.L("Clearance") }
func mapShown() string       { return lang.L("Map") }

// The views that are not from one side.
func bothViews() string   { return lang.L("Front and side") }
func turningView() string { return lang.L("Turning") }

// standpoints are the views that show the figure from one side.
func standpoints() map[string]unit.Angle {
	return map[string]unit.Angle{
		lang.L("Front"): view.Front, lang.L("Three-quarter"): view.ThreeQuarter, lang.L("Left"): view.LeftSide, lang.L("Back"): view.Back,
	}
}

// look shows what was chosen: the mount, in its own colours or those of the clearance, or the map, and the legend
// wherever there is something to explain.
func (f *figure) look() {
	f.elevation.Hide()
	f.unrolled.Hide()
	f.legend.Show()
	mode := picture.Clearance
	switch f.shows.Chosen() {
	case mapShown():
		f.unrolled.Show()
	case mountShown():
		mode = picture.Plain
		f.legend.Hide()
		fallthrough
	default:
		f.elevation.Show()
	}
	f.elevation.Paint(mode)
	f.section.Paint(mode)
	f.markView()
}

// lookFrom goes to a view. The map has none: there it leads to the clearance.
func (f *figure) lookFrom(word string) {
	if f.shows.Chosen() == mapShown() {
		f.shows.Choose(clearanceShown())
		f.look()
	}
	switch word {
	case bothViews():
		f.elevation.LookBoth()
	case turningView():
		f.elevation.Start()
	default:
		f.elevation.Look(standpoints()[word])
	}
	f.markView()
	if c := fyne.CurrentApp().Driver().CanvasForObject(f.elevation); c != nil {
		c.Focus(f.elevation)
	}
}

// markView marks the view in which the figure stands, if it has a name.
func (f *figure) markView() { f.views.Choose(f.viewChosen()) }

func (f *figure) viewChosen() string {
	yaws := f.elevation.Yaws()
	switch {
	case !f.elevation.Visible():
		return ""
	case f.elevation.Going():
		return turningView()
	case len(yaws) > 1:
		return bothViews()
	}
	for word, yaw := range standpoints() {
		if yaw == yaws[0] {
			return word
		}
	}
	return ""
}

// nearestView is the side from which a figure is looked at, and that comes nearest to an angle.
func nearestView(to unit.Angle) unit.Angle {
	best, least := view.Front, math.Inf(1)
	for _, yaw := range []unit.Angle{view.Front, view.ThreeQuarter, view.LeftSide, view.Back, view.RightSide} {
		if off := math.Abs(math.Remainder(float64(to-yaw), 2*math.Pi)); off < least {
			best, least = yaw, off
		}
	}
	return best
}
