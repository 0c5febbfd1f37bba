package triptest

import (
	"slices"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// dishKind is a usual way to compose a meal: which uses meet in it, how it is
// cooked, and how much of the usual portions it holds, in per cent.
type dishKind struct {
	word          string
	meals         []trip.Meal
	uses          []use
	water         int // mL per standard eater
	pourOff       int
	simmer, soak  int
	cold          bool
	percent       int
	staple, crisp string
}

var dishKinds = []dishKind{
	{word: "Porridge", meals: []trip.Meal{trip.Breakfast}, uses: []use{morning, topping, sweet, rich}, water: 250, simmer: 4, percent: 90, staple: "oats", crisp: "mash"},
	{word: "Pot", meals: []trip.Meal{trip.Dinner}, uses: []use{starch, strong, green, rich, spice}, water: 350, simmer: 12, percent: 110, staple: "rice", crisp: "stew"},
	{word: "Noodle pan", meals: []trip.Meal{trip.Dinner}, uses: []use{starch, strong, topping, rich, spice}, water: 50, pourOff: 700, simmer: 9, percent: 105, staple: "pasta"},
	{word: "Bread and spread", meals: []trip.Meal{trip.Lunch}, uses: []use{bread, topping, rich, strong}, cold: true, percent: 100, staple: "bread", crisp: "crunchy"},
	{word: "Trail mix", meals: []trip.Meal{trip.Snack}, uses: []use{rich, sweet, rich, sweet}, cold: true, percent: 110, crisp: "crunchy"},
	{word: "Cold muesli", meals: []trip.Meal{trip.Breakfast, trip.Lunch}, uses: []use{morning, topping, sweet, rich}, water: 180, soak: 10, cold: true, percent: 95, staple: "oats"},
}

func (b *builder) recipes(count int) {
	for i, id := range b.ids(count) {
		kind := dishKinds[i%len(dishKinds)]
		if b.odd {
			kind = oneOf(b, dishKinds...)
		}
		b.trip.Recipes = append(b.trip.Recipes, b.recipe(trip.RecipeID(id), kind))
	}
}

func (b *builder) recipe(id trip.RecipeID, kind dishKind) trip.Recipe {
	recipe := trip.Recipe{
		ID: id, Name: named(kind.word, int64(id)), Meals: slices.Clone(kind.meals),
		Water: units.Volume(kind.water) * units.Millilitre, PourOff: units.Volume(kind.pourOff) * units.Millilitre,
		Simmer: units.Minutes(kind.simmer), Soak: units.Minutes(kind.soak), ColdOK: kind.cold,
		Staple: kind.staple, Texture: kind.crisp, MinScale: b.hundredths(50, 70), MaxScale: b.hundredths(140, 200),
	}
	for i, use := range kind.uses {
		recipe.Ingredients = append(recipe.Ingredients, b.ingredient(use, kind.percent, i > 0))
	}
	if kind.water > 0 {
		recipe.Method = []string{"Boil the water.", "Stir in; wait."}
	}
	if b.rarely() {
		recipe.Pulses = kind.simmer > 0
		recipe.Notes = "Better with lemon."
	}
	return recipe
}

func (b *builder) ingredient(wanted use, percent int, side bool) trip.Ingredient {
	food := b.foodFor(wanted)
	grams := max(1, b.larderOf[food].portion*percent/100+b.pick(-1, 1))
	ingredient := trip.Ingredient{
		Food: food, Amount: units.Mass(grams) * units.Gram, Role: trip.Base, Place: trip.InPot,
	}
	if wanted == spice {
		ingredient.Role = trip.ToTaste
		ingredient.Amount = units.Mass(grams*1000+b.pick(0, 9)*100) * units.Milligram
	}
	if side && (wanted == topping || b.rarely()) {
		ingredient.Place = trip.AtBowl
	}
	for range b.swapCount(wanted) {
		ingredient.Swaps = append(ingredient.Swaps, b.swap(wanted, ingredient))
	}
	return ingredient
}

// swapCount gives plausible recipes a way round the foods that hurt most.
func (b *builder) swapCount(wanted use) int {
	if b.odd {
		return b.pick(0, 2)
	}
	if wanted == spice || wanted == green {
		return 0
	}
	return 2
}

func (b *builder) swap(wanted use, instead trip.Ingredient) trip.Swap {
	if b.chance(25) {
		return trip.Swap{}
	}
	return trip.Swap{
		Food: b.foodFor(wanted), Amount: instead.Amount,
		ForAll: instead.Place == trip.InPot && b.rarely(),
	}
}

// foodFor draws a food of the wanted use, or any where there is none.
func (b *builder) foodFor(wanted use) trip.FoodID {
	if fitting := b.foodsFor[wanted]; len(fitting) > 0 {
		return oneOf(b, fitting...)
	}
	return oneOf(b, b.trip.Foods...).ID
}
