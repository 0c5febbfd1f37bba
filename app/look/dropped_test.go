package look

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// The toolkit drops renderers of what was hidden for a minute and lays new
// ones out only when the size changes: they must have their size by themselves.
func TestPiecesHaveTheirSizeAfterTheirRendererWasDropped(t *testing.T) {
	test.NewTempApp(t)
	size := fyne.NewSize(200, 60)
	for name, piece := range map[string]fyne.Widget{
		"text": NewText("word", Body, Ink), "ground": NewGroundSheet(), "frame": NewDoubleFrame(Plum, NewText("word", Body, Ink)),
	} {
		piece.Resize(size)
		if got := piece.CreateRenderer().Objects()[0].Size(); got != size {
			t.Errorf("%s: %v", name, got)
		}
	}
}
