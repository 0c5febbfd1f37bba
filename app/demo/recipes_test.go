package demo

import (
	"slices"
	"testing"

	"sumpter/domain/trip"
)

// nutrition sums a recipe as one member would get it when all the crew eats
// from the pot; no member means the recipe as it is written.
func nutrition(t *testing.T, demo *trip.Trip, recipe *trip.Recipe, member *trip.Member) (kcal, protein, mass float64) {
	t.Helper()
	for _, part := range recipe.Ingredients {
		food, grams := demo.Food(part.Food), part.Amount.Grams()
		if member != nil {
			var err error
			if food, grams, err = served(demo, part, member, []trip.MemberID{member.ID}); err != nil {
				t.Errorf("%s: %v", recipe.Name, err)
			}
		}
		if food == nil {
			continue
		}
		eaten := grams * (1 - food.RefuseShare)
		kcal += float64(food.Per100g.Kcal) * eaten / 100
		protein += food.Per100g.ProteinGrams.Or(0) * eaten / 100
		mass += grams
	}
	return kcal, protein, mass
}

// A main meal on the trail is to have 500 kcal and 20 g of protein or more
// (common practice, no source); here a standard dinner is held to 550 to 750
// kcal and 20 g, for everybody, whatever is swapped.
func TestEveryRecipeFeedsEverybody(t *testing.T) {
	demo := Trip()
	if n := len(demo.Recipes); n < 38 || n > 48 {
		t.Errorf("%d recipes, want about 40", n)
	}
	type span struct{ least, most, protein float64 }
	spans := map[string]span{
		"breakfast": {550, 700, 15}, "lunch": {550, 760, 15}, "dinner": {550, 750, 20}, "snack": {650, 800, 12},
		"treat": {40, 250, 0},
	}
	for i := range demo.Recipes {
		recipe := &demo.Recipes[i]
		kind := string(recipe.Meals[0])
		if len(recipe.Meals) > 1 || recipe.Name == coffeeTime {
			kind = "treat"
		}
		want := spans[kind]
		eaters := []*trip.Member{nil}
		for j := range demo.Crew {
			eaters = append(eaters, &demo.Crew[j])
		}
		for _, member := range eaters {
			kcal, protein, _ := nutrition(t, &demo, recipe, member)
			who := "as written"
			if member != nil {
				who = "for " + member.Name
			}
			if kcal < want.least || kcal > want.most {
				t.Errorf("%s %s: %.0f kcal, want %g to %g", recipe.Name, who, kcal, want.least, want.most)
			}
			if protein < want.protein {
				t.Errorf("%s %s: %.1f g of protein, want %g", recipe.Name, who, protein, want.protein)
			}
		}
	}
}

func TestEveryRecipeTellsHowItIsMade(t *testing.T) {
	demo := Trip()
	for i := range demo.Recipes {
		r := &demo.Recipes[i]
		if len(r.Method) == 0 || r.Texture == "" {
			t.Errorf("%s: %d steps, texture %q", r.Name, len(r.Method), r.Texture)
		}
		if r.ColdOK && r.Simmer > 0 {
			t.Errorf("%s can be made cold, yet simmers", r.Name)
		}
		pot := slices.ContainsFunc(r.Ingredients, func(part trip.Ingredient) bool { return part.Place == trip.InPot })
		if pot && r.Water == 0 {
			t.Errorf("%s has a pot without water", r.Name)
		}
		if r.ColdOK && r.Soak > 120 {
			t.Errorf("%s stands wet for %g min: past the two hours of food that must be kept cold", r.Name, float64(r.Soak))
		}
	}
}

// A standard day is dense enough that people who need 3,300 kcal carry no
// more than 0.75 kg for it (rule of thumb 0.7 to 1.0 kg, common practice).
func TestADayOfTheMenuIsLight(t *testing.T) {
	demo := Trip()
	var kcal, mass float64
	for _, cell := range demo.Menu {
		if cell.Group != larch || cell.Day == 1 || cell.Day == 9 {
			continue
		}
		for _, dish := range cell.Dishes {
			k, _, m := nutrition(t, &demo, demo.Recipe(dish.Recipe), nil)
			kcal, mass = kcal+k, mass+m
		}
	}
	if density := kcal / mass; density < 4.2 {
		t.Errorf("days 2 to 8 bring %.2f kcal/g, want 4.2 or more", density)
	}
	if perDay := kcal / 7; perDay < 2900 || perDay > 3300 {
		t.Errorf("a standard day brings %.0f kcal", perDay)
	}
}
