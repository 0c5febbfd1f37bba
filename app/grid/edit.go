package grid

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/written"
)

// openEditor edits the cell at the cursor, or opens the row where it cannot
// be edited.
func (g *Grid[R]) openEditor() { g.openEditorWith(nil) }

func (g *Grid[R]) openEditorWith(typed *string) {
	row, ok := g.Selected()
	if !ok {
		return
	}
	column := g.columns[g.cursor.Col]
	if !g.canEdit(row, column) {
		switch {
		case g.options.OnOpen != nil && typed == nil:
			g.options.OnOpen(row)
		case typed != nil && g.editableFrom(g.cursor.Row, 0, 1) >= 0:
			g.problem(lang.L("This column cannot be typed in: it follows from the others."))
		}
		return
	}
	position, size, visible := g.cellRectangle()
	if !visible {
		return
	}
	text := column.Text(row)
	if column.EditText != nil {
		text = column.EditText(row)
	}
	before := text
	if typed != nil {
		text = *typed
	}
	g.started = before
	g.editor.SetText(text)
	g.editor.CursorColumn = len([]rune(text))
	g.problem("")
	g.editor.Move(position)
	g.editor.Resize(fyne.NewSize(size.Width, max(size.Height, g.editor.MinSize().Height)))
	g.editor.Show()
	g.offer(typed != nil)
	g.focus(g.editor)
}

// cellRectangle gives where the cell at the cursor is, by the object that
// shows it.
func (g *Grid[R]) cellRectangle() (fyne.Position, fyne.Size, bool) {
	driver := fyne.CurrentApp().Driver()
	for object, id := range g.cells {
		if id == g.cursor && object.Visible() && object.look.atCursor {
			at := driver.AbsolutePositionForObject(object).Subtract(driver.AbsolutePositionForObject(g.table))
			return at, object.Size(), true
		}
	}
	return fyne.Position{}, fyne.Size{}, false
}

// store puts what was typed into the row. If that cannot be, the editor stays
// and the reason is shown.
func (g *Grid[R]) store() bool {
	row, ok := g.Selected()
	if !ok {
		g.closeEditor()
		return true
	}
	column := g.columns[g.cursor.Col]
	text := strings.TrimSpace(g.editor.Text)
	if g.choices() == nil && text == strings.TrimSpace(g.started) {
		// A figure shown rounded must not overwrite a finer one.
		g.closeEditor()
		g.problem("")
		return true
	}
	if choices := g.choices(); choices != nil {
		text = nearestChoice(g.offers.pick(text), choices)
	}
	if err := column.Set(row, text); err != nil {
		g.problem(written.Error(err))
		return false
	}
	g.closeEditor()
	g.problem("")
	g.table.RefreshItem(g.cursor)
	return true
}

// nearestChoice completes what was typed to the one choice that begins so.
func nearestChoice(text string, choices []string) string {
	if slices.Contains(choices, text) || text == "" {
		return text
	}
	found := ""
	for _, choice := range choices {
		if strings.EqualFold(choice, text) {
			return choice
		}
		if len(choice) >= len(text) && strings.EqualFold(choice[:len(text)], text) {
			if found != "" {
				return text
			}
			found = choice
		}
	}
	if found == "" {
		return text
	}
	return found
}

func (g *Grid[R]) closeEditor() {
	g.editor.Hide()
	g.offers.Hide()
}

func (g *Grid[R]) commit(s step) {
	if !g.editor.open() || !g.store() {
		return
	}
	switch {
	case s.columns != 0:
		g.tab(s.columns)
	case s.rows != 0:
		g.nextRow(s.rows)
	default:
		return
	}
	g.focus(g.table)
}

func (g *Grid[R]) cancel() {
	g.drop()
	g.focus(g.table)
}

// dropAway forgets an edit whose row is gone. The keyboard goes to the table
// only if the editor had it.
func (g *Grid[R]) dropAway() {
	had := false
	if c := fyne.CurrentApp().Driver().CanvasForObject(g.table); c != nil {
		had = c.Focused() == g.editor
	}
	g.drop()
	if had {
		g.focus(g.table)
	}
}

// drop forgets what was typed and leaves the keyboard where it is.
func (g *Grid[R]) drop() {
	g.closeEditor()
	g.problem("")
}

func (g *Grid[R]) focus(on fyne.Focusable) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(g.table); c != nil {
		c.Focus(on)
	}
}

// Focus gives the keyboard to the table.
func (g *Grid[R]) Focus() { g.focus(g.table) }

// FocusOn gives the keyboard to the table before it was ever drawn, when the
// toolkit cannot yet tell which canvas it is on.
func (g *Grid[R]) FocusOn(c fyne.Canvas) { c.Focus(g.table) }

// Commit stores an open editor; call it before undo, saving or leaving the
// screen. It tells whether nothing is left open.
func (g *Grid[R]) Commit() bool { return !g.editor.open() || g.store() }
