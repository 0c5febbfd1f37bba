package spoilage

import (
	"cmp"
	"slices"

	"sumpter/domain/trip"
)

// EatFirst gives the foods in the order in which they should be eaten: what
// can be eaten for the shortest time first. Each food stands once, with its
// most pressing fate; what keeps to the end of the trip and has more than half
// of its shelf life left is not pressing and is left out.
func EatFirst(t *trip.Trip, r Result) []Fate {
	worst := map[trip.FoodID]Fate{}
	for _, fate := range r.Fates {
		before, seen := worst[fate.Food]
		if !seen || pressing(fate, before) < 0 {
			worst[fate.Food] = fate
		}
	}
	var list []Fate
	for _, fate := range worst {
		if fate.LatestDay < len(t.Days) || fate.QualityKnown && fate.QualityUsed > 0.5 {
			list = append(list, fate)
		}
	}
	slices.SortFunc(list, func(a, b Fate) int {
		return cmp.Or(pressing(a, b), cmp.Compare(a.Food, b.Food), cmp.Compare(a.Day, b.Day),
			cmp.Compare(trip.MealOrder(a.Meal), trip.MealOrder(b.Meal)), cmp.Compare(a.Group, b.Group))
	})
	return list
}

// pressing orders fates by the last day they can be eaten, then by how little
// time is left.
func pressing(a, b Fate) int {
	return cmp.Or(cmp.Compare(a.LatestDay, b.LatestDay), cmp.Compare(a.DaysLeft, b.DaysLeft))
}
