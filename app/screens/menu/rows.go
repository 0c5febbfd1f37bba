package menu

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/app/screens/bench"
	"sumpter/app/written"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// rows lists the meals that are eaten on some day, of the groups shown.
func (s *Screen) rows() []row {
	t, several := s.seen.trip, len(s.seen.trip.Groups) > 1
	var rows []row
	for i := range t.Groups {
		g := &t.Groups[i]
		if s.group != 0 && g.ID != s.group {
			continue
		}
		for _, meal := range trip.Meals() {
			r := row{meal: meal, group: g.ID, title: mealTitle(meal)}
			if several {
				r.under = g.Name
			}
			rows = append(rows, r)
		}
	}
	return rows
}

// columns says of each day what matters for its meals.
func (s *Screen) columns() []column {
	t := s.seen.trip
	var columns []column
	for i := range t.Days {
		day := &t.Days[i]
		c := column{title: fmt.Sprintf("%s %d", lang.L("Day"), i+1)}
		if date := t.DateOf(i + 1); date.IsSet() {
			c.title += " · " + bench.WeekdayWord(date)
		}
		words := []string{written.Quantity(prose.Distance(day.Distance), t.Units), written.Quantity(day.High, t.Units)}
		for _, special := range []struct {
			is   bool
			word string
		}{{day.NoFlame, lang.L("no flame")}, {day.DryCamp, lang.L("dry camp")}, {day.SnowWater, lang.L("snow")}} {
			if special.is {
				words = append(words, special.word)
			}
		}
		c.under = strings.Join(words, " · ")
		columns = append(columns, c)
	}
	return columns
}

func (s *Screen) showGroups() {
	t := s.seen.trip
	names := []string{lang.L("All groups")}
	chosen := 0
	for i := range t.Groups {
		names = append(names, t.Groups[i].Name)
		if t.Groups[i].ID == s.group {
			chosen = i + 1
		}
	}
	if !slices.Equal(names, s.groups.Options) || s.groups.SelectedIndex() != chosen {
		changed := s.groups.OnChanged
		s.groups.OnChanged = nil
		s.groups.Options = names
		s.groups.SetSelectedIndex(chosen)
		s.groups.OnChanged = changed
	}
	show(s.groups, len(t.Groups) > 1)
}

func (s *Screen) chooseGroup(string) {
	s.group = 0
	if i := s.groups.SelectedIndex(); i > 0 {
		s.group = s.seen.trip.Groups[i-1].ID
	}
	s.Refresh()
}
