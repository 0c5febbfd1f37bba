package trail

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// shareBar shows a share as a bar on its track; none of it is the bare track,
// which the toolkit's own bar paints so dark that it looks full.
type shareBar struct {
	widget.BaseWidget
	share       float32
	track, full *canvas.Rectangle
}

func newShareBar(share float64) *shareBar {
	b := &shareBar{share: float32(min(1, max(0, share))), track: canvas.NewRectangle(nil), full: canvas.NewRectangle(nil)}
	b.track.CornerRadius, b.full.CornerRadius = barHeight/2, barHeight/2
	b.ExtendBaseWidget(b)
	return b
}

// barHeight is enough for a bar with its words above it.
const barHeight = 8

// MinSize is the height of the bar.
func (b *shareBar) MinSize() fyne.Size { return fyne.NewSize(0, barHeight) }

// CreateRenderer shows the bar.
func (b *shareBar) CreateRenderer() fyne.WidgetRenderer {
	b.ExtendBaseWidget(b)
	r := &shareBarRenderer{b}
	r.Refresh()
	return r
}

type shareBarRenderer struct{ *shareBar }

func (r *shareBarRenderer) Layout(size fyne.Size) {
	r.track.Resize(fyne.NewSize(size.Width, barHeight))
	r.full.Resize(fyne.NewSize(size.Width*r.share, barHeight))
}

func (r *shareBarRenderer) Refresh() {
	r.track.FillColor, r.full.FillColor = theme.Color(look.Line), theme.Color(look.Spruce)
	r.track.Refresh()
	r.full.Refresh()
}

func (r *shareBarRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.track, r.full} }
func (r *shareBarRenderer) Destroy()                     {}
