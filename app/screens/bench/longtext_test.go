package bench

import (
	"errors"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

func TestALongTextIsKeptWhenTheKeyboardLeaves(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light})
	kept, refuse := "", false
	l := NewLongText("", func(of, text string) error {
		if refuse {
			return errors.New("no")
		}
		kept = of + ": " + text
		return nil
	})
	other := widget.NewEntry()
	window := test.NewTempWindow(t, container.NewVBox(l, other))
	window.Resize(fyne.NewSize(300, 200))
	if window.Canvas().Focus(l); l.AcceptsTab() {
		t.Error("Tab does not leave it")
	}
	test.Type(l, "nobody's")
	window.Canvas().Focus(other)
	if kept != "" {
		t.Errorf("what belongs to nobody was kept: %q", kept)
	}
	l.ShowOf("a", "first")
	l.SetText("first and more")
	window.Canvas().Focus(l)
	window.Canvas().Focus(other)
	if kept != "a: first and more" {
		t.Errorf("kept %q", kept)
	}
	l.SetText("typed on")
	l.ShowOf("a", "first and more") // as after an edit elsewhere
	if l.Text != "typed on" {
		t.Errorf("what is being typed became %q", l.Text)
	}
	l.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if l.Text != "first and more" {
		t.Errorf("Escape gives %q", l.Text)
	}
	l.SetText("not to be had")
	if refuse = true; l.Commit() {
		t.Error("what was refused counts as kept")
	}
	if refuse = false; !l.Commit() || kept != "a: not to be had" {
		t.Errorf("tried again, kept is %q", kept)
	}
}
