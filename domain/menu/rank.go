package menu

import (
	"cmp"
	"slices"

	"sumpter/domain/needs"
	"sumpter/domain/trip"
)

// Ranked is a recipe as Fill would weigh it for one slot.
type Ranked struct {
	Recipe trip.RecipeID `json:"recipe"`
	// Penalty is what speaks against it, in grams of food for one eater: what
	// would be carried, and what a leader would carry more to avoid the rest.
	Penalty float64 `json:"penalty_g"`
	// Without lists the eaters who could not be served it.
	Without []trip.MemberID `json:"without,omitempty"`
}

// Rank weighs the recipes that may be served in a slot as Fill does, best
// first, whatever stands in the slot now. Recipes for other meals, those that
// need a flame where none is allowed, and those that nobody there may eat are
// left out. The trip is canonical, the day one of its days.
func Rank(t *trip.Trip, n needs.Result, day int, meal trip.Meal, group trip.GroupID) []Ranked {
	key, eaters := slotKey{day, meal, group}, t.Eaters(day, group)
	if len(eaters) == 0 {
		return nil
	}
	others := *t
	others.Menu = nil
	for i := range t.Menu {
		if keyOf(&t.Menu[i]) != key {
			others.Menu = append(others.Menu, t.Menu[i])
		}
	}
	f := newFiller(&others, n)
	around := f.around(key)
	var list []Ranked
	for i := range others.Recipes {
		recipe := &others.Recipes[i]
		if !f.suits(key, recipe) {
			continue
		}
		out := f.outcome(group, recipe, eaters)
		if len(out.refused) == len(eaters) {
			continue
		}
		ranked := Ranked{Recipe: recipe.ID, Penalty: f.penalty(key, recipe, eaters, &out) + f.sameness(key, recipe, around)}
		for _, no := range out.refused {
			ranked.Without = append(ranked.Without, no.member)
		}
		list = append(list, ranked)
	}
	slices.SortStableFunc(list, func(a, b Ranked) int {
		return cmp.Or(cmp.Compare(a.Penalty, b.Penalty), cmp.Compare(a.Recipe, b.Recipe))
	})
	return list
}
