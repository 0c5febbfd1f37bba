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

// leave makes a day the last of the chosen member; the rest is planned anew.
func (s *Screen) leave(last int) {
	id, ok := s.packs.Selected()
	member := s.bench.Trip().Member(id)
	if !ok || member == nil {
		s.bench.Say(lang.L("Choose the member in the lower table first."))
		return
	}
	name := lang.X("leave", "let {{.Name}} leave after day {{.Day}}", map[string]any{"Name": member.Name, "Day": last})
	_ = s.bench.Edit(name, func(t *trip.Trip) error {
		m := t.Member(id)
		if m == nil || last < max(1, m.FirstDay) {
			return errors.New(lang.L("That is before the member's first day: take them out in the crew instead."))
		}
		m.LastDay = last
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
