package recipes

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

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
	method  *bench.LongText
	notes   *bench.LongText
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
	m.method = bench.NewLongText(lang.L("One step a line"), m.storeMethod)
	m.notes = bench.NewLongText(lang.L("Notes for the cooks"), m.storeNotes)
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
	m.method.ShowOf(key(recipe.ID), strings.Join(recipe.Method, "\n"))
	m.notes.ShowOf(key(recipe.ID), recipe.Notes)
}

func (m *makingTab) commit() bool { return m.table.Commit() && m.method.Commit() && m.notes.Commit() }

func (m *makingTab) storeMethod(of, text string) error {
	return m.side.screen.change(keyed(of), lang.L("method"), func(r *trip.Recipe) error {
		r.Method = nil
		for _, step := range strings.Split(text, "\n") {
			if step = strings.TrimSpace(step); step != "" {
				r.Method = append(r.Method, step)
			}
		}
		return nil
	})
}

func (m *makingTab) storeNotes(of, text string) error {
	return m.side.screen.change(keyed(of), lang.L("notes"), func(r *trip.Recipe) error { r.Notes = strings.TrimSpace(text); return nil })
}
