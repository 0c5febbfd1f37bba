package resupply

import (
	"cmp"
	"slices"

	"sumpter/domain/resupply"
)

// readable picks the choices a person can read. Where they are too many: of
// those that nothing beats, the ones that no other beats by money and heaviest
// morning alone, thinned out evenly where they are still too many. The one in use and the advised
// one are always among them. The order is from light to heavy.
func readable(all []resupply.Choice, most int) []resupply.Choice {
	var list []resupply.Choice
	for i, choice := range all {
		if len(all) <= most || choice.Current || choice.Recommended || !beatenBySome(all, i) {
			list = append(list, choice)
		}
	}
	slices.SortStableFunc(list, func(a, b resupply.Choice) int {
		return cmp.Or(cmp.Compare(a.HeaviestFood, b.HeaviestFood), cmp.Compare(a.Money, b.Money))
	})
	if len(list) <= most {
		return list
	}
	wanted := map[int]bool{0: true} // the lightest
	cheapest := 0
	for i, choice := range list {
		if choice.Money < list[cheapest].Money {
			cheapest = i
		}
		if choice.Current || choice.Recommended {
			wanted[i] = true
		}
	}
	wanted[cheapest] = true
	for parts := 2; len(wanted) < most && parts <= 2*len(list); parts *= 2 {
		for k := 1; k < parts && len(wanted) < most; k += 2 {
			wanted[k*(len(list)-1)/parts] = true
		}
	}
	var few []resupply.Choice
	for i, choice := range list {
		if wanted[i] {
			few = append(few, choice)
		}
	}
	return few
}

// beatenBySome tells whether another choice is as good by money and heaviest
// morning and better by one; of equals the first counts.
func beatenBySome(all []resupply.Choice, i int) bool {
	a := all[i]
	for j, b := range all {
		if j == i || b.Money > a.Money || b.HeaviestFood > a.HeaviestFood {
			continue
		}
		if b.Money < a.Money || b.HeaviestFood < a.HeaviestFood || j < i {
			return true
		}
	}
	return false
}
