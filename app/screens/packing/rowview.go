package packing

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// rowLook is everything a row shows.
type rowLook struct {
	kind     rowKind
	code     string // big, read across the table
	main     string
	note     string // below, small
	figure   string // right
	aside    string // below the figure
	warns    bool   // the aside asks to look again
	noteTone fyne.ThemeColorName
	tickable bool
	ticked   bool
	part     bool // begun, not finished
	atCursor bool
	focused  bool // and the list has the keyboard
}

// rowView draws a row with canvas texts: the toolkit's labels are far too slow
// for a list that scrolls.
type rowView struct {
	widget.BaseWidget
	look         rowLook
	ground, edge *canvas.Rectangle
	outer, inner *canvas.Rectangle // double frame of the cleaning
	box          *canvas.Rectangle
	down, up     *canvas.Line // the tick
	code, figure *canvas.Text
	aside        *canvas.Text
	lines        [mostLines]*canvas.Text // what it is, and the note
	least        float32                 // height of a row
}

func newRowView() *rowView {
	none := color.Transparent
	v := &rowView{
		ground: canvas.NewRectangle(none), edge: canvas.NewRectangle(none), outer: canvas.NewRectangle(none), inner: canvas.NewRectangle(none),
		box: canvas.NewRectangle(none), down: canvas.NewLine(none), up: canvas.NewLine(none),
		code: canvas.NewText("", none), figure: canvas.NewText("", none), aside: canvas.NewText("", none),
		least: rowHeight(false),
	}
	for i := range v.lines {
		v.lines[i] = canvas.NewText("", none)
	}
	v.ExtendBaseWidget(v)
	return v
}

func (v *rowView) show(l rowLook) {
	if l != v.look {
		v.look = l
		v.Refresh()
	}
}

// CreateRenderer draws the row.
func (v *rowView) CreateRenderer() fyne.WidgetRenderer {
	r := &rowRenderer{v}
	r.Refresh()
	return r
}

type rowRenderer struct{ v *rowView }

func (r *rowRenderer) MinSize() fyne.Size {
	return fyne.NewSize(300, r.v.least)
}
func (r *rowRenderer) Destroy() {}
func (r *rowRenderer) Objects() []fyne.CanvasObject {
	v := r.v
	objects := []fyne.CanvasObject{v.ground, v.edge, v.outer, v.inner, v.box, v.down, v.up, v.code, v.figure, v.aside}
	for _, line := range v.lines {
		objects = append(objects, line)
	}
	return objects
}

const (
	rowInset  float32 = 10
	boxSide   float32 = 26
	codeAfter float32 = 14
)

func (r *rowRenderer) Layout(size fyne.Size) {
	v := r.v
	v.ground.Resize(size)
	v.edge.Resize(size)
	look.LayoutDoubleFrame(v.outer, v.inner, fyne.NewPos(3, 2), size.SubtractWidthHeight(6, 4))
	x := rowInset
	if v.look.tickable {
		if v.look.kind == weighRow {
			x += 20
		}
		top := (r.firstHeight(size) - boxSide) / 2
		v.box.Move(fyne.NewPos(x, top))
		v.box.Resize(fyne.NewSize(boxSide, boxSide))
		v.down.Position1, v.down.Position2 = fyne.NewPos(x+5, top+14), fyne.NewPos(x+11, top+20)
		v.up.Position1, v.up.Position2 = fyne.NewPos(x+11, top+20), fyne.NewPos(x+21, top+6)
		x += boxSide + codeAfter
	}
	if v.look.kind == cleanRow {
		x += 12
	}
	r.layoutTexts(x, size)
}

func (r *rowRenderer) Refresh() {
	v, l := r.v, r.v.look
	r.paintGround()
	r.paintTick()
	ink := theme.Color(look.Ink)
	if l.ticked {
		ink = theme.Color(look.Quiet)
	}
	set := func(text *canvas.Text, content string, size float32, tone color.Color, bold bool) {
		text.Text, text.TextSize, text.Color, text.TextStyle.Bold = content, size, tone, bold
	}
	codeTone := ink
	if l.kind == cleanRow {
		codeTone = theme.Color(look.Plum)
	}
	set(v.code, l.code, look.Night.Points(), codeTone, true)
	set(v.figure, l.figure, look.Night.Points(), ink, l.kind == bagRow || l.kind == stowedRow || l.kind == weighRow)
	asideTone := look.Quiet
	if l.warns {
		asideTone = look.Ochre
	}
	set(v.aside, l.aside, look.Caption.Points(), theme.Color(asideTone), l.warns)
	r.Layout(v.Size())
	for _, object := range r.Objects() {
		canvas.Refresh(object)
	}
}

func (r *rowRenderer) paintGround() {
	v := r.v
	v.ground.FillColor = theme.Color(look.Panel)
	switch {
	case v.look.atCursor:
		v.ground.FillColor = theme.Color(look.Wash)
	case v.look.kind == roundRow, v.look.kind == stowRow, v.look.kind == stationRow:
		v.ground.FillColor = theme.Color(look.Ground)
	case v.look.kind == foodRow:
		v.ground.FillColor = theme.Color(look.Stripe)
	}
	v.edge.StrokeWidth, v.edge.StrokeColor = 0, color.Transparent
	switch {
	case v.look.focused:
		v.edge.StrokeWidth, v.edge.StrokeColor = 3, theme.Color(look.Spruce)
	case v.look.atCursor:
		v.edge.StrokeWidth, v.edge.StrokeColor = 1, theme.Color(look.Quiet)
	}
	if v.look.kind == cleanRow {
		look.PaintDoubleFrame(v.outer, v.inner, look.Plum)
	} else {
		v.outer.StrokeWidth, v.inner.StrokeWidth = 0, 0
	}
}

// paintTick draws the box: empty, begun with a bar, or ticked.
func (r *rowRenderer) paintTick() {
	v := r.v
	spruce, none := theme.Color(look.Spruce), color.Color(color.Transparent)
	v.box.StrokeColor, v.box.StrokeWidth, v.box.FillColor, v.box.CornerRadius = none, 0, none, 3
	v.down.StrokeColor, v.up.StrokeColor = none, none
	if !v.look.tickable {
		return
	}
	v.box.StrokeColor, v.box.StrokeWidth = theme.Color(look.Quiet), 2
	switch {
	case v.look.ticked:
		v.box.StrokeColor, v.box.FillColor = spruce, spruce
		v.down.StrokeColor, v.up.StrokeColor = theme.Color(look.Panel), theme.Color(look.Panel)
		v.down.StrokeWidth, v.up.StrokeWidth = 3, 3
	case v.look.part:
		v.box.StrokeColor = spruce
		v.up.StrokeColor, v.up.StrokeWidth = spruce, 3
	}
}
