package loads

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// keyed gives the keyboard to a part of the screen and shows that it has it.
type keyed struct {
	widget.BaseWidget
	content fyne.CanvasObject
	frame   *canvas.Rectangle
	keys    func(*fyne.KeyEvent)
	letters func(rune)
	focused bool
}

func newKeyed(content fyne.CanvasObject, keys func(*fyne.KeyEvent), letters func(rune)) *keyed {
	k := &keyed{content: content, frame: canvas.NewRectangle(color.Transparent), keys: keys, letters: letters}
	k.ExtendBaseWidget(k)
	return k
}

// CreateRenderer shows the content in its frame.
func (k *keyed) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewStack(k.content, k.frame))
}

// FocusGained shows the frame.
func (k *keyed) FocusGained() { k.mark(true) }

// FocusLost takes the frame away.
func (k *keyed) FocusLost() { k.mark(false) }

func (k *keyed) mark(on bool) {
	k.focused = on
	k.frame.StrokeWidth = 0
	if on {
		k.frame.StrokeWidth, k.frame.StrokeColor = 1, theme.Color(look.Spruce)
	}
	k.frame.Refresh()
}

// TypedKey hands the key on.
func (k *keyed) TypedKey(event *fyne.KeyEvent) { k.keys(event) }

// TypedRune hands the letter on.
func (k *keyed) TypedRune(letter rune) { k.letters(letter) }
