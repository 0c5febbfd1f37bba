package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Size is one of the few sizes of text.
type Size int

// Sizes of text.
const (
	Body Size = iota
	Caption
	Figure
	Night
)

// points gives the size in the theme's points, the reader's scale taken in.
func (s Size) points() float32 {
	body := theme.TextSize()
	switch s {
	case Caption:
		return theme.CaptionTextSize()
	case Figure:
		return body * figureSize / bodySize
	case Night:
		return body * nightSize / bodySize
	default:
		return body
	}
}

// Text is one line of text that follows the theme. Unlike a Label it has no
// padding and is cheap enough for pictures and tables.
type Text struct {
	widget.BaseWidget
	Content string
	Step    Size
	Tone    fyne.ThemeColorName // Ink if empty
	Align   fyne.TextAlign
	Bold    bool
	text    *canvas.Text
}

// NewText makes a line of text.
func NewText(content string, size Size, tone fyne.ThemeColorName) *Text {
	t := &Text{Content: content, Step: size, Tone: tone}
	t.ExtendBaseWidget(t)
	return t
}

// NewHeading makes the heading of a part of a screen.
func NewHeading(content string) *Text {
	t := NewText(content, Body, Ink)
	t.Bold = true
	return t
}

// SetContent changes the text.
func (t *Text) SetContent(content string) {
	if t.Content != content {
		t.Content = content
		t.Refresh()
	}
}

// SetTone changes the colour.
func (t *Text) SetTone(tone fyne.ThemeColorName) {
	if t.Tone != tone {
		t.Tone = tone
		t.Refresh()
	}
}

// CreateRenderer draws the text.
func (t *Text) CreateRenderer() fyne.WidgetRenderer {
	t.text = canvas.NewText(t.Content, theme.Color(Ink))
	r := &textRenderer{t: t}
	r.apply()
	return r
}

type textRenderer struct{ t *Text }

func (r *textRenderer) apply() {
	t := r.t
	tone := t.Tone
	if tone == "" {
		tone = Ink
	}
	t.text.Text, t.text.Alignment = t.Content, t.Align
	t.text.TextStyle.Bold = t.Bold
	t.text.TextSize = t.Step.points()
	t.text.Color = theme.Color(tone)
}

func (r *textRenderer) Layout(size fyne.Size)        { r.t.text.Resize(size) }
func (r *textRenderer) MinSize() fyne.Size           { return r.t.text.MinSize() }
func (r *textRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.t.text} }
func (r *textRenderer) Destroy()                     {}
func (r *textRenderer) Refresh() {
	r.apply()
	r.t.text.Refresh()
}
