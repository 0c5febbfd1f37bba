package bags_test

import (
	"slices"
	"strings"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/bags/bagstest"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

const quartMillilitres = 946.352946 // NIST Handbook 44, Appendix C

// kitchen is a trip of one group and three days with one recipe.
func kitchen(foods ...trip.Food) *trip.Trip {
	t := &trip.Trip{Settings: trip.DefaultSettings(), Foods: foods}
	t.Settings.CarHours = 0
	t.Groups = []trip.CookGroup{{ID: 1}}
	for range 3 {
		t.Days = append(t.Days, trip.Day{High: 20, Meals: trip.Meals()})
	}
	t.Bags = []trip.BagType{
		{Name: "quart", Nominal: units.FromMillilitres(quartMillilitres), Fill: 0.75, Tare: 6 * units.Gram},
		{Name: "bottle", Nominal: 500 * units.Millilitre, Fill: 0.95, Tare: 25 * units.Gram, Liquids: true},
	}
	t.Recipes = []trip.Recipe{{ID: 7, Soak: 5}}
	return t
}

// meal is one batch of a meal with portions of foods 1, 2, ... at a place.
func meal(day int, m trip.Meal, place trip.Place, portionGrams ...[]int) portions.Batch {
	b := portions.Batch{Day: day, Meal: m, Group: 1, Recipe: 7}
	totals := map[trip.FoodID]units.Mass{}
	var most trip.FoodID
	for i, grams := range portionGrams {
		p := portions.Portion{Member: trip.MemberID(i + 1)}
		for f, g := range grams {
			id := trip.FoodID(f + 1)
			if g > 0 {
				p.Amounts = append(p.Amounts, portions.Amount{Food: id, Place: place, Mass: bagstest.Grams(g)})
				totals[id] += bagstest.Grams(g)
				most = max(most, id)
			}
		}
		b.Portions = append(b.Portions, p)
	}
	for id := trip.FoodID(1); id <= most; id++ {
		if totals[id] > 0 {
			b.Totals = append(b.Totals, portions.Amount{Food: id, Place: place, Mass: totals[id]})
		}
	}
	return b
}

func compute(t *trip.Trip, batches ...portions.Batch) bags.Result {
	return bags.Compute(t, portions.Result{Batches: batches}, cooking.Result{}, t.Legs())
}

func keys(r bags.Result) string {
	var list []string
	for _, b := range r.Bags {
		list = append(list, b.Key)
	}
	return strings.Join(list, "; ")
}

// Check values of testdata/check_values.csv, topic bags: 400 g of rolled oats
// at 81 g per US cup need 1168.337 mL, two quart bags filled to 75 %.
func TestOatsInQuartBags(t *testing.T) {
	oats := bagstest.Food(1, "Rolled oats")
	oats.Density = optional.Of(81 / 236.5882365)
	r := compute(kitchen(oats), meal(1, trip.Breakfast, trip.InPot, []int{400}))
	if len(r.Bags) != 2 || r.Bags[0].Type != "quart" || r.Bags[0].Parts != 2 || r.Bags[1].Part != 2 {
		t.Fatalf("%+v", r.Bags)
	}
	volume := r.Bags[0].Volume + r.Bags[1].Volume
	if ml := volume.Millilitres(); ml < 1168.236 || ml > 1168.437 {
		t.Errorf("%.3f mL, want 1168.337", ml)
	}
	if r.Bags[0].Food != bagstest.Grams(200) || r.Bags[0].Mass() != bagstest.Grams(206) {
		t.Errorf("first bag %v with %v", r.Bags[0].Food, r.Bags[0].Tare)
	}
}

func TestKeysAreStableWords(t *testing.T) {
	oil := bagstest.Food(2, "Oil")
	oil.Form = trip.Liquid
	tr := kitchen(bagstest.Food(1, "Rice"), oil)
	r := compute(tr, meal(3, trip.Dinner, trip.InPot, []int{60, 10}, []int{60, 10}), meal(3, trip.Snack, trip.AtBowl, []int{50}, []int{60}))
	want := "d3 dinner g1 r7 b1 pot 1; d3 dinner g1 r7 b1 pot wet f2 1; d1 snack g1 m1 1; d1 snack g1 m2 1"
	if got := keys(r); got != want {
		t.Errorf("keys\n%s\nwant\n%s", got, want)
	}
	if bottle := r.Bags[1]; bottle.Type != "bottle" || bottle.Double || bottle.Volume != 500*units.Millilitre || bottle.Tare != bagstest.Grams(25) {
		t.Errorf("oil goes into %+v", bottle)
	}
}

// What is handed round is one bag for those who get it, each told their part;
// nobody is given a bag with a food they do not get.
func TestHandedRound(t *testing.T) {
	tr := kitchen(bagstest.Food(1, "Nuts"), bagstest.Food(2, "Seeds"))
	for _, c := range []struct {
		name     string
		portions [][]int
		want     string
	}{
		{"alike", [][]int{{30, 5}, {50, 8}, {40, 6}}, "d1 lunch g1 r7 b1 bowl 1"},
		{"one without nuts", [][]int{{30, 10}, {0, 40}, {30, 10}}, "d1 lunch g1 r7 b1 bowl 1; d1 lunch g1 r7 b1 bowl f1 1"},
	} {
		if got := keys(compute(tr, meal(1, trip.Lunch, trip.AtBowl, c.portions...))); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
	r := compute(tr, meal(1, trip.Lunch, trip.AtBowl, []int{30, 5}, []int{50, 8}))
	want := []bags.Share{{Member: 1, Mass: bagstest.Grams(35)}, {Member: 2, Mass: bagstest.Grams(58)}}
	if got := r.Bags[0].Uses[0].Shares; !slices.Equal(got, want) || r.Bags[0].Eaters != 2 {
		t.Errorf("%+v for %d, want %+v", got, r.Bags[0].Eaters, want)
	}
	tr.Settings.LunchPerEater = true
	if got := keys(compute(tr, meal(1, trip.Lunch, trip.AtBowl, []int{30}, []int{50}))); got != "d1 lunch g1 r7 b1 m1 bowl 1; d1 lunch g1 r7 b1 m2 bowl 1" {
		t.Errorf("lunch for each eater: %s", got)
	}
	if got := keys(compute(tr, meal(1, trip.Breakfast, trip.AtBowl, []int{30}, []int{50}))); got != "d1 breakfast g1 r7 b1 bowl 1" {
		t.Errorf("other meals stay shared: %s", got)
	}
}

// What is taken by the spoon at two meals of a leg is one store, with what
// each meal and each eater takes.
func TestStores(t *testing.T) {
	oil, milk := bagstest.Food(1, "Oil"), bagstest.Food(2, "Milk powder")
	oil.Form, milk.Form = trip.Liquid, trip.Powder
	tr := kitchen(oil, milk)
	tr.Points = []trip.ResupplyPoint{{ID: 1, AfterDay: 2, Use: true, StoreHigh: optional.Of(units.Celsius(20))}}
	pot := func(day int) portions.Batch { return meal(day, trip.Dinner, trip.InPot, []int{20}, []int{20}) }
	bowl := func(day int) portions.Batch {
		return meal(day, trip.Breakfast, trip.AtBowl, []int{0, 15}, []int{0, 25})
	}
	r := compute(tr, bowl(1), pot(1), bowl(2), pot(2), bowl(3), pot(3))
	want := "d1 store g1 f1 1; d1 store g1 f2 1; d3 breakfast g1 r7 b1 bowl 1; d3 dinner g1 r7 b1 pot wet f1 1"
	if got := keys(r); got != want {
		t.Fatalf("keys\n%s\nwant\n%s", got, want)
	}
	store := &r.Bags[1]
	if store.Kind != bags.StoreBag || store.Day != 1 || store.LastDay != 2 || store.Food != bagstest.Grams(80) || len(store.Uses) != 2 || store.Member != 0 {
		t.Errorf("store %+v", store)
	}
	if store.Left(1) != bagstest.Grams(80) || store.Left(2) != bagstest.Grams(40) || store.Left(3) != 0 || store.On(2) != bagstest.Grams(40)+store.Tare {
		t.Errorf("left %v, %v, %v", store.Left(1), store.Left(2), store.Left(3))
	}
	if s := store.Uses[1].Shares; len(s) != 2 || s[1].Mass != bagstest.Grams(25) {
		t.Errorf("shares %+v", s)
	}
	if u := r.Bags[0].Uses[0]; u.Shares != nil || len(u.PotFor) != 2 {
		t.Errorf("oil for the pot %+v", u)
	}
	tr.Settings.StoreMeals = 0
	if r := compute(tr, bowl(1), bowl(2)); len(r.Bags) != 2 || r.Bags[0].Kind != bags.MealBag {
		t.Errorf("no stores wanted: %s", keys(r))
	}
	tr.Settings.StoreMeals = 3
	if r := compute(tr, bowl(1), bowl(2)); len(r.Bags) != 2 {
		t.Errorf("two meals are too few: %s", keys(r))
	}
}

// What would spoil once it is opened is packed for each meal.
func TestWhatPerishesIsNoStore(t *testing.T) {
	cream := bagstest.Food(1, "Soft cheese")
	cream.Form, cream.Storage.TCSWhenOpen = trip.Spread, true
	tr := kitchen(cream)
	if got := keys(compute(tr, meal(1, trip.Lunch, trip.AtBowl, []int{30}), meal(2, trip.Lunch, trip.AtBowl, []int{30}))); got != "d1 lunch g1 r7 b1 bowl wet f1 1; d2 lunch g1 r7 b1 bowl wet f1 1" {
		t.Error(got)
	}
}

// A store that is too large for one bottle is used up bottle by bottle.
func TestAStoreIsUsedUpInTurn(t *testing.T) {
	oil := bagstest.Food(1, "Oil")
	oil.Form, oil.Density = trip.Liquid, optional.Of(1.0)
	r := compute(kitchen(oil), meal(1, trip.Dinner, trip.InPot, []int{300}), meal(2, trip.Dinner, trip.InPot, []int{200}), meal(3, trip.Dinner, trip.InPot, []int{300}))
	if len(r.Bags) != 2 || r.Bags[0].Food != bagstest.Grams(400) || r.Bags[1].Food != bagstest.Grams(400) {
		t.Fatalf("%+v", r.Bags)
	}
	first, second := &r.Bags[0], &r.Bags[1]
	if first.Day != 1 || first.LastDay != 2 || second.Day != 2 || second.LastDay != 3 || first.Uses[1].Mass() != bagstest.Grams(100) {
		t.Errorf("%+v\n%+v", first, second)
	}
}

func TestSnacksOfSeveralDays(t *testing.T) {
	tr := kitchen(bagstest.Food(1, "Nuts"), bagstest.Food(2, "Fruit"))
	one, two := []int{40}, []int{0, 60}
	batches := []portions.Batch{meal(1, trip.Snack, trip.AtBowl, one), meal(2, trip.Snack, trip.AtBowl, two), meal(3, trip.Snack, trip.AtBowl, one)}
	for days, want := range map[int]string{
		1: "d1 snack g1 m1 1; d2 snack g1 m1 1; d3 snack g1 m1 1",
		2: "d1 snack g1 m1 1; d3 snack g1 m1 1",
		5: "d1 snack g1 m1 1",
	} {
		tr.Settings.SnackDays = days
		if got := keys(compute(tr, batches...)); got != want {
			t.Errorf("%d days: %s, want %s", days, got, want)
		}
	}
	tr.Settings.SnackDays = 3
	r := compute(tr, batches...)
	if b := &r.Bags[0]; b.Member != 1 || b.LastDay != 3 || b.Left(3) != bagstest.Grams(40) || len(b.Uses) != 3 || len(b.Contents) != 2 {
		t.Errorf("%+v", b)
	}
}

// Who is harmed by traces takes nothing from a bag into which others reach
// with what harms them; nobody else needs a bag of their own for that.
func TestAnAllergicEatersPartIsSealedApart(t *testing.T) {
	nuts, bread, butter := bagstest.Food(1, "Nuts"), bagstest.Food(2, "Bread"), bagstest.Food(3, "Butter")
	nuts.Allergens[trip.Nuts] = trip.MayContain
	butter.Form = trip.Spread
	tr := kitchen(nuts, bread, butter)
	tr.Crew = []trip.Member{{ID: 1, Group: 1}, {ID: 2, Group: 1, Allergies: []trip.Allergy{{Allergen: trip.Nuts, Severe: true}}}}
	lunch := []portions.Batch{
		meal(1, trip.Lunch, trip.AtBowl, []int{20, 50, 10}, []int{0, 50, 10}),
		meal(2, trip.Lunch, trip.AtBowl, []int{0, 50, 10}, []int{0, 50, 10}),
		meal(3, trip.Lunch, trip.AtBowl, []int{0, 50}, []int{0, 50}),
	}
	want := "d1 store g1 f3 1; d1 store g1 m2 f3 1; d1 lunch g1 r7 b1 bowl 1; d1 lunch g1 r7 b1 m2 bowl 1; " +
		"d2 lunch g1 r7 b1 bowl 1; d3 lunch g1 r7 b1 bowl 1"
	r := compute(tr, lunch...)
	if got := keys(r); got != want {
		t.Fatalf("keys\n%s\nwant\n%s", got, want)
	}
	if f := one(t, r, "sealed-apart"); f.Severity != findings.Note || !strings.Contains(f.What.String(), "has 2 bags of their own: others eat Nuts") || f.Place.Member != 2 {
		t.Errorf("%s, %+v", f.What, f.Place)
	}
	if own := r.Bags[1]; own.Kind != bags.OwnBag || own.Member != 2 || own.Food != bagstest.Grams(20) {
		t.Errorf("%+v", own)
	}
	tr.Crew[1].Allergies[0].Severe = false // a trace does not harm them
	if got := keys(compute(tr, lunch...)); strings.Contains(got, "m2") {
		t.Errorf("traces do no harm: %s", got)
	}
	tr.Crew[1].Allergies[0].Severe = true
	lunch[0].Meal = trip.Snack // from the hand, not with the spoon
	got := keys(compute(tr, lunch[:2]...))
	if strings.Contains(got, "store g1 m2") {
		t.Errorf("a snack soils no spoon: %s", got)
	}
}

// The spoon in a store is soiled from the first to the last day of its leg.
func TestAStoreIsKeptApartOverItsWholeLeg(t *testing.T) {
	nuts, bread, butter := bagstest.Food(1, "Nuts"), bagstest.Food(2, "Bread"), bagstest.Food(3, "Butter")
	nuts.Allergens[trip.Nuts] = trip.Contains
	butter.Form = trip.Spread
	tr := kitchen(nuts, bread, butter)
	tr.Crew = []trip.Member{{ID: 1, Group: 1}, {ID: 2, Group: 1, Allergies: []trip.Allergy{{Allergen: trip.Nuts, Severe: true}}}}
	for day := 1; day <= 3; day++ {
		var lunches []portions.Batch
		for d := 1; d <= 3; d++ {
			grams := []int{0, 50, 10}
			if d == day {
				grams[0] = 20
			}
			lunches = append(lunches, meal(d, trip.Lunch, trip.AtBowl, grams, []int{0, 50, 10}))
		}
		if got := keys(compute(tr, lunches...)); !strings.Contains(got, "d1 store g1 m2 f3 1") {
			t.Errorf("nuts on day %d: %s", day, got)
		}
	}
}

// Of all that is eaten the worst counts, whatever comes first.
func TestTheWorstStateKeepsApart(t *testing.T) {
	nuts, bread, cake := bagstest.Food(1, "Nuts"), bagstest.Food(2, "Bread"), bagstest.Food(3, "Cake")
	tr := kitchen(nuts, bread, cake)
	tr.Crew = []trip.Member{{ID: 1, Group: 1}, {ID: 2, Group: 1, Allergies: []trip.Allergy{{Allergen: trip.Nuts}}}}
	for _, states := range [][2]trip.Presence{{trip.Contains, trip.MayContain}, {trip.MayContain, trip.Contains}, {trip.Contains, trip.Contains}} {
		tr.Foods[0].Allergens[trip.Nuts], tr.Foods[2].Allergens[trip.Nuts] = states[0], states[1]
		if got := keys(compute(tr, meal(1, trip.Lunch, trip.AtBowl, []int{20, 50, 20}, []int{0, 50}))); !strings.Contains(got, "bowl m2 1") && !strings.Contains(got, "b1 m2 bowl 1") {
			t.Errorf("%v: %s", states, got)
		}
	}
	tr.Foods[0].Allergens[trip.Nuts], tr.Foods[2].Allergens[trip.Nuts] = trip.MayContain, trip.MayContain
	if got := keys(compute(tr, meal(1, trip.Lunch, trip.AtBowl, []int{20, 50, 20}, []int{0, 50}))); strings.Contains(got, "m2") {
		t.Errorf("traces do no harm: %s", got)
	}
}

// A pot of somebody harmed by traces takes oil from a bottle of its own.
func TestCleanPotsHaveABottleOfTheirOwn(t *testing.T) {
	oil, nuts := bagstest.Food(1, "Oil"), bagstest.Food(2, "Nuts")
	oil.Form = trip.Liquid
	nuts.Allergens[trip.Nuts] = trip.Contains
	tr := kitchen(oil, nuts)
	tr.Crew = []trip.Member{{ID: 1, Group: 1}, {ID: 2, Group: 1, Allergies: []trip.Allergy{{Allergen: trip.Nuts, Severe: true}}}}
	own := func(day int) portions.Batch {
		b := meal(day, trip.Dinner, trip.InPot, []int{10})
		b.Portions[0].Member = 2
		return b
	}
	r := compute(tr, meal(1, trip.Dinner, trip.InPot, []int{10, 40}), own(1), meal(2, trip.Dinner, trip.InPot, []int{10, 40}), own(2))
	if got := keys(r); !strings.HasPrefix(got, "d1 store g1 f1 1; d1 store g1 clean m2 f1 1; ") {
		t.Errorf("keys %s", got)
	}
}

func TestWhatMustTravelApart(t *testing.T) {
	bread, chocolate, cheese := bagstest.Food(1, "Crispbread"), bagstest.Food(2, "Chocolate"), bagstest.Food(3, "Cheese")
	bread.Storage.Crushable = true
	chocolate.Storage.SoftensAt = optional.Of(units.Celsius(28))
	cheese.Storage.TCS = trip.TCSYes
	tr := kitchen(bread, chocolate, cheese, bagstest.Food(4, "Dried fruit"))
	tr.Days[1].High = 24 // with 5 K of sun on the pack: 29
	tr.Settings.SnackDays = 1
	one := []int{40, 20, 30, 50}
	r := compute(tr, meal(1, trip.Snack, trip.AtBowl, one), meal(3, trip.Snack, trip.AtBowl, one))
	want := "d1 snack g1 m1 1; d1 snack g1 m1 fresh f3 1; " +
		"d3 snack g1 m1 1; d3 snack g1 m1 melt f2 1; d3 snack g1 m1 fresh f3 1"
	if got := keys(r); got != want {
		t.Fatalf("keys\n%s\nwant\n%s", got, want)
	}
	if melt := r.Bags[3]; !melt.Melts || melt.Double || melt.Tare != bagstest.Grams(6) {
		t.Errorf("one eater's melting food in %+v", melt)
	}
	shared := compute(tr, meal(3, trip.Dinner, trip.InPot, []int{0, 20}, []int{0, 20}))
	if melt := shared.Bags[0]; !melt.Melts || !melt.Double || melt.Tare != bagstest.Grams(12) {
		t.Errorf("shared melting food in %+v", melt)
	}
	if !r.Bags[0].Crushable || r.Bags[1].Crushable || r.Bags[0].Melts {
		t.Error("marks of crushing and melting are wrong")
	}
	handed := compute(tr, meal(1, trip.Lunch, trip.AtBowl, []int{40, 0, 0, 50}, []int{40, 0, 0, 50}))
	if got := keys(handed); got != "d1 lunch g1 r7 b1 bowl 1; d1 lunch g1 r7 b1 bowl crush f1 1" {
		t.Errorf("what is handed round: keys %s", got)
	}
}

// What seasons a dish has no bag of its own: it lies with what it is eaten
// with, in the bag of who is kept apart too.
func TestSeasoningsLieWithTheDish(t *testing.T) {
	rice, salt, powder := bagstest.Food(1, "Rice"), bagstest.Food(2, "Salt"), bagstest.Food(3, "Lemonade")
	salt.Form, powder.Form = trip.Powder, trip.Powder
	tr := kitchen(rice, salt, powder)
	seasoned := meal(1, trip.Lunch, trip.AtBowl, []int{50, 0, 0}, []int{50, 0, 0})
	for i := range seasoned.Portions {
		seasoned.Portions[i].Amounts = append(seasoned.Portions[i].Amounts, portions.Amount{Food: 2, Mass: bagstest.Grams(1), Place: trip.InPot})
	}
	seasoned.Totals = append(seasoned.Totals, portions.Amount{Food: 2, Mass: bagstest.Grams(2), Place: trip.InPot})
	r := compute(tr, seasoned)
	if got := keys(r); got != "d1 lunch g1 r7 b1 bowl 1" || r.Bags[0].Food != bagstest.Grams(102) {
		t.Errorf("keys %s", got)
	}
	seasoned.Totals[len(seasoned.Totals)-1].Mass += bagstest.Grams(1) // a second helping nobody has a part of
	if got := keys(compute(tr, seasoned)); got != "d1 lunch g1 r7 b1 pot 1; d1 lunch g1 r7 b1 bowl 1" {
		t.Errorf("with a second helping: keys %s", got)
	}
}

// What softens in the hot car or in a box nobody knows the heat of runs too.
func TestFoodMeltsOnItsWay(t *testing.T) {
	chocolate := bagstest.Food(1, "Chocolate")
	chocolate.Storage.SoftensAt = optional.Of(units.Celsius(30))
	tr := kitchen(chocolate)
	for _, c := range []struct {
		name   string
		change func(*trip.Trip)
		melts  [2]bool // before and after the point
	}{
		{"cool all the way", func(*trip.Trip) {}, [2]bool{}},
		{"hot car", func(t *trip.Trip) { t.Settings.CarHours = 1 }, [2]bool{true, false}},
		{"hot hut", func(t *trip.Trip) { t.Points[0].StoreHigh = optional.Of(units.Celsius(31)) }, [2]bool{false, true}},
		{"unknown hut", func(t *trip.Trip) { t.Points[0].StoreHigh = optional.Unknown[units.Celsius]() }, [2]bool{false, true}},
		{"hot day before the point", func(t *trip.Trip) { t.Days[0].High = 26 }, [2]bool{true, false}},
	} {
		tr := *tr
		tr.Days = append([]trip.Day(nil), tr.Days...)
		tr.Points = []trip.ResupplyPoint{{ID: 3, Use: true, AfterDay: 2, StoreHigh: optional.Of(units.Celsius(20))}}
		c.change(&tr)
		r := compute(&tr, meal(2, trip.Dinner, trip.InPot, []int{50}), meal(3, trip.Dinner, trip.InPot, []int{50}))
		if got := [2]bool{r.Bags[0].Melts, r.Bags[1].Melts}; got != c.melts {
			t.Errorf("%s: %v, want %v", c.name, got, c.melts)
		}
	}
}

// A bottle each would weigh more than the spread in it.
func TestSnacksShareWhatRuns(t *testing.T) {
	butter := bagstest.Food(1, "Nut butter")
	butter.Form = trip.Spread
	r := compute(kitchen(butter, bagstest.Food(2, "Fruit")), meal(1, trip.Snack, trip.AtBowl, []int{20, 30}, []int{25, 30}, []int{0, 30}))
	want := "d1 snack g1 m1 1; d1 snack g1 m2 1; d1 snack g1 m3 1; d1 snack g1 r7 b1 bowl wet f1 1"
	if got := keys(r); got != want {
		t.Fatalf("keys\n%s\nwant\n%s", got, want)
	}
	if b := r.Bags[3]; b.Food != bagstest.Grams(45) || b.Eaters != 2 || b.Member != 0 || b.Type != "bottle" {
		t.Errorf("%+v", b)
	}
}

func TestPowderIsDoubleBaggedButNotForAPinch(t *testing.T) {
	salt := bagstest.Food(2, "Salt")
	salt.Form = trip.Powder
	tr := kitchen(bagstest.Food(1, "Rice"), salt)
	r := compute(tr, meal(1, trip.Dinner, trip.InPot, []int{100, 2}), meal(2, trip.Dinner, trip.InPot, []int{90, 10}))
	if r.Bags[0].Double || !r.Bags[1].Double || r.Bags[1].Tare != bagstest.Grams(12) {
		t.Errorf("a pinch %v, a tenth %v", r.Bags[0].Double, r.Bags[1].Double)
	}
}

func TestPackagesKeepTheirWrapping(t *testing.T) {
	fish := bagstest.Food(1, "Tinned fish")
	fish.PackedAsBought, fish.Storage.TCSWhenOpen = true, true
	fish.Packages = []trip.Package{
		{Net: bagstest.Grams(185), Wrapping: bagstest.Grams(35)},
		{Net: bagstest.Grams(80), Wrapping: bagstest.Grams(20)},
	}
	r := compute(kitchen(fish), meal(1, trip.Dinner, trip.InPot, []int{120}, []int{120}), meal(2, trip.Dinner, trip.InPot, []int{100}, []int{85}))
	if b := r.Bags[0]; b.Type != trip.AsBought || b.Tare != bagstest.Grams(60) || b.Key != "d1 dinner g1 r7 b1 pot bought f1 1" {
		t.Errorf("three small tins for 240 g: %+v", b)
	}
	if b := r.Bags[1]; b.Tare != bagstest.Grams(35) {
		t.Errorf("one large tin for 185 g: %+v", b)
	}
	if len(r.Findings) > 0 && r.Findings[0].Code == "opened-package" {
		t.Error("whole tins need no word")
	}
	r = compute(kitchen(fish), meal(2, trip.Dinner, trip.InPot, []int{100}))
	if f := one(t, r, "opened-package"); f.Severity != findings.LookAt || !strings.Contains(f.What.String(), "60 g less") {
		t.Errorf("%+v", f)
	}
}

func one(t *testing.T, r bags.Result, code string) findings.Finding {
	t.Helper()
	for _, f := range r.Findings {
		if f.Code == code {
			return f
		}
	}
	t.Fatalf("no finding %s in %+v", code, r.Findings)
	return findings.Finding{}
}

func TestMissingBagsAndBottlesAreTold(t *testing.T) {
	honey := bagstest.Food(1, "Honey")
	honey.Form = trip.Liquid
	tr := kitchen(honey, bagstest.Food(2, "Oats"))
	tr.Bags = tr.Bags[:1]
	r := compute(tr, meal(1, trip.Breakfast, trip.InPot, []int{20, 90}))
	if f := one(t, r, "no-bottle"); !strings.Contains(f.What.String(), "Honey") || strings.Contains(f.What.String(), "Oats") {
		t.Errorf("%+v", f)
	}
	if !r.Bags[1].Double || r.Bags[1].Tare != bagstest.Grams(12) {
		t.Errorf("honey in %+v", r.Bags[1])
	}
	tr.Bags = nil
	r = compute(tr, meal(1, trip.Breakfast, trip.InPot, []int{20, 90}))
	if f := one(t, r, "no-bag-type"); !strings.Contains(f.What.String(), "Honey, Oats") {
		t.Errorf("%+v", f)
	}
	if f := one(t, r, "density-unknown"); f.Severity != findings.Note || r.Bags[0].VolumeKnown {
		t.Errorf("%+v", f)
	}
}

func TestFoodStorageOnTheFirstNight(t *testing.T) {
	rice := bagstest.Food(1, "Rice")
	rice.Density = optional.Of(0.5)
	tr := kitchen(rice)
	tr.Crew = []trip.Member{{ID: 1, Group: 1}, {ID: 2, Group: 1, FirstDay: 2}}
	tr.Settings.Smellables = 400 * units.Millilitre
	tr.Gear = []trip.Gear{{ID: 1, Kind: trip.FoodStorage, Capacity: units.Litre}}
	r := compute(tr, meal(1, trip.Dinner, trip.InPot, []int{900}), meal(2, trip.Dinner, trip.InPot, []int{300}))
	for _, f := range r.Findings {
		if f.Code == "food-storage-room" {
			t.Errorf("0.6 L of food and 0.4 L besides fit into 1 L: %+v", f)
		}
	}
	r = compute(tr, meal(2, trip.Dinner, trip.InPot, []int{300}), meal(3, trip.Dinner, trip.InPot, []int{300}))
	f := one(t, r, "food-storage-room")
	if !strings.Contains(f.What.String(), "1.2 L of food, and 400 mL") || !strings.Contains(f.Why.String(), "Local rules") || !strings.Contains(f.Remedy.String(), "600 mL more") {
		t.Errorf("%s %s %s", f.What, f.Why, f.Remedy)
	}
}

// A cache is opened in the evening: the food of all days after it is out there
// over night. A hut keeps it until the morning.
func TestFoodStorageAtACache(t *testing.T) {
	rice := bagstest.Food(1, "Rice")
	rice.Density = optional.Of(0.5)
	tr := kitchen(rice)
	tr.Crew = []trip.Member{{ID: 1, Group: 1}}
	tr.Settings.Smellables = 100 * units.Millilitre
	tr.Gear = []trip.Gear{{ID: 1, Kind: trip.FoodStorage, Capacity: units.Litre}}
	tr.Points = []trip.ResupplyPoint{{ID: 4, Kind: trip.Cache, AfterDay: 1, Use: true}}
	meals := []portions.Batch{meal(2, trip.Dinner, trip.InPot, []int{300}), meal(3, trip.Dinner, trip.InPot, []int{300})}
	f := one(t, compute(tr, meals...), "food-storage-room")
	if f.Place.Day != 1 || f.Place.Point != 4 || !strings.Contains(f.What.String(), "after day 1 there is 1.2 L") {
		t.Errorf("%+v %s", f.Place, f.What)
	}
	tr.Points[0].Kind = trip.Hut
	for _, f := range compute(tr, meals...).Findings {
		if f.Code == "food-storage-room" {
			t.Errorf("in a hut: %s", f.What)
		}
	}
}

// Water of a batch goes with the pot, shared by mass; dry food cooks at height.
func TestWaterAndMinutes(t *testing.T) {
	rice := bagstest.Food(1, "Rice")
	rice.Density = optional.Of(0.4)
	tr := kitchen(rice)
	tr.Recipes[0].Simmer = 10
	tr.Days[0].CampHeight = 3000
	b := meal(1, trip.Dinner, trip.InPot, []int{500})
	b.Water, b.PourOff = 800*units.Millilitre, 200*units.Millilitre
	r := compute(tr, b)
	if len(r.Bags) != 2 {
		t.Fatalf("%+v", r.Bags)
	}
	for _, bag := range r.Bags { // what is poured off is boiled too
		if bag.Water != 500*units.Millilitre || bag.PourOff != 100*units.Millilitre {
			t.Errorf("%v of water, %v poured off", bag.Water, bag.PourOff)
		}
	}
	// Water boils near 89.9 °C at 3000 m: 10 K under, twice the time (Q10 = 2).
	if m := r.Bags[0].Minutes; m < 19 || m > 21 || r.Bags[0].Soak != 5 {
		t.Errorf("%v minutes, %v soak", m, r.Bags[0].Soak)
	}
	cold := cooking.Result{Meals: []cooking.Meal{{Day: 1, Meal: trip.Dinner, Group: 1, Cold: true}}}
	if r := bags.Compute(tr, portions.Result{Batches: []portions.Batch{b}}, cold, tr.Legs()); r.Bags[0].Minutes != 0 {
		t.Error("a cold meal is not on the flame")
	}
}
