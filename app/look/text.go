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
	Lead  // between body and figure
	Night // read across a table
	Board // read across a room
)

// Points gives the size in the theme's points, the reader's scale taken in.
func (s Size) Points() float32 {
	body := theme.TextSize()
	switch s {
	case Caption:
		return theme.CaptionTextSize()
	case Figure:
		return whole(body * figureSize / bodySize)
	case Lead:
		return whole(body * leadSize / bodySize)
	case Night:
		return whole(body * nightSize / bodySize)
	case Board:
		return whole(body * boardSize / bodySize)
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
	yields  bool
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

// leastYielding is the least width of a text that yields.
const leastYielding float32 = 60

// Yielding has the text cut to its place where it would else push a window
// wider: for names and sentences of any length. It gives the text itself.
func (t *Text) Yielding() *Text {
	t.yields = true
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
	t.text.Resize(t.Size()) // made anew after it was hidden, it is not laid out again
	return r
}

type textRenderer struct{ t *Text }

func (r *textRenderer) apply() {
	t := r.t
	tone := t.Tone
	if tone == "" {
		tone = Ink
	}
	t.text.Text, t.text.Alignment = t.shown(t.Size().Width), t.Align
	t.text.TextStyle.Bold = t.Bold
	t.text.TextSize = t.Step.Points()
	t.text.Color = theme.Color(tone)
}

func (r *textRenderer) Layout(size fyne.Size) {
	t := r.t
	t.text.Resize(size)
	if shown := t.shown(size.Width); t.text.Text != shown {
		t.text.Text = shown
		t.text.Refresh()
	}
}

// shown is the text as it fits into a width.
func (t *Text) shown(width float32) string {
	if !t.yields || width <= 0 {
		return t.Content
	}
	return Cut(t.Content, t.Step.Points(), fyne.TextStyle{Bold: t.Bold}, width+1)
}

func (r *textRenderer) MinSize() fyne.Size {
	t := r.t
	size := fyne.MeasureText(t.Content, t.Step.Points(), fyne.TextStyle{Bold: t.Bold})
	if t.yields {
		size.Width = min(size.Width, leastYielding)
	}
	return size
}

func (r *textRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.t.text} }
func (r *textRenderer) Destroy()                     {}
func (r *textRenderer) Refresh() {
	r.apply()
	r.t.text.Refresh()
}
