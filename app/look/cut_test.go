package look

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"pgregory.net/rapid"
)

func TestCutFitsAndKeepsTheBeginning(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(Theme{Variant: Light})
	rapid.Check(t, func(rt *rapid.T) {
		text, width := rapid.StringMatching(`[A-Za-zäß ]{0,30}`).Draw(rt, "text"), rapid.Float32Range(0, 300).Draw(rt, "width")
		got := Cut(text, 12, fyne.TextStyle{}, width)
		if got != "" && fyne.MeasureText(got, 12, fyne.TextStyle{}).Width > width {
			rt.Fatalf("%q is wider than %v", got, width)
		}
		if !strings.HasPrefix(text, strings.TrimSuffix(got, "…")) {
			rt.Fatalf("%q does not begin %q", got, text)
		}
		if fyne.MeasureText(text, 12, fyne.TextStyle{}).Width <= width && got != text {
			rt.Fatalf("%q fits and became %q", text, got)
		}
	})
}
