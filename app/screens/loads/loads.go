// Package loads is the screen of who carries what: a column a member with the
// fair line, the things in each pack to drag to another, why each is where it
// is, and how far the split is from the best possible. The shared gear and the
// sizes of fuel container are entered here too.
package loads

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/charts"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/carry"
	"sumpter/domain/findings"
	"sumpter/domain/onward"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
)

// Screen is the loads on the screen.
type Screen struct {
	bench  *bench.Bench
	view   *view // nil: no plan yet
	way    *way
	day    int // 1-based
	member trip.MemberID
	chosen string // id of the chosen thing
	move   *move
	banned *banned // waits for the plan that tells where it went

	slider   *widget.Slider
	dayText  *look.Text
	fairText *look.Paragraph
	changed  *look.Text // what changed packs, where packs are kept
	board    *board
	lines    *charts.LineChart
	pack     *packPanel
	drawn    *bench.Part // the lines
	beside   *bench.Part // the pack
	ghost    *ghost
	changes  *changes
	fairness *fairness
	gear     *gearTab
	packs    *container.TabItem
	tabs     *bench.Tabs
	middle   *fyne.Container
	empty    *look.Paragraph
}

// Places of the tabs.
const (
	packsTab = iota
	changesTab
	fairnessTab
	gearAndFuelTab
)

// New makes the screen.
func New(b *bench.Bench) *Screen {
	s := &Screen{bench: b, day: 1, dayText: look.NewHeading(""), fairText: look.NewParagraph("", look.Caption, look.Quiet), changed: look.NewText("", look.Caption, look.Ink).Yielding(), empty: look.NewParagraph("", look.Body, look.Ink)}
	s.board = newBoard(s.typedKey, s.typedRune)
	s.lines = charts.NewLineChart("%", nil)
	s.pack = newPackPanel(s)
	s.ghost = newGhost()
	s.changes = newChanges(s)
	s.fairness = newFairness(s)
	s.gear = newGearTab(b)
	s.slider = widget.NewSlider(1, 2)
	s.slider.OnChanged = func(value float64) { s.showDay(int(value)) }
	s.packs = container.NewTabItem(lang.L("Packs"), s.packsContent())
	s.tabs = bench.NewTabs(
		s.packs,
		container.NewTabItem(lang.L("What changes packs"), s.changes.content),
		container.NewTabItem(lang.L("How fair, and pins"), s.fairness.content),
		container.NewTabItem(lang.L("Gear and fuel"), s.gear.content),
	)
	s.tabs.OnSelected = func(*container.TabItem) { s.Refresh() }
	return s
}

func (s *Screen) packsContent() fyne.CanvasObject {
	s.way = newWay(s)
	head := container.NewVBox(
		s.way.content,
		container.NewBorder(nil, nil, s.dayText, nil, look.Tracked(s.slider)),
		s.fairText, s.changed, newLegend(),
	)
	s.drawn, s.beside = bench.NewPart(s.lines, s.showLines), bench.NewPart(s.pack.content, s.pack.show)
	s.bench.InSteps(s.beside, s.drawn)
	left := container.NewVSplit(s.board.content, s.drawn.Place)
	left.Offset = 0.62
	split := container.NewHSplit(left, s.beside.Place)
	split.Offset = 0.68
	s.middle = container.NewStack(split)
	return container.NewStack(container.NewBorder(head, nil, nil, nil, s.middle), s.ghost.layer)
}

// Name is the screen's name in places.
func (s *Screen) Name() string { return "loads" }

// Title is the word in the navigation.
func (s *Screen) Title() string { return lang.L("Loads") }

// Content is what is shown.
func (s *Screen) Content() fyne.CanvasObject { return s.tabs }

// Waiting counts what must be fixed in the loads.
func (s *Screen) Waiting() int { return bench.CountFindings(s.bench, findings.Carry) }

// Refresh shows the trip and the plan as they are now.
func (s *Screen) Refresh() {
	if s.tabs.SelectedIndex() == gearAndFuelTab {
		s.gear.refresh()
		return
	}
	s.way.reckon()
	s.showTab()
}

// showTab shows the packs on the tab that is open.
func (s *Screen) showTab() {
	s.showPlan(s.bench.Plan(), s.way.shown())
	switch s.tabs.SelectedIndex() {
	case changesTab:
		s.changes.show()
	case fairnessTab:
		s.fairness.show()
	}
}

// showPlan takes up a plan, or in its place the rest of the trip as it now
// stands; the chosen day, member and thing stay.
func (s *Screen) showPlan(p *plan.Plan, rest *onward.Rest) {
	if rest != nil {
		p = rest.Plan
	}
	if p == nil || len(p.Carry.Members) == 0 || len(p.Trip.Days) == 0 {
		s.view = nil
		s.cancelMove()
		s.empty.SetContent(lang.L("Who carries what comes with the plan. Enter the crew, the days and a menu first; shared gear is entered under “Gear and fuel”."))
		s.showMiddle(s.empty)
		return
	}
	if s.view == nil || s.view.plan != p {
		s.view = newView(p, rest)
	}
	s.day = max(s.view.first, min(s.day, len(p.Trip.Days)))
	s.keepMove()
	if s.view.place(s.member) < 0 {
		s.member = s.view.firstOf()
	}
	s.slider.Min, s.slider.Max = float64(s.view.first), float64(max(s.view.first+1, len(p.Trip.Days)))
	s.slider.Value = float64(s.day)
	s.slider.Refresh()
	s.showMiddle(nil)
	s.showAll()
	s.tellBanned()
}

// keepMove goes on with a move under way by the loads of a newer plan, if the
// thing is still there.
func (s *Screen) keepMove() {
	if s.move == nil {
		return
	}
	if t, ok := s.view.find(s.move.thing.id(), s.day); ok {
		s.move.thing = t
	} else {
		s.cancelMove()
	}
}

// showMiddle puts a text in the place of the picture, nil shows the picture.
func (s *Screen) showMiddle(instead fyne.CanvasObject) {
	picture := s.middle.Objects[0]
	if instead == nil && len(s.middle.Objects) == 1 && picture.Visible() {
		return // to refresh all of it takes long
	}
	s.middle.Objects = []fyne.CanvasObject{picture}
	picture.Show()
	if instead != nil {
		picture.Hide()
		s.middle.Objects = append(s.middle.Objects, instead)
	}
	s.middle.Refresh()
}

func (s *Screen) showAll() {
	if s.view == nil {
		return
	}
	text := fmt.Sprintf("%s %d", lang.L("Day"), s.day)
	if date := s.view.plan.Trip.DateOf(s.day); date.IsSet() {
		text += ", " + bench.DateWords(date)
	}
	s.dayText.SetContent(text)
	s.fairText.SetContent(s.view.stageLine(s.view.stage(s.day)))
	changed := s.view.changesLine(s.view.stage(s.day))
	s.changed.SetContent(changed)
	bench.SetShown(s.changed, changed != "")
	s.way.show()
	s.showBoard()
	s.drawn.Refresh()
	s.beside.Refresh()
}

// showDay goes to a day.
func (s *Screen) showDay(day int) {
	if s.view == nil || day == s.day || day < s.view.first || day > len(s.view.plan.Trip.Days) {
		return
	}
	s.day = day
	s.slider.Value = float64(day)
	s.slider.Refresh()
	s.showAll()
}

// showMember goes to a member.
func (s *Screen) showMember(id trip.MemberID) {
	s.member = id
	if s.view == nil {
		return
	}
	s.showBoard()
	s.board.reveal(id)
	s.drawn.Refresh()
	s.beside.Refresh()
}

// choose goes to a thing of the chosen member.
func (s *Screen) choose(id string) {
	_, before := s.pack.current()
	s.chosen = id
	if before >= 0 {
		s.pack.list.RefreshItem(before)
	}
	s.pack.showChosen()
}

// Focus gives the keyboard to what is worked on in the tab that is shown.
func (s *Screen) Focus() {
	if s.bench.Window == nil {
		return
	}
	canvas := s.bench.Window.Canvas()
	switch s.tabs.SelectedIndex() {
	case packsTab:
		s.focus(s.board.content)
	case changesTab:
		if s.changes.choice.Visible() {
			s.changes.table.FocusOn(canvas)
		} else {
			s.focus(s.changes.stay)
		}
	case fairnessTab:
		s.fairness.pins.table.FocusOn(canvas)
	case gearAndFuelTab:
		s.gear.table.FocusOn(canvas)
	}
}

// open goes to a tab, the keyboard too.
func (s *Screen) open(tab int) {
	s.tabs.SelectIndex(tab)
	s.Focus()
}

// GoTo puts the cursor on a day, a member, a bag or a piece of gear.
func (s *Screen) GoTo(place findings.Place) {
	if s.tabs.SelectedIndex() != packsTab && place.Day > 0 {
		s.day = place.Day // so that the tab comes up with it
	}
	s.tabs.SelectIndex(packsTab)
	if place.Day > 0 {
		s.showDay(place.Day)
	}
	if place.Member != 0 {
		s.showMember(place.Member)
	}
	switch {
	case place.Bag != "":
		s.goToThing(carry.Thing{Kind: carry.BagItem, Key: place.Bag})
	case place.Gear != 0:
		s.goToThing(carry.Thing{Kind: carry.GearItem, Key: bench.IDText(int64(place.Gear))})
	}
	s.focus(s.board.content)
}

// goToThing puts the cursor on a thing in whosever pack it is.
func (s *Screen) goToThing(what carry.Thing) {
	if s.view == nil {
		return
	}
	if t, ok := s.view.find(string(what.Kind)+" "+what.Key, s.day); ok {
		s.chosen = t.id()
		s.showMember(t.carrier)
	}
}

func (s *Screen) focus(on fyne.Focusable) {
	if s.bench.Window != nil {
		s.bench.Window.Canvas().Focus(on)
	}
}

// Commit stores what is being typed.
func (s *Screen) Commit() bool {
	s.cancelMove()
	return s.fairness.dinners.commit() && s.fairness.fuel.commit() && s.gear.commit()
}
