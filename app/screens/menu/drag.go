package menu

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"

	"sumpter/app/look"
)

// transfer is what happens to the dishes of two slots.
type transfer string

// Transfers.
const (
	swapping transfer = "swap"
	moving   transfer = "move"
	copying  transfer = "copy"
)

// drag is a slot on its way to another.
type drag struct {
	on       bool
	pressed  fyne.Position
	from, to slot
	allowed  bool
	target   *canvas.Rectangle
	card     *canvas.Rectangle
	text     *canvas.Text
}

func newDrag() drag {
	d := drag{target: canvas.NewRectangle(color.Transparent), card: canvas.NewRectangle(color.Transparent), text: canvas.NewText("", color.Transparent)}
	for _, object := range d.objects() {
		object.Hide()
	}
	return d
}

func (d *drag) objects() []fyne.CanvasObject { return []fyne.CanvasObject{d.target, d.card, d.text} }

// MouseDown remembers where a drag may begin.
func (s *sheet) MouseDown(event *desktop.MouseEvent) { s.drag.pressed = event.Position }

// MouseUp is there for the toolkit's sake.
func (s *sheet) MouseUp(*desktop.MouseEvent) {}

// Dragged carries the slot under the pointer and marks where it would land.
func (s *sheet) Dragged(event *fyne.DragEvent) {
	if !s.drag.on && !s.beginDrag(event) {
		return
	}
	s.follow(event.Position)
	to, ok := s.b.slot(s.b.m.at(event.Position))
	s.drag.to, s.drag.allowed = to, ok && to != s.drag.from
	text := ""
	if s.drag.allowed {
		if text = s.b.hears.refusal(s.drag.from, to); text != "" {
			s.drag.allowed = false
		} else {
			text = lang.L(string(s.b.hears.how()))
		}
	}
	s.showDrag(event.Position, ok, text)
}

func (s *sheet) beginDrag(event *fyne.DragEvent) bool {
	start := s.drag.pressed
	if start.IsZero() {
		start = event.Position.SubtractXY(event.Dragged.DX, event.Dragged.DY)
	}
	from, ok := s.b.slot(s.b.m.at(start))
	if !ok || s.b.hears.facts(from).state < proposed {
		return false
	}
	s.focus()
	s.b.moveTo(s.b.m.at(start), false)
	s.drag.on, s.drag.from = true, from
	return true
}

// edge is how near to the rim a drag must come to move the view.
const edge float32 = 28

// follow scrolls when the pointer comes to the rim of the view.
func (s *sheet) follow(at fyne.Position) {
	offset, size := s.b.scroll.Offset, s.b.scroll.Size()
	switch {
	case at.X-offset.X > size.Width-edge:
		offset.X += edge
	case at.X-offset.X < edge:
		offset.X -= edge
	}
	switch {
	case at.Y-offset.Y > size.Height-edge:
		offset.Y += edge
	case at.Y-offset.Y < edge:
		offset.Y -= edge
	}
	s.b.scrollTo(offset)
}

// showDrag moves the frame to the target and the card to the pointer.
func (s *sheet) showDrag(at fyne.Position, over bool, text string) {
	d, m := &s.drag, s.b.m
	tone := look.Spruce
	if text != "" && !d.allowed {
		tone = look.Brick
	}
	show(d.target, over && d.to != d.from)
	d.target.StrokeColor, d.target.StrokeWidth, d.target.CornerRadius = theme.Color(tone), 4, 4
	target := m.corner(m.at(at))
	d.target.Move(target.SubtractXY(3, 3))
	d.target.Resize(m.cell.AddWidthHeight(6, 6))
	d.card.FillColor, d.card.StrokeColor, d.card.StrokeWidth, d.card.CornerRadius = theme.Color(look.Wash), theme.Color(tone), 2, 3
	label := s.b.hears.facts(d.from).dishes
	if text != "" {
		label = text + ": " + label
	}
	d.text.Text, d.text.TextSize, d.text.Color = firstLine(label), m.caption, theme.Color(look.Ink)
	size := d.text.MinSize()
	d.card.Move(at.AddXY(14, 10))
	d.card.Resize(size.AddWidthHeight(16, 10))
	d.text.Move(at.AddXY(22, 15))
	d.text.Resize(size)
	show(d.card, true)
	show(d.text, true)
	for _, object := range d.objects() {
		object.Refresh()
	}
}

func firstLine(text string) string {
	for i, letter := range text {
		if letter == '\n' {
			return text[:i] + " …"
		}
	}
	return text
}

// DragEnd drops the slot where the pointer is.
func (s *sheet) DragEnd() {
	d := s.drag
	s.stopDrag()
	if d.on && d.allowed {
		s.b.hears.dropped(d.from, d.to, s.b.hears.how())
		if at, ok := s.b.placeOf(d.to); ok {
			s.b.moveTo(at, false)
		}
	}
}

func (s *sheet) stopDrag() {
	s.drag.on, s.drag.allowed, s.drag.pressed = false, false, fyne.Position{}
	for _, object := range s.drag.objects() {
		object.Hide()
	}
}
