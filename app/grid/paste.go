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

// Paste takes a table as a spreadsheet copies it: tab between cells, a line a
// row. If its first line names columns of this table, each cell goes to the
// column of its head, and each line to the row that it names, else to a new row. Without heads the cells fill the table from the cursor
// on. All of it is stored, or nothing.
func (g *Grid[R]) Paste(text string) {
	lines := pastedLines(text)
	if len(lines) == 0 || len(lines) > 1 && g.options.OnTable != nil && g.options.OnTable(lines[0]) {
		return
	}
	p := pasting[R]{grid: g, start: g.cursor, lines: lines}
	p.readHeads()
	together := g.options.Together
	if together == nil {
		together = func(steps func() error) error { return steps() }
	}
	if err := together(p.store); err != nil {
		g.problem(lang.X("nothing-pasted", "Nothing was pasted. {{.Why}}", map[string]any{"Why": written.Error(err)}))
		return
	}
	g.problem(p.report())
	g.table.Refresh()
	if row := g.rowOf(p.first); p.first != "" && row >= 0 { // after the report, which may take room from the table
		g.moveTo(widget.TableCellID{Row: row, Col: g.cursor.Col})
	}
}

// pasting is one paste on its way into the table.
type pasting[R any] struct {
	grid  *Grid[R]
	start widget.TableCellID
	lines [][]string
	heads []head // of the columns of the pasted table; nil: it has none

	added, changed, homeless int
	first                    string // key of the first row that was added
	beyond                   int    // columns right of the last
	unknown                  []string
	fixed                    []string // heads of columns that cannot be typed in
	twice                    []string // heads of columns that another head fills
}

// store finds the row of each line, adds those that are missing, and stores
// the cells.
func (p *pasting[R]) store() error {
	g := p.grid
	taken := map[string]bool{}
	var cells []Pasted[R]
	for i, line := range p.lines {
		if p.heads != nil && isBlank(line) {
			continue
		}
		before := p.added
		key, ok, err := p.rowOf(i, line, taken)
		if err != nil {
			return err
		}
		if !ok {
			p.homeless++
			continue
		}
		added := p.added > before
		if added {
			if err := p.lacking(i, line); err != nil {
				return err
			}
		}
		taken[key] = true
		row := g.shown[g.rowOf(key)]
		for j, text := range line {
			into := p.column(j)
			if into.column < 0 || into.column >= len(g.columns) || !added && j == p.naming() {
				continue // a row is found by its name, and keeps it as it is written there
			}
			if g.canEdit(row, g.columns[into.column]) && len(cells) < mostPasted {
				cells = append(cells, Pasted[R]{Row: row, Column: into.column, Text: into.written(text)})
			}
		}
	}
	return g.setAll(cells)
}

// rowOf gives the key of the row a line goes to, after adding it if there is none.
func (p *pasting[R]) rowOf(i int, line []string, taken map[string]bool) (key string, ok bool, err error) {
	g := p.grid
	naming := p.naming()
	at := p.start.Row + i
	if naming >= 0 {
		at = len(g.shown)
		for row := range g.shown {
			if naming < len(line) && strings.EqualFold(g.columns[g.options.Naming].Text(g.shown[row]), line[naming]) && !taken[g.options.Key(g.shown[row])] {
				at = row
				break
			}
		}
	}
	// Rows that were added before may stand anywhere in a sorted table.
	if at < len(g.shown) && (naming >= 0 || p.added == 0) {
		p.changed++
		return g.options.Key(g.shown[at]), true, nil
	}
	add := g.adder()
	if add == nil || g.filter != "" {
		return "", false, nil
	}
	key, err = add()
	if err != nil || g.rowOf(key) < 0 {
		return "", false, err
	}
	if p.added++; p.added == 1 {
		p.first = key
	}
	return key, true, nil
}

// adder makes the row of a pasted line that has none; nil: the table takes no
// more rows.
func (g *Grid[R]) adder() func() (string, error) {
	if g.options.OnNew != nil {
		return g.options.OnNew
	}
	return g.options.OnAdd
}

// lacking names a column that a new row must fill and this line does not.
func (p *pasting[R]) lacking(i int, line []string) error {
	for at, column := range p.grid.columns {
		filled := !column.Needed
		for j, text := range line {
			filled = filled || p.column(j).column == at && text != ""
		}
		if !filled {
			return prose.Errorf("row %d of what was copied, %s, is new here and does not tell its %s", i+1, line[0], column.Title)
		}
	}
	return nil
}

// isBlank tells a line without any text.
func isBlank(line []string) bool {
	return strings.Join(line, "") == ""
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

// report says what came of it where the table alone does not tell.
func (p *pasting[R]) report() string {
	var said []string
	if p.added > 0 {
		said = append(said, lang.X("rows-pasted", "Pasted: {{.Added}} new, {{.Changed}} changed.", map[string]any{"Added": p.added, "Changed": p.changed}))
	}
	if p.added > 0 && p.grid.options.OnAdded != nil {
		said = append(said, p.grid.options.OnAdded())
	}
	if p.homeless > 0 {
		said = append(said, lang.X("rows-without-place", "Pasted rows that have no place here: {{.Left}} of {{.All}}.", map[string]any{"Left": p.homeless, "All": len(p.lines)}))
		if p.grid.adder() == nil {
			said = append(said, lang.L("The rows of this table follow from the trip: none can be added here."))
		} else {
			said = append(said, lang.L("Clear the search of the table first: while it hides rows, none are added."))
		}
	}
	if len(p.fixed) > 0 {
		said = append(said, lang.X("heads-fixed", "Left out, since it is not typed in this table: {{.Heads}}.", map[string]any{"Heads": strings.Join(p.fixed, ", ")}))
	}
	if len(p.twice) > 0 {
		said = append(said, lang.X("heads-twice", "Left out, since another column told it already: {{.Heads}}.", map[string]any{"Heads": strings.Join(p.twice, ", ")}))
	}
	if len(p.unknown) > 0 {
		said = append(said, lang.X("heads-unknown", "Left out, since no column here has that head: {{.Heads}}.", map[string]any{"Heads": strings.Join(p.unknown, ", ")}))
	}
	if p.beyond > 0 {
		said = append(said, lang.X("columns-beyond", "Columns left out at the right, since the table ends there: {{.Count}}.", map[string]any{"Count": p.beyond}))
	}
	return strings.Join(said, " ")
}

// Cursor gives the row and column the cursor is on.
func (g *Grid[R]) Cursor() (row, column int) { return g.cursor.Row, g.cursor.Col }

// MoveCursor puts the cursor on a cell.
func (g *Grid[R]) MoveCursor(row, column int) {
	g.moveTo(widget.TableCellID{Row: row, Col: column})
}
