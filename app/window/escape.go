package window

import (
	"fyne.io/fyne/v2"

	"sumpter/app/screens/bench"
)

// leaveByEscape closes the dialog on top with Escape while nothing in it has
// the keyboard, which the toolkit leaves to the program.
func (w *Workbench) leaveByEscape() {
	canvas := w.window.Canvas()
	canvas.SetOnTypedKey(func(event *fyne.KeyEvent) { bench.LeaveByEscape(canvas, event) })
}
