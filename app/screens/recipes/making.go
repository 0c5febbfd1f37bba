package recipes

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/trip"
)

// makingTab is how the recipe is made: water and times, then the steps, each
// on a line of its own, and notes.
type makingTab struct {
	side    *sidePanel
	fields  []field
	table   *grid.Grid[int] // places of the fields
	method  *lines
	notes   *lines
	content fyne.CanvasObject
}

func newMakingTab(side *sidePanel) *makingTab {
	m := &makingTab{side: side, fields: makingFields(side.screen.bench.Units())}
	m.table = grid.New([]grid.Column[int]{
		{Title: lang.L("Fact"), Width: 240, Text: m.title, Tone: func(int) fyne.ThemeColorName { return look.Quiet }},
		{Title: lang.L("Value"), Width: 240, Text: m.text, Set: m.set, Choices: m.choices},
	}, grid.Options[int]{Key: strconv.Itoa, OnProblem: side.screen.bench.Say, Clipboard: side.screen.bench.Clipboard})
	rows := make([]int, len(m.fields))
	for i := range rows {
		rows[i] = i
	}
	m.table.SetRows(rows)
	m.table.MoveCursor(0, 1)
	m.method = newLines(lang.L("One step a line"), m.storeMethod)
	m.notes = newLines(lang.L("Notes for the cooks"), m.storeNotes)
	text := container.NewBorder(bench.Inset(look.NewHeading(lang.L("Method, a step a line"))), bench.Tall(64, m.notes), nil, nil, m.method)
	split := container.NewVSplit(m.table, text)
	split.Offset = 0.6
	m.content = split
	return m
}

func (m *makingTab) title(at int) string {
	if f := m.fields[at]; f.unit != "" {
		return f.title + ", " + f.unit
	}
	return m.fields[at].title
}

func (m *makingTab) text(at int) string {
	if recipe := m.side.current(); recipe != nil {
		return m.fields[at].text(recipe)
	}
	return ""
}

func (m *makingTab) set(at int, text string) error {
	return m.side.screen.change(m.side.recipe, m.fields[at].title, func(r *trip.Recipe) error { return m.fields[at].set(r, text) })
}

func (m *makingTab) choices(at int) []string {
	if m.fields[at].choices == nil {
		return nil
	}
	return m.fields[at].choices()
}

func (m *makingTab) show(recipe *trip.Recipe) {
	m.table.SetRows(m.table.Rows())
	m.method.show(recipe.ID, strings.Join(recipe.Method, "\n"))
	m.notes.show(recipe.ID, recipe.Notes)
}

func (m *makingTab) commit() bool { return m.table.Commit() && m.method.store() && m.notes.store() }

func (m *makingTab) storeMethod(id trip.RecipeID, text string) error {
	return m.side.screen.change(id, lang.L("method"), func(r *trip.Recipe) error {
		r.Method = nil
		for _, step := range strings.Split(text, "\n") {
			if step = strings.TrimSpace(step); step != "" {
				r.Method = append(r.Method, step)
			}
		}
		return nil
	})
}

func (m *makingTab) storeNotes(id trip.RecipeID, text string) error {
	return m.side.screen.change(id, lang.L("notes"), func(r *trip.Recipe) error { r.Notes = strings.TrimSpace(text); return nil })
}

// lines is a text of several lines that is stored when the keyboard leaves it.
type lines struct {
	widget.Entry
	recipe trip.RecipeID
	shown  string
	keep   func(id trip.RecipeID, text string) error
}

func newLines(hint string, keep func(id trip.RecipeID, text string) error) *lines {
	l := &lines{keep: keep}
	l.MultiLine, l.Wrapping = true, fyne.TextWrapWord
	l.ExtendBaseWidget(l)
	l.SetPlaceHolder(hint)
	return l
}

// show shows the text of a recipe; what is being typed into it stays.
func (l *lines) show(id trip.RecipeID, text string) {
	if l.recipe == id && l.shown == text {
		return
	}
	l.recipe, l.shown = id, text
	l.SetText(text)
}

// store keeps what was typed; it tells whether that could be.
func (l *lines) store() bool {
	if l.Text == l.shown || l.recipe == 0 {
		return true
	}
	before := l.shown
	l.shown = l.Text
	if l.keep(l.recipe, l.Text) != nil {
		l.shown = before
		return false
	}
	return true
}

// FocusLost stores what was typed.
func (l *lines) FocusLost() {
	l.Entry.FocusLost()
	l.store()
}

// TypedKey goes back to what is stored with Escape.
func (l *lines) TypedKey(event *fyne.KeyEvent) {
	if event.Name == fyne.KeyEscape {
		l.SetText(l.shown)
		return
	}
	l.Entry.TypedKey(event)
}
