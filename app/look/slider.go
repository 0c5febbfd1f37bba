package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Tracked shows a slider with a track that can be seen. The toolkit paints it
// in the ground of fields, which on our ground is hardly there.
func Tracked(slider *widget.Slider) fyne.CanvasObject {
	t := &tracked{slider: slider}
	t.ExtendBaseWidget(t)
	return t
}

// tracked themes its slider with each renderer: the toolkit drops renderers of
// what was hidden for a minute, and with them the theme of their widgets.
type tracked struct {
	widget.BaseWidget
	slider *widget.Slider
}

// CreateRenderer shows the slider.
func (t *tracked) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewThemeOverride(t.slider, tracks{}))
}

// tracks is the theme of the moment, with the track in the colour of quiet words.
type tracks struct{}

func (tracks) of() fyne.Theme { return fyne.CurrentApp().Settings().Theme() }

func (t tracks) Color(name fyne.ThemeColorName, variant fyne.ThemeVariant) color.Color {
	if name == theme.ColorNameInputBackground {
		name = Quiet
	}
	return t.of().Color(name, variant)
}

func (t tracks) Font(style fyne.TextStyle) fyne.Resource    { return t.of().Font(style) }
func (t tracks) Icon(name fyne.ThemeIconName) fyne.Resource { return t.of().Icon(name) }
func (t tracks) Size(name fyne.ThemeSizeName) float32       { return t.of().Size(name) }
