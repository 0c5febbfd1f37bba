package look

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// What tells of a control has at least 3 to 1 to its ground (WCAG 2.2, 1.4.11,
// from memory).
func TestTheTrackOfASliderIsSeen(t *testing.T) {
	for _, variant := range []Variant{Light, Dark} {
		app := test.NewTempApp(t)
		app.Settings().SetTheme(Theme{Variant: variant})
		slider := widget.NewSlider(1, 9)
		tracked := Tracked(slider)
		window := test.NewTempWindow(t, container.NewStack(tracked))
		window.Resize(fyne.NewSize(400, 60))
		container.NewThemeOverride(slider, app.Settings().Theme()) // as when its theme was dropped with its renderer
		tracked.(fyne.Widget).CreateRenderer()
		ground := color.NRGBAModel.Convert(app.Settings().Theme().Color(Ground, 0)).(color.NRGBA)
		var tracks []color.NRGBA
		for _, object := range test.WidgetRenderer(slider).Objects() {
			if bar, ok := object.(*canvas.Rectangle); ok {
				tracks = append(tracks, color.NRGBAModel.Convert(bar.FillColor).(color.NRGBA))
			}
		}
		if len(tracks) == 0 {
			t.Fatal("no track")
		}
		if got := contrast(tracks[0], ground); got < 3 {
			t.Errorf("%s: the track has contrast %.2f to the ground", variant, got)
		}
	}
}
