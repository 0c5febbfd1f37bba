package window

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"sumpter/app/look"
)

func TestAWordOfTheNavigationLeavesRoomForItsCount(t *testing.T) {
	for _, scale := range []float32{1, 1.5} {
		test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light, Scale: scale})
		e := newEntry("Packing night", nil)
		e.set(true, 400)
		window := test.NewTempWindow(t, e)
		window.SetPadded(false)
		window.Resize(e.MinSize())
		if end := e.text.Position().X + e.text.MinSize().Width; end > e.count.Position().X {
			t.Errorf("scale %v: the word ends at %v, the count begins at %v", scale, end, e.count.Position().X)
		}
	}
}
