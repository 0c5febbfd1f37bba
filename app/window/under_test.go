package window

import (
	"testing"

	"fyne.io/fyne/v2"

	"sumpter/domain/trip"
)

// press does what the key of the bar does.
func (w *Workbench) press(t *testing.T, shortcut fyne.Shortcut) {
	t.Helper()
	for _, menu := range w.window.MainMenu().Items {
		for _, item := range menu.Items {
			if item.Shortcut != nil && item.Shortcut.ShortcutName() == shortcut.ShortcutName() {
				item.Action()
				return
			}
		}
	}
	t.Fatalf("no action has the key %s", shortcut.ShortcutName())
}

func TestNoKeyOfTheBarReachesTheScreenUnderADialog(t *testing.T) {
	w, _ := openDemo(t)
	canvas := w.window.Canvas()
	w.press(t, control(fyne.Key2))
	if w.shown != 1 {
		t.Fatalf("screen %d is shown", w.shown)
	}
	if err := w.document.Edit("x", func(t *trip.Trip) error { t.Title = "Other"; return nil }); err != nil {
		t.Fatal(err)
	}
	for name, show := range map[string]func(){"cautions": w.showCautions, "save a copy": w.saveCopy, "actions": w.findAction} {
		show()
		over := len(canvas.Overlays().List())
		for _, key := range []fyne.Shortcut{control(fyne.Key3), control(fyne.KeyE), control(fyne.KeyG), control(fyne.KeyW), control(fyne.KeyK), &fyne.ShortcutUndo{}} {
			w.press(t, key)
		}
		if w.shown != 1 || w.document == nil || w.seesFindings() || w.document.UndoName() != "x" || len(canvas.Overlays().List()) != over {
			t.Errorf("under %s: screen %d, findings %v, %d dialogs", name, w.shown, w.seesFindings(), len(canvas.Overlays().List()))
		}
		canvas.Overlays().Top().Hide()
	}
	w.press(t, control(fyne.Key3))
	if w.shown != 2 {
		t.Error("with all dialogs closed the key does nothing")
	}
}
