package route

import (
	"errors"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
	"fyne.io/fyne/v2/widget"

	"sumpter/app/grid"
	"sumpter/app/screens/bench"
	"sumpter/app/typed"
	"sumpter/app/written"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// change stores one field of a day in a step of its own.
func (s *Screen) change(number, column int, text string) error {
	f := s.fields()[column]
	if day := s.dayOf(number); day != nil && text == shownText(f, day, number) {
		return nil // the editor was opened and left: a rounded figure is not what was meant
	}
	return s.bench.Edit(lang.X("edit-day", "change {{.What}} of day {{.Day}}", map[string]any{"What": f.title, "Day": number}), func(t *trip.Trip) error {
		return store(t, f, number, text)
	})
}

// shownText is what the editor of a field starts from.
func shownText(f field, day *trip.Day, number int) string {
	if f.edit != nil {
		return f.edit(day, number)
	}
	return f.text(day, number)
}

func store(t *trip.Trip, f field, number int, text string) error {
	if number < 1 || number > len(t.Days) {
		return errors.New(lang.L("the day is gone"))
	}
	return f.set(&t.Days[number-1], text)
}

// setDate moves the whole trip so that a day falls on a date.
func (s *Screen) setDate(number int, text string) error {
	date, err := typed.Date(text, s.bench.Units())
	if err != nil {
		return err
	}
	return s.setStart(date.AddDays(1 - number))
}

func (s *Screen) setStart(date units.Date) error {
	if !date.IsSet() {
		return errors.New(lang.L("Enter a date, such as 2026-07-20 or 20 Jul 2026."))
	}
	return s.bench.Edit(lang.X("set-start", "start on {{.Date}}", map[string]any{"Date": bench.DateWords(date)}), func(t *trip.Trip) error {
		t.StartOn(date)
		return nil
	})
}

// add appends a day that stays where the last one ended.
func (s *Screen) add() (string, error) {
	number := len(s.bench.Trip().Days) + 1
	err := s.bench.Edit(lang.L("add a day"), func(t *trip.Trip) error { return t.InsertDay(number, restAfter(t, number-1)) })
	return strconv.Itoa(number), err
}

// insert puts a day in before the chosen one.
func (s *Screen) insert() {
	number := s.chosen()
	name := lang.X("insert-day", "put a day in before day {{.Day}}", map[string]any{"Day": number})
	if s.bench.Edit(name, func(t *trip.Trip) error { return t.InsertDay(number, restAfter(t, number-1)) }) == nil {
		s.choose(number)
	}
}

// restAfter makes a day of rest at the camp of a day, in its weather.
func restAfter(t *trip.Trip, number int) trip.Day {
	day := trip.NewDay()
	if number >= 1 && number <= len(t.Days) {
		before := t.Days[number-1]
		day.Terrain, day.Low, day.High = before.Terrain, before.Low, before.High
		day.CampHeight, day.LunchHeight = before.CampHeight, before.CampHeight
	}
	return day
}

func (s *Screen) remove(number int) error {
	return s.bench.Edit(lang.X("remove-day", "remove day {{.Day}}", map[string]any{"Day": number}), func(t *trip.Trip) error { return t.RemoveDay(number) })
}

func (s *Screen) earlier() { s.move(-1) }
func (s *Screen) later()   { s.move(1) }

func (s *Screen) move(by int) {
	from := s.chosen()
	to := from + by
	if to < 1 || to > len(s.bench.Trip().Days) {
		s.bench.Say(lang.L("There is no day beyond it."))
		return
	}
	name := lang.X("move-day", "move day {{.From}} to be day {{.To}}", map[string]any{"From": from, "To": to})
	if s.bench.Edit(name, func(t *trip.Trip) error { return t.MoveDay(from, to) }) == nil {
		s.choose(to)
	}
}

// paste stores many cells as one step of undo. Dates are passed over: they
// follow from the first.
func (s *Screen) paste(cells []grid.Pasted[int]) error {
	fields := s.fields()
	return s.bench.Edit(lang.L("paste into the days"), func(t *trip.Trip) error {
		for _, cell := range cells {
			if cell.Column == dateColumn {
				continue
			}
			if err := store(t, fields[cell.Column], cell.Row, cell.Text); err != nil {
				return prose.Errorf("%s %d, %s: %s", lang.L("day"), cell.Row, fields[cell.Column].title, err)
			}
		}
		return nil
	})
}

// startEntry is the field for the date of day 1.
type startEntry struct {
	widget.Entry
	screen *Screen
	shown  string
}

func newStartEntry(s *Screen) *startEntry {
	e := &startEntry{screen: s}
	e.ExtendBaseWidget(e)
	e.SetPlaceHolder("2026-07-20")
	e.OnSubmitted = func(string) {
		if e.store() {
			s.table.Focus()
		}
	}
	return e
}

// show writes the date, unless another is being typed.
func (e *startEntry) show() {
	date := e.screen.bench.Trip().Start.String()
	if e.Text == e.shown {
		e.SetText(date)
	}
	e.shown = date
}

// store takes what was typed; it tells whether nothing is left open.
func (e *startEntry) store() bool {
	if e.Text == e.shown {
		return true
	}
	date, err := typed.Date(e.Text, e.screen.bench.Units())
	if err == nil {
		err = e.screen.setStart(date)
	}
	if err != nil {
		e.screen.bench.Say(written.Error(err))
		return false
	}
	e.shown = e.screen.bench.Trip().Start.String()
	e.SetText(e.shown)
	return true
}

// FocusLost stores the date when the user goes elsewhere.
func (e *startEntry) FocusLost() {
	e.Entry.FocusLost()
	e.store()
}

// TypedKey takes the typing back with Escape.
func (e *startEntry) TypedKey(event *fyne.KeyEvent) {
	if event.Name == fyne.KeyEscape {
		e.SetText(e.shown)
		e.screen.table.Focus()
		return
	}
	e.Entry.TypedKey(event)
}
