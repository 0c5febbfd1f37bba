package cooking

import "sumpter/domain/trip"

// Heated tells whether a recipe is put on the flame at a meal, where one is
// allowed and there is a stove: what must simmer or is poured off, and wet
// recipes but those that may be made cold and are not a dinner.
func Heated(recipe *trip.Recipe, meal trip.Meal) bool { return heated(recipe, meal) }
