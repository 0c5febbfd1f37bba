package grid

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// tap is where and when the pointer last tapped a cell.
type tap struct {
	on widget.TableCellID
	at time.Time
}

// tapped puts the cursor on the cell under the pointer; a second tap soon
// after opens the editor.
func (g *Grid[R]) tapped(at fyne.Position) {
	id, ok := g.cellAt(at)
	if !ok {
		return
	}
	g.focus(g.table)
	g.row = rowEntry{}
	g.moveTo(id)
	last := g.lastTap
	g.lastTap = tap{on: id, at: g.now()}
	if g.cursor == id && !g.editor.open() && last.on == id && g.lastTap.at.Sub(last.at) < fyne.CurrentApp().Driver().DoubleTapDelay() {
		g.lastTap = tap{}
		g.openEditor()
	}
}

// cellAt is the cell at a place of the table, by where the toolkit lays the
// columns (see reveal), which is not where it looks for a tapped one. The gap
// behind a cell counts as the cell.
func (g *Grid[R]) cellAt(at fyne.Position) (widget.TableCellID, bool) {
	none := widget.TableCellID{Row: -1, Col: -1}
	scroll, pitch := g.table.scroll, g.rowPitch()
	if scroll == nil || len(g.widths) == 0 {
		return none, false
	}
	y := at.Y - scroll.Position().Y
	if y < 0 || at.Y >= g.table.Size().Height || at.X < 0 || at.X >= g.table.Size().Width {
		return none, false
	}
	row := int((y + scroll.Offset.Y) / pitch)
	column := g.columnAt(at.X)
	if row >= len(g.shown) || column < 0 {
		return none, false
	}
	return widget.TableCellID{Row: row, Col: column}, true
}

// rowPitch is how far the rows are apart.
func (g *Grid[R]) rowPitch() float32 {
	return g.options.RowHeight + cellGap()
}

// columnAt is the column at a place of the table, -1 if there is none.
func (g *Grid[R]) columnAt(x float32) int {
	sticky, scroll := g.options.Sticky, g.table.scroll
	gap := cellGap()
	if x < g.startOf(sticky) {
		for column := range sticky {
			if x < g.startOf(column+1) {
				return column
			}
		}
	}
	x += scroll.Offset.X - scroll.Position().X
	for column := g.firstAt(scroll.Offset.X); column < len(g.widths); column++ {
		if start := g.laidAt(column, scroll.Offset.X); x >= start && x < start+g.widths[column]+gap {
			return column
		}
	}
	return -1
}
