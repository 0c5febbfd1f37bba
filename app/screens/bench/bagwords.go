package bench

import (
	"strings"

	"fyne.io/fyne/v2/lang"

	"sumpter/domain/bags"
	"sumpter/domain/trip"
)

// BagName is what a bag is called beside its code: by its dish; a store by its
// food; what somebody nibbles on several days by their name.
func BagName(t *trip.Trip, bag *bags.Bag) string {
	recipe := t.Recipe(bag.Recipe)
	switch {
	case bag.Kind == bags.ReserveBag:
		return lang.L("Emergency reserve")
	case bag.Kind == bags.SnackBag && bag.Reserve:
		return lang.L("Snacks, reserve")
	case bag.Kind == bags.SnackBag && (len(bag.Uses) > 1 || recipe == nil):
		return lang.L("Snacks")
	case recipe != nil && len(bag.Uses) < 2:
		return recipe.Name
	}
	var names []string
	for _, c := range bag.Contents {
		if food := t.Food(c.Food); food != nil {
			names = append(names, food.Name)
		}
	}
	if len(names) == 0 {
		return "–"
	}
	return strings.Join(names, ", ")
}

// BagDays says when a bag is eaten from: "Day 1, lunch", "Days 4 to 6, 7 times".
func BagDays(bag *bags.Bag) string {
	if bag.Kind == bags.ReserveBag {
		return lang.X("bag-reserve", "Only in need, to day {{.Last}}", map[string]any{"Last": bag.LastDay})
	}
	meal := lang.L(string(bag.Meal))
	switch {
	case len(bag.Uses) > 1 && bag.Kind != bags.SnackBag:
		meal = lang.X("bag-times", "{{.Count}} times", map[string]any{"Count": len(bag.Uses)})
	case bag.Kind == bags.SnackBag:
		meal = lang.L(string(trip.Snack))
	}
	if bag.LastDay > bag.Day {
		return lang.X("bag-days", "Days {{.First}} to {{.Last}}, {{.Meal}}", map[string]any{"First": bag.Day, "Last": bag.LastDay, "Meal": meal})
	}
	return lang.X("packing-slot", "Day {{.Day}}, {{.Meal}}", map[string]any{"Day": bag.Day, "Meal": meal})
}
