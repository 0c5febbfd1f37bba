package packing

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// pageRows is how far Page Up and Page Down go.
const pageRows = 10

// tickWidth is how far from the left edge a tap ticks off instead of choosing.
const tickWidth float32 = 56

// list is the evening, one big row below the other. Space ticks off, the
// arrows move, a digit starts to look for a code.
type list struct {
	widget.Table
	rows    []row
	draw    func(row) rowLook
	cursor  int
	focused bool    // the list has the keyboard
	narrow  bool    // rows have their texts below the code
	tapped  float32 // where the last tap was, from the left

	onSelect func(row)
	onTick   func(row)
	onOpen   func()
	onDigit  func(rune)
}

func newList(draw func(row) rowLook) *list {
	l := &list{draw: draw, cursor: -1}
	l.Length = func() (int, int) { return len(l.rows), 1 }
	l.CreateCell = func() fyne.CanvasObject {
		v := newRowView()
		v.least = rowHeight(l.narrow)
		return v
	}
	l.UpdateCell = l.paint
	l.HideSeparators = true
	l.OnSelected = func(id widget.TableCellID) {
		l.Unselect(id) // so that the next tap on it is heard too
		l.tap(id.Row)
	}
	l.ExtendBaseWidget(l)
	return l
}

// setRows shows other rows; the cursor stays on its row, or where that was.
func (l *list) setRows(rows []row) {
	key := ""
	if r, ok := l.selected(); ok {
		key = r.key()
	}
	l.rows = rows
	at := slices.IndexFunc(rows, func(r row) bool { return key != "" && r.key() == key })
	if at < 0 {
		at = l.nearest(max(0, l.cursor), 1)
	}
	l.cursor = at
	l.Refresh()
}

func (l *list) selected() (row, bool) {
	if l.cursor < 0 || l.cursor >= len(l.rows) {
		return row{}, false
	}
	return l.rows[l.cursor], true
}

func (l *list) paint(id widget.TableCellID, object fyne.CanvasObject) {
	if id.Row < len(l.rows) {
		drawn := l.draw(l.rows[id.Row])
		drawn.atCursor, drawn.focused = id.Row == l.cursor, id.Row == l.cursor && l.focused
		object.(*rowView).show(drawn)
	}
}

// Resize gives the one column the whole width, and rows the height they need in
// it.
func (l *list) Resize(size fyne.Size) {
	l.SetColumnWidth(0, max(100, size.Width))
	l.Table.Resize(size)
	if narrow := isNarrow(size.Width); narrow != l.narrow {
		l.narrow = narrow
		l.Refresh()
		l.reveal()
	}
}

// Tapped notes where in the row the tap was.
func (l *list) Tapped(event *fyne.PointEvent) {
	l.tapped = event.Position.X
	l.Table.Tapped(event)
}

func (l *list) tap(at int) {
	if at < 0 || at >= len(l.rows) || !l.rows[at].canStand() {
		return
	}
	l.moveTo(at)
	if l.tapped < tickWidth {
		l.tick()
	}
}

func (l *list) tick() {
	if r, ok := l.selected(); ok {
		l.onTick(r)
	}
}

// nearest gives the first row from a place on where the cursor may stand, in
// a direction, else in the other; -1 if there is none.
func (l *list) nearest(from, step int) int {
	from = max(0, min(from, len(l.rows)-1)) // fewer rows may be shown than before
	for _, direction := range []int{step, -step} {
		for at := from; at >= 0 && at < len(l.rows); at += direction {
			if l.rows[at].canStand() {
				return at
			}
		}
	}
	return -1
}

func (l *list) moveTo(at int) {
	if at < 0 || at >= len(l.rows) {
		return
	}
	old := l.cursor
	l.cursor = at
	if old >= 0 {
		l.RefreshItem(widget.TableCellID{Row: old})
	}
	l.RefreshItem(widget.TableCellID{Row: at})
	l.reveal()
	l.onSelect(l.rows[at])
}

// reveal scrolls to the cursor, with the row above it, which may be a head.
func (l *list) reveal() {
	l.ScrollTo(widget.TableCellID{Row: max(0, l.cursor-1)})
	l.ScrollTo(widget.TableCellID{Row: min(len(l.rows)-1, l.cursor+1)})
	l.ScrollTo(widget.TableCellID{Row: l.cursor})
}

// selectKey puts the cursor on a row; false if it is not shown.
func (l *list) selectKey(key string) bool {
	at := slices.IndexFunc(l.rows, func(r row) bool { return r.key() == key })
	if at < 0 {
		return false
	}
	l.moveTo(at)
	return true
}

// step moves over rows where nothing can be ticked.
func (l *list) step(by int) {
	direction := 1
	if by < 0 {
		direction = -1
	}
	l.moveTo(l.nearest(l.cursor+by, direction))
}

// TypedKey moves, ticks and opens.
func (l *list) TypedKey(event *fyne.KeyEvent) {
	switch event.Name {
	case fyne.KeyUp:
		l.step(-1)
	case fyne.KeyDown:
		l.step(1)
	case fyne.KeyPageUp:
		l.step(-pageRows)
	case fyne.KeyPageDown:
		l.step(pageRows)
	case fyne.KeyHome:
		l.moveTo(l.nearest(0, 1))
	case fyne.KeyEnd:
		l.moveTo(l.nearest(len(l.rows)-1, -1))
	case fyne.KeySpace:
		l.tick()
	case fyne.KeyReturn, fyne.KeyEnter:
		l.onOpen()
	}
}

// TypedRune starts to look for a bag by its code.
func (l *list) TypedRune(letter rune) {
	if letter >= '0' && letter <= '9' {
		l.onDigit(letter)
	}
}

// FocusGained makes the cursor stand out.
func (l *list) FocusGained() {
	l.focused = true
	l.Table.FocusGained()
	l.RefreshItem(widget.TableCellID{Row: max(0, l.cursor)})
}

// FocusLost makes it calm.
func (l *list) FocusLost() {
	l.focused = false
	l.Table.FocusLost()
	l.RefreshItem(widget.TableCellID{Row: max(0, l.cursor)})
}

// MinSize is small: the list scrolls.
func (l *list) MinSize() fyne.Size { return fyne.NewSize(320, 4*look.NightHeight) }
