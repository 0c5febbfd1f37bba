package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
)

// dividerStep is how far a divider goes at a time, of the whole.
const dividerStep = 0.05

// moveDivider moves the outermost divider of the screen that parts its sides,
// or what is above from what is below: the toolkit moves them by mouse alone.
func (w *Workbench) moveDivider(sides bool, by float64) {
	if w.shown < 0 {
		return
	}
	split := divider(w.screens[w.shown].Content(), sides)
	if split == nil {
		w.say(lang.L("Nothing on this screen is parted that way."))
		return
	}
	split.SetOffset(max(0, min(split.Offset+by, 1)))
}

// divider finds the outermost divider of a kind that is seen.
func divider(object fyne.CanvasObject, sides bool) *container.Split {
	if !object.Visible() {
		return nil
	}
	var inner []fyne.CanvasObject
	switch o := object.(type) {
	case *container.Split:
		if o.Horizontal == sides {
			return o
		}
		inner = []fyne.CanvasObject{o.Leading, o.Trailing}
	case *bench.Tabs:
		inner = []fyne.CanvasObject{o.Selected().Content}
	case *fyne.Container:
		inner = o.Objects
	}
	for _, one := range inner {
		if found := divider(one, sides); found != nil {
			return found
		}
	}
	return nil
}
