package packing

import (
	"image/color"
	"strings"

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
	code, main   *canvas.Text
	note, figure *canvas.Text
	aside        *canvas.Text
	width        float32
}

func newRowView() *rowView {
	none := color.Transparent
	v := &rowView{
		ground: canvas.NewRectangle(none), edge: canvas.NewRectangle(none), outer: canvas.NewRectangle(none), inner: canvas.NewRectangle(none),
		box: canvas.NewRectangle(none), down: canvas.NewLine(none), up: canvas.NewLine(none),
		code: canvas.NewText("", none), main: canvas.NewText("", none), note: canvas.NewText("", none),
		figure: canvas.NewText("", none), aside: canvas.NewText("", none),
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
	return fyne.NewSize(300, look.NightHeight*look.Scale())
}
func (r *rowRenderer) Destroy() {}
func (r *rowRenderer) Objects() []fyne.CanvasObject {
	v := r.v
	return []fyne.CanvasObject{v.ground, v.edge, v.outer, v.inner, v.box, v.down, v.up, v.code, v.main, v.note, v.figure, v.aside}
}

const (
	rowInset  float32 = 10
	boxSide   float32 = 26
	codeAfter float32 = 14
)

func (r *rowRenderer) Layout(size fyne.Size) {
	v := r.v
	v.width = size.Width
	v.ground.Resize(size)
	v.edge.Resize(size)
	look.LayoutDoubleFrame(v.outer, v.inner, fyne.NewPos(3, 2), size.SubtractWidthHeight(6, 4))
	x := rowInset
	if v.look.tickable {
		if v.look.kind == weighRow {
			x += 20
		}
		top := (size.Height - boxSide) / 2
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

func (r *rowRenderer) layoutTexts(x float32, size fyne.Size) {
	v := r.v
	middle := func(text *canvas.Text) float32 { return (size.Height - text.MinSize().Height) / 2 }
	if v.look.code != "" {
		v.code.Move(fyne.NewPos(x, middle(v.code)))
		x += max(v.code.MinSize().Width, r.codeWidth()) + codeAfter
	}
	right := size.Width - rowInset
	figure := v.figure.MinSize()
	aside := v.aside.MinSize()
	v.figure.Move(fyne.NewPos(right-figure.Width, middle(v.figure)))
	if v.look.aside != "" {
		v.figure.Move(fyne.NewPos(right-figure.Width, (size.Height-figure.Height-aside.Height)/2+1))
		v.aside.Move(fyne.NewPos(right-aside.Width, (size.Height+figure.Height-aside.Height)/2-1))
	}
	room := right - codeAfter - x
	v.main.Text = look.Cut(v.look.main, v.main.TextSize, v.main.TextStyle, room-figure.Width)
	v.note.Text = look.Cut(v.look.note, v.note.TextSize, v.note.TextStyle, room-max(figure.Width, aside.Width))
	main, note := v.main.MinSize().Height, v.note.MinSize().Height
	v.main.Move(fyne.NewPos(x, middle(v.main)))
	if v.look.note != "" {
		top := (size.Height - main - note) / 2
		v.main.Move(fyne.NewPos(x, top+2))
		v.note.Move(fyne.NewPos(x, top+main-1))
	}
}

// codeWidth is the room of the widest code as long as this one, so that the
// texts behind the codes stand in one line.
func (r *rowRenderer) codeWidth() float32 {
	if !r.v.look.tickable || len(r.v.look.code) < 2 {
		return 0
	}
	widest := strings.Repeat("0", len(r.v.look.code)-2) + "-W"
	return fyne.MeasureText(widest, r.v.code.TextSize, r.v.code.TextStyle).Width
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
	strong := l.kind == roundRow || l.kind == stowRow || l.kind == foodRow
	codeTone := ink
	if l.kind == cleanRow {
		codeTone = theme.Color(look.Plum)
	}
	noteTone := l.noteTone
	if noteTone == "" {
		noteTone = look.Quiet
	}
	set(v.code, l.code, look.Night.Points(), codeTone, true)
	set(v.main, l.main, look.Figure.Points(), ink, strong)
	set(v.note, l.note, look.Body.Points(), theme.Color(noteTone), noteTone == look.Plum)
	set(v.figure, l.figure, look.Night.Points(), ink, l.kind == bagRow || l.kind == stowedRow || l.kind == weighRow)
	if l.kind == cleanRow {
		v.main.TextSize = look.Lead.Points()
	}
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
