package triptest

import (
	"slices"

	"sumpter/domain/trip"
)

// menu fills every slot of a plausible trip with a fitting recipe. In odd
// trips slots are also left out, open, locked empty, or served in parts.
func (b *builder) menu() {
	for day := range b.trip.Days {
		for _, meal := range b.trip.Days[day].Meals {
			for _, group := range b.trip.Groups {
				b.slot(trip.Cell{Day: day + 1, Meal: meal, Group: group.ID})
			}
		}
	}
}

func (b *builder) slot(cell trip.Cell) {
	if b.odd && b.chance(30) {
		return
	}
	fitting := b.recipesFor(cell.Meal)
	empty := len(fitting) == 0 || b.rarely()
	cell.Locked = b.rarely()
	if !empty {
		first := b.pick(0, len(fitting)-1)
		cell.Dishes = append(cell.Dishes, b.dish(cell, fitting[first]))
		if second := (first + 1) % len(fitting); second != first && b.rarely() {
			cell.Dishes = append(cell.Dishes, b.dish(cell, fitting[second]))
		}
	}
	b.trip.Menu = append(b.trip.Menu, cell)
}

func (b *builder) recipesFor(meal trip.Meal) []*trip.Recipe {
	var fitting []*trip.Recipe
	for i := range b.trip.Recipes {
		if slices.Contains(b.trip.Recipes[i].Meals, meal) {
			fitting = append(fitting, &b.trip.Recipes[i])
		}
	}
	return fitting
}

func (b *builder) dish(cell trip.Cell, recipe *trip.Recipe) trip.Dish {
	dish := trip.Dish{Recipe: recipe.ID}
	eaters := b.trip.Eaters(cell.Day, cell.Group)
	if !b.rarely() || len(eaters) == 0 {
		return dish
	}
	dish.For = some(b, 50, eaters)
	if b.chance(40) {
		dish.Accepted = []trip.Acceptance{{
			Member: oneOf(b, eaters...), Food: oneOf(b, recipe.Ingredients...).Food, Reason: "read the label in the shop",
		}}
	}
	return dish
}
