package grid

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/written"
)

// sheet is the toolkit's table with the keys of a spreadsheet.
type sheet struct {
	widget.Table
	key      func(*fyne.KeyEvent) bool
	typed    func(rune)
	shortcut func(fyne.Shortcut)
	focused  func(bool)
	tap      func(fyne.Position)
	tabs     func() bool
	sort     func()
	scroll   *container.Scroll // what scrolls, once it is drawn
	shift    bool
}

// TypedKey moves the cursor and opens the editor.
func (s *sheet) TypedKey(event *fyne.KeyEvent) {
	if !s.key(event) {
		s.Table.TypedKey(event)
	}
}

// TypedRune starts editing with the letter typed.
func (s *sheet) TypedRune(letter rune) { s.typed(letter) }

// TypedShortcut copies and pastes.
func (s *sheet) TypedShortcut(shortcut fyne.Shortcut) { s.shortcut(shortcut) }

// FocusGained shows the cursor. The toolkit's table, which would mark a cell of
// its own and refresh all others for it, is not told.
func (s *sheet) FocusGained() { s.focused(true) }

// FocusLost dims the cursor.
func (s *sheet) FocusLost() { s.focused(false) }

// SortByCursor sorts by the column of the cursor, as a tap on its head does.
func (s *sheet) SortByCursor() { s.sort() }

// Tapped puts the cursor on the cell under the pointer at once. With a
// DoubleTapped the toolkit would hold each tap back to see if another comes,
// and what is typed meanwhile would be lost.
func (s *sheet) Tapped(event *fyne.PointEvent) { s.tap(event.Position) }

// AcceptsTab keeps Tab in the table while a row is being typed in.
func (s *sheet) AcceptsTab() bool { return s.tabs() }

// KeyDown notes the shift key.
func (s *sheet) KeyDown(event *fyne.KeyEvent) { s.shift = s.shift || isShift(event) }

// KeyUp notes the shift key.
func (s *sheet) KeyUp(event *fyne.KeyEvent) { s.shift = s.shift && !isShift(event) }

func (g *Grid[R]) newSheet() *sheet {
	s := &sheet{key: g.typedKey, typed: g.typedRune, shortcut: g.typedShortcut, tap: g.tapped, sort: func() { g.SortBy(g.cursor.Col) }}
	s.tabs = func() bool { return g.row.begun }
	s.focused = func(on bool) {
		g.focused = on
		if !on {
			s.shift = false
		}
		g.repaintRow(g.cursor.Row)
	}
	s.Length = func() (int, int) {
		columns := len(g.columns)
		if spare := g.spareColumn(); spare > 0 {
			columns++ // blank, see reveal
		}
		return len(g.shown), columns
	}
	s.CreateCell = func() fyne.CanvasObject {
		c := newCell(g.options.RowHeight)
		c.held = g.held
		return c
	}
	s.UpdateCell = func(id widget.TableCellID, object fyne.CanvasObject) { g.paint(id, object.(*cell)) }
	s.ShowHeaderRow = true
	s.HideSeparators = true
	s.StickyColumnCount = g.options.Sticky
	s.CreateHeader = func() fyne.CanvasObject { return newHeader() }
	s.UpdateHeader = func(id widget.TableCellID, object fyne.CanvasObject) { g.paintHeader(id.Col, object.(*header)) }
	s.OnSelected = func(id widget.TableCellID) {
		g.moveTo(id)
		s.Unselect(id) // so that the next choice of it is heard too
	}
	return s
}

// paint fills a cell object, which the table uses again and again.
func (g *Grid[R]) paint(id widget.TableCellID, c *cell) {
	if id.Row >= len(g.shown) || id.Col >= len(g.columns) {
		delete(g.cells, c)
		c.show(cellLook{blank: true})
		return
	}
	g.cells[c] = id
	row, column := g.shown[id.Row], g.columns[id.Col]
	text := column.Text(row)
	if column.Right && g.decimals[id.Col] > 0 {
		text = withDecimals(text, g.decimals[id.Col], written.Bare("."))
	}
	look := cellLook{text: text, right: column.Right, striped: id.Row%2 == 1, inRow: id.Row == g.cursor.Row, atCursor: id == g.cursor, focused: g.focused, readOnly: !g.canEdit(row, column)}
	if g.options.Strong != nil {
		look.strong = g.options.Strong(row)
	}
	if column.Tone != nil {
		look.tone = column.Tone(row)
	}
	if c.held && g.held {
		look.text = ""
	}
	c.show(look)
}

func (g *Grid[R]) paintHeader(column int, h *header) {
	if column < 0 || column >= len(g.columns) {
		h.show("", "", false, unsorted, nil)
		return
	}
	order := unsorted
	if g.sortBy == column {
		order = rising
		if g.falling {
			order = falling
		}
	}
	c := g.columns[column]
	h.show(c.Title, c.Unit, c.Right, order, func() { g.SortBy(column) })
}

// moveTo puts the cursor on a cell; an open editor keeps what was typed.
func (g *Grid[R]) moveTo(id widget.TableCellID) {
	if len(g.shown) == 0 {
		return
	}
	if g.editor.open() && !g.store() {
		g.focus(g.editor) // a tap elsewhere took the keyboard from it
		return
	}
	old := g.cursor
	g.cursor = widget.TableCellID{Row: max(0, min(id.Row, len(g.shown)-1)), Col: max(0, min(id.Col, len(g.columns)-1))}
	g.repaintRow(old.Row)
	g.repaintRow(g.cursor.Row)
	if g.table.Size().Height > 0 { // before it is laid out, the toolkit would scroll past the cursor
		g.table.ScrollTo(g.cursor)
		g.reveal(g.cursor.Col)
	}
	if row, ok := g.Selected(); ok && g.options.OnSelect != nil {
		g.options.OnSelect(row)
	}
}

// repaintRow paints the cells that show a row. The toolkit's RefreshItem looks
// through all visible cells for each one.
func (g *Grid[R]) repaintRow(row int) {
	for c, id := range g.cells {
		if id.Row == row {
			g.paint(id, c)
		}
	}
}
