package loads

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// row shows one thing of a pack; it can be tapped and dragged to another.
type row struct {
	widget.BaseWidget
	shown   rowLook
	thing   thing
	ground  *canvas.Rectangle
	name    *canvas.Text
	about   *canvas.Text
	mass    *canvas.Text
	tapped  func(thing)
	menu    func(thing, fyne.Position)
	dragged func(thing, fyne.Position)
	dropped func()
	width   float32
}

type rowLook struct {
	name, about, mass string
	chosen            bool
	tone              fyne.ThemeColorName
}

func newRow(tapped func(thing), menu func(thing, fyne.Position), dragged func(thing, fyne.Position), dropped func()) *row {
	r := &row{
		ground: canvas.NewRectangle(color.Transparent), name: canvas.NewText("", nil), about: canvas.NewText("", nil), mass: canvas.NewText("", nil),
		tapped: tapped, menu: menu, dragged: dragged, dropped: dropped,
	}
	r.name.TextStyle.Bold = true
	r.ExtendBaseWidget(r)
	return r
}

func (r *row) show(t thing, l rowLook) {
	r.thing = t
	if r.shown != l {
		r.shown = l
		r.Refresh()
	}
}

// Tapped chooses the thing.
func (r *row) Tapped(*fyne.PointEvent) { r.tapped(r.thing) }

// TappedSecondary offers what can be done with the thing.
func (r *row) TappedSecondary(event *fyne.PointEvent) { r.menu(r.thing, event.AbsolutePosition) }

// Dragged carries the thing along with the pointer.
func (r *row) Dragged(event *fyne.DragEvent) { r.dragged(r.thing, event.AbsolutePosition) }

// DragEnd drops it.
func (r *row) DragEnd() { r.dropped() }

// Cursor says that the row can be taken.
func (r *row) Cursor() desktop.Cursor { return desktop.PointerCursor }

// CreateRenderer draws ground and texts.
func (r *row) CreateRenderer() fyne.WidgetRenderer {
	made := &rowRenderer{r}
	made.Refresh()
	return made
}

type rowRenderer struct{ r *row }

func (x *rowRenderer) MinSize() fyne.Size { return fyne.NewSize(160, look.RowHeight) }
func (x *rowRenderer) Destroy()           {}
func (x *rowRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{x.r.ground, x.r.name, x.r.about, x.r.mass}
}

func (x *rowRenderer) Layout(size fyne.Size) {
	x.r.ground.Resize(size)
	x.r.width = size.Width
	x.place()
}

// place sets name and what it is about side by side, the mass at the right.
func (x *rowRenderer) place() {
	r, middle := x.r, look.RowHeight/2
	put := func(t *canvas.Text, left float32) {
		size := t.MinSize()
		t.Resize(size)
		t.Move(fyne.NewPos(left, middle-size.Height/2))
	}
	right := r.width - look.Space - r.mass.MinSize().Width
	r.name.Text = look.Cut(r.shown.name, r.name.TextSize, r.name.TextStyle, max(0, right-2*look.Space))
	left := look.Space + r.name.MinSize().Width + look.Space
	r.about.Text = look.Cut(r.shown.about, r.about.TextSize, r.about.TextStyle, max(0, right-left-look.Space))
	put(r.name, look.Space)
	put(r.about, left)
	put(r.mass, right)
}

func (x *rowRenderer) Refresh() {
	r := x.r
	ground := look.Panel
	if r.shown.chosen {
		ground = look.Wash
	}
	tone := r.shown.tone
	if tone == "" {
		tone = look.Quiet
	}
	r.ground.FillColor = theme.Color(ground)
	r.name.Color, r.name.TextSize = theme.Color(look.Ink), theme.TextSize()
	r.about.Color, r.about.TextSize = theme.Color(tone), theme.CaptionTextSize()
	r.mass.Color, r.mass.TextSize, r.mass.Text = theme.Color(look.Ink), theme.TextSize(), r.shown.mass
	x.place()
	for _, object := range x.Objects() {
		object.Refresh()
	}
}
