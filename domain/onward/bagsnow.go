package onward

import (
	"slices"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
)

// bagsNow lists the bags that are, were or will be there.
func (w *work) bagsNow(legs []trip.Leg) []bags.Bag {
	orphaned := map[string]bool{}
	for _, bag := range w.orphaned {
		orphaned[bag.Key] = true
	}
	for i := range w.lots { // somebody eats from it on another day
		for _, bag := range w.lots[i].bags {
			delete(orphaned, bag.Key)
		}
	}
	var list []bags.Bag
	for i := range w.bags {
		bag := w.bags[i]
		if w.unfed[bag.Leg] || orphaned[bag.Key] || w.ends[bag.Key].End == trip.NotPacked {
			continue
		}
		bag.Member = w.eaterOf(&bag, w.from)
		w.moveUses(&bag)
		w.eatUp(&bag)
		leg, _ := w.legNow(bag.Leg)
		bag.Leg = min(leg, trip.LegOf(legs, bag.Day))
		list = append(list, bag)
	}
	slices.SortStableFunc(list, func(a, b bags.Bag) int {
		return slot{a.Day, a.Meal, a.Group}.compare(slot{b.Day, b.Meal, b.Group})
	})
	return list
}

// moveUses puts what dishes take from a bag to the meals they were moved to,
// for the pot that they are there; what is kept for no meal is carried on to the
// end.
func (w *work) moveUses(bag *bags.Bag) {
	bag.Uses = slices.Clone(bag.Uses)
	for i := range bag.Uses {
		use := &bag.Uses[i]
		dish := use.Dish(bag.Group)
		if run, cooked := w.runs[dish]; cooked {
			use.Batch = run
		}
		move, moved := w.moved[dish]
		if !moved {
			continue
		}
		use.Day, use.Meal = move.Day, move.Meal
		if move.Day == 0 {
			use.Day = len(w.trip.Days)
		} else if len(bag.Uses) == 1 {
			bag.Group = move.Group
		}
	}
	slices.SortStableFunc(bag.Uses, func(a, b bags.Use) int { return a.Day - b.Day })
	if n := len(bag.Uses); n > 0 {
		bag.Day, bag.Meal, bag.LastDay = bag.Uses[0].Day, bag.Uses[0].Meal, bag.Uses[n-1].Day
	}
}

// eatUp ends a bag that was eaten on another day than planned on that day.
func (w *work) eatUp(bag *bags.Bag) {
	end, ended := w.ends[bag.Key]
	switch {
	case !ended || end.End != trip.Eaten:
	case len(bag.Uses) == 1:
		bag.Uses[0].Day = end.Day
		bag.Day, bag.LastDay = end.Day, end.Day
	default:
		bag.LastDay = min(bag.LastDay, end.Day)
	}
}

// goneAfter lists the bags that were lost, left behind or taken along, with the
// last day on whose morning they were in a pack.
func (w *work) goneAfter() map[string]int {
	gone := map[string]int{}
	for key, end := range w.ends {
		if end.End != trip.Eaten {
			gone[key] = end.Day
		}
	}
	return gone
}
