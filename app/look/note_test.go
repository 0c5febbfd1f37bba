package look

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

func TestANoteWrapsAndFramesAllergies(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(Theme{Variant: Light})
	n := NewNote()
	window := test.NewTempWindow(t, n)
	window.Resize(fyne.NewSize(160, 300))
	n.Set("one line", Quiet, false)
	low := n.MinSize().Height
	n.Set("many words that need several lines in so narrow a window as this one", Quiet, false)
	if n.MinSize().Height <= low {
		t.Errorf("a long note is %v high, a short one %v", n.MinSize().Height, low)
	}
	if n.frame.Visible() {
		t.Error("a note without an allergy has the double frame")
	}
	n.Set("Contains milk.", Quiet, true)
	if !n.frame.Visible() || n.plain.Visible() {
		t.Error("an allergy has no double frame")
	}
	if tone := n.framed.Tone; tone != Plum {
		t.Errorf("an allergy is %s", tone)
	}
}
