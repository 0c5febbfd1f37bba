package bench_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"sumpter/app/screens/bench"
)

func TestAHeadTakesTheLinesItNeeds(t *testing.T) {
	test.NewTempApp(t)
	piece := func(width float32) fyne.CanvasObject {
		r := canvas.NewRectangle(nil)
		r.SetMinSize(fyne.NewSize(width, 20))
		return r
	}
	about, body := piece(100), piece(50)
	actions := []fyne.CanvasObject{piece(80), piece(80), piece(80)}
	head := bench.Head(about, actions...)
	whole := bench.Headed(body, head)
	for _, c := range []struct{ width, height float32 }{{400, 20}, {300, 44}, {170, 68}, {100, 92}, {400, 20}} {
		whole.Resize(fyne.NewSize(c.width, 300))
		if head.Size().Height != c.height || body.Position().Y != c.height+4 || body.Size().Height != 300-c.height-4 {
			t.Errorf("at %v the head is %v high, the body begins at %v and is %v high", c.width, head.Size().Height, body.Position().Y, body.Size().Height)
		}
		right := float32(0)
		for _, object := range actions {
			if object.Position().X < 0 {
				t.Errorf("at %v an action begins at %v", c.width, object.Position().X)
			}
			right = max(right, object.Position().X+object.Size().Width)
		}
		if right != c.width {
			t.Errorf("at %v the actions end at %v", c.width, right)
		}
	}
}

func TestARowBreaksIntoLines(t *testing.T) {
	test.NewTempApp(t)
	first, second := canvas.NewRectangle(nil), canvas.NewRectangle(nil)
	first.SetMinSize(fyne.NewSize(80, 20))
	second.SetMinSize(fyne.NewSize(80, 20))
	row := bench.Row(first, second)
	for _, c := range []struct{ width, x, y, height float32 }{{200, 84, 0, 20}, {120, 0, 24, 44}} {
		row.Resize(fyne.NewSize(c.width, 20))
		if at := second.Position(); at.X != c.x || at.Y != c.y || row.MinSize().Height != c.height {
			t.Errorf("at %v the second is at %v, the row is %v high", c.width, at, row.MinSize().Height)
		}
	}
}
