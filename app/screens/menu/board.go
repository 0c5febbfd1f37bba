package menu

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
	"sumpter/domain/trip"
)

// row is one line of the grid: a meal of a cook group.
type row struct {
	meal  trip.Meal
	group trip.GroupID
	title string
	under string // the group, where several are shown
}

// column is one day.
type column struct{ title, under string }

// hears is what the grid tells the screen.
type hears struct {
	facts    func(slot) facts
	selected func(k slot, tapped bool)
	choose   func()     // Enter
	search   func(rune) // a letter was typed
	erase    func()     // Delete
	lock     func()     // Space
	leave    func()     // Escape
	shortcut func(fyne.Shortcut)
	dropped  func(from, to slot, how transfer)
	refusal  func(from, to slot) string // why nothing can be dropped there
	how      func() transfer            // what a drop does now
}

// board is the grid of days and meals: days run left to right, the line of
// days and the column of meals stay in view.
type board struct {
	widget.BaseWidget
	hears   hears
	rows    []row
	columns []column
	cursor  place
	m       metrics
	fit     fitter
	sheet   *sheet
	scroll  *container.Scroll
	head    *labels
	side    *labels
}

func newBoard(h hears) *board {
	b := &board{hears: h, m: measure()}
	b.fit.set(b.m.cell.Width-b.m.inset-6, b.m.body)
	b.sheet = newSheet(b)
	b.scroll = container.NewScroll(b.sheet)
	b.head, b.side = newLabels(b.paintHead), newLabels(b.paintSide)
	b.scroll.OnScrolled = func(fyne.Position) { b.scrolled() }
	b.ExtendBaseWidget(b)
	return b
}

// show shows other rows and days; the cursor stays on its slot.
func (b *board) show(rows []row, columns []column) {
	current, had := b.slot(b.cursor)
	b.rows, b.columns = rows, columns
	if at, ok := b.placeOf(current); had && ok {
		b.cursor = at
	}
	b.cursor = b.held(b.cursor)
	b.Refresh()
}

// held keeps a place inside the grid.
func (b *board) held(at place) place {
	return place{max(0, min(at.row, len(b.rows)-1)), max(0, min(at.column, len(b.columns)-1))}
}

// slot gives the slot of a place; false outside the grid.
func (b *board) slot(at place) (slot, bool) {
	if at.row < 0 || at.row >= len(b.rows) || at.column < 0 || at.column >= len(b.columns) {
		return slot{}, false
	}
	return slot{at.column + 1, b.rows[at.row].meal, b.rows[at.row].group}, true
}

func (b *board) placeOf(k slot) (place, bool) {
	for i, r := range b.rows {
		if r.meal == k.meal && r.group == k.group && k.day >= 1 && k.day <= len(b.columns) {
			return place{i, k.day - 1}, true
		}
	}
	return place{}, false
}

// selected is the slot under the cursor.
func (b *board) selected() (slot, bool) { return b.slot(b.cursor) }

// moveTo puts the cursor on a place and brings it into view.
func (b *board) moveTo(at place, tapped bool) {
	if len(b.rows) == 0 || len(b.columns) == 0 {
		return
	}
	b.cursor = b.held(at)
	b.reveal(b.cursor)
	b.sheet.placeMarks()
	b.head.Refresh()
	if k, ok := b.selected(); ok {
		b.hears.selected(k, tapped)
	}
}

// reveal scrolls as little as needed to show a cell whole.
func (b *board) reveal(at place) {
	corner, size, offset := b.m.corner(at), b.scroll.Size(), b.scroll.Offset
	offset.X = max(min(offset.X, corner.X-rim), corner.X+b.m.pitch.Width-size.Width)
	offset.Y = max(min(offset.Y, corner.Y-rim), corner.Y+b.m.pitch.Height-size.Height)
	b.scrollTo(offset)
}

// scrollTo moves the view, within the grid.
func (b *board) scrollTo(offset fyne.Position) {
	size, whole := b.scroll.Size(), b.sheet.MinSize()
	offset.X = max(0, min(offset.X, whole.Width-size.Width))
	offset.Y = max(0, min(offset.Y, whole.Height-size.Height))
	if offset != b.scroll.Offset && size.Width > 0 {
		b.scroll.ScrollToOffset(offset)
		b.scrolled()
	}
}

func (b *board) scrolled() {
	b.head.inner.Move(fyne.NewPos(-b.scroll.Offset.X, 0))
	b.side.inner.Move(fyne.NewPos(0, -b.scroll.Offset.Y))
	b.sheet.recycle()
}

func (b *board) paintHead(add func(text string, x, y, width float32, caption bool, tone fyne.ThemeColorName)) fyne.Size {
	for i, day := range b.columns {
		x, tone := b.m.corner(place{0, i}).X, look.Ink
		if i == b.cursor.column {
			tone = look.Spruce
		}
		add(day.title, x+2, 2, b.m.cell.Width, false, tone)
		add(day.under, x+2, 2+b.m.line, b.m.cell.Width, true, look.Quiet)
	}
	return fyne.NewSize(float32(len(b.columns))*b.m.pitch.Width, b.m.head)
}

func (b *board) paintSide(add func(text string, x, y, width float32, caption bool, tone fyne.ThemeColorName)) fyne.Size {
	for i, r := range b.rows {
		y := b.m.corner(place{i, 0}).Y
		add(r.title, 4, y+5, b.m.side-8, false, look.Ink)
		add(r.under, 4, y+5+b.m.line, b.m.side-8, true, look.Quiet)
	}
	return fyne.NewSize(b.m.side, float32(len(b.rows))*b.m.pitch.Height)
}

// CreateRenderer lays out days above, meals at the left, the slots between.
func (b *board) CreateRenderer() fyne.WidgetRenderer {
	ground := canvas.NewRectangle(theme.Color(look.Ground))
	r := &boardRenderer{b: b, ground: ground, objects: []fyne.CanvasObject{ground, b.scroll, container.NewClip(b.head), container.NewClip(b.side)}}
	if size := b.Size(); !size.IsZero() {
		r.Layout(size) // made anew after it was hidden, it is not laid out again
	}
	return r
}

type boardRenderer struct {
	b       *board
	ground  *canvas.Rectangle
	objects []fyne.CanvasObject
}

func (r *boardRenderer) Destroy()                     {}
func (r *boardRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *boardRenderer) MinSize() fyne.Size           { return fyne.NewSize(300, 160) }

func (r *boardRenderer) Layout(size fyne.Size) {
	m := r.b.m
	r.ground.Resize(size)
	inner := fyne.NewSize(max(0, size.Width-m.side), max(0, size.Height-m.head))
	r.b.scroll.Move(fyne.NewPos(m.side, m.head))
	r.b.scroll.Resize(inner)
	r.objects[2].Move(fyne.NewPos(m.side, 0))
	r.objects[2].Resize(fyne.NewSize(inner.Width, m.head))
	r.objects[3].Move(fyne.NewPos(0, m.head))
	r.objects[3].Resize(fyne.NewSize(m.side, inner.Height))
	r.b.scrolled()
}

func (r *boardRenderer) Refresh() {
	b := r.b
	b.m = measure()
	b.fit.set(b.m.cell.Width-b.m.inset-6, b.m.body)
	r.ground.FillColor = theme.Color(look.Ground)
	r.Layout(b.Size())
	b.head.Refresh()
	b.side.Refresh()
	b.sheet.Refresh()
	b.scroll.Refresh()
}
