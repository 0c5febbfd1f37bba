package window

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
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

// The space that presses a button is typed into the field that the button
// brought up: what is proposed there stays, until a letter is typed.
func TestTheSpaceThatOpenedADialogIsNotTyped(t *testing.T) {
	test.NewTempApp(t)
	e := newDialogEntry(func() {})
	w := test.NewTempWindow(t, e)
	e.SetText("demo.trip")
	w.Canvas().Focus(e)
	e.TypedShortcut(&fyne.ShortcutSelectAll{})
	e.TypedRune(' ')
	if e.Text != "demo.trip" {
		t.Errorf("the space took the proposed name away: %q", e.Text)
	}
	for _, letter := range "a b" {
		e.TypedRune(letter)
	}
	if e.Text != "a b" {
		t.Errorf("typed a b, there is %q", e.Text)
	}
}
