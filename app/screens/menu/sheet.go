package menu

import (
	"image/color"
	"iter"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// sheet draws the slots that are in view and takes keys, taps and drags.
type sheet struct {
	widget.BaseWidget
	b       *board
	shown   map[place]*cell
	spare   []*cell
	cells   *fyne.Container
	cursor  *canvas.Rectangle
	drag    drag
	focused bool
	ink     color.Color // of the theme the cells are drawn in
	laidOut metrics     // the sizes they are laid out for
	held    bool        // new cells wait until they are filled
}

func newSheet(b *board) *sheet {
	s := &sheet{b: b, shown: map[place]*cell{}, cells: &fyne.Container{}, cursor: canvas.NewRectangle(color.Transparent)}
	s.drag = newDrag()
	s.ExtendBaseWidget(s)
	return s
}

// recycle puts cells where the view has come to and takes them from where it
// left; what stays in view is not touched.
func (s *sheet) recycle() {
	first, last := s.inView()
	for at, c := range s.shown {
		if at.row < first.row || at.row > last.row || at.column < first.column || at.column > last.column {
			delete(s.shown, at)
			c.box.Hide()
			s.spare = append(s.spare, c)
		}
	}
	for r := first.row; r <= last.row; r++ {
		for c := first.column; c <= last.column; c++ {
			if at := (place{r, c}); s.shown[at] == nil {
				s.shown[at] = s.take()
				if s.held {
					s.shown[at].wait()
				}
				s.put(at)
			}
		}
	}
}

// inView gives the first and the last cell of which something can be seen.
func (s *sheet) inView() (first, last place) {
	offset, size, m := s.b.scroll.Offset, s.b.scroll.Size(), s.b.m
	if size.Width <= 0 || size.Height <= 0 || len(s.b.rows) == 0 {
		return place{0, 0}, place{-1, -1}
	}
	first, last = m.at(offset), m.at(offset.Add(size))
	last.row, last.column = min(last.row, len(s.b.rows)-1), min(last.column, len(s.b.columns)-1)
	return first, last
}

func (s *sheet) take() *cell {
	if n := len(s.spare); n > 0 {
		c := s.spare[n-1]
		s.spare = s.spare[:n-1]
		c.box.Show()
		c.waits = false
		return c
	}
	c := newCell()
	c.place(s.b.m)
	s.cells.Objects = append(s.cells.Objects, c.box)
	return c
}

// put moves and paints the cell object of a place.
func (s *sheet) put(at place) {
	c := s.shown[at]
	c.box.Move(s.b.m.corner(at))
	if k, ok := s.b.slot(at); ok && !c.waits {
		c.paint(s.b.hears.facts(k), s.b.m, &s.b.fit)
	}
}

// Hold takes the cells out of view until they are filled, since each has many
// texts.
func (s *sheet) Hold() {
	s.held = true
	for _, c := range s.shown {
		c.wait()
	}
}

// cellsAtOnce is how many cells one call of Fill fills.
const cellsAtOnce = 6

// Fill brings some cells into view, row by row, and tells whether any are left.
func (s *sheet) Fill() bool {
	filled := 0
	for at := range s.waiting() {
		c := s.shown[at]
		c.waits = false
		c.box.Show()
		s.put(at)
		if filled++; filled == cellsAtOnce {
			return true
		}
	}
	s.held = false
	return false
}

// waiting goes through the places of the cells that wait, row by row.
func (s *sheet) waiting() iter.Seq[place] {
	return func(yield func(place) bool) {
		first, last := s.inView()
		for r := first.row; r <= last.row; r++ {
			for column := first.column; column <= last.column; column++ {
				at := place{r, column}
				if c := s.shown[at]; c != nil && c.waits && !yield(at) {
					return
				}
			}
		}
	}
}

// repaint shows what is in view anew; only what changed is drawn again.
func (s *sheet) repaint() {
	s.recycle()
	for at := range s.shown {
		s.put(at)
	}
}

func (s *sheet) placeMarks() {
	s.cursor.StrokeColor, s.cursor.StrokeWidth, s.cursor.CornerRadius = theme.Color(look.Spruce), 2, 4
	if s.focused {
		s.cursor.StrokeWidth = 3
	}
	s.cursor.Move(s.b.m.corner(s.b.cursor).SubtractXY(2, 2))
	s.cursor.Resize(s.b.m.cell.AddWidthHeight(4, 4))
	show(s.cursor, len(s.b.rows) > 0)
	s.cursor.Refresh()
}

// Tapped puts the cursor on a slot; on the one it is on already, it opens
// the choice of a dish.
func (s *sheet) Tapped(event *fyne.PointEvent) {
	at := s.b.m.at(event.Position)
	if _, ok := s.b.slot(at); !ok {
		return
	}
	again := at == s.b.cursor && s.focused
	s.focus()
	s.b.moveTo(at, true)
	if again {
		s.b.hears.choose()
	}
}

func (s *sheet) focus() {
	if c := fyne.CurrentApp().Driver().CanvasForObject(s); c != nil {
		c.Focus(s)
	}
}

// FocusGained makes the cursor stand out.
func (s *sheet) FocusGained() { s.focused = true; s.placeMarks() }

// FocusLost makes it calm.
func (s *sheet) FocusLost() { s.focused = false; s.placeMarks() }

// TypedRune looks for recipes from the first letter on.
func (s *sheet) TypedRune(letter rune) {
	if letter != ' ' {
		s.b.hears.search(letter)
	}
}

// TypedShortcut copies, cuts and pastes.
func (s *sheet) TypedShortcut(shortcut fyne.Shortcut) { s.b.hears.shortcut(shortcut) }

// TypedKey moves the cursor and does what the key is for.
func (s *sheet) TypedKey(event *fyne.KeyEvent) {
	at := s.b.cursor
	switch event.Name {
	case fyne.KeyUp:
		at.row--
	case fyne.KeyDown:
		at.row++
	case fyne.KeyLeft:
		at.column--
	case fyne.KeyRight:
		at.column++
	case fyne.KeyHome:
		at.column = 0
	case fyne.KeyEnd:
		at.column = len(s.b.columns) - 1
	case fyne.KeyPageUp:
		at.column -= week
	case fyne.KeyPageDown:
		at.column += week
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeyF2:
		s.b.hears.choose()
		return
	case fyne.KeyDelete, fyne.KeyBackspace:
		s.b.hears.erase()
		return
	case fyne.KeySpace:
		s.b.hears.lock()
		return
	case fyne.KeyEscape:
		s.stopDrag()
		s.b.hears.leave()
		return
	default:
		return
	}
	s.b.moveTo(at, false)
}

// week is how many days Page Up and Page Down go.
const week = 7

// Cursor tells with the pointer that cells can be taken hold of.
func (s *sheet) Cursor() desktop.Cursor { return desktop.PointerCursor }

// CreateRenderer shows cells, cursor and what is dragged, in this order.
func (s *sheet) CreateRenderer() fyne.WidgetRenderer {
	return &sheetRenderer{s: s, objects: append([]fyne.CanvasObject{s.cells, s.cursor}, s.drag.objects()...)}
}

type sheetRenderer struct {
	s       *sheet
	objects []fyne.CanvasObject
}

func (r *sheetRenderer) Destroy()                     {}
func (r *sheetRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *sheetRenderer) Layout(size fyne.Size)        { r.s.cells.Resize(size) }

func (r *sheetRenderer) MinSize() fyne.Size {
	b := r.s.b
	return fyne.NewSize(float32(len(b.columns))*b.m.pitch.Width+rim, float32(len(b.rows))*b.m.pitch.Height+rim)
}

// Refresh shows what changed; where the theme or the size of text is another,
// everything is laid out and drawn anew.
func (r *sheetRenderer) Refresh() {
	s := r.s
	if ink := theme.Color(look.Ink); s.ink != ink || s.laidOut != s.b.m {
		s.ink, s.laidOut = ink, s.b.m
		for _, c := range slices.Concat(s.spare, values(s.shown)) {
			c.place(s.b.m)
			for _, image := range slices.Concat(c.signs, []*canvas.Image{c.lock}) {
				image.Refresh()
			}
		}
	}
	s.repaint()
	s.placeMarks()
}

func values(cells map[place]*cell) []*cell {
	var list []*cell
	for _, c := range cells {
		list = append(list, c)
	}
	return list
}
