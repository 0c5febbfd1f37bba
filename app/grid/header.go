package grid

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

type order int

const (
	unsorted order = iota
	rising
	falling
)

// header is the head of a column: title, thin unit, sign of the order. A tap
// sorts.
type header struct {
	widget.BaseWidget
	title, unit string
	right       bool
	order       order
	tapped      func()
	text, thin  *canvas.Text
	line        *canvas.Line
}

func newHeader() *header {
	h := &header{text: canvas.NewText("", theme.Color(look.Ink)), thin: canvas.NewText("", theme.Color(look.Quiet)), line: canvas.NewLine(theme.Color(look.Line))}
	h.text.TextStyle.Bold = true
	h.ExtendBaseWidget(h)
	return h
}

func (h *header) show(title, unit string, right bool, o order, tapped func()) {
	h.tapped = tapped
	if h.title == title && h.unit == unit && h.right == right && h.order == o {
		return
	}
	h.title, h.unit, h.right, h.order = title, unit, right, o
	h.Refresh()
}

// Tapped sorts by the column.
func (h *header) Tapped(*fyne.PointEvent) {
	if h.tapped != nil {
		h.tapped()
	}
}

// CreateRenderer draws the head.
func (h *header) CreateRenderer() fyne.WidgetRenderer {
	r := &headerRenderer{h}
	r.Refresh()
	return r
}

type headerRenderer struct{ h *header }

func (r *headerRenderer) MinSize() fyne.Size { return fyne.NewSize(40, rowHeight()) }
func (r *headerRenderer) Destroy()           {}
func (r *headerRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.h.text, r.h.thin, r.h.line}
}

func (r *headerRenderer) Layout(size fyne.Size) {
	h := r.h
	h.thin.Text = h.unit
	title, unit := h.text.MinSize(), h.thin.MinSize()
	if title.Width+look.SpaceSmall+unit.Width > size.Width-2*cellInset+1 {
		h.thin.Text, unit = "", fyne.Size{} // the sign of the order takes its place
	}
	x := cellInset
	if h.right {
		x = max(cellInset, size.Width-cellInset-title.Width-unit.Width-look.SpaceSmall)
		if h.unit == "" {
			x = max(cellInset, size.Width-cellInset-title.Width)
		}
	}
	base := (size.Height - title.Height) / 2
	h.text.Move(fyne.NewPos(x, base))
	h.thin.Move(fyne.NewPos(x+title.Width+look.SpaceSmall, base+title.Height-unit.Height-1))
	h.line.Position1, h.line.Position2 = fyne.NewPos(0, size.Height-1), fyne.NewPos(size.Width, size.Height-1)
}

func (r *headerRenderer) Refresh() {
	h := r.h
	signs := map[order]string{unsorted: "", rising: " ↑", falling: " ↓"}
	h.text.Text = h.title + signs[h.order]
	h.text.Color, h.text.TextSize = theme.Color(look.Ink), theme.TextSize()
	h.thin.Color, h.thin.TextSize = theme.Color(look.Quiet), theme.CaptionTextSize()
	h.line.StrokeColor, h.line.StrokeWidth = theme.Color(look.Line), 1
	r.Layout(h.Size())
	h.text.Refresh()
	h.thin.Refresh()
	h.line.Refresh()
}
