package trip

import (
	"slices"
	"strconv"
	"strings"

	"sumpter/domain/prose"
	"sumpter/domain/units"
)

// StartOn moves day 1 to a date, and with it the dates that the leader chose
// before the trip: packing night and shopping day stay as many days before it
// as they were. A trip without a start only gets one.
func (t *Trip) StartOn(date units.Date) {
	by := int(date - t.Start)
	if t.Start.IsSet() {
		for _, before := range []*units.Date{&t.Settings.PackingNight, &t.Settings.ShoppingDay} {
			if before.IsSet() {
				*before = before.AddDays(by)
			}
		}
	}
	t.Start = date
}

// InsertDay puts a day in so that it becomes number at, from 1 to one past
// the last day. What belongs to a later day moves along: menu, resupply points,
// pins, what is packed and eaten, and the days members come and go on. Who is
// there from the first or to the last day of the trip stays so.
func (t *Trip) InsertDay(at int, day Day) error {
	count := len(t.Days)
	if at < 1 || at > count+1 {
		return prose.Errorf("a day cannot be put in as number %d: choose 1 to %d", at, count+1)
	}
	if count >= MaxDays {
		return prose.Errorf("the trip has %d days already, the most there can be", count)
	}
	later := func(d int) int {
		if d >= at {
			return d + 1
		}
		return d
	}
	for i := range t.Crew {
		m := &t.Crew[i]
		if m.FirstDay > 1 {
			m.FirstDay = later(m.FirstDay)
		}
		if m.LastDay == count && at == count+1 {
			m.LastDay++
		} else {
			m.LastDay = later(m.LastDay)
		}
	}
	for i := range t.Points {
		t.Points[i].AfterDay = later(t.Points[i].AfterDay)
	}
	t.Days = slices.Insert(t.Days, at-1, day)
	t.renumber(later)
	t.redate(later)
	return nil
}

// RemoveDay takes a day out with its menu and what was noted of its bags. A
// resupply point reached on its evening is then reached on the evening before,
// on day 1 if there is none. It refuses the last day left, and a day that is
// the only one of a member.
func (t *Trip) RemoveDay(day int) error {
	switch {
	case day < 1 || day > len(t.Days):
		return prose.Errorf("there is no day %d", day)
	case len(t.Days) == 1:
		return prose.Errorf("the only day stays: a trip needs one")
	}
	for i := range t.Crew {
		if m := &t.Crew[i]; m.onlyOn(day, len(t.Days)) {
			return prose.Errorf("%s is there on day %d only: take the member out first, or change their days", m.Name, day)
		}
	}
	for i := range t.Crew {
		m := &t.Crew[i]
		if m.FirstDay > day {
			m.FirstDay--
		}
		if m.LastDay >= day {
			m.LastDay--
		}
	}
	for i := range t.Points {
		if p := &t.Points[i]; p.AfterDay >= day {
			p.AfterDay = max(1, p.AfterDay-1)
		}
	}
	t.Days = slices.Delete(t.Days, day-1, day)
	closed := func(d int) int {
		switch {
		case d == day:
			return 0
		case d > day:
			return d - 1
		default:
			return d
		}
	}
	t.renumber(closed)
	t.redate(closed)
	return nil
}

// onlyOn tells whether a day is all of the trip that a member takes part in.
func (m *Member) onlyOn(day, days int) bool {
	first, last := max(1, m.FirstDay), m.LastDay
	if last == 0 {
		last = days
	}
	return first == day && last == day
}

// MoveDay makes a day the one of another number; those between close up. Its
// menu, the resupply points of its evening and its bags go with it. Members
// come and go, and things are decided, on the same dates as before.
func (t *Trip) MoveDay(from, to int) error {
	if from < 1 || from > len(t.Days) || to < 1 || to > len(t.Days) {
		return prose.Errorf("day %d cannot become day %d: the trip has %d days", from, to, len(t.Days))
	}
	moved := func(d int) int {
		switch {
		case d == from:
			return to
		case from < d && d <= to:
			return d - 1
		case to <= d && d < from:
			return d + 1
		default:
			return d
		}
	}
	day := t.Days[from-1]
	t.Days = slices.Insert(slices.Delete(t.Days, from-1, from), to-1, day)
	for i := range t.Points {
		t.Points[i].AfterDay = moved(t.Points[i].AfterDay)
	}
	t.renumber(moved)
	return nil
}

// renumber gives what names a day the day's new number; 0 takes it out.
func (t *Trip) renumber(to func(day int) int) {
	t.Menu = slices.DeleteFunc(t.Menu, func(c Cell) bool { return to(c.Day) == 0 })
	for i := range t.Menu {
		t.Menu[i].Day = to(t.Menu[i].Day)
	}
	t.Pins = rekeyed(t.Pins, to, func(p *Pin) *string { return &p.Bag })
	t.Progress.Packed = rekeyed(t.Progress.Packed, to, func(b *PackedBag) *string { return &b.Bag })
	t.Progress.Ends = rekeyed(t.Progress.Ends, to, func(e *BagEnd) *string { return &e.Bag })
	t.Progress.PartsGone = rekeyed(t.Progress.PartsGone, to, func(g *PartGone) *string { return &g.Bag })
	for i := range t.Progress.Ends {
		renumberNoted(&t.Progress.Ends[i].Day, to)
	}
	for i := range t.Progress.PartsGone {
		renumberNoted(&t.Progress.PartsGone[i].Day, to)
	}
	t.Progress.PartsGone = newestOf(t.Progress.PartsGone, func(g PartGone) PartGone { return PartGone{Bag: g.Bag, Day: g.Day} })
	for i := range t.Progress.Replans {
		t.Progress.Replans[i].rename(to)
	}
	for i := range t.Kept {
		t.Kept[i].Things = rekeyed(t.Kept[i].Things, to, func(h *HandOver) *string { return &h.Bag })
	}
}

// renumberNoted gives a day on which something was noted its new number; where
// the day is taken out it was noted on the day before.
func renumberNoted(day *int, to func(int) int) {
	if renumbered := to(*day); renumbered > 0 {
		*day = renumbered
	} else {
		*day = max(1, *day-1)
	}
}

// rekeyed gives the bag keys of a list the new numbers of their days, and
// drops what was noted of bags whose day is gone.
func rekeyed[T any](list []T, to func(int) int, key func(*T) *string) []T {
	kept := list[:0]
	for _, one := range list {
		if renamed, ok := rekey(*key(&one), to); ok {
			*key(&one) = renamed
			kept = append(kept, one)
		}
	}
	return orNil(kept)
}

// rekey renumbers the day a bag key begins with, "d3 dinner …"; other texts
// stay. It tells whether the day is still there.
func rekey(key string, to func(int) int) (string, bool) {
	first, rest, _ := strings.Cut(key, " ")
	digits, ok := strings.CutPrefix(first, "d")
	day, err := strconv.Atoi(digits)
	if !ok || err != nil {
		return key, true
	}
	renumbered := to(day)
	return "d" + strconv.Itoa(renumbered) + " " + rest, renumbered > 0
}
