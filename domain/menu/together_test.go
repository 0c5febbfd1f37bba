package menu_test

import (
	"fmt"
	"strings"
	"testing"

	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// A diet that no label speaks of forbids dish after dish: that is one line of
// the list, and nobody who goes without is forgotten.
func TestManyDishesOfOneReasonAreOneFinding(t *testing.T) {
	for dishes := 2; dishes <= 5; dishes++ {
		on := kitchen(trip.Recipe{}, vegan, anyone, vegan)
		on.Days, on.Recipes, on.Menu = nil, nil, nil
		for i := range dishes {
			sauce := on.Foods[4]
			sauce.ID, sauce.Name = trip.FoodID(10+i), fmt.Sprintf("sauce %d", i+1)
			on.Foods = append(on.Foods, sauce)
			recipe := trip.Recipe{ID: trip.RecipeID(i + 1), Name: fmt.Sprintf("Supper %d", i+1), MinScale: 0.5, MaxScale: 2, Meals: []trip.Meal{trip.Dinner}, Ingredients: []trip.Ingredient{part(sauce.ID, trip.InPot)}}
			on.Recipes = append(on.Recipes, recipe)
			on.Days = append(on.Days, trip.Day{Meals: []trip.Meal{trip.Dinner}})
			on.Menu = append(on.Menu, trip.Cell{Day: i + 1, Meal: trip.Dinner, Group: 1, Dishes: []trip.Dish{{Recipe: recipe.ID}}})
		}
		result, _ := resolve(t, on)
		without := map[findings.Place]bool{}
		lines := 0
		for _, f := range result.Findings {
			if f.Code != "cannot-be-served" {
				continue
			}
			lines++
			for one := range f.Each() {
				without[findings.Place{Day: one.Place.Day, Member: one.Place.Member}] = one.Severity == findings.MustFix
			}
			if said := f.What.String(); lines == 1 && dishes == 5 && (!strings.Contains(said, "A, C get nothing of 5 dishes, from dinner on day 1 on") ||
				!strings.Contains(said, "not known to be vegan") || !strings.Contains(said, "sauce 1, sauce 2, sauce 3 and 2 more")) {
				t.Errorf("it says %q", said)
			}
		}
		want := 2 * dishes
		if dishes >= 4 {
			want = 1
		}
		if lines != want {
			t.Errorf("%d dishes are told of in %d findings, want %d", dishes, lines, want)
		}
		for day := 1; day <= dishes; day++ {
			for _, member := range []trip.MemberID{1, 3} {
				if !without[findings.Place{Day: day, Member: member}] {
					t.Errorf("of %d dishes: that member %d goes without on day %d must be fixed", dishes, member, day)
				}
			}
		}
	}
}
