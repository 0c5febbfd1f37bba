package grid

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// cellLook is everything a cell shows.
type cellLook struct {
	text                                      string
	tone                                      fyne.ThemeColorName
	right, striped, inRow, atCursor, readOnly bool
	strong, focused, blank                    bool
}

// cell is a canvas text over a ground: the toolkit's label is a hundred times
// slower to change, and a table changes hundreds of cells in a frame.
type cell struct {
	widget.BaseWidget
	height float32
	held   bool // it is kept empty for now
	look   cellLook
	ground *canvas.Rectangle
	edge   *canvas.Rectangle
	text   *canvas.Text
	width  float32
}

func newCell(height float32) *cell {
	c := &cell{height: height, ground: canvas.NewRectangle(color.Transparent), edge: canvas.NewRectangle(color.Transparent), text: canvas.NewText("", theme.Color(look.Ink))}
	c.ExtendBaseWidget(c)
	return c
}

func (c *cell) show(l cellLook) {
	if l == c.look {
		return
	}
	c.look = l
	c.Refresh()
}

// CreateRenderer draws ground, cursor and text.
func (c *cell) CreateRenderer() fyne.WidgetRenderer {
	r := &cellRenderer{c}
	r.Refresh()
	return r
}

type cellRenderer struct{ c *cell }

const cellInset float32 = 6

func (r *cellRenderer) MinSize() fyne.Size { return fyne.NewSize(40, r.c.height) }
func (r *cellRenderer) Destroy()           {}
func (r *cellRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.c.ground, r.c.edge, r.c.text}
}

func (r *cellRenderer) Layout(size fyne.Size) {
	c := r.c
	c.ground.Resize(size)
	c.edge.Resize(size)
	height := c.text.MinSize().Height
	c.text.Move(fyne.NewPos(cellInset, (size.Height-height)/2))
	c.text.Resize(fyne.NewSize(size.Width-2*cellInset, height))
	if c.width != size.Width {
		c.width = size.Width
		r.fit()
	}
}

func (r *cellRenderer) Refresh() {
	c := r.c
	c.ground.FillColor = theme.Color(look.Panel)
	switch {
	case c.look.blank:
		c.ground.FillColor = color.Transparent
	case c.look.inRow:
		c.ground.FillColor = theme.Color(look.Wash)
	case c.look.strong:
		c.ground.FillColor = theme.Color(look.Ground)
	case c.look.striped:
		c.ground.FillColor = theme.Color(look.Stripe)
	}
	c.edge.StrokeWidth, c.edge.StrokeColor = 0, color.Transparent
	switch {
	case c.look.atCursor && c.look.focused:
		c.edge.StrokeWidth, c.edge.StrokeColor = 2, theme.Color(look.Spruce)
	case c.look.atCursor:
		c.edge.StrokeWidth, c.edge.StrokeColor = 1, theme.Color(look.Quiet)
	}
	tone := c.look.tone
	if tone == "" {
		tone = look.Ink
	}
	c.text.Color, c.text.TextSize = theme.Color(tone), theme.TextSize()
	c.text.TextStyle.Bold = c.look.strong
	c.text.Alignment = fyne.TextAlignLeading
	if c.look.right {
		c.text.Alignment = fyne.TextAlignTrailing
	}
	r.fit()
	c.ground.Refresh()
	c.edge.Refresh()
	c.text.Refresh()
}

// fit cuts the text to the width of the cell.
func (r *cellRenderer) fit() {
	r.c.text.Text = cut(r.c.look.text, r.c.text, r.c.width-2*cellInset)
}

// cut shortens a text with an ellipsis so that it fits.
func cut(text string, as *canvas.Text, width float32) string {
	measure := func(s string) float32 { return fyne.MeasureText(s, as.TextSize, as.TextStyle).Width }
	if width <= 0 || text == "" || measure(text) <= width {
		return text
	}
	runes := []rune(text)
	low, high := 0, len(runes)
	for low < high {
		middle := (low + high + 1) / 2
		if measure(string(runes[:middle])+"…") <= width {
			low = middle
		} else {
			high = middle - 1
		}
	}
	return string(runes[:low]) + "…"
}
