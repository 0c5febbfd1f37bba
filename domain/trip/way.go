package trip

import (
	"cmp"
	"slices"
)

// CrewChange is a member who left or joined on the way, other than planned.
type CrewChange struct {
	Member MemberID `json:"member"`
	Day    int      `json:"day"`   // 1-based: from the morning of this day on
	There  bool     `json:"there"` // the member is there; else no longer
}

// Replan is what the leader decided on one morning of the way, other than
// planned on packing night: the bags there are, eaten and carried in another
// way.
type Replan struct {
	Day       int        `json:"day"` // 1-based; one a day
	Moves     []DishMove `json:"moves,omitempty"`
	HandOvers []HandOver `json:"hand_overs,omitempty"`
	Given     []GivenBag `json:"given,omitempty"`
}

// DishMove says that a dish is eaten at another meal than it was packed for.
type DishMove struct {
	Dish  string  `json:"dish"`            // key of the dish as planned, with which the keys of its bags begin: "d3 dinner g1 r7 b1"
	Day   int     `json:"day"`             // on which it is eaten now; 0: carried on, for no meal yet
	Meal  Meal    `json:"meal,omitempty"`  // at which; none for day 0
	Group GroupID `json:"group,omitempty"` // whose; none for day 0
}

// GivenBag is a bag packed for one eater that another eats from this morning
// on, on the days it was packed for.
type GivenBag struct {
	Bag string   `json:"bag"` // bag key of the plan
	To  MemberID `json:"to"`
}

// HandOver is a thing that changes hands. One of bag, gear and fuel says what.
type HandOver struct {
	Bag  string   `json:"bag,omitempty"`            // bag key of the plan; or
	Gear GearID   `json:"gear,omitempty"`           // this gear; or
	Fuel string   `json:"fuel_container,omitempty"` // container key of the plan
	From MemberID `json:"from,omitempty"`           // who had it; 0: it comes out of a box
	To   MemberID `json:"to"`
}

// UnderWay tells whether something was noted that only happens on the way.
func (p *Progress) UnderWay() bool {
	return len(p.Ends)+len(p.PartsGone)+len(p.FuelNotes)+len(p.MissingBoxes)+len(p.CrewChanges)+len(p.Replans) > 0
}

// There tells whether a member is with the group on a day (1-based): as
// planned, unless they left or joined on the way.
func (t *Trip) There(m *Member, day int) bool {
	there, since := m.Present(day), 0
	for _, change := range t.Progress.CrewChanges {
		if change.Member == m.ID && change.Day <= day && change.Day > since {
			there, since = change.There, change.Day
		}
	}
	return there
}

// Replan finds what was decided on the morning of a day, or nil.
func (p *Progress) Replan(day int) *Replan {
	for i := range p.Replans {
		if p.Replans[i].Day == day {
			return &p.Replans[i]
		}
	}
	return nil
}

// KnownOn gives what was known on the morning of a day: what happened or was
// decided later is left out.
func (p *Progress) KnownOn(day int) Progress {
	known := *p
	known.Ends = slices.DeleteFunc(slices.Clone(p.Ends), func(e BagEnd) bool { return e.Day >= day })
	known.PartsGone = slices.DeleteFunc(slices.Clone(p.PartsGone), func(g PartGone) bool { return g.Day >= day })
	known.FuelNotes = slices.DeleteFunc(slices.Clone(p.FuelNotes), func(f FuelNote) bool { return f.Day > day })
	known.CrewChanges = slices.DeleteFunc(slices.Clone(p.CrewChanges), func(c CrewChange) bool { return c.Day > day })
	known.Replans = slices.DeleteFunc(slices.Clone(p.Replans), func(r Replan) bool { return r.Day > day })
	return known
}

// tidyTheWay takes out what speaks of members, gear, groups and days that are
// no longer in the trip. A dish moved to one of them is for no meal yet.
func (t *Trip) tidyTheWay() {
	p := &t.Progress
	last := len(t.Days)
	p.CrewChanges = orNil(slices.DeleteFunc(p.CrewChanges, func(c CrewChange) bool { return c.Day > last || t.Member(c.Member) == nil }))
	p.Replans = orNil(slices.DeleteFunc(p.Replans, func(r Replan) bool { return r.Day > last }))
	for i := range p.Replans {
		p.Replans[i].tidy(t)
	}
}

func (r *Replan) tidy(t *Trip) {
	for i := range r.Moves {
		move := &r.Moves[i]
		if move.Day > len(t.Days) || move.Day > 0 && t.Group(move.Group) == nil {
			*move = DishMove{Dish: move.Dish}
		}
	}
	r.HandOvers = orNil(slices.DeleteFunc(r.HandOvers, func(h HandOver) bool {
		return t.Member(h.To) == nil || h.Gear != 0 && t.GearItem(h.Gear) == nil
	}))
	r.Given = orNil(slices.DeleteFunc(r.Given, func(g GivenBag) bool { return t.Member(g.To) == nil }))
	for i := range r.HandOvers {
		if h := &r.HandOvers[i]; h.From != 0 && t.Member(h.From) == nil {
			h.From = 0
		}
	}
}

// redate gives who came and went, and what was decided, the new numbers of the
// days; 0 takes a day out. What held from the morning of such a day on holds
// from the next.
func (t *Trip) redate(to func(day int) int) {
	p := &t.Progress
	next := func(day int) int {
		if renumbered := to(day); renumbered > 0 {
			return renumbered
		}
		return day
	}
	for i := range p.CrewChanges {
		p.CrewChanges[i].Day = next(p.CrewChanges[i].Day)
	}
	p.CrewChanges = slices.DeleteFunc(p.CrewChanges, func(c CrewChange) bool { return c.Day > len(t.Days) })
	p.CrewChanges = newestOf(p.CrewChanges, func(c CrewChange) CrewChange { return CrewChange{Member: c.Member, Day: c.Day} })
	for i := range p.Replans {
		p.Replans[i].Day = min(next(p.Replans[i].Day), len(t.Days))
	}
	p.Replans = newestOf(p.Replans, func(r Replan) int { return r.Day })
	for i := range p.FuelNotes {
		p.FuelNotes[i].Day = min(next(p.FuelNotes[i].Day), len(t.Days))
	}
	p.FuelNotes = newestOf(p.FuelNotes, func(f FuelNote) FuelNote { return FuelNote{Container: f.Container, Day: f.Day} })
	t.redateKept(next)
}

// rename gives the dishes and bags named on the way the new numbers of their
// days. A dish whose new day is gone is for no meal yet.
func (r *Replan) rename(to func(day int) int) {
	r.Moves = rekeyed(r.Moves, to, func(m *DishMove) *string { return &m.Dish })
	for i := range r.Moves {
		move := &r.Moves[i]
		if move.Day == 0 {
			continue
		}
		if move.Day = to(move.Day); move.Day == 0 {
			*move = DishMove{Dish: move.Dish}
		}
	}
	r.HandOvers = rekeyed(r.HandOvers, to, func(h *HandOver) *string { return &h.Bag })
	r.Given = rekeyed(r.Given, to, func(g *GivenBag) *string { return &g.Bag })
}

// newestOf keeps the last of those that have the same key.
func newestOf[T any, K comparable](list []T, key func(T) K) []T {
	last := map[K]int{}
	for i, one := range list {
		last[key(one)] = i
	}
	kept := list[:0]
	for i, one := range list {
		if last[key(one)] == i {
			kept = append(kept, one)
		}
	}
	return orNil(kept)
}

// canonicalWay puts what was noted on the way in order.
func (p *Progress) canonicalWay() {
	p.CrewChanges = sortedBy(p.CrewChanges, func(a, b CrewChange) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(a.Member, b.Member))
	})
	p.Replans = sortedBy(p.Replans, func(a, b Replan) int { return cmp.Compare(a.Day, b.Day) })
	for i := range p.Replans {
		r := &p.Replans[i]
		r.Moves = sortedBy(r.Moves, func(a, b DishMove) int { return cmp.Compare(a.Dish, b.Dish) })
		r.HandOvers = sortedBy(r.HandOvers, compareHandOvers)
		r.Given = sortedBy(r.Given, func(a, b GivenBag) int { return cmp.Compare(a.Bag, b.Bag) })
	}
}
