package look

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// Allergy is told by two lines around it, never by colour alone.
func TestDoubleFrameDrawsTwoLinesAroundItsContent(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(Theme{Variant: Dark})
	content := NewText("contains peanuts", Body, Plum)
	frame := NewDoubleFrame(Plum, content)
	window := test.NewTempWindow(t, frame)
	window.Resize(fyne.NewSize(300, 100))
	renderer := test.WidgetRenderer(frame).(*frameRenderer)
	for _, line := range []struct {
		name   string
		at     fyne.Position
		size   fyne.Size
		stroke float32
	}{
		{"outer", renderer.outer.Position(), renderer.outer.Size(), renderer.outer.StrokeWidth},
		{"inner", renderer.inner.Position(), renderer.inner.Size(), renderer.inner.StrokeWidth},
	} {
		if line.stroke <= 0 || line.at.X >= content.Position().X || line.at.X+line.size.Width <= content.Position().X+content.Size().Width {
			t.Errorf("the %s line, %v wide, at %v with %v, does not go around the content at %v with %v",
				line.name, line.stroke, line.at, line.size, content.Position(), content.Size())
		}
	}
	if renderer.inner.Position().X <= renderer.outer.Position().X || renderer.outer.StrokeColor != palette[Plum].dark {
		t.Error("the lines are not one within the other, in plum")
	}
	if least := frame.MinSize(); least.Width <= content.MinSize().Width || least.Height <= content.MinSize().Height {
		t.Errorf("the frame of %v has room for %v", content.MinSize(), least)
	}
}
