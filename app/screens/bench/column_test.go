package bench

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
	"pgregory.net/rapid"
)

// However rows are set while others still come, in the end those set last are
// there, and on the way no place is empty that was filled.
func TestAColumnHoldsTheRowsSetLast(t *testing.T) {
	test.NewApp()
	rapid.Check(t, func(rt *rapid.T) {
		var steps []func()
		grown := 0
		c := NewColumn(func(step func()) { steps = append(steps, step) }, func() { grown++ })
		c.Box.Resize(fyne.NewSize(120, 10))
		want := []string{}
		for round := range rapid.IntRange(1, 4).Draw(rt, "rounds") {
			before := len(c.Box.Objects)
			want = want[:0]
			for i := range rapid.IntRange(0, 6).Draw(rt, "rows") {
				want = append(want, fmt.Sprintf("row %d of round %d, with words", i, round))
			}
			c.Set(len(want), func(i int) fyne.CanvasObject {
				label := widget.NewLabel(want[i])
				label.Wrapping = fyne.TextWrapWord
				return label
			})
			if least := min(before, len(want)); len(c.Box.Objects) < least {
				rt.Fatalf("%d rows are there, %d were and %d are to come", len(c.Box.Objects), before, len(want))
			}
			for range rapid.IntRange(0, 3).Draw(rt, "steps") {
				if len(steps) > 0 {
					step := steps[0]
					steps = steps[1:]
					step()
				}
			}
		}
		for len(steps) > 0 {
			step := steps[0]
			steps = steps[1:]
			step()
		}
		if len(c.Box.Objects) != len(want) || grown == 0 {
			rt.Fatalf("%d rows, set were %d", len(c.Box.Objects), len(want))
		}
		bottom := float32(0)
		for i, object := range c.Box.Objects {
			if text := object.(*widget.Label).Text; text != want[i] {
				rt.Fatalf("row %d is %q, set was %q", i, text, want[i])
			}
			if object.Position().Y < bottom || object.Size().Height < object.MinSize().Height {
				rt.Fatalf("row %d at %v of %v, above it ends at %v", i, object.Position(), object.Size(), bottom)
			}
			bottom = object.Position().Y + object.Size().Height
		}
	})
}
