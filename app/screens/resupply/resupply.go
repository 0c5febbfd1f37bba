// Package resupply is the screen of what waits along the way: the days as a
// line with its points and boxes, the points to fill in, the choices of points
// that nothing beats, and what becomes of a box that does not come.
package resupply

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/charts"
	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// data is the values of a sentence.
type data = map[string]any

// Screen is resupply on the screen.
type Screen struct {
	bench *bench.Bench
	point trip.PointID // the chosen one
	// made are the fields of the table, for units and a currency.
	made     []field
	units    units.System
	currency string

	way     *charts.WayChart
	table   *grid.Grid[trip.PointID]
	about   *about
	choices *choices
	drawn   *bench.Part // the way
	told    *bench.Part // about the point
	offered *bench.Part // the choices
	work    fyne.CanvasObject
	none    fyne.CanvasObject
	first   *widget.Button // shown while there is no point
	content fyne.CanvasObject
}

// New makes the screen.
func New(b *bench.Bench) *Screen {
	s := &Screen{bench: b, way: charts.NewWayChart(lang.L("day")), about: newAbout(b), choices: newChoices(b)}
	s.table = grid.New(s.columns(), grid.Options[trip.PointID]{
		Key: key, OnSelect: s.choose, OnAdd: s.add, OnDelete: s.remove, OnPaste: s.paste,
		Together: b.Together, OnProblem: b.Say, Sticky: 1, Clipboard: b.Clipboard,
	})
	add := widget.NewButton(lang.L("Add a point"), s.table.Add)
	add.Importance = widget.HighImportance
	head := container.NewBorder(nil, nil, bench.Inset(look.NewHeading(lang.L("What waits where, and when must it be posted?"))),
		container.NewHBox(widget.NewButton(lang.L("Remove"), s.table.Delete), add))
	s.told = bench.NewPart(s.about.content, func() { s.about.show(s.point) })
	s.offered = bench.NewPart(s.choices.content, s.choices.show, s.choices.table)
	s.drawn = bench.NewPart(container.NewHScroll(s.way), s.showWay).Keeping()
	b.InSteps(s.drawn, s.table, s.told, s.offered)
	below := container.NewHSplit(s.told.Place, s.offered.Place)
	below.Offset = 0.4
	split := container.NewVSplit(s.table, below)
	split.Offset = 0.3
	s.work = container.NewBorder(s.drawn.Place, nil, nil, nil, split)
	s.none = s.emptyPlace()
	s.content = container.NewBorder(head, nil, nil, nil, container.NewStack(s.work, s.none))
	return s
}

// emptyPlace says what comes here and offers the first step.
func (s *Screen) emptyPlace() fyne.CanvasObject {
	hint := look.NewParagraph(lang.L("All food is carried from the start. If a post office, a shop, a hut, a cache of your own or somebody who meets you lies on the way, add it: a box can wait there and the packs get lighter."), look.Body, look.Ink)
	s.first = widget.NewButton(lang.L("Add the first point"), func() {
		s.table.Add()
		s.table.FocusOn(s.bench.Window.Canvas()) // the table was never drawn before
	})
	s.first.Importance = widget.HighImportance
	return container.NewVBox(hint, container.NewHBox(s.first))
}

func key(id trip.PointID) string { return bench.IDText(int64(id)) }

// Name is the screen's name in places.
func (s *Screen) Name() string { return "resupply" }

// Title is the word in the navigation.
func (s *Screen) Title() string { return lang.L("Resupply") }

// Content is what is shown.
func (s *Screen) Content() fyne.CanvasObject { return s.content }

// Waiting counts what must be fixed about points and boxes.
func (s *Screen) Waiting() int { return bench.CountFindings(s.bench, findings.Resupply) }

// Refresh shows the trip and the plan as they are now.
func (s *Screen) Refresh() {
	t := s.bench.Trip()
	if len(t.Points) == 0 {
		s.work.Hide()
		s.none.Show()
		return
	}
	s.none.Hide()
	s.work.Show()
	rows := make([]trip.PointID, len(t.Points))
	for i := range t.Points {
		rows[i] = t.Points[i].ID
	}
	slices.SortStableFunc(rows, func(a, b trip.PointID) int { return t.Point(a).AfterDay - t.Point(b).AfterDay })
	s.table.SetRows(rows)
	if id, ok := s.table.Selected(); ok { // the row of a point that is gone went to another
		s.point = id
	}
	s.drawn.Refresh()
	s.told.Refresh()
	s.offered.Refresh()
}

// choose goes to a point.
func (s *Screen) choose(id trip.PointID) {
	if s.point == id {
		return
	}
	s.point = id
	s.drawn.Refresh()
	s.told.Refresh()
}

// Focus gives the keyboard to the table, or to what makes the first point.
func (s *Screen) Focus() {
	if len(s.bench.Trip().Points) == 0 {
		s.bench.Window.Canvas().Focus(s.first)
		return
	}
	s.table.FocusOn(s.bench.Window.Canvas())
}

// GoTo puts the cursor on a point.
func (s *Screen) GoTo(place findings.Place) {
	if place.Point != 0 {
		s.table.SelectKey(key(place.Point))
	}
	s.table.Focus()
}

// Commit stores what is being typed.
func (s *Screen) Commit() bool { return s.table.Commit() }

// Actions are the screen's commands.
func (s *Screen) Actions() []bench.Action {
	return []bench.Action{
		{Name: lang.L("Add a point"), Do: s.table.Add},
		{Name: lang.L("Remove the point"), Do: s.table.Delete},
		{Name: lang.L("Take the advised choice of points"), Do: s.choices.takeAdvised},
	}
}
