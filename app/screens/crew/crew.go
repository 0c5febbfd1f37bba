// Package crew is the screen of the people: a table to fill in, and beside it
// what the chosen member needs day by day, with the reason for every figure.
package crew

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// Screen is the crew on the screen.
type Screen struct {
	bench   *bench.Bench
	table   *grid.Grid[trip.MemberID]
	shown   []field // a column each
	side    *sidePanel
	beside  *bench.Part // the side
	filter  *widget.Entry
	start   *look.Paragraph // how to begin
	content fyne.CanvasObject
}

// New makes the screen.
func New(b *bench.Bench) *Screen {
	s := &Screen{bench: b}
	s.side = newSidePanel(b)
	s.table = grid.New(s.columns(), grid.Options[trip.MemberID]{
		Key:      key,
		OnSelect: s.side.show,
		OnAdd:    s.add,
		OnDelete: s.remove,
		OnPaste:  s.paste,
		Together: b.Together, OnProblem: b.Say,
		Sticky:    1,
		Clipboard: b.Clipboard,
	})
	s.filter = widget.NewEntry()
	s.filter.SetPlaceHolder(lang.L("Find in the table"))
	s.filter.OnChanged = s.table.Filter
	add := widget.NewButton(lang.L("Add a member"), s.table.Add)
	add.Importance = widget.HighImportance
	head := bench.Head(bench.Inset(look.NewHeading(lang.L("Who walks, and what does each need?"))),
		bench.Wide(200, s.filter), widget.NewButton(lang.L("Remove"), s.table.Delete), add)
	s.beside = bench.NewPart(s.side.content, s.showChosen)
	s.start = bench.SmallPrint(lang.L("Type over the leader's figures; Tab goes on to the next. For more people press Add a member, or copy their table in a spreadsheet, with heads such as Name, Age, Sex, Weight, Height, Allergies and Diet, and paste it here with Ctrl+V. Units, currency and the first day stand in Trip settings."))
	s.content = bench.Headed(bench.Beside(container.NewBorder(nil, s.start, nil, nil, s.table), s.beside.Place, 0.7, 560), head)
	b.InSteps(s.table, s.beside)
	return s
}

func key(id trip.MemberID) string { return bench.IDText(int64(id)) }

// Name is the screen's name in places.
func (s *Screen) Name() string { return "crew" }

// Title is the word in the navigation.
func (s *Screen) Title() string { return lang.L("Crew") }

// Content is what is shown.
func (s *Screen) Content() fyne.CanvasObject { return s.content }

// Refresh shows the trip and the plan as they are now.
func (s *Screen) Refresh() {
	t := s.bench.Trip()
	rows := make([]trip.MemberID, len(t.Crew))
	for i := range t.Crew {
		rows[i] = t.Crew[i].ID
	}
	s.table.SetRows(rows)
	bench.SetShown(s.start, len(rows) <= 1)
	s.beside.Refresh()
}

// showChosen shows the member under the cursor at the side.
func (s *Screen) showChosen() {
	if id, ok := s.table.Selected(); ok {
		s.side.show(id)
	}
}

// Waiting counts what must be fixed in the needs.
func (s *Screen) Waiting() int {
	return bench.CountFindings(s.bench, findings.Needs, findings.Trip)
}

// Focus gives the keyboard to the table.
func (s *Screen) Focus() { s.table.FocusOn(s.bench.Window.Canvas()) }

// GoTo puts the cursor on a member.
func (s *Screen) GoTo(place findings.Place) {
	if place.Member != 0 {
		s.table.SelectKey(key(place.Member))
		s.side.showDay(place.Day)
	}
	s.table.Focus()
}

// Commit stores what is being typed.
func (s *Screen) Commit() bool { return s.table.Commit() }

// Actions are the screen's commands.
func (s *Screen) Actions() []bench.Action {
	return []bench.Action{
		{Name: lang.L("Add a member"), Do: s.table.Add},
		{Name: lang.L("Remove the member"), Do: s.table.Delete},
		{Name: lang.L("Need of the next day"), Do: func() { s.side.step(1) }},
		{Name: lang.L("Need of the day before"), Do: func() { s.side.step(-1) }},
		{Name: lang.L("Find in the table"), Do: func() { s.bench.Window.Canvas().Focus(s.filter) }},
	}
}
