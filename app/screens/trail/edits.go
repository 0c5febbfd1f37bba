package trail

import (
	"errors"
	"slices"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/trip"
)

// letter marks the bag at the cursor; it tells whether the key meant that.
func (s *Screen) letter(key string, letter rune) bool {
	switch letter {
	case ' ':
		s.mark(key, trip.Eaten)
	case 't', 'T':
		s.mark(key, trip.ThrownAway)
	case 'l', 'L':
		s.mark(key, trip.Lost)
	default:
		return false
	}
	return true
}

// end marks the bag at the cursor.
func (s *Screen) end(end trip.End) {
	if key, ok := s.bags.Selected(); ok {
		s.mark(key, end)
		s.bags.Focus()
	}
}

// mark notes what became of a bag on the day shown, and goes to the next; the
// same mark again takes it back.
func (s *Screen) mark(key string, end trip.End) {
	bag, ok := s.bag(key)
	if !ok {
		return
	}
	day := s.number
	name := lang.X("mark-bag", "note that bag {{.Bag}} was {{.End}}", map[string]any{"Bag": bag.Code, "End": lang.L(string(end))})
	if bag.End == end {
		name = lang.X("unmark-bag", "note that bag {{.Bag}} is still there", map[string]any{"Bag": bag.Code})
	}
	err := s.bench.Edit(name, func(t *trip.Trip) error {
		setEnd(t, key, end, day, bag.End == end)
		return nil
	})
	if err == nil && bag.End != end {
		if row, column := s.bags.Cursor(); row+1 < len(s.bags.Rows()) {
			s.bags.MoveCursor(row+1, column)
		}
	}
}

func setEnd(t *trip.Trip, key string, end trip.End, day int, back bool) {
	t.Progress.Ends = slices.DeleteFunc(t.Progress.Ends, func(e trip.BagEnd) bool { return e.Bag == key })
	if !back {
		t.Progress.Ends = append(t.Progress.Ends, trip.BagEnd{Bag: key, End: end, Day: day})
	}
	if len(t.Progress.Ends) == 0 {
		t.Progress.Ends = nil
	}
}

// allEaten marks every bag of the day that is still there.
func (s *Screen) allEaten() {
	day, list := s.number, s.day.Bags
	_ = s.bench.Edit(lang.X("all-eaten", "note that all bags of day {{.Day}} were eaten", map[string]any{"Day": day}), func(t *trip.Trip) error {
		for _, bag := range list {
			if bag.End == "" {
				setEnd(t, bag.Key, trip.Eaten, day, false)
			}
		}
		return nil
	})
}

// leave notes that the chosen member goes home after a day; what was packed
// stays packed, and the rest is planned anew with it.
func (s *Screen) leave(last int) {
	id, ok := s.packs.Selected()
	member := s.bench.Trip().Member(id)
	if !ok || member == nil {
		s.bench.Say(lang.L("Choose the member in the lower table first."))
		return
	}
	name := lang.X("leave", "let {{.Name}} leave after day {{.Day}}", map[string]any{"Name": member.Name, "Day": last})
	_ = s.bench.Edit(name, func(t *trip.Trip) error {
		switch {
		case last < max(1, member.FirstDay):
			return errors.New(lang.L("That is before the member's first day: take them out in the crew instead."))
		case last >= len(t.Days) || member.LastDay != 0 && last >= member.LastDay:
			return errors.New(lang.L("That is their last day anyway."))
		}
		t.Progress.Departures = slices.DeleteFunc(t.Progress.Departures, func(d trip.Departure) bool { return d.Member == id })
		t.Progress.Departures = append(t.Progress.Departures, trip.Departure{Member: id, Day: last + 1})
		return nil
	})
}

// stay takes a departure back.
func (s *Screen) stay(id trip.MemberID) {
	name := lang.X("stay", "let {{.Name}} stay after all", map[string]any{"Name": s.memberName(id)})
	_ = s.bench.Edit(name, func(t *trip.Trip) error {
		t.Progress.Departures = slices.DeleteFunc(t.Progress.Departures, func(d trip.Departure) bool { return d.Member == id })
		if len(t.Progress.Departures) == 0 {
			t.Progress.Departures = nil
		}
		return nil
	})
}

// takeOver moves bags to the meals that were proposed.
func (s *Screen) takeOver() {
	if s.rest == nil || len(s.rest.Moves) == 0 {
		s.bench.Say(lang.L("No other meals are proposed."))
		return
	}
	moves := s.rest.Moves
	_ = s.bench.Edit(lang.X("take-over", "eat {{.Count}} dishes at other meals", map[string]any{"Count": len(moves)}), func(t *trip.Trip) error {
		for _, move := range moves {
			for _, key := range move.Bags {
				t.Progress.Moves = slices.DeleteFunc(t.Progress.Moves, func(m trip.BagMove) bool { return m.Bag == key })
				t.Progress.Moves = append(t.Progress.Moves, trip.BagMove{Bag: key, Day: move.ToDay, Meal: move.ToMeal})
			}
		}
		return nil
	})
}

// asPacked puts every moved bag back to the meal on its label.
func (s *Screen) asPacked() {
	_ = s.bench.Edit(lang.L("eat every bag at the meal on its label"), func(t *trip.Trip) error {
		t.Progress.Moves = nil
		return nil
	})
}

// missing notes that a box did not come, or came after all.
func (s *Screen) missing(point trip.PointID) {
	t := s.bench.Trip()
	data := map[string]any{"Point": "–"}
	if p := t.Point(point); p != nil {
		data["Point"] = p.Name
	}
	gone := slices.Contains(t.Progress.MissingBoxes, point)
	name := lang.X("box-missing", "note that the box at {{.Point}} did not come", data)
	if gone {
		name = lang.X("box-came", "note that the box at {{.Point}} came after all", data)
	}
	_ = s.bench.Edit(name, func(t *trip.Trip) error {
		if !gone {
			t.Progress.MissingBoxes = append(t.Progress.MissingBoxes, point)
			return nil
		}
		t.Progress.MissingBoxes = slices.DeleteFunc(t.Progress.MissingBoxes, func(id trip.PointID) bool { return id == point })
		if len(t.Progress.MissingBoxes) == 0 {
			t.Progress.MissingBoxes = nil
		}
		return nil
	})
}
