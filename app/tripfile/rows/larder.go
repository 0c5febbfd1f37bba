package rows

import "sumpter/domain/trip"

func theFoods(t *trip.Trip) *[]trip.Food               { return &t.Foods }
func theRecipes(t *trip.Trip) *[]trip.Recipe           { return &t.Recipes }
func theIngredients(r *trip.Recipe) *[]trip.Ingredient { return &r.Ingredients }
func thePackages(f *trip.Food) *[]trip.Package         { return &f.Packages }
func theSwaps(i *trip.Ingredient) *[]trip.Swap         { return &i.Swaps }

func foodFields(f *trip.Food) []field {
	n, s := &f.Per100g, &f.Storage
	return []field{
		wholeOf("id", &f.ID), textOf("name", &f.Name), textOf("source", &f.Source),
		numberOf("kcal_per_100g", &n.Kcal), maybeNumber("protein_g_per_100g", &n.ProteinGrams),
		maybeNumber("fat_g_per_100g", &n.FatGrams), maybeNumber("carb_g_per_100g", &n.CarbGrams),
		maybeNumber("fibre_g_per_100g", &n.FibreGrams), maybeNumber("sugar_g_per_100g", &n.SugarGrams),
		maybeNumber("sodium_mg_per_100g", &n.SodiumMilligrams), textOf("carb_convention", &n.CarbConvention),
		numberOf("refuse_share", &f.RefuseShare), maybeNumber("bulk_g_per_ml", &f.Density), textOf("form", &f.Form),
		wholeOf("at_home_mg", &f.AtHome), textOf("aisle", &f.Aisle), textOf("tcs", &s.TCS),
		flagOf("tcs_when_open", &s.TCSWhenOpen), maybeNumber("shelf_days_20c", &s.ShelfDays), numberOf("q10", &s.Q10),
		maybeNumber("max_heat_c", &s.MaxHeat), maybeNumber("softens_c", &s.SoftensAt), flagOf("crushable", &s.Crushable),
		textOf("storage_basis", &s.Basis), flagOf("packed_as_bought", &f.PackedAsBought), textOf("notes", &f.Notes),
		wholeOf("piece_mg", &f.PieceMass), flagOf("piece_halves", &f.PieceHalves),
		maybeNumber("water_activity", &s.WaterActivity), maybeNumber("ph", &s.PH), flagOf("heat_treated", &s.HeatTreated),
	}
}

func packageFields(p *trip.Package) []field {
	return []field{
		wholeOf("net_mg", &p.Net), maybeWhole("price_minor", &p.Price), textOf("shop", &p.Shop),
		maybeWhole("in_stock", &p.InStock), wholeOf("wrapping_mg", &p.Wrapping),
		wholeOf("many_from", &p.ManyFrom), maybeWhole("many_price_minor", &p.ManyPrice),
	}
}

func recipeFields(r *trip.Recipe) []field {
	return []field{
		wholeOf("id", &r.ID), textOf("name", &r.Name), wholeOf("water_ul", &r.Water), wholeOf("pour_off_ul", &r.PourOff),
		numberOf("simmer_minutes", &r.Simmer), numberOf("soak_minutes", &r.Soak), flagOf("pulses", &r.Pulses),
		flagOf("cold_ok", &r.ColdOK), textOf("staple", &r.Staple), textOf("texture", &r.Texture),
		numberOf("min_scale", &r.MinScale), numberOf("max_scale", &r.MaxScale), textOf("notes", &r.Notes),
	}
}

func ingredientFields(i *trip.Ingredient) []field {
	return []field{
		wholeOf("food", &i.Food), wholeOf("amount_mg", &i.Amount), textOf("role", &i.Role), textOf("vessel", &i.Place),
	}
}

func swapFields(s *trip.Swap) []field {
	return []field{referenceTo("food", &s.Food), wholeOf("amount_mg", &s.Amount), flagOf("for_all", &s.ForAll)}
}

func larderTables() []Table {
	food := those([]string{"food"}, theFoods, func(f *trip.Food) Row { return Row{int64(f.ID)} })
	recipe := those([]string{"recipe"}, theRecipes, func(r *trip.Recipe) Row { return Row{int64(r.ID)} })
	return []Table{
		list("food", 1, theFoods, foodFields),
		items("food_package", "place", food, thePackages, packageFields),
		states("food_allergen", "allergen", "presence", food, func(f *trip.Food) *map[trip.Allergen]trip.Presence { return &f.Allergens }),
		states("food_diet", "diet", "suitability", food, func(f *trip.Food) *map[trip.Diet]trip.Suitability { return &f.Diets }),
		list("recipe", 1, theRecipes, recipeFields),
		items("recipe_meal", "place", recipe, func(r *trip.Recipe) *[]trip.Meal { return &r.Meals }, mealFields),
		items("recipe_step", "place", recipe, func(r *trip.Recipe) *[]string { return &r.Method },
			func(step *string) []field { return []field{textOf("step", step)} }),
		items("ingredient", "place", recipe, theIngredients, ingredientFields),
		items("swap", "place", within(recipe, "ingredient", theIngredients), theSwaps, swapFields),
	}
}
