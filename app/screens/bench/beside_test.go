package bench

import (
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

func TestDetailsGetTheirShareAndNoMoreThanTheyUse(t *testing.T) {
	test.NewTempApp(t)
	work, details := canvas.NewRectangle(nil), canvas.NewRectangle(nil)
	c := Beside(work, details, 0.6, 400)
	window := test.NewTempWindow(t, c)
	window.SetPadded(false)
	for _, width := range []float32{800, 3000, 800} {
		window.Resize(fyne.NewSize(width, 300))
		want := min(0.4*width, 400)
		if got := details.Size().Width; math.Abs(float64(got-want)) > 10 { // the divider takes some
			t.Errorf("of %v the details have %v, want about %v", width, got, want)
		}
		if work.Size().Width+details.Size().Width > width {
			t.Errorf("both have %v of %v", work.Size().Width+details.Size().Width, width)
		}
	}
	split := c.Objects[0].(*container.Split)
	split.SetOffset(0.3)
	window.Resize(fyne.NewSize(2000, 300))
	if got := details.Size().Width; got < 1200 {
		t.Errorf("after the reader moved the divider the details have %v of 2000", got)
	}
}
