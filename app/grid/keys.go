package grid

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/written"
)

// pageRows is how far Page Up and Page Down go.
const pageRows = 15

// typedKey moves and edits as a spreadsheet does; it tells whether it used
// the key.
func (g *Grid[R]) typedKey(event *fyne.KeyEvent) bool {
	at := g.cursor
	if event.Name == fyne.KeyTab {
		g.typedTab()
		return true
	}
	switch event.Name {
	case fyne.KeyUp:
		at.Row--
	case fyne.KeyDown:
		at.Row++
	case fyne.KeyLeft:
		at.Col--
	case fyne.KeyRight:
		at.Col++
	case fyne.KeyHome:
		at.Col = 0
	case fyne.KeyEnd:
		at.Col = len(g.columns) - 1
	case fyne.KeyPageUp:
		at.Row -= pageRows
	case fyne.KeyPageDown:
		at.Row += pageRows
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeyF2:
		g.openEditor()
		return true
	case fyne.KeyInsert:
		g.Add()
		return true
	case fyne.KeyDelete, fyne.KeyBackspace:
		g.clearCell()
		return true
	case fyne.KeySpace:
		return g.options.OnTick != nil // it comes as a letter too
	default:
		return false
	}
	g.row = rowEntry{}
	g.moveTo(at)
	return true
}

func (g *Grid[R]) typedRune(letter rune) {
	if row, ok := g.Selected(); ok && g.options.OnLetter != nil && g.options.OnLetter(row, letter) {
		return
	}
	if letter == ' ' && g.options.OnTick != nil {
		g.Tick()
		return
	}
	text := string(letter)
	g.openEditorWith(&text)
}

// Tick ticks off the row at the cursor.
func (g *Grid[R]) Tick() {
	if row, ok := g.Selected(); ok && g.options.OnTick != nil {
		g.options.OnTick(row)
	}
}

func (g *Grid[R]) clearCell() {
	row, ok := g.Selected()
	column := g.columns[g.cursor.Col]
	if !ok || !g.canEdit(row, column) {
		return
	}
	if err := column.Set(row, ""); err != nil {
		g.problem(written.Error(err))
		return
	}
	g.problem("")
	g.table.RefreshItem(g.cursor)
}

// Add makes a new row and puts the cursor on it.
func (g *Grid[R]) Add() {
	if g.options.OnAdd == nil {
		return
	}
	key, err := g.options.OnAdd()
	if err != nil {
		g.problem(written.Error(err))
		return
	}
	if row := g.rowOf(key); row >= 0 {
		at := widget.TableCellID{Row: row, Col: max(0, g.editableFrom(row, 0, 1))}
		g.moveTo(at)
		g.row = rowEntry{begun: true, first: at.Col}
	}
	g.Focus()
}

// Delete removes the row at the cursor.
func (g *Grid[R]) Delete() {
	row, ok := g.Selected()
	if !ok || g.options.OnDelete == nil {
		return
	}
	if err := g.options.OnDelete(row); err != nil {
		g.problem(written.Error(err))
	}
}

func (g *Grid[R]) typedShortcut(shortcut fyne.Shortcut) {
	if g.options.Clipboard == nil {
		return
	}
	switch shortcut.(type) {
	case *fyne.ShortcutCopy:
		g.options.Clipboard().SetContent(g.Copy())
	case *fyne.ShortcutPaste:
		g.Paste(g.options.Clipboard().Content())
	}
}

// Copy gives the shown rows with their heads as a spreadsheet reads them: tab
// between cells, a line a row.
func (g *Grid[R]) Copy() string {
	var lines []string
	var heads []string
	for _, column := range g.columns {
		head := column.Title
		if column.Unit != "" {
			head += " (" + column.Unit + ")"
		}
		heads = append(heads, plainCell(head))
	}
	lines = append(lines, strings.Join(heads, "\t"))
	for _, row := range g.shown {
		var cells []string
		for _, column := range g.columns {
			cells = append(cells, plainCell(column.Text(row)))
		}
		lines = append(lines, strings.Join(cells, "\t"))
	}
	return strings.Join(lines, "\n") + "\n"
}

// plainCell keeps a cell in its place and a spreadsheet from running it.
func plainCell(text string) string {
	text = strings.NewReplacer("\t", " ", "\n", " ", "\r", " ").Replace(text)
	if text != "" && strings.ContainsRune("=+-@", rune(text[0])) && !isNumber(text) {
		return "'" + text
	}
	return text
}

func isNumber(text string) bool {
	return strings.Trim(text, "-+.,0123456789") == "" && strings.ContainsAny(text, "0123456789")
}
