package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// frameGap is from the outer line of a double frame to what it holds.
const frameGap float32 = 10

// DoubleFrame draws two lines around something: the sign of allergy, beside
// its colour and the allergen's name in full.
type DoubleFrame struct {
	widget.BaseWidget
	tone    fyne.ThemeColorName
	content fyne.CanvasObject
}

// NewDoubleFrame frames content in a tone, Plum for allergy.
func NewDoubleFrame(tone fyne.ThemeColorName, content fyne.CanvasObject) *DoubleFrame {
	f := &DoubleFrame{tone: tone, content: content}
	f.ExtendBaseWidget(f)
	return f
}

// CreateRenderer draws both lines and the content.
func (f *DoubleFrame) CreateRenderer() fyne.WidgetRenderer {
	r := &frameRenderer{frame: f, outer: canvas.NewRectangle(color.Transparent), inner: canvas.NewRectangle(color.Transparent)}
	r.Refresh()
	if size := f.Size(); !size.IsZero() {
		r.Layout(size) // made anew after it was hidden, it is not laid out again
	}
	return r
}

type frameRenderer struct {
	frame        *DoubleFrame
	outer, inner *canvas.Rectangle
}

func (r *frameRenderer) Destroy() {}
func (r *frameRenderer) MinSize() fyne.Size {
	return r.frame.content.MinSize().AddWidthHeight(2*frameGap, 2*frameGap)
}

func (r *frameRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.outer, r.inner, r.frame.content}
}

func (r *frameRenderer) Layout(size fyne.Size) {
	LayoutDoubleFrame(r.outer, r.inner, fyne.NewPos(0, 0), size)
	r.frame.content.Move(fyne.NewPos(frameGap, frameGap))
	r.frame.content.Resize(size.SubtractWidthHeight(2*frameGap, 2*frameGap))
}

func (r *frameRenderer) Refresh() {
	PaintDoubleFrame(r.outer, r.inner, r.frame.tone)
	r.frame.content.Refresh()
}

// LayoutDoubleFrame places the two lines of a double frame, for pieces that
// draw their own.
func LayoutDoubleFrame(outer, inner *canvas.Rectangle, at fyne.Position, size fyne.Size) {
	const gap = 5
	outer.Move(at)
	outer.Resize(size)
	inner.Move(at.AddXY(gap, gap))
	inner.Resize(size.SubtractWidthHeight(2*gap, 2*gap))
}

// PaintDoubleFrame gives the two lines their tone.
func PaintDoubleFrame(outer, inner *canvas.Rectangle, tone fyne.ThemeColorName) {
	outer.StrokeColor, outer.StrokeWidth = theme.Color(tone), 3
	inner.StrokeColor, inner.StrokeWidth = theme.Color(tone), 1
	outer.Refresh()
	inner.Refresh()
}
