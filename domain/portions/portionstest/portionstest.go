// Package portionstest serves the menu of a trip one size for all, for tests
// of the stages that only need to know what is eaten when.
package portionstest

import (
	"cmp"
	"slices"

	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Serve gives every eater of a slot the standard portion of each of its
// dishes, by day, meal, group and dish. Diets and allergies are not heeded.
func Serve(t *trip.Trip) portions.Result {
	var result portions.Result
	for i := range t.Menu {
		cell := &t.Menu[i]
		eaters := t.Eaters(cell.Day, cell.Group)
		if len(eaters) == 0 || !t.Days[cell.Day-1].Eats(cell.Meal) {
			continue
		}
		for d := range cell.Dishes {
			result.Batches = append(result.Batches, batch(t, cell, d, eaters))
		}
	}
	slices.SortStableFunc(result.Batches, func(a, b portions.Batch) int {
		return cmp.Or(cmp.Compare(a.Day, b.Day), cmp.Compare(trip.MealOrder(a.Meal), trip.MealOrder(b.Meal)),
			cmp.Compare(a.Group, b.Group), cmp.Compare(a.Dish, b.Dish))
	})
	return result
}

func batch(t *trip.Trip, cell *trip.Cell, dish int, eaters []trip.MemberID) portions.Batch {
	recipe := t.Recipe(cell.Dishes[dish].Recipe)
	served := portions.Batch{
		Day: cell.Day, Meal: cell.Meal, Group: cell.Group, Dish: dish, Recipe: recipe.ID,
		Water: recipe.Water * units.Volume(len(eaters)), PourOff: recipe.PourOff * units.Volume(len(eaters)),
	}
	var amounts []portions.Amount
	for _, ingredient := range recipe.Ingredients {
		amounts = append(amounts, portions.Amount{Food: ingredient.Food, Place: ingredient.Place, Mass: ingredient.Amount})
		served.Totals = append(served.Totals, portions.Amount{
			Food: ingredient.Food, Place: ingredient.Place, Mass: ingredient.Amount * units.Mass(len(eaters)),
		})
	}
	for _, eater := range eaters {
		served.Portions = append(served.Portions, portions.Portion{Member: eater, Scale: 1, Amounts: amounts})
	}
	return served
}
