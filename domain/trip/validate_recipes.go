package trip

import "sumpter/domain/prose"

func (c *checker) recipeList() {
	if len(c.trip.Recipes) > MaxRecipes {
		return
	}
	for i := range c.trip.Recipes {
		recipe := &c.trip.Recipes[i]
		c.at("recipes", i, int64(recipe.ID), recipe.Name)
		c.mealList("meals", recipe.Meals)
		c.making(recipe)
		if c.count("ingredients", "ingredients", len(recipe.Ingredients), 1, maxIngredients) {
			for j := range recipe.Ingredients {
				c.enter("ingredients", j)
				c.ingredient(&recipe.Ingredients[j])
				c.leave()
			}
		}
	}
}

func (c *checker) making(r *Recipe) {
	c.within("water_ml", "water", r.Water.Litres(), 0, maxWaterLitres, "L")
	c.within("pour_off_ml", "water poured off", r.PourOff.Litres(), 0, maxWaterLitres, "L")
	c.within("simmer_minutes", "simmering time", float64(r.Simmer), 0, maxSimmerMinutes, "min")
	c.within("soak_minutes", "soaking time", float64(r.Soak), 0, maxSoakMinutes, "min")
	c.within("min_scale", "smallest portion", r.MinScale, minScale, 1, "of the standard")
	c.within("max_scale", "largest portion", r.MaxScale, 1, maxScale, "of the standard")
	if c.count("method", "steps", len(r.Method), 0, maxSteps) {
		for i, step := range r.Method {
			c.enter("method", i)
			c.notes("", "step", step)
			c.leave()
		}
	}
	c.line("staple", "staple", r.Staple)
	c.line("texture", "texture", r.Texture)
	c.notes("notes", "notes", r.Notes)
}

func (c *checker) ingredient(part *Ingredient) {
	if !c.foods[part.Food] {
		c.missing("food", "food", int64(part.Food), "one of the foods, or take the ingredient out")
	}
	c.above("amount_g", "amount for one eater", part.Amount.Kilograms(), maxAmountKilograms, "kg")
	word(c, "role", "role", part.Role, Roles()...)
	word(c, "place", "place", part.Place, Places()...)
	if !c.count("swaps", "swaps", len(part.Swaps), 0, maxSwaps) {
		return
	}
	for i := range part.Swaps {
		c.enter("swaps", i)
		c.swap(&part.Swaps[i])
		c.leave()
	}
}

func (c *checker) swap(swap *Swap) {
	switch {
	case swap.Food == 0 && swap.Amount != 0:
		c.add("amount_g", prose.Say("the swap leaves the food out but has an amount, %s", swap.Amount), prose.Say("0 g where no food is named"), prose.Say("Name the food to take instead, or clear the amount."))
	case swap.Food != 0 && !c.foods[swap.Food]:
		c.missing("food", "food", int64(swap.Food), "one of the foods, or none to leave it out")
	case swap.Food != 0:
		c.above("amount_g", "amount for one eater", swap.Amount.Kilograms(), maxAmountKilograms, "kg")
	}
}
