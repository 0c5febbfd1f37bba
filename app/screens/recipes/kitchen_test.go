package recipes

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/menu"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// A recipe of two foods with round figures, worked out by hand: 100 g of
// beans, a tenth of it hull, fibre within the carbohydrate; 50 g of butter.
func roundTrip() (*trip.Trip, *trip.Recipe) {
	t := &trip.Trip{
		Foods: []trip.Food{
			{ID: 1, Name: "Beans", RefuseShare: 0.1, Per100g: trip.Nutrients{
				Kcal: 300, ProteinGrams: optional.Of(20.0), FatGrams: optional.Of(1.0), CarbGrams: optional.Of(60.0), FibreGrams: optional.Of(20.0),
				SodiumMilligrams: optional.Of(10.0), CarbConvention: trip.TotalCarbohydrate},
				Allergens: map[trip.Allergen]trip.Presence{trip.Milk: trip.Free, trip.Celery: trip.MayContain}},
			{ID: 2, Name: "Butter", Per100g: trip.Nutrients{
				Kcal: 700, ProteinGrams: optional.Of(1.0), FatGrams: optional.Of(80.0), CarbGrams: optional.Of(1.0), CarbConvention: trip.AvailableCarbohydrate},
				Allergens: map[trip.Allergen]trip.Presence{trip.Milk: trip.Contains, trip.Celery: trip.Free}},
		},
		Recipes: []trip.Recipe{{ID: 9, Name: "Beans in butter", Ingredients: []trip.Ingredient{
			{Food: 1, Amount: 100 * units.Gram, Role: trip.Base, Place: trip.InPot}, {Food: 2, Amount: 50 * units.Gram, Role: trip.Base, Place: trip.InPot},
		}}},
	}
	return t, &t.Recipes[0]
}

func TestFactsByHand(t *testing.T) {
	made, recipe := roundTrip()
	f := newKitchen(made).facts(recipe)
	for name, c := range map[string]struct{ have, want float64 }{
		"kcal": {float64(f.kcal), 0.9*300 + 350}, "protein": {f.protein.amount, 18.5}, "fat": {f.fat.amount, 40.9}, "mass": {f.mass.Grams(), 150},
		"carbohydrate without fibre": {f.carbs.amount, 0.9*40 + 0.5}, "fibre": {f.fibre.amount, 18}, "sodium": {f.sodium.amount, 9},
		"kcal a gram": {f.density(), 620.0 / 150},
	} {
		if math.Abs(c.have-c.want) > 1e-9 {
			t.Errorf("%s is %v, want %v", name, c.have, c.want)
		}
	}
	if f.fibre.unknown != 1 || f.sodium.unknown != 1 || f.protein.unknown != 0 || f.carbs.unknown != 0 {
		t.Errorf("unknown: fibre %d, sodium %d, protein %d, carbohydrate %d", f.fibre.unknown, f.sodium.unknown, f.protein.unknown, f.carbs.unknown)
	}
	if f.worst[trip.Milk] != trip.Contains || f.worst[trip.Celery] != trip.MayContain || f.worst[trip.Eggs] != trip.NotKnown {
		t.Errorf("milk %s, celery %s, eggs %s", f.worst[trip.Milk], f.worst[trip.Celery], f.worst[trip.Eggs])
	}
	if short := f.allergensInShort(units.Metric); short != "milk; may contain celery; 13 not known, not safe" {
		t.Errorf("in short: %q", short)
	}
	if (&facts{}).density() != 0 {
		t.Error("nothing has a density")
	}
}

// On any trip: the worst state of a recipe is that of its worst ingredient,
// and an unknown is never lost.
func TestWorstStateWins(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip")
		k := newKitchen(made)
		for i := range made.Recipes {
			recipe := &made.Recipes[i]
			f := k.facts(recipe)
			for _, allergen := range trip.DeclaredAllergens() {
				want := trip.Free
				for _, in := range recipe.Ingredients {
					want = trip.Worse(want, made.Food(in.Food).Presence(allergen))
				}
				if f.worst[allergen] != want {
					rt.Fatalf("%s of %s is %s, want %s", allergen, recipe.Name, f.worst[allergen], want)
				}
			}
			if strings.Contains(f.allergensInShort(units.Metric), "none") && len(f.with(trip.Free)) != len(trip.DeclaredAllergens()) {
				rt.Fatalf("%s is shown as %q", recipe.Name, f.allergensInShort(units.Metric))
			}
			for _, diet := range f.diets {
				for _, in := range recipe.Ingredients {
					if made.Food(in.Food).Suitability(diet) != trip.Suits && len(in.Swaps) == 0 {
						rt.Fatalf("%s is said to suit %s without a swap for food %d", recipe.Name, diet, in.Food)
					}
				}
			}
		}
	})
}

func TestWaitingCountsWhatNotAllCanEat(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip")
		k, want := newKitchen(made), 0
		for i := range made.Recipes {
			if len(k.taste(&made.Recipes[i]).refused) > 0 {
				want++
			}
		}
		if have := k.waiting(); have != want || k.waiting() != want {
			rt.Fatalf("%d wait, want %d", have, want)
		}
	})
}

func TestEveryReasonIsSaid(t *testing.T) {
	made, _ := roundTrip()
	made.Foods[0].Diets = map[trip.Diet]trip.Suitability{trip.Vegan: trip.DoesNotSuit}
	for want, m := range map[string]trip.Member{
		"Beans may contain celery":                  {Allergies: []trip.Allergy{{Allergen: trip.Celery}}},
		"whether Beans holds eggs is not known":     {Allergies: []trip.Allergy{{Allergen: trip.Eggs}}},
		"Beans does not suit vegan":                 {Diets: []trip.Diet{trip.Vegan}},
		"whether Beans suits kosher is not known":   {Diets: []trip.Diet{trip.Kosher}},
		"does not suit vegan; whether Beans suits ": {Diets: []trip.Diet{trip.Vegan, trip.Kosher}},
	} {
		m.ID = 4
		made.Crew = []trip.Member{m}
		if got := whyNot(made, menu.Tasting{Member: 4, Refused: 1}); !strings.Contains(got, want) || !strings.Contains(got, "no swap is safe") {
			t.Errorf("have %q, want %q", got, want)
		}
	}
	if got := whyNot(made, menu.Tasting{Member: 4}); !strings.Contains(got, "nothing") {
		t.Errorf("an empty dish: %q", got)
	}
}

func TestManyNamesAreCounted(t *testing.T) {
	made, tasted := &trip.Trip{}, &tasting{}
	for i := range 11 {
		made.Crew = append(made.Crew, trip.Member{ID: trip.MemberID(i + 1), Name: "M" + string(rune('a'+i))})
		tasted.refused = append(tasted.refused, menu.Tasting{Member: trip.MemberID(i + 1)})
	}
	if got := refusedNames(made, tasted); got != "Ma, Mb, Mc, Md, Me, Mf, Mg, Mh and 3 more" {
		t.Errorf("have %q", got)
	}
}

func TestCardWords(t *testing.T) {
	d := kitchenDesk(t)
	c := d.side.card
	c.count = 4
	for want, recipe := range map[string]trip.Recipe{
		"No water":    {},
		"Water 1.2 L": {Water: 300 * units.Millilitre},
		"Water 1.2 L, and 2.0 L boiled and poured off": {Water: 300 * units.Millilitre, PourOff: 500 * units.Millilitre},
	} {
		if got := c.waterWords(&recipe); got != want {
			t.Errorf("have %q, want %q", got, want)
		}
	}
	for want, recipe := range map[string]trip.Recipe{
		"ready to eat": {}, "can be made cold": {ColdOK: true},
		"simmer 9 min at sea level, longer higher up, soak 5 min off the flame": {Simmer: 9, Soak: 5},
	} {
		if got := timeWords(&recipe); got != want {
			t.Errorf("have %q, want %q", got, want)
		}
	}
}

func TestFiguresInTheReadersUnits(t *testing.T) {
	if got := densityText(4, units.US); got != "113" || densityUnit(units.US) != "kcal/oz" { // 4 x 28.35
		t.Errorf("4 kcal/g are %s %s", got, densityUnit(units.US))
	}
	if got := densityText(4, units.Metric); got != "4.0" || densityUnit(units.Metric) != "kcal/g" {
		t.Errorf("have %s %s", got, densityUnit(units.Metric))
	}
	if got := massText(units.FromGrams(150), units.US); got != "5.3" {
		t.Errorf("150 g are %s oz", got)
	}
	var recipe trip.Recipe
	for _, f := range makingFields(units.US) {
		if f.title == "Water that stays in the food" {
			if err := f.set(&recipe, "2"); err != nil || math.Abs(recipe.Water.Millilitres()-473.18) > 0.01 {
				t.Errorf("2 cups are %v, %v", recipe.Water, err)
			}
		}
	}
}

func TestFoodsAreOfferedByName(t *testing.T) {
	made := &trip.Trip{Foods: []trip.Food{{ID: 3, Name: "rice"}, {ID: 1, Name: "Oats"}, {ID: 2, Name: "apples"}}}
	if got := foodNames(made); !slices.Equal(got, []string{"apples", "Oats", "rice"}) {
		t.Errorf("offered are %v", got)
	}
	if id, err := foodNamed(made, " oats "); err != nil || id != 1 {
		t.Errorf("oats are %d, %v", id, err)
	}
	if _, err := foodNamed(made, "oat"); err == nil {
		t.Error("half a name is taken")
	}
}
