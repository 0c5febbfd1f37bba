package onward

import (
	"slices"

	"sumpter/domain/menu"
	"sumpter/domain/portions"
)

// menuNow is what is eaten from now on: the dishes of which bags are there, at
// the meals at which they are eaten. Days that are over are as they were planned.
func (w *work) menuNow(batches []portions.Batch) menu.Result {
	now := w.plan.Menu
	now.Slots = slices.DeleteFunc(slices.Clone(now.Slots), func(s menu.Slot) bool { return s.Day >= w.from })
	for i := range batches {
		b := &batches[i]
		if b.Day < w.from || len(b.Portions) == 0 {
			continue
		}
		at := slices.IndexFunc(now.Slots, func(s menu.Slot) bool { return s.Day == b.Day && s.Meal == b.Meal && s.Group == b.Group })
		if at < 0 {
			at = len(now.Slots)
			now.Slots = append(now.Slots, menu.Slot{Day: b.Day, Meal: b.Meal, Group: b.Group})
		}
		s := &now.Slots[at]
		if !slices.ContainsFunc(s.Dishes, func(d menu.Dish) bool { return d.Recipe == b.Recipe }) {
			s.Dishes = append(s.Dishes, menu.Dish{Recipe: b.Recipe})
		}
		for _, p := range b.Portions {
			if !slices.Contains(s.Eaters, p.Member) {
				s.Eaters = append(s.Eaters, p.Member)
			}
		}
	}
	slices.SortStableFunc(now.Slots, func(a, b menu.Slot) int {
		return slot{a.Day, a.Meal, a.Group}.compare(slot{b.Day, b.Meal, b.Group})
	})
	for i := range now.Slots {
		slices.Sort(now.Slots[i].Eaters)
	}
	return now
}
