// Package settings is the screen of the leader's choices that hold for the
// whole trip: its name, dates and units, what the plan aims at, how the food
// travels, the kinds of bag on packing night, and who cooks together. Each choice stands with what
// it does, what it may be and what is usual.
package settings

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/domain/findings"
)

// Screen is the settings on the screen.
type Screen struct {
	choices *choicesTab
	bags    *bagsTab
	groups  *groupsTab
	tabs    *bench.Tabs
}

// Places of the tabs.
const (
	tabChoices = iota
	tabBags
	tabGroups
)

// New makes the screen.
func New(b *bench.Bench) *Screen {
	s := &Screen{choices: newChoicesTab(b), bags: newBagsTab(b), groups: newGroupsTab(b)}
	s.tabs = bench.NewTabs(
		container.NewTabItem(lang.L("Choices"), s.choices.content),
		container.NewTabItem(lang.L("Kinds of bag"), s.bags.content),
		container.NewTabItem(lang.L("Cook groups"), s.groups.content),
	)
	s.tabs.OnSelected = func(*container.TabItem) { s.Refresh() }
	return s
}

// Name is the screen's name in places.
func (s *Screen) Name() string { return "settings" }

// Title is the word in the navigation.
func (s *Screen) Title() string { return lang.L("Trip settings") }

// Content is what is shown.
func (s *Screen) Content() fyne.CanvasObject { return s.tabs }

// Waiting is nothing: every setting has a value.
func (s *Screen) Waiting() int { return 0 }

// Refresh shows the trip and the plan as they are now.
func (s *Screen) Refresh() {
	switch s.tabs.SelectedIndex() {
	case tabBags:
		s.bags.refresh()
	case tabGroups:
		s.groups.refresh()
	default:
		s.choices.refresh()
	}
}

// Focus gives the keyboard to the table.
func (s *Screen) Focus() {
	canvas := s.choices.bench.Window.Canvas()
	switch s.tabs.SelectedIndex() {
	case tabBags:
		s.bags.table.FocusOn(canvas)
	case tabGroups:
		s.groups.table.FocusOn(canvas)
	default:
		s.choices.table.FocusOn(canvas)
	}
}

// GoTo gives the keyboard to the table: no finding leads further in.
func (s *Screen) GoTo(findings.Place) { s.open(tabChoices) }

// Resume goes to where the screen was before it was made anew.
func (s *Screen) Resume(before bench.Screen) {
	if old, ok := before.(*Screen); ok {
		s.tabs.SelectIndex(old.tabs.SelectedIndex())
		if row, ok := old.choices.table.Selected(); ok {
			s.choices.table.MoveCursor(row, valueColumn)
		}
	}
}

func (s *Screen) open(tab int) {
	if !s.Commit() {
		return
	}
	s.tabs.SelectIndex(tab)
	s.Focus()
}

// Commit stores what is being typed.
func (s *Screen) Commit() bool {
	return s.choices.commit() && s.bags.table.Commit() && s.groups.table.Commit()
}

// Actions are the screen's commands.
func (s *Screen) Actions() []bench.Action {
	in := func(tab int, do func()) func() {
		return func() {
			s.open(tab)
			do()
		}
	}
	return []bench.Action{
		{Name: lang.L("Choices for the whole trip"), Do: func() { s.open(tabChoices) }},
		{Name: lang.L("Find a setting"), Do: func() {
			s.open(tabChoices)
			if w := s.choices.bench.Window; w != nil {
				w.Canvas().Focus(s.choices.filter)
			}
		}},
		{Name: lang.L("This setting back to usual"), Do: s.oneUsual},
		{Name: lang.L("All settings back to usual"), Do: s.choices.allUsual},
		{Name: lang.L("Kinds of bag"), Do: func() { s.open(tabBags) }},
		{Name: lang.L("Add a kind of bag"), Do: in(tabBags, s.bags.table.Add)},
		{Name: lang.L("Remove the kind of bag"), Do: in(tabBags, s.bags.table.Delete)},
		{Name: lang.L("Add the usual kinds of bag"), Do: in(tabBags, s.bags.addUsual)},
		{Name: lang.L("Cook groups"), Do: func() { s.open(tabGroups) }},
		{Name: lang.L("Add a cook group"), Do: in(tabGroups, s.groups.table.Add)},
		{Name: lang.L("Remove the cook group"), Do: in(tabGroups, s.groups.table.Delete)},
	}
}

func (s *Screen) oneUsual() {
	if row, ok := s.choices.table.Selected(); ok && s.choices.commit() {
		s.choices.backToUsual(&s.choices.rows[row])
	}
}
