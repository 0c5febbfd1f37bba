package triptest

import "sumpter/domain/trip"

// ware is a typical food: figures per 100 g as such foods have them, from
// memory, rounded.
type ware struct {
	name                                 string
	kcal                                 int
	protein, fat, carb, fibre            float64
	density                              float64 // g/mL in bulk
	form                                 trip.Form
	allergens                            []trip.Allergen
	diet                                 trip.Diet // the strictest it suits; "" suits none of them
	tcs                                  trip.TCS
	days                                 float64 // of quality at 20 °C
	use                                  use
	portion                              int // usual grams in a recipe
	packed, crushable, softens, opensTCS bool
}

// use is the part a food plays in a recipe.
type use int

const (
	starch use = iota
	morning
	strong // brings the protein
	rich   // brings the fat
	sweet
	green
	spice
	bread
	topping
)

var larder = []ware{
	{name: "Rolled oats", kcal: 379, protein: 13, fat: 6.5, carb: 67, fibre: 10, density: 0.34, form: trip.Dry, allergens: []trip.Allergen{trip.Gluten}, diet: trip.Vegan, tcs: trip.TCSNo, days: 365, use: morning, portion: 80},
	{name: "Buckwheat flakes", kcal: 350, protein: 12, fat: 3, carb: 71, fibre: 7, density: 0.4, form: trip.Dry, diet: trip.Vegan, tcs: trip.TCSNo, days: 365, use: morning, portion: 80},
	{name: "Pasta", kcal: 371, protein: 13, fat: 1.5, carb: 75, fibre: 3, density: 0.45, form: trip.Dry, allergens: []trip.Allergen{trip.Gluten, trip.Wheat}, diet: trip.Vegan, tcs: trip.TCSNo, days: 700, use: starch, portion: 120},
	{name: "Rice", kcal: 365, protein: 7, fat: 0.7, carb: 80, fibre: 1.3, density: 0.78, form: trip.Dry, diet: trip.Vegan, tcs: trip.TCSNo, days: 700, use: starch, portion: 110},
	{name: "Potato flakes", kcal: 354, protein: 8, fat: 0.4, carb: 81, fibre: 7, density: 0.25, form: trip.Powder, diet: trip.Vegan, tcs: trip.TCSNo, days: 300, use: starch, portion: 100},
	{name: "Couscous", kcal: 376, protein: 13, fat: 0.6, carb: 77, fibre: 5, density: 0.73, form: trip.Dry, allergens: []trip.Allergen{trip.Gluten, trip.Wheat}, diet: trip.Vegan, tcs: trip.TCSNo, days: 700, use: starch, portion: 115},
	{name: "Red lentils", kcal: 358, protein: 24, fat: 2, carb: 63, fibre: 11, density: 0.81, form: trip.Dry, diet: trip.Vegan, tcs: trip.TCSNo, days: 700, use: strong, portion: 60},
	{name: "Textured soy", kcal: 333, protein: 50, fat: 1, carb: 33, fibre: 17, density: 0.3, form: trip.Dry, allergens: []trip.Allergen{trip.Soybeans}, diet: trip.Vegan, tcs: trip.TCSNo, days: 500, use: strong, portion: 40},
	{name: "Tinned fish", kcal: 190, protein: 24, fat: 10, carb: 0, fibre: 0, density: 1, form: trip.Piece, allergens: []trip.Allergen{trip.Fish}, diet: trip.Pescatarian, tcs: trip.TCSNo, days: 1000, use: strong, portion: 80, packed: true, opensTCS: true},
	{name: "Hard salami", kcal: 425, protein: 22, fat: 37, carb: 1, fibre: 0, density: 1, form: trip.Piece, tcs: trip.TCSUnknown, days: 30, use: strong, portion: 50},
	{name: "Hard cheese", kcal: 404, protein: 25, fat: 33, carb: 1.3, fibre: 0, density: 1, form: trip.Piece, allergens: []trip.Allergen{trip.Milk}, diet: trip.Vegetarian, tcs: trip.TCSYes, days: 7, use: topping, portion: 40, softens: true},
	{name: "Olive oil", kcal: 884, protein: 0, fat: 100, carb: 0, fibre: 0, density: 0.91, form: trip.Liquid, diet: trip.Vegan, tcs: trip.TCSNo, days: 500, use: rich, portion: 15},
	{name: "Peanut butter", kcal: 598, protein: 22, fat: 51, carb: 22, fibre: 5, density: 1.09, form: trip.Spread, allergens: []trip.Allergen{trip.Peanuts}, diet: trip.Vegan, tcs: trip.TCSNo, days: 180, use: rich, portion: 40},
	{name: "Almonds", kcal: 579, protein: 21, fat: 50, carb: 22, fibre: 12, density: 0.6, form: trip.Dry, allergens: []trip.Allergen{trip.Nuts, trip.Almonds}, diet: trip.Vegan, tcs: trip.TCSNo, days: 180, use: rich, portion: 40},
	{name: "Sunflower seeds", kcal: 584, protein: 21, fat: 51, carb: 20, fibre: 9, density: 0.55, form: trip.Dry, diet: trip.Vegan, tcs: trip.TCSNo, days: 180, use: rich, portion: 40},
	{name: "Raisins", kcal: 299, protein: 3, fat: 0.5, carb: 79, fibre: 4, density: 0.61, form: trip.Dry, allergens: []trip.Allergen{trip.Sulphites}, diet: trip.Vegan, tcs: trip.TCSNo, days: 300, use: sweet, portion: 40},
	{name: "Dark chocolate", kcal: 546, protein: 5, fat: 31, carb: 61, fibre: 7, density: 0.9, form: trip.Piece, allergens: []trip.Allergen{trip.Soybeans}, diet: trip.Vegan, tcs: trip.TCSNo, days: 300, use: sweet, portion: 50, softens: true},
	{name: "Sugar", kcal: 387, protein: 0, fat: 0, carb: 100, fibre: 0, density: 0.85, form: trip.Powder, diet: trip.Vegan, tcs: trip.TCSNo, days: 2000, use: sweet, portion: 15},
	{name: "Milk powder", kcal: 496, protein: 26, fat: 27, carb: 38, fibre: 0, density: 0.54, form: trip.Powder, allergens: []trip.Allergen{trip.Milk}, diet: trip.Vegetarian, tcs: trip.TCSNo, days: 180, use: topping, portion: 30, opensTCS: true},
	{name: "Dried vegetables", kcal: 300, protein: 12, fat: 1.5, carb: 62, fibre: 20, density: 0.2, form: trip.Dry, allergens: []trip.Allergen{trip.Celery}, diet: trip.Vegan, tcs: trip.TCSNo, days: 365, use: green, portion: 25},
	{name: "Carrots", kcal: 41, protein: 0.9, fat: 0.2, carb: 9.6, fibre: 2.8, density: 0.6, form: trip.Piece, diet: trip.Vegan, tcs: trip.TCSNo, days: 7, use: green, portion: 60},
	{name: "Curry powder", kcal: 325, protein: 14, fat: 14, carb: 56, fibre: 53, density: 0.43, form: trip.Powder, allergens: []trip.Allergen{trip.Mustard}, diet: trip.Vegan, tcs: trip.TCSNo, days: 700, use: spice, portion: 3},
	{name: "Salt", kcal: 0, density: 1.23, form: trip.Powder, diet: trip.Vegan, tcs: trip.TCSNo, days: 5000, use: spice, portion: 2},
	{name: "Crispbread", kcal: 366, protein: 8, fat: 1.3, carb: 82, fibre: 16, density: 0.2, form: trip.Piece, allergens: []trip.Allergen{trip.Gluten}, diet: trip.Vegan, tcs: trip.TCSNo, days: 200, use: bread, portion: 80, crushable: true},
	{name: "Corn cakes", kcal: 387, protein: 8, fat: 3, carb: 81, fibre: 4, density: 0.15, form: trip.Piece, diet: trip.Vegan, tcs: trip.TCSNo, days: 200, use: bread, portion: 80, crushable: true},
}
