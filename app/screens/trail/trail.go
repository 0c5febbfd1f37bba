// Package trail is the screen for the way itself: what is eaten on the day,
// who has it and how it is cooked, what each carries, fuel and water left, and
// what to do when a bag is lost, somebody leaves or a box does not come.
package trail

import (
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/document"
	"sumpter/app/grid"
	"sumpter/app/look"
	"sumpter/app/screens/bench"
	"sumpter/domain/findings"
	"sumpter/domain/onward"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/exporter/print/prints"
)

// Screen is a day on the trail.
type Screen struct {
	bench   *bench.Bench
	number  int // the day shown; 0: not chosen yet
	day     trail.Day
	rest    *onward.Rest          // nil while nothing differs from the plan
	choice  int                   // of rest.Choices, -1: none
	asked   int                   // number of the last reckoning that was begun
	filling bool                  // the tables are being filled: nobody chose anything
	places  map[string]int        // of bags in day.Bags, by key
	members map[trip.MemberID]int // places in day.Packs
	date    *look.Text
	bags    *grid.Grid[string]        // rows are bag keys
	packs   *grid.Grid[trip.MemberID] // rows are members
	side    *sidePanel
	beside  *bench.Part // the side
	under   *look.Text  // beside the heading of the bags
	content fyne.CanvasObject
}

// New makes the screen.
func New(b *bench.Bench) *Screen {
	s := &Screen{bench: b, date: look.NewText("", look.Figure, look.Ink), under: look.NewText("", look.Caption, look.Quiet)}
	s.side = newSidePanel(s)
	s.bags = grid.New(s.bagColumns(), grid.Options[string]{
		Key: func(key string) string { return key }, OnSelect: s.side.showBag, OnLetter: s.letter, OnProblem: b.Say, Sticky: 1, Clipboard: b.Clipboard,
	})
	s.packs = grid.New(s.packColumns(), grid.Options[trip.MemberID]{
		Key: func(id trip.MemberID) string { return bench.IDText(int64(id)) }, OnSelect: s.side.showMember, OnProblem: b.Say, Sticky: 1, Clipboard: b.Clipboard,
	})
	eaten := container.NewBorder(container.NewBorder(nil, nil, look.NewHeading(lang.L("Eaten today")), nil, s.under.Yielding()), nil, nil, nil, s.bags)
	carried := container.NewBorder(look.NewHeading(lang.L("Carried this morning")), nil, nil, nil, s.packs)
	tables := container.NewVSplit(eaten, carried)
	tables.Offset = 0.52
	s.beside = bench.NewPart(s.side.content, s.side.refresh)
	b.InSteps(s.bags, s.beside, s.packs)
	split := container.NewHSplit(tables, s.beside.Place)
	split.Offset = 0.66
	s.content = container.NewBorder(s.head(), nil, nil, nil, split)
	return s
}

func (s *Screen) head() fyne.CanvasObject {
	eat := widget.NewButton(lang.L("Eaten"), func() { s.end(trip.Eaten) })
	eat.Importance = widget.HighImportance
	return container.NewBorder(nil, nil,
		container.NewHBox(widget.NewButtonWithIcon("", theme.NavigateBackIcon(), func() { s.turnTo(s.number - 1) }), s.date, widget.NewButtonWithIcon("", theme.NavigateNextIcon(), func() { s.turnTo(s.number + 1) }),
			widget.NewButton(lang.L("Today"), func() { s.turnTo(s.dayToday()) })),
		container.NewHBox(widget.NewButton(lang.L("Thrown away"), func() { s.end(trip.ThrownAway) }), widget.NewButton(lang.L("Lost"), func() { s.end(trip.Lost) }), eat))
}

// dayToday is the day of the trip by the calendar, day 1 outside it.
func (s *Screen) dayToday() int {
	t := s.bench.Trip()
	if day := int(s.bench.Today()-t.Start) + 1; t.Start.IsSet() && day >= 1 && day <= len(t.Days) {
		return day
	}
	return 1
}

// Name is the screen's name in places.
func (s *Screen) Name() string { return "trail" }

// Title is the word in the navigation.
func (s *Screen) Title() string { return lang.L("On trail") }

// Content is what is shown.
func (s *Screen) Content() fyne.CanvasObject { return s.content }

// Refresh shows the trip and the plan as they are now.
func (s *Screen) Refresh() {
	if s.number == 0 {
		s.number = s.dayToday()
	}
	s.show(s.number)
}

// show shows a day, the nearest there is.
func (s *Screen) show(number int) {
	t := s.bench.Trip()
	s.number = max(1, min(number, len(t.Days)))
	s.date.SetContent(fmt.Sprintf(" %s · %s ", lang.X("day-of", "Day {{.Day}} of {{.Days}}", map[string]any{"Day": s.number, "Days": len(t.Days)}), bench.DateWords(t.DateOf(s.number))))
	s.rest = nil
	s.fill()
	s.reckon()
}

// turnTo shows a day and gives the keyboard to its bags, to be ticked off.
func (s *Screen) turnTo(number int) {
	s.show(number)
	s.bags.Focus()
}

// reckon plans the rest anew, away from the screen, where something differs
// from what was packed for.
func (s *Screen) reckon() {
	done := s.bench.Trip().Progress
	s.asked++
	asked := s.asked
	if !done.UnderWay() && len(done.Packed) == 0 {
		return
	}
	s.bench.Rest(s.number, func(rest *onward.Rest) {
		if asked != s.asked || !rest.Changed && len(rest.Unticked) == 0 {
			return
		}
		s.rest, s.choice = rest, takenOf(rest.Choices)
		s.fill()
		s.side.openRest()
	})
}

// fill shows the day: as planned, or as it now stands.
func (s *Screen) fill() {
	t := s.bench.Trip()
	s.day = trail.Day{Number: s.number}
	p := s.bench.Plan()
	if s.rest != nil {
		p = s.rest.Plan
	}
	if p != nil {
		s.day = trail.On(p, &t.Progress, s.number)
	}
	s.setHandOvers()
	s.members = map[trip.MemberID]int{}
	members := make([]trip.MemberID, len(s.day.Packs))
	for i, pack := range s.day.Packs {
		s.members[pack.Member], members[i] = i, pack.Member
	}
	s.places = make(map[string]int, len(s.day.Bags))
	keys := make([]string, len(s.day.Bags))
	for i, bag := range s.day.Bags {
		s.places[bag.Key], keys[i] = i, bag.Key
	}
	under := lang.L("Space: eaten, T: thrown away, L: lost, N: not packed, the same key again: still there")
	if len(keys) == 0 {
		under = lang.L("No bag in the packs is for this day.")
	}
	s.under.SetContent(under)
	s.filling = true
	s.bags.SetRows(keys)
	s.packs.SetRows(members)
	s.filling = false
	s.beside.Refresh()
}

// Waiting counts what must be seen to on the rest of the way.
func (s *Screen) Waiting() int {
	way := s.bench.Way()
	if way == nil {
		return 0
	}
	return len(way.Findings) - findings.Count(way.Findings, findings.Note)
}

// Focus gives the keyboard to the bags of the day.
func (s *Screen) Focus() { s.bags.FocusOn(s.bench.Window.Canvas()) }

// GoTo shows a day, and on it a bag or a member.
func (s *Screen) GoTo(place findings.Place) {
	if place.Day > 0 {
		s.show(place.Day)
	}
	if place.Member != 0 && s.packs.SelectKey(bench.IDText(int64(place.Member))) {
		s.packs.Focus()
		return
	}
	if place.Bag != "" {
		s.bags.SelectKey(place.Bag)
	}
	s.bags.Focus()
}

// Commit stores what is being typed: nothing is typed here.
func (s *Screen) Commit() bool { return true }

// Actions are the screen's commands.
func (s *Screen) Actions() []bench.Action {
	alt := func(key fyne.KeyName) fyne.Shortcut {
		return &desktop.CustomShortcut{KeyName: key, Modifier: fyne.KeyModifierAlt}
	}
	return []bench.Action{
		{Name: lang.L("The day before"), Shortcut: alt(fyne.KeyLeft), Do: func() { s.show(s.number - 1) }},
		{Name: lang.L("The next day"), Shortcut: alt(fyne.KeyRight), Do: func() { s.show(s.number + 1) }},
		{Name: lang.L("Today"), Do: func() { s.show(s.dayToday()) }},
		{Name: lang.L("The bag was eaten"), Do: func() { s.end(trip.Eaten) }},
		{Name: lang.L("The bag was thrown away"), Do: func() { s.end(trip.ThrownAway) }},
		{Name: lang.L("The bag was lost"), Do: func() { s.end(trip.Lost) }},
		{Name: lang.L("All of the day was eaten"), Do: s.allEaten},
		{Name: lang.L("The chosen member leaves this evening"), Do: func() { s.leave(s.number) }},
		{Name: lang.L("The chosen member left before this day"), Do: func() { s.leave(s.number - 1) }},
		{Name: lang.L("Go on like this from this morning"), Do: s.accept},
		{Name: lang.L("Take back what was decided this morning"), Do: s.withdraw},
		{Name: lang.L("Print pocket cards for the rest of the way…"), Do: func() { s.bench.Document.GoTo(document.Place{Screen: "print", Paper: string(prints.RestCards)}) }},
		{Name: lang.L("Copy what changes hands this morning"), Do: s.copyHandOvers},
	}
}

func dayNumber(n int) string { return lang.L("day") + " " + strconv.Itoa(n) }
