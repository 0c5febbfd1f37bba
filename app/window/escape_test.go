package window

import (
	"testing"

	"fyne.io/fyne/v2"
)

func TestEscapeClosesTheDialogOnTop(t *testing.T) {
	w, _ := openDemo(t)
	canvas := w.window.Canvas()
	escape := func() {
		event := &fyne.KeyEvent{Name: fyne.KeyEscape}
		if on := canvas.Focused(); on != nil {
			on.TypedKey(event)
			return
		}
		canvas.OnTypedKey()(event)
	}
	for name, show := range map[string]func(){
		"cautions": w.showCautions, "save a copy": w.saveCopy, "actions": w.findAction,
	} {
		show()
		if canvas.Overlays().Top() == nil {
			t.Fatalf("%s: no dialog is shown", name)
		}
		escape()
		if canvas.Overlays().Top() != nil {
			t.Errorf("%s: Escape leaves it open", name)
		}
	}
}
