package tripbook

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// recipeRow is an ingredient of a recipe in a plain list: what is told of the
// recipe itself stands on its first row.
type recipeRow struct {
	name   string
	meals  []trip.Meal
	food   trip.FoodID
	amount optional.Value[units.Mass]
	role   trip.Role
	place  trip.Place
	water  units.Volume
	simmer units.Minutes
	soak   units.Minutes
	method []string
}

// recipeListSheet is recipes as people keep them in a table of their own: one
// row an ingredient, an empty name for one more of the recipe above. It is
// only read, and only to add to a trip.
func recipeListSheet() sheet {
	type R = recipeRow
	return &table[R]{
		name: sheetRecipes, list: "recipes",
		fresh: func() R { return R{role: trip.Base, place: trip.InPot} },
		into:  gatherRecipes,
		columns: []column[R]{
			col("Name", "name", func(r *R) *string { return &r.name }, line(), "The recipe. Empty: one more ingredient of the recipe above."),
			col("Meals", "meals", func(r *R) *[]trip.Meal { return &r.meals }, mealList(), "Where it may be served, with ; between."),
			col("Ingredient", "food", func(r *R) *trip.FoodID { return &r.food }, toFood(), "A food of the trip.").must(),
			col("Amount", "amount_g", func(r *R) *optional.Value[units.Mass] { return &r.amount }, maybe(exact[units.Mass](foodMass)), "For one standard eater, as carried.").must(),
			col("Role", "role", func(r *R) *trip.Role { return &r.role }, word(trip.Roles()), "Base grows with the eater's appetite; to taste is the same for all. Empty: base."),
			col("Goes into", "place", func(r *R) *trip.Place { return &r.place }, word(trip.Places()), "The shared pot, or each eater's bowl. Empty: pot."),
			col("Water", "water_ml", func(r *R) *units.Volume { return &r.water }, exact[units.Volume](smallVolume), "Into pot or bowl for one standard eater."),
			col("Minutes", "simmer_minutes", func(r *R) *units.Minutes { return &r.simmer }, number[units.Minutes](same("min")), "On the flame after the boil, at sea level."),
			col("Soaks", "soak_minutes", func(r *R) *units.Minutes { return &r.soak }, number[units.Minutes](same("min")), "Off the flame."),
			col("Method", "method", func(r *R) *[]string { return &r.method }, lines(), "One step on each line."),
		},
	}
}

// Portions of a recipe from a list may be this small and this large (common practice, no source).
const listedMinScale, listedMaxScale = 0.6, 1.6

func gatherRecipes(g *gathered[recipeRow]) {
	known := map[string]bool{}
	skip := false // the recipe is a fault already
	for i := range g.rows {
		row := &g.rows[i]
		key, n := nameKey(row.name), len(g.trip.Recipes)
		switch {
		case key != "" && (n == 0 || skip || key != nameKey(g.trip.Recipes[n-1].Name)):
			skip = !beginRecipe(g, i, known)
			known[key] = true
		case key == "" && n == 0 && !skip:
			g.fault(i, "Name", "is empty, and no recipe stands above", "the name of the recipe")
			skip = true
		}
		if skip || g.reading.isFaulty(g.grid, i) {
			continue
		}
		recipe := &g.trip.Recipes[len(g.trip.Recipes)-1]
		if key == "" || len(recipe.Ingredients) > 0 {
			continueRecipe(recipe, row)
		}
		amount, given := row.amount.Get()
		if !given {
			g.fault(i, "Amount", "is empty", "a number (g, oz, kg, lb)")
			continue
		}
		g.comes(i, "recipes[%d].ingredients[%d]", len(g.trip.Recipes)-1, len(recipe.Ingredients))
		recipe.Ingredients = append(recipe.Ingredients, trip.Ingredient{Food: row.food, Amount: amount, Role: row.role, Place: row.place})
	}
}

// beginRecipe starts a recipe; false if it can be none.
func beginRecipe(g *gathered[recipeRow], i int, known map[string]bool) bool {
	row, key := &g.rows[i], nameKey(g.rows[i].name)
	switch {
	case known[key]:
		g.fault(i, "Name", "is the name of a recipe further up", "a new name, or its ingredients in rows one below the other")
		return false
	case g.reading.scope.recipes.byName[key] != 0:
		g.fault(i, "Name", "is in the trip already", "a new name, or change it in the program")
		return false
	case len(row.meals) == 0 && !g.reading.isFaulty(g.grid, i):
		g.fault(i, "Meals", "is empty", "breakfast, lunch, dinner or snack, with ; between")
		return false
	}
	g.comes(i, "recipes[%d]", len(g.trip.Recipes))
	g.trip.Recipes = append(g.trip.Recipes, trip.Recipe{
		Name: row.name, Meals: row.meals, Water: row.water, Simmer: row.simmer, Soak: row.soak, Method: row.method,
		MinScale: listedMinScale, MaxScale: listedMaxScale,
	})
	return true
}

// continueRecipe takes what a further row tells of the recipe itself.
func continueRecipe(recipe *trip.Recipe, row *recipeRow) {
	recipe.Water, recipe.Simmer, recipe.Soak = max(recipe.Water, row.water), max(recipe.Simmer, row.simmer), max(recipe.Soak, row.soak)
	recipe.Method = append(recipe.Method, row.method...)
}
