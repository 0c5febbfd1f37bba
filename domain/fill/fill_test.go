package fill_test

import (
	"context"
	"errors"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/fill"
	"sumpter/domain/needs"
	"sumpter/domain/optional"
	"sumpter/domain/plan"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// Foods of the small trips.
const (
	corn trip.FoodID = iota + 1
	wheat
	nuts
	ham // must stay cold
)

// evening is one cook group and days of dinner only, without recipes.
func evening(crew ...trip.Member) *trip.Trip {
	food := func(id trip.FoodID, name string, contains ...trip.Allergen) trip.Food {
		f := trip.Food{ID: id, Name: name, Form: trip.Dry, Allergens: map[trip.Allergen]trip.Presence{}, Diets: map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits}}
		f.Per100g.Kcal, f.Per100g.ProteinGrams, f.Per100g.CarbConvention = 400, optional.Of(10.0), trip.TotalCarbohydrate
		f.Storage = trip.Storage{TCS: trip.TCSNo, ShelfDays: optional.Of(365.0), Q10: 2}
		f.Packages = []trip.Package{{Net: units.Kilogram, Price: optional.Of(units.Money(400))}}
		for _, a := range trip.DeclaredAllergens() {
			f.Allergens[a] = trip.Free
		}
		for _, a := range contains {
			f.Allergens[a] = trip.Contains
		}
		return f
	}
	start, _ := units.NewDate(2027, 7, 1)
	t := trip.New("Ridge", start)
	t.Groups = []trip.CookGroup{{ID: 1, Name: "Larch"}}
	t.Crew = crew
	t.Days = []trip.Day{{Meals: []trip.Meal{trip.Dinner}, Terrain: trip.Trail, Low: 10, High: 20}}
	t.Foods = []trip.Food{food(corn, "corn"), food(wheat, "wheat", trip.Gluten, trip.Wheat), food(nuts, "nuts", trip.Nuts), food(ham, "ham")}
	t.Foods[ham-1].Storage.TCS = trip.TCSYes
	t.Gear = []trip.Gear{
		{ID: 1, Name: "Stove", Kind: trip.Stove, Group: 1, Fuel: trip.GasMix, PowerWatts: 2000, Efficiency: 0.5},
		{ID: 2, Name: "Pot", Kind: trip.Pot, Group: 1, Capacity: 5 * units.Litre},
	}
	t.Menu, t.Recipes, t.Points, t.Pins = nil, nil, nil, nil
	t.Settings.EarlyAppetite = 1
	return t
}

func member(id trip.MemberID, change ...func(*trip.Member)) trip.Member {
	m := trip.Member{ID: id, Name: string(rune('A' + id - 1)), Group: 1, Sex: trip.Female, Age: 30, BodyMass: 65 * units.Kilogram, Height: 1.7, Appetite: 1, Strength: 1}
	m.GivenNeed = optional.Of(units.Kcal(2500))
	m.ProteinPer = optional.Of(0.3)
	for _, c := range change {
		c(&m)
	}
	return m
}

func allergicTo(a trip.Allergen) func(*trip.Member) {
	return func(m *trip.Member) { m.Allergies = []trip.Allergy{{Allergen: a, Severe: true}} }
}

// supper is a dinner of so many kcal for 100 g, made of one food.
func supper(id trip.RecipeID, name string, kcal float64, food trip.FoodID) trip.Recipe {
	return trip.Recipe{ID: id, Name: name, Meals: []trip.Meal{trip.Dinner}, MinScale: 0.5, MaxScale: 5, ColdOK: true,
		Ingredients: []trip.Ingredient{{Food: food, Amount: units.FromGrams(750 / kcal * 100), Role: trip.Base, Place: trip.InPot}}}
}

// alternating is three days and three dinners of about one weight, of which the first two have a word in common.
func alternating(mark func(r *trip.Recipe, word string)) *trip.Trip {
	t := evening(member(1))
	days(t, 3)
	t.Settings.RepeatGap = 0
	t.Recipes = []trip.Recipe{supper(1, "one", 400, corn), supper(2, "two", 400, wheat), supper(3, "other", 400, nuts)}
	for i, word := range []string{"same", "same", "different"} {
		mark(&t.Recipes[i], word)
	}
	return t
}

func days(t *trip.Trip, n int) {
	for len(t.Days) < n {
		t.Days = append(t.Days, t.Days[0])
	}
}

func dinners(t *testing.T, tr *trip.Trip) (names []string, p fill.Proposal) {
	t.Helper()
	c := tr.Canonical()
	if problems := trip.Validate(c); len(problems) > 0 {
		t.Fatal(problems)
	}
	p, err := fill.Menu(context.Background(), c, needs.Compute(c, nil), fill.Options{Steps: fill.Sketch + 1})
	if err != nil {
		t.Fatal(err)
	}
	for day := 1; day <= len(c.Days); day++ {
		name := ""
		for _, cell := range p.Cells {
			if cell.Day != day {
				continue
			}
			for _, dish := range cell.Dishes {
				name += c.Recipe(dish.Recipe).Name
				for _, m := range dish.For {
					name += c.Member(m).Name
				}
			}
		}
		names = append(names, name)
	}
	return names, p
}

// TestWorkedMenus: small trips whose best menu is plain to see.
func TestWorkedMenus(t *testing.T) {
	coeliac := allergicTo(trip.Gluten)
	lighter := func(tr *trip.Trip) { tr.Foods[nuts-1].Per100g.Kcal = 600 }
	for _, c := range []struct {
		name string
		trip func() *trip.Trip
		want []string
	}{
		{"the lighter of two", func() *trip.Trip {
			tr := evening(member(1))
			lighter(tr)
			tr.Recipes = []trip.Recipe{supper(1, "corn", 400, corn), supper(2, "nuts", 600, nuts)}
			return tr
		}, []string{"nuts"}},
		{"the cheaper of two", func() *trip.Trip {
			tr := evening(member(1))
			lighter(tr)
			tr.Settings.MenuAim = -1
			tr.Foods[nuts-1].Packages[0].Price = optional.Of(units.Money(1600))
			tr.Recipes = []trip.Recipe{supper(1, "corn", 400, corn), supper(2, "nuts", 600, nuts)}
			return tr
		}, []string{"corn"}},
		{"what is at home", func() *trip.Trip {
			tr := evening(member(1))
			tr.Foods[corn-1].AtHome = 5 * units.Kilogram
			tr.Recipes = []trip.Recipe{supper(1, "wheat", 400, wheat), supper(2, "corn", 400, corn)}
			return tr
		}, []string{"corn"}},
		{"not the same twice running", func() *trip.Trip {
			tr := evening(member(1))
			days(tr, 3)
			tr.Settings.RepeatGap = 1
			tr.Foods[corn-1].Per100g.Kcal = 420
			tr.Recipes = []trip.Recipe{supper(1, "corn", 420, corn), supper(2, "wheat", 400, wheat)}
			return tr
		}, []string{"corn", "wheat", "corn"}},
		{"one pot where one dish serves all", func() *trip.Trip {
			tr := evening(member(1), member(2), member(3, coeliac))
			tr.Foods[wheat-1].Per100g.Kcal = 440
			tr.Recipes = []trip.Recipe{supper(1, "wheat", 440, wheat), supper(2, "corn", 400, corn)}
			return tr
		}, []string{"corn"}},
		{"a small batch apart where none does", func() *trip.Trip {
			tr := evening(member(1), member(2), member(3, coeliac), member(4, allergicTo(trip.Nuts)))
			lighter(tr)
			tr.Recipes = []trip.Recipe{supper(1, "wheat", 400, wheat), supper(2, "nuts", 600, nuts)}
			return tr
		}, []string{"wheatDnutsABC"}},
		{"nothing that must stay cold", func() *trip.Trip {
			tr := evening(member(1))
			days(tr, 2)
			tr.Foods[ham-1].Per100g.Kcal = 600
			tr.Recipes = []trip.Recipe{supper(1, "ham", 600, ham), supper(2, "corn", 400, corn)}
			return tr
		}, []string{"corn", "corn"}},
		{"no flame, no stove", func() *trip.Trip {
			tr := evening(member(1))
			lighter(tr)
			hot := supper(1, "nuts", 600, nuts)
			hot.ColdOK, hot.Simmer = false, 5
			tr.Days[0].NoFlame = true
			tr.Recipes = []trip.Recipe{hot, supper(2, "corn", 400, corn)}
			return tr
		}, []string{"corn"}},
		{"quick on the longest day", func() *trip.Trip {
			tr := evening(member(1))
			lighter(tr)
			days(tr, 2)
			tr.Days[1].MovingHours = optional.Of(units.Hours(9))
			tr.Settings.CookMinutes, tr.Settings.RepeatGap = 40, 0
			slow := supper(1, "nuts", 600, nuts)
			slow.ColdOK, slow.Water, slow.Simmer = false, units.FromMillilitres(300), 20
			tr.Recipes = []trip.Recipe{slow, supper(2, "corn", 400, corn)}
			return tr
		}, []string{"nuts", "corn"}},
		{"little water at a dry camp", func() *trip.Trip {
			tr := evening(member(1))
			lighter(tr)
			wet := supper(1, "nuts", 600, nuts)
			wet.Water = units.FromMillilitres(800)
			tr.Days[0].DryCamp = true
			tr.Recipes = []trip.Recipe{wet, supper(2, "corn", 400, corn)}
			return tr
		}, []string{"corn"}},
		{"protein before weight", func() *trip.Trip {
			tr := evening(member(1, func(m *trip.Member) { m.ProteinPer = optional.Of(1.2) }))
			lighter(tr)
			tr.Foods[corn-1].Per100g.ProteinGrams = optional.Of(15.0)
			tr.Recipes = []trip.Recipe{supper(1, "nuts", 600, nuts), supper(2, "corn", 400, corn)}
			return tr
		}, []string{"corn"}},
		{"a drink is no dinner, but helps where the dinner is too small", func() *trip.Trip {
			tr := evening(member(1))
			small := supper(1, "corn", 500, corn)
			small.Ingredients[0].Amount, small.MaxScale = 120*units.Gram, 1
			drink := supper(2, "nuts", 600, nuts)
			drink.Ingredients[0].Amount, drink.MinScale, drink.MaxScale = 20*units.Gram, 0.8, 1.4
			tr.Recipes = []trip.Recipe{small, drink}
			return tr
		}, []string{"cornnuts"}},
		{"staples alternate", func() *trip.Trip { return alternating(func(r *trip.Recipe, word string) { r.Staple = word }) }, []string{"one", "other", "two"}},
		{"textures alternate", func() *trip.Trip { return alternating(func(r *trip.Recipe, word string) { r.Texture = word }) }, []string{"one", "other", "two"}},
		{"within the budget", func() *trip.Trip {
			tr := evening(member(1))
			lighter(tr)
			tr.Settings.MenuAim, tr.Settings.Budget = 0, optional.Of(units.Money(100))
			tr.Foods[nuts-1].Packages[0].Price = optional.Of(units.Money(1600))
			tr.Recipes = []trip.Recipe{supper(1, "corn", 400, corn), supper(2, "nuts", 600, nuts)}
			return tr
		}, []string{"corn"}},
		{"snack shares too", func() *trip.Trip {
			tr := evening(member(1), member(2, allergicTo(trip.Nuts)))
			tr.Days[0].Meals = []trip.Meal{trip.Snack}
			a, b := supper(1, "nuts", 400, nuts), supper(2, "corn", 400, corn)
			a.Meals, b.Meals = []trip.Meal{trip.Snack}, []trip.Meal{trip.Snack}
			tr.Recipes = []trip.Recipe{a, b}
			return tr
		}, []string{"corn"}},
		{"around what is locked", func() *trip.Trip {
			tr := evening(member(1))
			days(tr, 2)
			tr.Settings.RepeatGap = 1
			tr.Recipes = []trip.Recipe{supper(1, "corn", 400, corn), supper(2, "wheat", 390, wheat)}
			tr.Menu = []trip.Cell{{Day: 2, Meal: trip.Dinner, Group: 1, Locked: true, Dishes: []trip.Dish{{Recipe: 1}}}}
			return tr
		}, []string{"wheat", ""}},
		{"dislikes give way to nothing but a worse load", func() *trip.Trip {
			tr := evening(member(1, func(m *trip.Member) { m.Dislikes = []trip.FoodID{wheat} }))
			tr.Recipes = []trip.Recipe{supper(1, "wheat", 410, wheat), supper(2, "corn", 400, corn)}
			return tr
		}, []string{"corn"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, p := dinners(t, c.trip())
			if !slices.Equal(got, c.want) {
				t.Errorf("got %q, want %q", got, c.want)
			}
			if len(p.Groups) != 1 || !p.Groups[0].Proven || p.Groups[0].Gap != 0 {
				t.Errorf("so small a menu is not proven: %+v", p.Groups)
			}
		})
	}
}

// TestOnlyOpenSlotsAreFilledAndNothingUnsafe, on random trips: decided and locked slots stay, dishes suit their meal, nobody is meant to get
// what they may not eat, and the spoilage stage finds every proposed food safe.
func TestOnlyOpenSlotsAreFilledAndNothingUnsafe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr := triptest.Trip().Draw(t, "trip").Canonical()
		n := needs.Compute(tr, nil)
		p := filled(t, tr, n)
		for _, cell := range p.Cells {
			if old := tr.Cell(cell.Day, cell.Meal, cell.Group); old != nil && (old.Locked || len(old.Dishes) > 0) {
				t.Errorf("%s of day %d is decided or locked", cell.Meal, cell.Day)
			}
			for _, dish := range cell.Dishes {
				recipe := tr.Recipe(dish.Recipe)
				if !slices.Contains(recipe.Meals, cell.Meal) || tr.Days[cell.Day-1].NoFlame && recipe.NeedsFlame() || len(dish.Accepted) > 0 {
					t.Errorf("%s does not suit %s of day %d", recipe.Name, cell.Meal, cell.Day)
				}
			}
		}
		served := tr.Clone()
		served.Settings.FillOpenSlots = false
		served.Menu = append(slices.DeleteFunc(served.Menu, func(c trip.Cell) bool { return len(c.Dishes) == 0 && !c.Locked }), p.Cells...)
		made, err := plan.Make(context.Background(), served, plan.Options{})
		if err != nil || made.Refused() {
			t.Fatal(err, made.Findings)
		}
		proposed := map[[2]any]bool{}
		for _, cell := range p.Cells {
			proposed[[2]any{cell.Day, [2]any{cell.Meal, cell.Group}}] = true
		}
		for _, fate := range made.Spoilage.Fates {
			if proposed[[2]any{fate.Day, [2]any{fate.Meal, fate.Group}}] && fate.Verdict != spoilage.Safe && !opened(tr, fate.Food) {
				t.Errorf("food %d at %s of day %d is %s: %s", fate.Food, fate.Meal, fate.Day, fate.Verdict, fate.Why)
			}
		}
		for _, f := range made.Findings {
			for one := range f.Each() {
				if one.Code == "cannot-be-served" && proposed[[2]any{one.Place.Day, [2]any{one.Place.Meal, one.Place.Group}}] {
					t.Errorf("proposed all the same: %s", one.What)
				}
			}
		}
	})
}

// A swap that one eater takes for the whole pot is not made for others who get the dish alone, so the pot must be safe without it.
func TestNoDishIsSafeOnlyByTheSwapOfSomebodyElse(t *testing.T) {
	tr := evening(member(1, allergicTo(trip.Nuts)), member(2, allergicTo(trip.Gluten)))
	tr.Foods[wheat-1].Per100g.Kcal = 800
	swapped := supper(1, "swapped", 400, nuts)
	swapped.Ingredients[0].Swaps = []trip.Swap{{Food: corn, Amount: swapped.Ingredients[0].Amount, ForAll: true}}
	tr.Recipes = []trip.Recipe{swapped, supper(2, "dense", 800, wheat)}
	cell := func() (dishes int) {
		_, p := dinners(t, tr)
		for _, cell := range p.Cells {
			dishes += len(cell.Dishes)
		}
		return dishes
	}
	if n := cell(); n != 2 {
		t.Fatalf("%d dishes, want one for each of both", n)
	}
	tr.Foods[nuts-1].Storage.TCS = trip.TCSUnknown
	if n := cell(); n > 1 {
		t.Error("a pot of nuts, of which nobody said whether they need cooling, is safe only for who does not eat them")
	}
}

// opened tells foods that may have been opened at another meal, which only the whole menu knows.
func opened(tr *trip.Trip, food trip.FoodID) bool {
	f := tr.Food(food)
	return f.PackedAsBought && f.Storage.TCSWhenOpen
}

// TestSameTripSameMenu: turning every list gives the same cells, and so does a second run.
func TestSameTripSameMenu(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tr := triptest.Trip().Draw(t, "trip")
		tr.Menu = nil
		turned := tr.Clone()
		slices.Reverse(turned.Crew)
		slices.Reverse(turned.Foods)
		slices.Reverse(turned.Recipes)
		slices.Reverse(turned.Groups)
		a, b := tr.Canonical(), turned.Canonical()
		first, second := filled(t, a, needs.Compute(a, nil)), filled(t, b, needs.Compute(b, nil))
		if !reflect.DeepEqual(first, second) {
			t.Errorf("menus differ: %+v, %+v", first, second)
		}
	})
}

func TestCancelledBeforeAnything(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	tr := triptest.Large(3, 3, 1).Canonical()
	tr.Menu = nil
	if _, err := fill.Menu(ctx, tr, needs.Compute(tr, nil), fill.Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, want the context's error", err)
	}
}

func BenchmarkSketch(b *testing.B) {
	tr := triptest.Large(60, 21, 1).Canonical()
	tr.Menu = nil
	n := needs.Compute(tr, nil)
	for b.Loop() {
		if _, err := fill.Menu(context.Background(), tr, n, fill.Options{Steps: fill.Sketch}); err != nil {
			b.Fatal(err)
		}
	}
}
