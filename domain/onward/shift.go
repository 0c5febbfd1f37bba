package onward

import (
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
)

// What moving is weighed by. A day short by a fifth counts 0.04.
const (
	emptyMeal = 0.02  // a meal with nothing left to eat
	oneMove   = 0.004 // to find another bag than the label says
	mostMoves = 60
)

// propose finds dishes that are better eaten at another meal of their cook
// group, so that no day falls far behind the others. Where nothing is missing
// nothing moves.
func (w *work) propose() []Move {
	if len(w.gone) == 0 {
		return nil
	}
	var moves []Move
	for _, group := range w.trip.Groups {
		moves = append(moves, w.proposeFor(group.ID)...)
	}
	return moves
}

func (w *work) proposeFor(group trip.GroupID) []Move {
	var mine []int
	for i := range w.lots {
		if w.lots[i].home.group == group && len(w.lots[i].bags) > 0 && w.lots[i].now.day >= w.from {
			mine = append(mine, i)
		}
	}
	slots := w.slotsOf(group)
	at := make(map[int]slot, len(mine))
	for _, i := range mine {
		at[i] = w.lots[i].now
	}
	worth := w.worth(group, slots, mine, at)
	for range mostMoves {
		best, lot, to := worth, -1, slot{}
		for _, i := range mine {
			stay := at[i]
			for _, s := range slots {
				if s == stay || !w.fits(i, s) {
					continue
				}
				at[i] = s
				if value := w.worth(group, slots, mine, at); value < best-1e-12 {
					best, lot, to = value, i, s
				}
			}
			at[i] = stay
		}
		if lot < 0 {
			break
		}
		worth, at[lot] = best, to
	}
	var moves []Move
	for _, i := range mine {
		l := &w.lots[i]
		if at[i] == l.now {
			continue
		}
		move := Move{Group: group, Recipe: l.recipe, Day: l.now.day, Meal: l.now.meal, ToDay: at[i].day, ToMeal: at[i].meal, Earliest: l.earliest}
		move.Dishes = l.dishes
		for _, bag := range l.bags {
			if !w.several[bag.Key] { // a store stays where it is, and serves the dish there
				move.Bags = append(move.Bags, bag.Key)
			}
		}
		moves = append(moves, move)
	}
	return moves
}

// slotsOf are the meals of a group that are left.
func (w *work) slotsOf(group trip.GroupID) []slot {
	var list []slot
	for i := range w.plan.Menu.Slots {
		s := &w.plan.Menu.Slots[i]
		there := slices.ContainsFunc(s.Eaters, func(id trip.MemberID) bool { return w.present(id, s.Day) })
		if s.Group == group && s.Day >= w.from && there && s.Meal != trip.Snack {
			list = append(list, slot{s.Day, s.Meal, s.Group})
		}
	}
	return list
}

// fits tells whether a dish may be eaten at a meal: it is in the packs, still
// good, can be cooked there, and is a dish of such a meal.
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
	}
	return true
}

// movable tells whether a dish has a bag that is only its own.
func (w *work) movable(l *lot) bool {
	return slices.ContainsFunc(l.bags, func(bag *bags.Bag) bool { return !w.several[bag.Key] })
}

// worth is how bad an arrangement of dishes is: each day's part that is
// missing, squared so that a little on each day is better than much on one,
// meals with nothing, and every dish that is not where its label says.
func (w *work) worth(group trip.GroupID, slots []slot, mine []int, at map[int]slot) float64 {
	have, want := make([]float64, len(w.trip.Days)+1), make([]float64, len(w.trip.Days)+1)
	served := map[slot]bool{}
	for i := range w.lots {
		l := &w.lots[i]
		if l.home.group == group && l.home.day >= w.from {
			want[l.home.day] += float64(w.wanted(l))
		}
	}
	bad := 0.0
	for _, i := range mine {
		l := &w.lots[i]
		have[at[i].day] += float64(l.kcal())
		served[at[i]] = true
		if at[i] != l.now {
			bad += oneMove
		}
	}
	for day := w.from; day <= len(w.trip.Days); day++ {
		if short := want[day] - have[day]; want[day] > 0 && short > 0 {
			bad += short / want[day] * short / want[day]
		}
	}
	for _, s := range slots {
		if !served[s] {
			bad += emptyMeal
		}
	}
	return bad
}
