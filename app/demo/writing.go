package demo

import (
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Recipes are written down with these few words. Amounts are grams for one
// standard eater.

func pot(food trip.FoodID, g float64, swaps ...trip.Swap) trip.Ingredient {
	return trip.Ingredient{Food: food, Amount: grams(g), Role: trip.Base, Place: trip.InPot, Swaps: swaps}
}

func bowl(food trip.FoodID, g float64, swaps ...trip.Swap) trip.Ingredient {
	return trip.Ingredient{Food: food, Amount: grams(g), Role: trip.Base, Place: trip.AtBowl, Swaps: swaps}
}

// pinch is a seasoning in the pot: the same for each eater.
func pinch(food trip.FoodID, g float64) trip.Ingredient {
	return trip.Ingredient{Food: food, Amount: grams(g), Role: trip.ToTaste, Place: trip.InPot}
}

// spoon is the same for each eater, into the cup or bowl.
func spoon(food trip.FoodID, g float64, swaps ...trip.Swap) trip.Ingredient {
	return trip.Ingredient{Food: food, Amount: grams(g), Role: trip.ToTaste, Place: trip.AtBowl, Swaps: swaps}
}

// or is what those get who cannot eat the food before it.
func or(food trip.FoodID, g float64) trip.Swap { return trip.Swap{Food: food, Amount: grams(g)} }

// orAll is the same for a pot: one who needs it, and everybody gets it.
func orAll(food trip.FoodID, g float64) trip.Swap {
	return trip.Swap{Food: food, Amount: grams(g), ForAll: true}
}

// dish is a recipe as written down here: the scales and numbers come after.
type dish struct {
	name    string
	staple  string
	texture string
	water   float64 // mL
	pour    float64 // mL poured off
	simmer  units.Minutes
	soak    units.Minutes
	cold    bool
	pulses  bool
	parts   []trip.Ingredient
	method  []string
	notes   string
}

type parts = []trip.Ingredient
type steps = []string

func (d dish) recipe(id trip.RecipeID, low, high float64, meals ...trip.Meal) trip.Recipe {
	return trip.Recipe{
		ID: id, Name: d.name, Meals: meals, Ingredients: d.parts,
		Water: units.FromMillilitres(d.water), PourOff: units.FromMillilitres(d.pour),
		Simmer: d.simmer, Soak: d.soak, Pulses: d.pulses, ColdOK: d.cold,
		Method: d.method, Staple: d.staple, Texture: d.texture, MinScale: low, MaxScale: high, Notes: d.notes,
	}
}
