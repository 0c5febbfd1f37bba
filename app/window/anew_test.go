package window

import (
	"testing"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Other units and another size of text need other headings and widths: the
// screens are made anew, and the leader stays where they were.
func TestUnitsAndSizeOfTextMakeTheScreensAnew(t *testing.T) {
	w, _ := openDemo(t)
	for _, c := range []struct {
		name   string
		change func()
	}{
		{"units", func() {
			if err := w.document.Edit("change the units", func(on *trip.Trip) error { on.Units = units.US; return nil }); err != nil {
				t.Fatal(err)
			}
		}},
		{"size of text", func() { w.changeScale(scaleStep) }},
	} {
		shown, before := w.shown, w.screens[w.shown]
		c.change()
		if w.screens[w.shown] == before || w.shown != shown {
			t.Errorf("%s: screen %d is shown, was %d; made anew: %v", c.name, w.shown, shown, w.screens[w.shown] != before)
		}
	}
}
