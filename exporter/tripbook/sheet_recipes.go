package tripbook

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func recipeSheet() sheet {
	type R = trip.Recipe
	t := &table[R]{
		name: sheetRecipes, list: "recipes", names: func(s *scope) *names { return &s.recipes },
		about: "Meals for one standard eater; the program sizes them for each member. What goes in stands on sheet Ingredients.",
		fresh: func() R { return R{MinScale: 0.6, MaxScale: 1.6} },
		columns: []column[R]{
			col("Name", "name", func(r *R) *string { return &r.Name }, line(), "A name that no other recipe has.").must().wide(28),
			col("Meals", "meals", func(r *R) *[]trip.Meal { return &r.Meals }, mealList(), "Where it may be served, with ; between.").must().wide(20),
			col("Water", "water_ml", func(r *R) *units.Volume { return &r.Water }, exact[units.Volume](smallVolume), "Into pot or bowl for one standard eater; stays in the food."),
			col("Poured off", "pour_off_ml", func(r *R) *units.Volume { return &r.PourOff }, exact[units.Volume](smallVolume), "Boiled as well and poured away, as with pasta."),
			col("Simmers", "simmer_minutes", func(r *R) *units.Minutes { return &r.Simmer }, number[units.Minutes](same("min")), "On the flame after the boil, at sea level."),
			col("Soaks", "soak_minutes", func(r *R) *units.Minutes { return &r.Soak }, number[units.Minutes](same("min")), "Off the flame."),
			col("Dry pulses", "pulses", func(r *R) *bool { return &r.Pulses }, yesNo(), "Dry beans or lentils: height slows them more.").wide(8),
			col("Works cold", "cold_ok", func(r *R) *bool { return &r.ColdOK }, yesNo(), "Can be made with cold water and without flame.").wide(8),
			col("Method", "method", func(r *R) *[]string { return &r.Method }, lines(), "One step on each line (Alt+Enter).").wide(44),
			col("Staple", "staple", func(r *R) *string { return &r.Staple }, line(), "Rice, pasta, oats: so that they alternate.").wide(10),
			col("Texture", "texture", func(r *R) *string { return &r.Texture }, line(), "Soup, mash, crunchy.").wide(10),
			col("Smallest portion", "min_scale", func(r *R) *float64 { return &r.MinScale }, number[float64](share), "That people eat, as a part of the standard. Empty: 60 %."),
			col("Largest portion", "max_scale", func(r *R) *float64 { return &r.MaxScale }, number[float64](share), "That people eat, as a part of the standard. Empty: 160 %."),
			col("Notes", "notes", func(r *R) *string { return &r.Notes }, notes(), "Anything."),
			idColumn(func(r *R) *trip.RecipeID { return &r.ID }),
		},
	}
	t.from, t.into = plainList(t.list, func(t *trip.Trip) *[]R { return &t.Recipes })
	return t
}

// ingredientRow is an ingredient with its first swap, or without a food one
// more swap for the ingredient above.
type ingredientRow struct {
	recipe     trip.RecipeID
	food       trip.FoodID
	amount     optional.Value[units.Mass]
	role       trip.Role
	place      trip.Place
	swap       optional.Value[trip.FoodID] // Of(0): leave it out
	swapAmount optional.Value[units.Mass]
	forAll     bool
}

const leaveOut = "(leave out)"

// swapFood is a food, or the word for leaving the ingredient out.
func swapFood() codec[trip.FoodID] {
	c := toFood()
	write, read, allowed := c.write, c.read, c.allowed
	c.write = func(id trip.FoodID, s *scope, u unit) content {
		if id == 0 {
			return textContent(leaveOut)
		}
		return write(id, s, u)
	}
	c.read = func(text string, s *scope, u unit) (trip.FoodID, string) {
		if nameKey(text) == leaveOut {
			return 0, ""
		}
		return read(text, s, u)
	}
	c.allowed = func(s *scope) string { return allowed(s) + ", or " + leaveOut }
	return c
}

func ingredientSheet() sheet {
	type R = ingredientRow
	mass := maybe(exact[units.Mass](foodMass))
	return &table[R]{
		name: sheetIngredients, list: "ingredients",
		about: "What goes into the recipes. One row an ingredient. A swap replaces it for who cannot eat it; for a second swap add a row below with the recipe and the swap only.",
		fresh: func() R { return R{role: trip.Base, place: trip.InPot} },
		from:  ingredientRows,
		into:  gatherIngredients,
		columns: []column[R]{
			col("Recipe", "recipe", func(r *R) *trip.RecipeID { return &r.recipe }, toRecipe(), "A recipe of sheet Recipes.").must().wide(28),
			col("Food", "food", func(r *R) *trip.FoodID { return &r.food }, orBlank(toFood()), "A food of sheet Foods. Empty: this row is one more swap for the ingredient above.").wide(28),
			col("Amount", "amount_g", func(r *R) *optional.Value[units.Mass] { return &r.amount }, mass, "For one standard eater, as carried."),
			col("Role", "role", func(r *R) *trip.Role { return &r.role }, word(trip.Roles()), "Base grows with the eater's appetite; to taste is the same for all. Empty: base.").wide(10),
			col("Goes into", "place", func(r *R) *trip.Place { return &r.place }, word(trip.Places()), "The shared pot, or each eater's bowl. Empty: pot.").wide(9),
			col("Swap for", "swaps.food", func(r *R) *optional.Value[trip.FoodID] { return &r.swap }, maybe(swapFood()), "What replaces it for who cannot eat it: a food, or "+leaveOut+".").wide(28),
			col("Swap amount", "swaps.amount_g", func(r *R) *optional.Value[units.Mass] { return &r.swapAmount }, mass, "For one standard eater."),
			col("Swap for everybody", "swaps.for_all", func(r *R) *bool { return &r.forAll }, yesNo(), "One pot: if one eater needs the swap, all get it.").wide(10),
		},
	}
}

func ingredientRows(t *trip.Trip) []ingredientRow {
	var rows []ingredientRow
	for i := range t.Recipes {
		recipe := &t.Recipes[i]
		for _, ingredient := range recipe.Ingredients {
			row := ingredientRow{
				recipe: recipe.ID, food: ingredient.Food, amount: optional.Of(ingredient.Amount),
				role: ingredient.Role, place: ingredient.Place,
			}
			for _, swap := range ingredient.Swaps {
				row.swap, row.swapAmount, row.forAll = optional.Of(swap.Food), optional.Of(swap.Amount), swap.ForAll
				rows = append(rows, row)
				row = ingredientRow{recipe: recipe.ID}
			}
			if len(ingredient.Swaps) == 0 {
				rows = append(rows, row)
			}
		}
	}
	return rows
}

func gatherIngredients(g *gathered[ingredientRow]) {
	places := placesOf(g.trip.Recipes, func(r *trip.Recipe) trip.RecipeID { return r.ID })
	var above trip.RecipeID // the recipe of the ingredient above
	bad := false            // that ingredient is a fault already, and so its further swaps are none
	for i := range g.rows {
		row := &g.rows[i]
		place, ok := places[row.recipe]
		switch {
		case !ok || g.reading.isFaulty(g.grid, i):
			bad = bad || row.food != 0
		case row.food != 0:
			above, bad = row.recipe, !addIngredient(g, i, place)
		case bad:
		case !row.swap.Known():
			g.fault(i, "Food", "is empty", "a food, or a swap for the ingredient above")
		case above != row.recipe:
			g.fault(i, "Food", "is empty, and the row above is no ingredient of this recipe", "a food, or a swap right below its ingredient")
		default:
			addSwap(g, i, place)
		}
	}
}

// addIngredient takes a row with a food into its recipe, with its swap.
func addIngredient(g *gathered[ingredientRow], i, place int) bool {
	row, recipe := &g.rows[i], &g.trip.Recipes[place]
	amount, given := row.amount.Get()
	if !given {
		g.fault(i, "Amount", "is empty", "a number (g, oz, kg, lb)")
		return false
	}
	g.comes(i, "recipes[%d].ingredients[%d]", place, len(recipe.Ingredients))
	recipe.Ingredients = append(recipe.Ingredients, trip.Ingredient{Food: row.food, Amount: amount, Role: row.role, Place: row.place})
	addSwap(g, i, place)
	return true
}

// addSwap takes the swap of a row, if it has one, into the recipe's last ingredient.
func addSwap(g *gathered[ingredientRow], i, place int) {
	row, recipe := &g.rows[i], &g.trip.Recipes[place]
	food, given := row.swap.Get()
	if !given {
		if row.swapAmount.Known() {
			g.fault(i, "Swap for", "is empty beside an amount", "a food, or "+leaveOut)
		}
		return
	}
	last := len(recipe.Ingredients) - 1
	ingredient := &recipe.Ingredients[last]
	amount, known := row.swapAmount.Get()
	if !known && food != 0 {
		g.fault(i, "Swap amount", "is empty beside a food", "a number (g, oz, kg, lb)")
		return
	}
	g.comes(i, "recipes[%d].ingredients[%d].swaps[%d]", place, last, len(ingredient.Swaps))
	ingredient.Swaps = append(ingredient.Swaps, trip.Swap{Food: food, Amount: amount, ForAll: row.forAll})
}
