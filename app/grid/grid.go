// Package grid is the table of every screen: columns as data, sorting,
// filtering, a cursor for the keyboard, editing in place, copy to and paste
// from a spreadsheet. It owns no data and knows nothing of trips: it asks for
// rows and tells what the user wants.
package grid

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/look"
)

// Column is one column of a table of rows of type R.
type Column[R any] struct {
	Title string
	// Also are other heads that a pasted table may have for this column.
	Also []string
	// AlsoIn are heads whose numbers are told in another way than the column's,
	// with the word that Set is given behind them.
	AlsoIn map[string]string
	// Needed tells that a pasted new row must fill this column: there is nothing
	// it could hold otherwise.
	Needed bool
	Unit   string // shown thin beside the title, never in the cells
	Width  float32
	Right  bool // numbers stand right
	// Text gives what the cell shows.
	Text func(R) string
	// Tone gives the colour of the text; nil is ink.
	Tone func(R) fyne.ThemeColorName
	// Compare orders rows by this column; nil compares the texts.
	Compare func(a, b R) int
	// EditText gives what the editor starts from; nil takes Text.
	EditText func(R) string
	// Set stores what the user typed and says in plain words why it cannot be
	// stored. Nil: the column cannot be edited.
	Set func(row R, text string) error
	// Choices lists what may be stored, offered while typing. Nil: anything.
	Choices func(R) []string
}

// Options of a table.
type Options[R any] struct {
	// Key names a row for good, so that cursor and editor stay on it.
	Key func(R) string
	// OnSelect hears which row the cursor is on.
	OnSelect func(R)
	// OnOpen hears that a row was activated where nothing can be edited.
	OnOpen func(R)
	// OnLetter hears a letter typed on a row and tells whether it meant
	// something; nil, or false: it begins an edit.
	OnLetter func(R, rune) bool
	// OnAdd makes a new row and gives its key; nil: rows cannot be added.
	OnAdd func() (key string, err error)
	// OnTick hears that Space was pressed on a row, to tick it off; nil: Space
	// types into the cell as any letter does.
	OnTick func(R)
	// Group keeps rows together whatever they are sorted by: lower numbers
	// first. Nil: they are all one group.
	Group func(R) int
	// Strong marks rows that head others; nil: none do.
	Strong func(R) bool
	// ReadOnly marks rows in which nothing can be edited; nil: every row can.
	ReadOnly func(R) bool
	// OnDelete removes rows; nil: rows cannot be removed.
	OnDelete func(R) error
	// Naming is the column that names a row: a pasted line goes to the row that
	// has its text there.
	Naming int
	// OnNew adds the row of a pasted line that has none, and gives its key. Nil
	// takes OnAdd.
	OnNew func() (key string, err error)
	// OnAdded says what is to be known of rows that a paste added.
	OnAdded func() string
	// OnTable is asked first of a pasted table: it takes one whose lines are no
	// rows of this table, and says so. Nil: none is.
	OnTable func(heads []string) (taken bool)
	// HeadOf writes a pasted head as the columns do: its title, the unit in
	// brackets behind it. Nil: as it stands.
	HeadOf func(head string) string
	// OnPaste takes many cells in one step, so that they are undone as one:
	// it is given each target row and column with its text. Nil: cells are set
	// one after another.
	OnPaste func(cells []Pasted[R]) error
	// Together makes what a paste adds and changes one step of undo, all of it or
	// nothing. Nil: added rows are steps of their own.
	Together func(steps func() error) error
	// OnProblem shows why something could not be done. Empty text takes it back.
	OnProblem func(text string)
	// RowHeight is 0 for the usual.
	RowHeight float32
	// Sticky is how many columns stay in view.
	Sticky int
	// Clipboard gives the system's; nil: no copy and paste.
	Clipboard func() fyne.Clipboard
}

// Pasted is one cell of a paste.
type Pasted[R any] struct {
	Row    R
	Column int
	Text   string
}

// Grid is the table on the screen.
type Grid[R any] struct {
	widget.BaseWidget
	columns []Column[R]
	options Options[R]
	rows    []R // as given
	shown   []R // filtered and sorted
	filter  string
	sortBy  int // column, -1 for the given order
	falling bool

	table  *sheet
	editor *editor
	offers *offers
	stack  *fyne.Container
	cursor widget.TableCellID
	// started is what the open editor began from.
	started string
	cells   map[*cell]widget.TableCellID // which cell object shows which cell
	widths  []float32                    // of the columns, once they are given
	fitted  bool                         // the choices have room
	focused bool                         // the table has the keyboard
	held    bool                         // new cells are kept empty
	toFill  []*cell                      // held cells in the order they are filled
	// decimals are those of each column's figures.
	decimals []int
	row      rowEntry
	lastTap  tap
	now      func() time.Time
}

// New makes an empty table.
func New[R any](columns []Column[R], options Options[R]) *Grid[R] {
	if options.RowHeight == 0 {
		options.RowHeight = look.RowHeight
	}
	options.RowHeight *= look.Scale() // taken when the table is made
	g := &Grid[R]{columns: columns, options: options, sortBy: -1, cells: map[*cell]widget.TableCellID{}, now: time.Now}
	g.ExtendBaseWidget(g)
	g.table = g.newSheet()
	g.editor = newEditor(g.commit, g.cancel)
	g.offers = newOffers(func() { g.commit(step{}); g.Focus() })
	g.editor.offers = g.offers
	g.editor.OnChanged = func(string) { g.offer(true) }
	return g
}

// CreateRenderer shows the table with the editor above it. Only now the
// columns get their widths, for which every head is measured: a table that is
// never seen costs nothing.
func (g *Grid[R]) CreateRenderer() fyne.WidgetRenderer {
	if g.stack == nil {
		g.giveWidths()
		g.table.ExtendBaseWidget(g.table) // earlier, each width would refresh it
		tight := container.NewThemeOverride(g.table, look.Tight{Theme: fyne.CurrentApp().Settings().Theme()})
		g.stack = container.NewStack(tight, container.NewWithoutLayout(g.editor, g.offers))
	}
	return widget.NewSimpleRenderer(g.stack)
}

// SetRows shows other rows. The cursor stays on the row of the same key, and
// an open editor is closed only if its row is gone.
func (g *Grid[R]) SetRows(rows []R) {
	current, had := g.Selected()
	first := len(g.rows) == 0
	g.rows = rows
	if g.stack != nil {
		g.fitChoices()
	}
	if first { // its columns never had the room for what is in them
		g.stretch()
	}
	g.alignDecimals()
	g.arrange()
	if had {
		if row := g.rowOf(g.options.Key(current)); row >= 0 {
			g.cursor.Row = row
		} else if g.editor.open() {
			g.dropAway()
		}
	}
	g.cursor.Row = max(0, min(g.cursor.Row, len(g.shown)-1))
	if g.table.Size().Height > 0 { // else there is nothing to see yet
		g.table.Refresh()
	}
}

// Rows gives the rows as shown: filtered and sorted.
func (g *Grid[R]) Rows() []R { return g.shown }

// Selected gives the row the cursor is on.
func (g *Grid[R]) Selected() (R, bool) {
	if g.cursor.Row < 0 || g.cursor.Row >= len(g.shown) {
		var none R
		return none, false
	}
	return g.shown[g.cursor.Row], true
}

// SelectKey puts the cursor on the row of a key.
func (g *Grid[R]) SelectKey(key string) bool {
	row := g.rowOf(key)
	if row < 0 {
		return false
	}
	g.moveTo(widget.TableCellID{Row: row, Col: g.cursor.Col})
	return true
}

// Filter shows only rows in which some cell holds every word of the text, and
// tells if the cursor is on another row by that.
func (g *Grid[R]) Filter(text string) {
	before, had := g.Selected()
	g.filter = strings.ToLower(strings.TrimSpace(text))
	g.SetRows(g.rows)
	now, has := g.Selected()
	if has && g.options.OnSelect != nil && (!had || g.options.Key(now) != g.options.Key(before)) {
		g.options.OnSelect(now)
	}
}

// SortBy sorts by a column; the same column again turns the order, a third
// time gives back the rows as they came.
func (g *Grid[R]) SortBy(column int) {
	switch {
	case g.sortBy != column:
		g.sortBy, g.falling = column, false
	case !g.falling:
		g.falling = true
	default:
		g.sortBy, g.falling = -1, false
	}
	g.SetRows(g.rows)
}

func (g *Grid[R]) rowOf(key string) int {
	return slices.IndexFunc(g.shown, func(row R) bool { return g.options.Key(row) == key })
}

// arrange filters and sorts the rows.
func (g *Grid[R]) arrange() {
	g.shown = g.shown[:0:0]
	words := strings.Fields(g.filter)
	for _, row := range g.rows {
		if g.matches(row, words) {
			g.shown = append(g.shown, row)
		}
	}
	if g.sortBy < 0 {
		return
	}
	compare := g.compare()
	slices.SortStableFunc(g.shown, func(a, b R) int {
		if g.options.Group != nil {
			if c := cmp.Compare(g.options.Group(a), g.options.Group(b)); c != 0 {
				return c
			}
		}
		if g.falling {
			return compare(b, a)
		}
		return compare(a, b)
	})
}

func (g *Grid[R]) compare() func(a, b R) int {
	column := g.columns[g.sortBy]
	if column.Compare != nil {
		return column.Compare
	}
	return func(a, b R) int {
		return strings.Compare(strings.ToLower(column.Text(a)), strings.ToLower(column.Text(b)))
	}
}

func (g *Grid[R]) matches(row R, words []string) bool {
	for _, word := range words {
		if !slices.ContainsFunc(g.columns, func(c Column[R]) bool { return strings.Contains(strings.ToLower(c.Text(row)), word) }) {
			return false
		}
	}
	return true
}

// canEdit tells whether a cell takes what is typed.
func (g *Grid[R]) canEdit(row R, column Column[R]) bool {
	return column.Set != nil && (g.options.ReadOnly == nil || !g.options.ReadOnly(row))
}

func (g *Grid[R]) problem(text string) {
	if g.options.OnProblem != nil {
		g.options.OnProblem(text)
	}
}
