package settings

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/trip"
)

// choicesTab is the table of the settings with what the chosen one does beside
// it.
type choicesTab struct {
	bench   *bench.Bench
	rows    []setting // headings have no name
	table   *grid.Grid[int]
	filter  *widget.Entry
	side    *sidePanel
	beside  *bench.Part // the side
	content fyne.CanvasObject
}

func newChoicesTab(b *bench.Bench) *choicesTab {
	c := &choicesTab{bench: b}
	for _, p := range parts(b.Units()) {
		c.rows = append(c.rows, setting{title: p.title})
		c.rows = append(c.rows, p.settings...)
	}
	c.side = newSidePanel(c)
	c.table = grid.New(c.columns(), grid.Options[int]{
		Key: strconv.Itoa, OnSelect: c.side.show, OnOpen: c.side.open, OnPaste: c.paste, OnProblem: b.Say, Sticky: 1, Clipboard: b.Clipboard,
		Strong:   func(row int) bool { return c.rows[row].name == "" },
		ReadOnly: func(row int) bool { return c.rows[row].set == nil },
		Group:    c.partOf,
	})
	c.filter = widget.NewEntry()
	c.filter.SetPlaceHolder(lang.L("Find a setting"))
	c.filter.OnChanged = c.table.Filter
	head := bench.Head(bench.Inset(look.NewHeading(lang.L("What holds for the whole trip?"))),
		bench.Wide(220, c.filter), widget.NewButton(lang.L("All back to usual"), c.allUsual))
	c.beside = bench.NewPart(c.side.content, c.side.refresh)
	c.content = bench.Headed(bench.Beside(c.table, c.beside.Place, 0.76, 520), head)
	b.InSteps(c.table, c.beside)
	c.refresh()
	c.table.MoveCursor(1, valueColumn)
	return c
}

// valueColumn is the one that is typed into.
const valueColumn = 1

func (c *choicesTab) columns() []grid.Column[int] {
	of := func(ask func(s *setting, t *trip.Trip) string) func(int) string {
		return func(row int) string {
			if s := &c.rows[row]; s.name != "" {
				return ask(s, c.bench.Trip())
			}
			return ""
		}
	}
	quiet := func(int) fyne.ThemeColorName { return look.Quiet }
	return []grid.Column[int]{
		{Title: lang.L("Setting"), Width: c.widest(), Text: func(row int) string { return c.rows[row].title }},
		{Title: lang.L("Value"), Width: 180, Set: c.set, Choices: c.choices, Tone: c.tone, Text: of(func(s *setting, t *trip.Trip) string { return s.text(t) })},
		{Title: lang.L("Unit"), Width: 52, Tone: quiet, Text: of(func(s *setting, t *trip.Trip) string { return s.unit(t) })},
		{Title: lang.L("Changed"), Width: 76, Text: of(changedMark), Tone: func(int) fyne.ThemeColorName { return look.Spruce }},
		{Title: lang.L("Allowed"), Width: 178, Tone: quiet, Text: of(allowedText)},
		{Title: lang.L("Usual"), Width: c.widestUsual(), Tone: quiet, Text: of(c.usualText)},
		{Title: lang.L("What it does"), Width: 700, Tone: quiet, Text: of(func(s *setting, _ *trip.Trip) string { return s.about })},
	}
}

// widest is what the names of the settings need at the usual size of text.
func (c *choicesTab) widest() float32 {
	widest := float32(0)
	for i := range c.rows {
		widest = max(widest, fyne.MeasureText(c.rows[i].title, look.UsualText, fyne.TextStyle{Bold: c.rows[i].name == ""}).Width)
	}
	return widest + look.SpaceLarge
}

// widestUsual is what the usual values need at the usual size of text.
func (c *choicesTab) widestUsual() float32 {
	const least, most float32 = 62, 200
	widest := least
	for i := range c.rows {
		if s := &c.rows[i]; s.name != "" {
			widest = max(widest, fyne.MeasureText(c.usualText(s, c.bench.Trip()), look.UsualText, fyne.TextStyle{}).Width)
		}
	}
	return min(most, widest+look.SpaceLarge)
}

// partOf numbers the headings, so that sorting stays within them.
func (c *choicesTab) partOf(row int) int {
	number := 0
	for i := range c.rows[:row+1] {
		if c.rows[i].name == "" {
			number++
		}
	}
	return number
}

func (c *choicesTab) tone(row int) fyne.ThemeColorName {
	if c.rows[row].set == nil {
		return look.Quiet
	}
	return look.Ink
}

func (c *choicesTab) choices(row int) []string {
	if s := &c.rows[row]; s.choices != nil {
		return s.choices(c.bench.Trip())
	}
	return nil
}

func (c *choicesTab) set(row int, text string) error {
	s := &c.rows[row]
	name := lang.X("edit-setting", "change {{.What}}", map[string]any{"What": s.title})
	return c.bench.Edit(name, func(t *trip.Trip) error { return s.set(t, strings.TrimSpace(text)) })
}

// paste stores many values as one step of undo.
func (c *choicesTab) paste(cells []grid.Pasted[int]) error {
	return c.bench.Edit(lang.L("paste into the settings"), func(t *trip.Trip) error {
		for _, cell := range cells {
			if s := &c.rows[cell.Row]; cell.Column == valueColumn && s.set != nil {
				if err := s.set(t, strings.TrimSpace(cell.Text)); err != nil {
					return err
				}
			}
		}
		return nil
	})
}

// usualOf is the trip with one setting as usual.
func usualOf(s *setting, t *trip.Trip) *trip.Trip {
	fresh := &trip.Trip{Settings: t.Settings, Units: t.Units, Currency: t.Currency, Start: t.Start}
	s.usual(fresh)
	return fresh
}

func (c *choicesTab) usualText(s *setting, t *trip.Trip) string {
	if s.usual == nil {
		return "–"
	}
	return s.text(usualOf(s, t))
}

// isUsual tells whether a setting has its usual value, or has none.
func isUsual(s *setting, t *trip.Trip) bool {
	return s.usual == nil || reflect.DeepEqual(usualOf(s, t).Settings, t.Settings)
}

func changedMark(s *setting, t *trip.Trip) string {
	if isUsual(s, t) {
		return ""
	}
	return lang.L("changed")
}

func allowedText(s *setting, t *trip.Trip) string {
	switch {
	case s.allowed != nil:
		return s.allowed(t)
	case s.choices != nil:
		return lang.L("from the list")
	default:
		return lang.L("any text")
	}
}

// backToUsual gives one setting its usual value.
func (c *choicesTab) backToUsual(s *setting) {
	if s.usual != nil {
		_ = c.bench.Edit(lang.X("setting-to-usual", "{{.What}} back to usual", map[string]any{"What": s.title}),
			func(t *trip.Trip) error { s.usual(t); return nil })
	}
}

// allUsual gives every setting that has one its usual value; what is of this
// trip alone, such as its dates and its budget, stays.
func (c *choicesTab) allUsual() {
	if !c.commit() {
		return
	}
	if !slices.ContainsFunc(c.rows, func(s setting) bool { return s.name != "" && !isUsual(&s, c.bench.Trip()) }) {
		c.bench.Say(lang.L("Every setting has its usual value."))
		return
	}
	_ = c.bench.Edit(lang.L("all settings back to usual"), func(t *trip.Trip) error {
		for i := range c.rows {
			if c.rows[i].usual != nil {
				c.rows[i].usual(t)
			}
		}
		return nil
	})
}

func (c *choicesTab) refresh() {
	all := make([]int, len(c.rows))
	for i := range all {
		all[i] = i
	}
	c.table.SetRows(all)
	c.beside.Refresh()
}

func (c *choicesTab) commit() bool { return c.table.Commit() && c.side.notes.Commit() }
