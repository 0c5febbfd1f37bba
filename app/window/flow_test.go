package window

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

func TestTheFootTakesTheLinesItNeeds(t *testing.T) {
	test.NewTempApp(t)
	piece := func() fyne.CanvasObject {
		r := canvas.NewRectangle(nil)
		r.SetMinSize(fyne.NewSize(100, 20))
		return r
	}
	f := &flow{}
	foot := container.New(f, piece(), piece(), piece())
	body := canvas.NewRectangle(nil)
	whole := container.New(&footed{body: body, foot: foot}, body, foot)
	for _, c := range []struct {
		width, lines float32
	}{{400, 1}, {250, 2}, {120, 3}, {400, 1}} {
		whole.Resize(fyne.NewSize(c.width, 300))
		if foot.Size().Height != 20*c.lines || body.Size().Height != 300-20*c.lines {
			t.Errorf("at %v the foot is %v high, the body %v", c.width, foot.Size().Height, body.Size().Height)
		}
		for _, object := range foot.Objects {
			if object.Position().X+object.Size().Width > c.width {
				t.Errorf("at %v a piece ends at %v", c.width, object.Position().X+object.Size().Width)
			}
		}
	}
}

// A message as long as an error can be pushes nothing out of the window.
func TestLongMessagesWrap(t *testing.T) {
	w, _ := openDemo(t)
	long := ""
	for range 40 {
		long += "something is wrong there "
	}
	before := w.foot.Size().Height
	w.say(long)
	checkFits(t, w, "with a long message")
	if w.foot.Size().Height <= before+20 {
		t.Errorf("the foot is %v high, was %v", w.foot.Size().Height, before)
	}
	w.say("")
	if w.foot.Size().Height != before {
		t.Errorf("taken back, the foot is %v high, was %v", w.foot.Size().Height, before)
	}
}
