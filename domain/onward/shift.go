package onward

import (
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
)

// What moving is weighed by. A day short by a fifth counts 0.04.
const (
	emptyMeal  = 0.02  // a meal with nothing left to eat
	oneMove    = 0.004 // to find another bag than the label says
	otherGroup = 0.004 // and to carry it to another pot
	mostMoves  = 60
	enough     = 0.97 // of what was planned for a day: nothing need come to it
)

// propose finds dishes that are better eaten at another meal, of their cook
// group or of another, so that no day of any group falls far behind the
// others. Where nothing is missing and nobody joined nothing moves.
func (w *work) propose() []Move {
	if len(w.gone) == 0 && !w.differ && !w.joined() {
		return nil
	}
	s := w.newShift()
	for range mostMoves {
		lot, to, gain := -1, slot{}, 1e-9
		wanting := s.wanting()
		for _, i := range s.mine {
			for _, slot := range wanting {
				if slot == s.at[i] || !w.fits(i, slot) {
					continue
				}
				if better := s.gain(i, slot); better > gain+1e-12 {
					lot, to, gain = i, slot, better
				}
			}
		}
		if lot < 0 {
			break
		}
		s.put(lot, to)
	}
	return s.moves()
}

func (w *work) joined() bool {
	return slices.ContainsFunc(w.done.CrewChanges, func(c trip.CrewChange) bool { return c.There })
}

// groupDay is one day of one cook group.
type groupDay struct {
	group trip.GroupID
	day   int
}

// shift is an arrangement of the dishes that are left, and how bad each day of
// it is: the part that is missing, squared, so that a little on each day is
// better than much on one; meals with nothing; and every dish that is not where
// its label says.
type shift struct {
	w      *work
	slots  []slot
	mine   []int // places in the lots
	at     map[int]slot
	want   map[groupDay]float64
	have   map[groupDay]float64
	served map[slot]int
	brings map[bringsKey]float64
}

type bringsKey struct {
	lot int
	at  groupDay
}

func (w *work) newShift() *shift {
	s := &shift{
		w: w, slots: w.slotsLeft(), at: map[int]slot{}, want: w.wantedByDay(), have: map[groupDay]float64{},
		served: map[slot]int{}, brings: map[bringsKey]float64{},
	}
	for i := range w.lots {
		l := &w.lots[i]
		if len(l.bags) == 0 || l.now.day < w.from {
			continue
		}
		s.mine = append(s.mine, i)
		s.at[i] = l.now
		s.have[groupDay{l.now.group, l.now.day}] += s.kcal(i, l.now)
		s.served[l.now]++
	}
	return s
}

// wantedByDay is what was planned for those who are there, and for who joined
// what a mean eater of the group was planned to get.
func (w *work) wantedByDay() map[groupDay]float64 {
	want := map[groupDay]float64{}
	for i := range w.lots {
		if l := &w.lots[i]; l.home.day >= w.from {
			want[groupDay{l.home.group, l.home.day}] += float64(w.wanted(l))
		}
	}
	for at, kcal := range want {
		planned, now := 0, 0
		for i := range w.trip.Crew {
			if m := &w.trip.Crew[i]; m.Group == at.group && w.present(m.ID, at.day) {
				now++
				if m.Present(at.day) {
					planned++
				}
			}
		}
		if planned > 0 {
			want[at] = kcal * float64(now) / float64(planned)
		}
	}
	return want
}

// slotsLeft are the meals that are left and have somebody to eat them.
func (w *work) slotsLeft() []slot {
	var list []slot
	for i := range w.plan.Menu.Slots {
		s := &w.plan.Menu.Slots[i]
		there := slices.ContainsFunc(s.Eaters, func(id trip.MemberID) bool { return w.present(id, s.Day) })
		if s.Day >= w.from && there && s.Meal != trip.Snack {
			list = append(list, slot{s.Day, s.Meal, s.Group})
		}
	}
	slices.SortFunc(list, slot.compare)
	return list
}

// wanting are the meals to which it can help to bring something.
func (s *shift) wanting() []slot {
	var list []slot
	for _, slot := range s.slots {
		at := groupDay{slot.group, slot.day}
		if s.have[at] < s.want[at]*enough || s.served[slot] == 0 {
			list = append(list, slot)
		}
	}
	return list
}

// fits tells whether a dish may be eaten at a meal: it is in the packs, still
// good, can be cooked there, is a dish of such a meal, and everybody of another
// cook group who is there may eat all of it.
func (w *work) fits(i int, to slot) bool {
	l := &w.lots[i]
	recipe := w.recipes[l.recipe]
	switch {
	case recipe == nil, l.begun, !w.movable(l), l.now.meal == trip.Snack, to.day < l.earliest, to.day > l.latest:
		return false
	case recipe.NeedsFlame() && w.trip.Days[to.day-1].NoFlame:
		return false
	case to.meal != l.home.meal && !slices.Contains(recipe.Meals, to.meal):
		return false
	case to.group == l.home.group:
		return true
	case slices.ContainsFunc(l.bags, func(b *bags.Bag) bool { return b.Member != 0 || w.several[b.Key] }):
		return false // some of it is one eater's, or in a bag that its own group goes on eating from
	case recipe.NeedsFlame() && !w.hasStove(to.group):
		return false
	}
	return w.allMayEat(l, to.group, to.day)
}

func (w *work) hasStove(group trip.GroupID) bool {
	return slices.ContainsFunc(w.trip.Gear, func(g trip.Gear) bool { return g.Kind == trip.Stove && (g.Group == group || g.Group == 0) })
}

// movable tells whether each bag of a dish is only its own: a store stays with
// the other dishes it serves.
func (w *work) movable(l *lot) bool {
	return slices.ContainsFunc(l.bags, func(bag *bags.Bag) bool { return !w.several[bag.Key] })
}

// kcal is what a dish brings at a meal: as far as those who are there can eat
// it.
func (s *shift) kcal(i int, at slot) float64 {
	l := &s.w.lots[i]
	if at.group == l.now.group && at.day == l.now.day {
		return float64(l.kcal())
	}
	key := bringsKey{i, groupDay{at.group, at.day}}
	if known, ok := s.brings[key]; ok {
		return known
	}
	moved := lot{home: l.home, now: at, recipe: l.recipe, bags: l.bags}
	s.w.share(&moved)
	s.brings[key] = float64(moved.kcal())
	return s.brings[key]
}

// bad is how bad a day of a group is with more or less on it.
func (s *shift) bad(at groupDay, more float64) float64 {
	if want, short := s.want[at], s.want[at]-s.have[at]-more; want > 0 && short > 0 {
		return short / want * short / want
	}
	return 0
}

// gain is by how much better the arrangement is with a dish at another meal.
func (s *shift) gain(i int, to slot) float64 {
	l, from := &s.w.lots[i], s.at[i]
	left, come := groupDay{from.group, from.day}, groupDay{to.group, to.day}
	gain := s.away(l, from) - s.away(l, to)
	if left == come {
		gain += s.bad(left, 0) - s.bad(left, s.kcal(i, to)-s.kcal(i, from))
	} else {
		gain += s.bad(left, 0) - s.bad(left, -s.kcal(i, from)) + s.bad(come, 0)
		if gain <= 0 && s.served[to] > 0 {
			return gain // whatever it brings
		}
		gain -= s.bad(come, s.kcal(i, to))
	}
	if s.served[from] == 1 && slices.Contains(s.slots, from) {
		gain -= emptyMeal
	}
	if s.served[to] == 0 {
		gain += emptyMeal
	}
	return gain
}

// away is what it costs that a dish is not where it was.
func (s *shift) away(l *lot, at slot) float64 {
	switch {
	case at == l.now:
		return 0
	case at.group != l.now.group:
		return oneMove + otherGroup
	default:
		return oneMove
	}
}

func (s *shift) put(i int, to slot) {
	from := s.at[i]
	s.have[groupDay{from.group, from.day}] -= s.kcal(i, from)
	s.have[groupDay{to.group, to.day}] += s.kcal(i, to)
	s.served[from]--
	s.served[to]++
	s.at[i] = to
}

// moves lists the dishes that are not where they were.
func (s *shift) moves() []Move {
	var list []Move
	for _, i := range s.mine {
		l, to := &s.w.lots[i], s.at[i]
		if to == l.now {
			continue
		}
		move := Move{
			Group: l.now.group, Recipe: l.recipe, Day: l.now.day, Meal: l.now.meal,
			ToGroup: to.group, ToDay: to.day, ToMeal: to.meal, Earliest: l.earliest, Dishes: l.dishes,
		}
		for _, bag := range l.bags {
			if !s.w.several[bag.Key] { // a store stays where it is, and serves the dish there
				move.Bags = append(move.Bags, bag.Key)
			}
		}
		list = append(list, move)
	}
	return list
}
