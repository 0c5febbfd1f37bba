package grid

import (
	"strings"

	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/written"
	"sumpter/domain/prose"
)

// mostPasted bounds a paste: no trip has more cells in one table.
const mostPasted = 50_000

// Paste fills cells from the cursor on with text as a spreadsheet copies it:
// tab between cells, a line a row. Rows that are missing at the end are added
// where rows can be added. The first cell that cannot be stored stops it.
func (g *Grid[R]) Paste(text string) {
	lines := strings.Split(strings.TrimRight(strings.ReplaceAll(text, "\r\n", "\n"), "\n"), "\n")
	start := g.cursor
	var cells []Pasted[R]
	for i, line := range lines {
		row := start.Row + i
		if row >= len(g.shown) && !g.addAtEnd() {
			g.problem(lang.X("rows-without-place", "{{.Left}} of {{.All}} pasted rows have no place here.", map[string]any{"Left": len(lines) - i, "All": len(lines)}))
			break
		}
		for j, value := range strings.Split(line, "\t") {
			column := start.Col + j
			if column < len(g.columns) && g.columns[column].Set != nil && len(cells) < mostPasted {
				cells = append(cells, Pasted[R]{Row: g.shown[row], Column: column, Text: strings.TrimSpace(value)})
			}
		}
	}
	if err := g.setAll(cells); err != nil {
		g.problem(written.Error(err))
		return
	}
	g.table.Refresh()
}

func (g *Grid[R]) addAtEnd() bool {
	if g.options.OnAdd == nil || g.filter != "" {
		return false
	}
	before := len(g.shown)
	if _, err := g.options.OnAdd(); err != nil {
		g.problem(written.Error(err))
		return false
	}
	return len(g.shown) > before
}

func (g *Grid[R]) setAll(cells []Pasted[R]) error {
	if g.options.OnPaste != nil {
		return g.options.OnPaste(cells)
	}
	for _, cell := range cells {
		if err := g.columns[cell.Column].Set(cell.Row, cell.Text); err != nil {
			return prose.Errorf("%s: %s", g.columns[cell.Column].Title, err)
		}
	}
	return nil
}

// Cursor gives the row and column the cursor is on.
func (g *Grid[R]) Cursor() (row, column int) { return g.cursor.Row, g.cursor.Col }

// MoveCursor puts the cursor on a cell.
func (g *Grid[R]) MoveCursor(row, column int) {
	g.moveTo(widget.TableCellID{Row: row, Col: column})
}
