package grid

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// rowEntry is a row being typed in, cell by cell with Tab, as in a spreadsheet:
// Return then goes on below the cell it began with. While it lasts, Tab stays
// in the table; otherwise it leads out of it.
type rowEntry struct {
	begun bool
	first int // the column it began with
}

// tab goes to the next cell that can be edited, to the right or left, and on
// to the next row at the end of one. It tells whether there was one.
func (g *Grid[R]) tab(columns int) bool {
	entry := g.row
	if !entry.begun {
		entry = rowEntry{begun: true, first: g.cursor.Col}
	}
	row, column := g.cursor.Row, g.editableFrom(g.cursor.Row, g.cursor.Col+columns, columns)
	if column < 0 && row+columns >= 0 && row+columns < len(g.shown) {
		row += columns
		from := 0
		if columns < 0 {
			from = len(g.columns) - 1
		}
		column = g.editableFrom(row, from, columns)
		entry.first = max(0, g.editableFrom(row, 0, 1))
	}
	if column < 0 {
		return false
	}
	g.moveTo(widget.TableCellID{Row: row, Col: column})
	g.row = entry
	return true
}

// nextRow goes up or down after an edit, below the cell the row began with.
func (g *Grid[R]) nextRow(rows int) {
	at := widget.TableCellID{Row: g.cursor.Row + rows, Col: g.cursor.Col}
	if g.row.begun {
		at.Col = g.row.first
	}
	g.row = rowEntry{}
	g.moveTo(at)
}

// typedTab goes on in a row, and out of the table at its end.
func (g *Grid[R]) typedTab() {
	columns := 1
	if g.table.shift {
		columns = -1
	}
	if g.tab(columns) {
		return
	}
	g.row = rowEntry{}
	if c := fyne.CurrentApp().Driver().CanvasForObject(g.table); c != nil {
		if columns < 0 {
			c.FocusPrevious()
		} else {
			c.FocusNext()
		}
	}
}

// editableFrom is the first column from one on, in steps, in which a row can
// be edited, -1 if there is none.
func (g *Grid[R]) editableFrom(row, column, step int) int {
	for ; column >= 0 && column < len(g.columns); column += step {
		if g.canEdit(g.shown[row], g.columns[column]) {
			return column
		}
	}
	return -1
}
