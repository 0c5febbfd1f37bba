package trail

import (
	"errors"
	"slices"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/onward"
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
	case 'n', 'N':
		s.mark(key, trip.NotPacked)
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

// allEaten marks every bag that the day eats up and that is still there.
func (s *Screen) allEaten() {
	day, list := s.number, s.day.Bags
	_ = s.bench.Edit(lang.X("all-eaten", "note that all bags of day {{.Day}} were eaten", map[string]any{"Day": day}), func(t *trip.Trip) error {
		for _, bag := range list {
			if bag.End == "" && bag.LastDay <= day { // a store goes on
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
	if !ok {
		s.bench.Say(lang.L("Choose the member in the lower table first."))
		return
	}
	s.letLeave(id, last)
}

// letLeave notes that a day is a member's last.
func (s *Screen) letLeave(id trip.MemberID, last int) {
	member := s.bench.Trip().Member(id)
	if member == nil {
		return
	}
	name := lang.X("leave", "let {{.Name}} leave after day {{.Day}}", map[string]any{"Name": member.Name, "Day": last})
	err := s.bench.Edit(name, func(t *trip.Trip) error {
		switch {
		case last < max(1, member.FirstDay):
			return errors.New(lang.L("That is before the member's first day: take them out in the crew instead."))
		case last >= len(t.Days) || member.LastDay != 0 && last >= member.LastDay:
			return errors.New(lang.L("That is their last day anyway."))
		}
		setThere(t, id, last+1, false)
		return nil
	})
	if err == nil {
		s.show(last + 1) // the morning on which things change hands
	}
}

// join notes that somebody is there from the morning of the day shown on.
func (s *Screen) join(id trip.MemberID) {
	name := lang.X("join", "let {{.Name}} join on day {{.Day}}", map[string]any{"Name": s.memberName(id), "Day": s.number})
	_ = s.bench.Edit(name, func(t *trip.Trip) error {
		setThere(t, id, s.number, true)
		return nil
	})
}

// setThere notes that a member is there, or no longer, from a morning on. What
// was noted of later mornings no longer holds.
func setThere(t *trip.Trip, id trip.MemberID, day int, there bool) {
	p := &t.Progress
	p.CrewChanges = slices.DeleteFunc(p.CrewChanges, func(c trip.CrewChange) bool { return c.Member == id && c.Day >= day })
	p.CrewChanges = append(p.CrewChanges, trip.CrewChange{Member: id, Day: day, There: there})
}

// unchange takes a change of the crew back.
func (s *Screen) unchange(change trip.CrewChange) {
	name := lang.X("as-planned-there", "let {{.Name}} be there as planned", map[string]any{"Name": s.memberName(change.Member)})
	_ = s.bench.Edit(name, func(t *trip.Trip) error {
		p := &t.Progress
		p.CrewChanges = slices.DeleteFunc(p.CrewChanges, func(c trip.CrewChange) bool { return c == change })
		if len(p.CrewChanges) == 0 {
			p.CrewChanges = nil
		}
		return nil
	})
}

// accept stores what changes hands and what is eaten elsewhere, as shown.
func (s *Screen) accept() {
	if !s.toDecide() {
		s.bench.Say(lang.L("There is nothing to decide on this morning."))
		return
	}
	decided := s.rest.Decide(s.choice, true)
	name := lang.X("accept-rest", "go on as shown from day {{.Day}} (hand-overs: {{.HandOvers}}, moved meals: {{.Meals}})", map[string]any{
		"HandOvers": len(s.day.HandOvers), "Meals": len(s.rest.Moves), "Day": s.number})
	_ = s.bench.Edit(name, func(t *trip.Trip) error {
		onward.Store(&t.Progress, decided)
		return nil
	})
}

// withdraw takes back what was decided on the morning shown.
func (s *Screen) withdraw() {
	day := s.number
	if s.bench.Trip().Progress.Replan(day) == nil {
		s.bench.Say(lang.L("Nothing was decided on this morning."))
		return
	}
	_ = s.bench.Edit(lang.X("withdraw-rest", "take back what was decided on day {{.Day}}", map[string]any{"Day": day}), func(t *trip.Trip) error {
		p := &t.Progress
		p.Replans = slices.DeleteFunc(p.Replans, func(r trip.Replan) bool { return r.Day == day })
		if len(p.Replans) == 0 {
			p.Replans = nil
		}
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
