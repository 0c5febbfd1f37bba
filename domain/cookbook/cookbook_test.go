package cookbook_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/cookbook"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// lastYear has a porridge of oats and milk powder, which soya takes the place of.
func lastYear() *trip.Trip {
	t := trip.New("Last year", 20_000)
	food := func(id trip.FoodID, name string, kcal units.Kcal) trip.Food {
		return trip.Food{ID: id, Name: name, Form: trip.Dry, AtHome: 2 * units.Kilogram, Per100g: trip.Nutrients{Kcal: kcal, CarbConvention: trip.AvailableCarbohydrate},
			Storage: trip.Storage{TCS: trip.TCSNo, Q10: 2}, Packages: []trip.Package{{Net: 500 * units.Gram, Price: optional.Of(units.Money(150)), InStock: optional.Of(3)}}}
	}
	t.Foods = []trip.Food{food(1, "Rolled oats", 370), food(2, "Milk powder", 490), food(3, "Soya drink powder", 400), food(4, "Rice", 350)}
	t.Foods[0].Allergens = map[trip.Allergen]trip.Presence{trip.Gluten: trip.Contains}
	t.Recipes = []trip.Recipe{
		{ID: 1, Name: "Porridge", Meals: []trip.Meal{trip.Breakfast}, MinScale: 0.5, MaxScale: 2, Ingredients: []trip.Ingredient{
			{Food: 1, Amount: 80 * units.Gram, Role: trip.Base, Place: trip.InPot},
			{Food: 2, Amount: 20 * units.Gram, Role: trip.Base, Place: trip.InPot, Swaps: []trip.Swap{{Food: 3, Amount: 20 * units.Gram}, {}}},
		}},
		{ID: 2, Name: "Plain rice", Meals: []trip.Meal{trip.Dinner}, MinScale: 0.5, MaxScale: 2, Ingredients: []trip.Ingredient{{Food: 4, Amount: 90 * units.Gram, Role: trip.Base, Place: trip.InPot}}},
	}
	return t
}

func TestARecipeComesWithTheFoodsItNeeds(t *testing.T) {
	theirs := lastYear()
	mine := trip.New("This year", 20_400)
	mine.Foods = []trip.Food{theirs.Foods[0], theirs.Foods[3]}
	mine.Foods[0].ID, mine.Foods[0].Name, mine.Foods[0].Per100g.Kcal = 7, "rolled OATS", 380
	mine.Foods[0].Allergens = map[trip.Allergen]trip.Presence{trip.Gluten: trip.Free}
	mine.Foods[1].ID = 1
	mine.Recipes = []trip.Recipe{theirs.Recipes[0]}
	mine.Recipes[0].Ingredients = []trip.Ingredient{{Food: 7, Amount: 60 * units.Gram, Role: trip.Base, Place: trip.InPot}}

	offers := cookbook.Offers(mine, theirs)
	if len(offers) != 2 || !offers[0].Here || offers[1].Here || len(offers[0].Foods) != 3 || !offers[0].Foods[1].New || !offers[0].Foods[2].New || offers[0].Foods[0].New {
		t.Fatalf("offers %+v", offers)
	}
	var told []string
	for _, text := range offers[0].Foods[0].Differs {
		told = append(told, text.String())
	}
	if want := []string{"gluten: here free, there contains", "380 kcal here, 370 there"}; !slices.Equal(told, want) {
		t.Errorf("oats differ in %q, want %q", told, want)
	}
	if differs := offers[1].Foods[0].Differs; len(differs) > 0 {
		t.Errorf("rice differs in %v", differs)
	}

	taken, err := cookbook.Take(mine, theirs, []trip.RecipeID{1})
	if err != nil {
		t.Fatal(err)
	}
	if len(taken.Recipes) != 2 || taken.Recipes[1].Name != "Porridge 2" || len(taken.Foods) != 4 {
		t.Fatalf("%d recipes, the last %q, %d foods", len(taken.Recipes), taken.Recipes[1].Name, len(taken.Foods))
	}
	made := taken.Recipes[1]
	names := []string{taken.Food(made.Ingredients[0].Food).Name, taken.Food(made.Ingredients[1].Food).Name, taken.Food(made.Ingredients[1].Swaps[0].Food).Name}
	if want := []string{"rolled OATS", "Milk powder", "Soya drink powder"}; !slices.Equal(names, want) || made.Ingredients[1].Swaps[1].Food != 0 {
		t.Errorf("made of %v", names)
	}
	if oats := taken.Food(7); oats.Per100g.Kcal != 380 || oats.Presence(trip.Gluten) != trip.Free {
		t.Errorf("the food of my trip was changed: %+v", oats)
	}
	fresh := taken.Food(made.Ingredients[1].Food)
	if fresh.AtHome != 0 || fresh.Packages[0].InStock.Known() || !fresh.Packages[0].Price.Known() {
		t.Errorf("milk powder came as %+v", fresh)
	}
	mine.Currency = "USD"
	if taken, err = cookbook.Take(mine, theirs, []trip.RecipeID{1}); err != nil || taken.Foods[3].Packages[0].Price.Known() {
		t.Errorf("a price in another currency was taken (%v)", err)
	}
}

// Whatever is taken from whichever trip: mine stays as it was, what is new says
// the same as there, and nothing is safer than it was there.
func TestTakingChangesNothingThatIsThere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mine, theirs := triptest.Trip().Draw(t, "mine"), triptest.Trip().Draw(t, "theirs")
		var chosen []trip.RecipeID
		for i := range theirs.Recipes {
			if rapid.Bool().Draw(t, "take") {
				chosen = append(chosen, theirs.Recipes[i].ID)
			}
		}
		before := mine.Clone()
		taken, err := cookbook.Take(mine, theirs, chosen)
		if err != nil {
			if !strings.Contains(err.Error(), "allowed") {
				t.Fatal(err)
			}
			return // more than a trip holds
		}
		if !trip.Equal(mine, before) {
			t.Fatal("my trip was changed")
		}
		if len(taken.Recipes) != len(mine.Recipes)+len(chosen) {
			t.Fatalf("%d recipes of %d and %d", len(taken.Recipes), len(mine.Recipes), len(chosen))
		}
		for n, id := range chosen {
			there, here := theirs.Recipe(id), taken.Recipes[len(mine.Recipes)+n]
			for i, part := range there.Ingredients {
				a, b := theirs.Food(part.Food), taken.Food(here.Ingredients[i].Food)
				if !strings.EqualFold(strings.TrimSpace(a.Name), strings.TrimSpace(b.Name)) || part.Amount != here.Ingredients[i].Amount {
					t.Fatalf("%s became %s", a.Name, b.Name)
				}
				if mine.Food(b.ID) != nil {
					continue // mine says what is true here
				}
				for _, allergen := range trip.KnownAllergens() {
					if a.Presence(allergen) != b.Presence(allergen) {
						t.Fatalf("%s of %s was %s, is %s", allergen, a.Name, a.Presence(allergen), b.Presence(allergen))
					}
				}
			}
		}
		for i := range mine.Recipes {
			if !reflect.DeepEqual(taken.Recipes[i], mine.Recipes[i]) {
				t.Fatalf("%s was changed", mine.Recipes[i].Name)
			}
		}
		for i := range mine.Foods {
			if !reflect.DeepEqual(taken.Foods[i], mine.Foods[i]) {
				t.Fatalf("%s was changed", mine.Foods[i].Name)
			}
		}
		taken.Recipes, taken.Foods = mine.Recipes, mine.Foods
		if !trip.Equal(taken, mine) {
			t.Fatal("more than recipes and foods was taken")
		}
	})
}

func TestAnExampleBringsNoLabels(t *testing.T) {
	theirs := cookbook.WithoutLabels(lastYear())
	for i := range theirs.Foods {
		if f := &theirs.Foods[i]; len(f.Allergens)+len(f.Diets)+len(f.Packages) > 0 || f.Presence(trip.Gluten) != trip.NotKnown {
			t.Errorf("%s still tells %+v", f.Name, f)
		}
	}
}
