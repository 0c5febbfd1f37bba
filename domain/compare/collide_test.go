package compare

import (
	"slices"
	"testing"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// collided are two copies of a trip to both of which a food and a recipe of it
// were added, under the same IDs.
func collided() (mine, theirs *trip.Trip) {
	mine = triptest.Large(4, 3, 1)
	theirs = mine.Clone()
	add := func(t *trip.Trip, food trip.Food, recipe trip.Recipe) {
		food.ID, recipe.ID = 9000, 9000
		recipe.Ingredients = []trip.Ingredient{{Food: 9000, Role: trip.Base, Place: trip.InPot, Amount: 80 * units.Gram}}
		t.Foods, t.Recipes = append(t.Foods, food), append(t.Recipes, recipe)
		t.Menu[0].Dishes = []trip.Dish{{Recipe: 9000}}
	}
	oats, nuts := mine.Foods[0], mine.Foods[1]
	oats.Name, nuts.Name = "My oats", "Their nuts"
	add(mine, oats, trip.Recipe{Name: "My porridge", Meals: []trip.Meal{trip.Breakfast}, Method: []string{"boil"}, MinScale: 0.5, MaxScale: 2, Simmer: 5})
	add(theirs, nuts, trip.Recipe{Name: "Their mix", Meals: []trip.Meal{trip.Snack}, Method: []string{"stir"}, MinScale: 0.5, MaxScale: 3, ColdOK: true})
	return mine, theirs
}

func pick(t *testing.T, mine, theirs *trip.Trip, names ...string) []Difference {
	t.Helper()
	found, err := Between(mine, theirs)
	if err != nil {
		t.Fatal(err)
	}
	var chosen []Difference
	for _, difference := range found {
		if slices.Contains(names, difference.Name) {
			chosen = append(chosen, difference)
		}
	}
	if len(chosen) != len(names) {
		t.Fatalf("of %q only %+v differ", names, chosen)
	}
	return chosen
}

func foodOf(t *trip.Trip, recipe string) string {
	at := slices.IndexFunc(t.Recipes, func(r trip.Recipe) bool { return r.Name == recipe })
	if at < 0 {
		return ""
	}
	return t.Food(t.Recipes[at].Ingredients[0].Food).Name
}

func TestBothAddedUnderOneID(t *testing.T) {
	mine, theirs := collided()
	both, err := Take(mine, theirs, pick(t, mine, theirs, "Their nuts", "Their mix"))
	if err != nil {
		t.Fatal(err)
	}
	for recipe, food := range map[string]string{"My porridge": "My oats", "Their mix": "Their nuts"} {
		if got := foodOf(both, recipe); got != food {
			t.Errorf("%s is made of %q, want %q", recipe, got, food)
		}
	}
	if got := both.Menu[0].Dishes[0].Recipe; both.Recipe(got).Name != "My porridge" {
		t.Errorf("the menu has %q now", both.Recipe(got).Name)
	}
	// Their recipe alone would be made of my food.
	if _, err := Take(mine, theirs, pick(t, mine, theirs, "Their mix")); err == nil {
		t.Error("their recipe is taken without its food")
	}
	// Whoever gives mine up has theirs under the old ID.
	instead, err := Take(mine, theirs, pick(t, mine, theirs, "Their nuts", "Their mix", "My oats", "My porridge"))
	if err != nil {
		t.Fatal(err)
	}
	if got := instead.Recipe(9000); got == nil || got.Name != "Their mix" || foodOf(instead, "Their mix") != "Their nuts" || foodOf(instead, "My porridge") != "" {
		t.Errorf("recipe 9000 is %+v", got)
	}
}

func TestBagsOfWhatGetsANewID(t *testing.T) {
	mine, theirs := collided()
	theirs.Progress.Packed = []trip.PackedBag{{Bag: "d1 breakfast g1 r9000 b1 pot 1", Done: true}}
	found, err := Between(mine, theirs)
	if err != nil {
		t.Fatal(err)
	}
	chosen := pick(t, mine, theirs, "Their nuts", "Their mix")
	for _, difference := range found {
		if difference.List == "progress.packed" {
			chosen = append(chosen, difference)
		}
	}
	both, err := Take(mine, theirs, chosen)
	if err != nil || len(both.Progress.Packed) != 1 || both.Progress.Packed[0].Bag != "d1 breakfast g1 r9001 b1 pot 1" {
		t.Errorf("packed is %+v, %v", both, err)
	}
}

// A new name for a thing is a change of it, not a second thing; of people each
// name is somebody.
func TestRenamedIsNotAdded(t *testing.T) {
	mine := triptest.Large(4, 3, 1)
	theirs := mine.Clone()
	theirs.Foods[0].Name += " of the other mill"
	theirs.Crew[0].Name = "Somebody Else"
	found, err := Between(mine, theirs)
	if err != nil {
		t.Fatal(err)
	}
	kinds := map[string][]Kind{}
	for _, difference := range found {
		kinds[difference.List] = append(kinds[difference.List], difference.Kind)
	}
	if !slices.Equal(kinds["foods"], []Kind{Changed}) || !slices.Equal(kinds["crew"], []Kind{OnlyMine, OnlyTheirs}) {
		t.Errorf("differences are %v", kinds)
	}
	both, err := Take(mine, theirs, pick(t, mine, theirs, "Somebody Else"))
	if err != nil || len(both.Crew) != len(mine.Crew)+1 || both.Crew[0].Name != mine.Crew[0].Name {
		t.Errorf("crew of %d, %v", len(mine.Crew), err)
	}
}
