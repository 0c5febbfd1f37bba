package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// GroundSheet hides what lies beneath it.
type GroundSheet struct{ widget.BaseWidget }

// NewGroundSheet makes a sheet in the colour of the ground, light or dark.
func NewGroundSheet() *GroundSheet {
	g := &GroundSheet{}
	g.ExtendBaseWidget(g)
	return g
}

// CreateRenderer fills the sheet.
func (g *GroundSheet) CreateRenderer() fyne.WidgetRenderer {
	r := &sheetRenderer{canvas.NewRectangle(theme.Color(Ground))}
	r.Layout(g.Size()) // made anew after it was hidden, it is not laid out again
	return r
}

type sheetRenderer struct{ fill *canvas.Rectangle }

func (r *sheetRenderer) Destroy()                     {}
func (r *sheetRenderer) Layout(size fyne.Size)        { r.fill.Resize(size) }
func (r *sheetRenderer) MinSize() fyne.Size           { return fyne.Size{} }
func (r *sheetRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.fill} }

// Refresh takes the colour of the look there is now.
func (r *sheetRenderer) Refresh() {
	r.fill.FillColor = theme.Color(Ground)
	r.fill.Refresh()
}
