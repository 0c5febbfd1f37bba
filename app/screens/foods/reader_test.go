package foods

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"sumpter/app/look"
)

// At any size of text no word of the heading touches the next.
func TestWordsOfAReaderStandApart(t *testing.T) {
	for _, scale := range []float32{1, 1.3, 1.6} {
		test.NewTempApp(t).Settings().SetTheme(look.Theme{Variant: look.Light, Scale: scale})
		r := newReader([]readerWord{{text: "contains"}, {text: "may contain"}, {text: "free"}, {text: "unknown"}}, nil)
		r.show([]readerRow{{name: "gluten"}})
		r.Resize(r.MinSize())
		end := float32(0)
		for _, object := range test.WidgetRenderer(r).Objects() {
			word, ok := object.(*canvas.Text)
			if !ok || word.Text == "·" || word.Position().Y > 20*scale {
				continue
			}
			if word.Position().X < end {
				t.Errorf("scale %v: %q begins at %v, the word before ends at %v", scale, word.Text, word.Position().X, end)
			}
			end = word.Position().X + fyne.MeasureText(word.Text, word.TextSize, word.TextStyle).Width
		}
		if end == 0 {
			t.Error("there is no heading")
		}
	}
}
