// Package route is the screen of the way: a table of the days, below it their
// heights and temperatures, and beside these what the chosen day asks for. A
// recorded or drawn track can be cut into days here.
package route

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/findings"
)

// Screen is the route on the screen. Rows of the table are day numbers.
type Screen struct {
	bench    *bench.Bench
	table    *grid.Grid[int]
	start    *startEntry
	pictures *pictures
	day      *dayPanel
	track    *trackPanel
	beside   *fyne.Container // the day, or the track being taken in
	drawn    *bench.Part     // the pictures
	asked    *bench.Part     // what is beside them
	content  fyne.CanvasObject
}

// New makes the screen.
func New(b *bench.Bench) *Screen {
	s := &Screen{bench: b}
	s.pictures = newPictures(b, s.choose)
	s.day = newDayPanel(s)
	s.track = newTrackPanel(s)
	s.beside = container.NewStack(s.day.content)
	s.table = grid.New(s.columns(), grid.Options[int]{
		Key:      strconv.Itoa,
		OnSelect: s.selected,
		OnAdd:    s.add,
		OnDelete: s.remove,
		OnPaste:  s.paste,
		Together: b.Together, OnProblem: b.Say,
		Sticky:    2,
		Clipboard: b.Clipboard,
	})
	s.start = newStartEntry(s)
	s.drawn = bench.NewPart(s.pictures.content, func() { s.pictures.show(s.chosen(), s.track.taken) })
	s.asked = bench.NewPart(s.beside, func() { s.day.show(s.chosen()) })
	bottom := container.NewHSplit(s.drawn.Place, s.asked.Place)
	bottom.Offset = 0.62
	split := container.NewVSplit(s.table, bottom)
	split.Offset = 0.52
	s.content = bench.Headed(split, s.head())
	b.InSteps(s.table, s.asked, s.drawn)
	return s
}

func (s *Screen) head() fyne.CanvasObject {
	add := widget.NewButton(lang.L("Add a day"), s.table.Add)
	add.Importance = widget.HighImportance
	return bench.Head(bench.Inset(look.NewHeading(lang.L("Where to, day by day?"))),
		container.NewCenter(look.NewText(lang.L("Day 1 is on"), look.Body, look.Quiet)),
		bench.Wide(124, s.start),
		widget.NewButton(lang.L("Import a track…"), s.askTrack),
		widget.NewButton(lang.L("Earlier"), s.earlier),
		widget.NewButton(lang.L("Later"), s.later),
		widget.NewButton(lang.L("Remove"), s.table.Delete),
		add,
	)
}

// Name is the screen's name in places.
func (s *Screen) Name() string { return "route" }

// Title is the word in the navigation.
func (s *Screen) Title() string { return lang.L("Route") }

// Content is what is shown.
func (s *Screen) Content() fyne.CanvasObject { return s.content }

// Refresh shows the trip and the plan as they are now.
func (s *Screen) Refresh() {
	rows := make([]int, len(s.bench.Trip().Days))
	for i := range rows {
		rows[i] = i + 1
	}
	s.table.SetRows(rows)
	s.start.show()
	s.asked.Refresh()
	s.drawn.Refresh()
}

// chosen is the day the cursor is on.
func (s *Screen) chosen() int {
	if day, ok := s.table.Selected(); ok {
		return day
	}
	return 1
}

func (s *Screen) selected(day int) {
	s.day.show(day)
	s.pictures.show(day, s.track.taken)
}

// choose puts the cursor on a day.
func (s *Screen) choose(day int) {
	s.table.SelectKey(strconv.Itoa(day))
	s.table.Focus()
}

// Waiting counts what is to be looked at on the route.
func (s *Screen) Waiting() int { return len(routeFindings(s.bench, 0)) }

// Focus gives the keyboard to the table.
func (s *Screen) Focus() { s.table.FocusOn(s.bench.Window.Canvas()) }

// GoTo puts the cursor on a day.
func (s *Screen) GoTo(place findings.Place) {
	if place.Day > 0 {
		s.table.SelectKey(strconv.Itoa(place.Day))
	}
	s.table.Focus()
}

// Commit stores what is being typed.
func (s *Screen) Commit() bool { return s.table.Commit() && s.start.store() }

// Actions are the screen's commands.
func (s *Screen) Actions() []bench.Action {
	return []bench.Action{
		{Name: lang.L("Add a day at the end"), Do: s.table.Add},
		{Name: lang.L("Put a day in before this one"), Do: s.insert},
		{Name: lang.L("Remove the day"), Do: s.table.Delete},
		{Name: lang.L("Move the day earlier"), Do: s.earlier},
		{Name: lang.L("Move the day later"), Do: s.later},
		{Name: lang.L("Why this water?"), Do: func() { s.day.tabs.SelectIndex(tabWater) }},
		{Name: lang.L("Why this fuel, and these minutes?"), Do: func() { s.day.tabs.SelectIndex(tabStove) }},
		{Name: lang.L("Import a track (GPX)…"), Do: s.askTrack},
		{Name: lang.L("Change the date of day 1"), Do: func() { s.bench.Window.Canvas().Focus(s.start) }},
	}
}
