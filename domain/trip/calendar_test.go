package trip_test

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func TestLegs(t *testing.T) {
	point := func(id trip.PointID, after int, use bool) trip.ResupplyPoint {
		return trip.ResupplyPoint{ID: id, AfterDay: after, Use: use}
	}
	whole := []trip.Leg{{FirstDay: 1, LastDay: 9}}
	for _, c := range []struct {
		name   string
		points []trip.ResupplyPoint
		want   []trip.Leg
	}{
		{"no points", nil, whole},
		{"one not used", []trip.ResupplyPoint{point(1, 4, false)}, whole},
		{"one used", []trip.ResupplyPoint{point(1, 4, true)}, []trip.Leg{{FirstDay: 1, LastDay: 4}, {FirstDay: 5, LastDay: 9, From: 1}}},
		{"two, listed backwards", []trip.ResupplyPoint{point(1, 7, true), point(2, 4, true)},
			[]trip.Leg{{FirstDay: 1, LastDay: 4}, {FirstDay: 5, LastDay: 7, From: 2}, {FirstDay: 8, LastDay: 9, From: 1}}},
		{"two on one evening", []trip.ResupplyPoint{point(8, 4, true), point(3, 4, true)},
			[]trip.Leg{{FirstDay: 1, LastDay: 4}, {FirstDay: 5, LastDay: 9, From: 3}}},
		{"on the last evening", []trip.ResupplyPoint{point(1, 9, true)}, whole},
		{"after the end", []trip.ResupplyPoint{point(1, 12, true)}, whole},
		{"before the start", []trip.ResupplyPoint{point(1, 0, true)}, whole},
	} {
		made := trip.Trip{Days: make([]trip.Day, 9), Points: c.points}
		if have := made.Legs(); !slices.Equal(have, c.want) {
			t.Errorf("%s: have %v, want %v", c.name, have, c.want)
		}
	}
}

// Whatever points there are: every day belongs to exactly one leg.
func TestLegsCoverEveryDayOnce(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip")
		legs := made.Legs()
		next := 1
		for i, leg := range legs {
			if leg.FirstDay != next || leg.LastDay < leg.FirstDay {
				rt.Fatalf("leg %d is %+v, want it to begin on day %d", i, leg, next)
			}
			for day := leg.FirstDay; day <= leg.LastDay; day++ {
				if trip.LegOf(legs, day) != i {
					rt.Fatalf("day %d is put into leg %d, want %d", day, trip.LegOf(legs, day), i)
				}
			}
			next = leg.LastDay + 1
		}
		if next != len(made.Days)+1 {
			rt.Fatalf("the legs end on day %d of %d", next-1, len(made.Days))
		}
	})
}

func TestPresent(t *testing.T) {
	for _, c := range []struct{ first, last, day int }{{0, 0, 1}, {0, 0, 99}, {3, 0, 3}, {3, 0, 9}, {0, 4, 1}, {0, 4, 4}, {3, 3, 3}} {
		if m := (trip.Member{FirstDay: c.first, LastDay: c.last}); !m.Present(c.day) {
			t.Errorf("days %d to %d: absent on %d", c.first, c.last, c.day)
		}
	}
	for _, c := range []struct{ first, last, day int }{{0, 0, 0}, {3, 0, 2}, {0, 4, 5}, {3, 3, 2}, {3, 3, 4}} {
		if m := (trip.Member{FirstDay: c.first, LastDay: c.last}); m.Present(c.day) {
			t.Errorf("days %d to %d: present on %d", c.first, c.last, c.day)
		}
	}
}

func TestCookHeightIsWhereTheGroupIs(t *testing.T) {
	made := trip.Trip{Days: []trip.Day{{CampHeight: 100, LunchHeight: 110}, {CampHeight: 200, LunchHeight: 220}}}
	for _, c := range []struct {
		day  int
		meal trip.Meal
		want units.Metres
	}{
		{1, trip.Breakfast, 100}, // nobody knows where they slept at home
		{1, trip.Lunch, 110}, {1, trip.Dinner, 100},
		{2, trip.Breakfast, 100}, {2, trip.Lunch, 220}, {2, trip.Dinner, 200}, {2, trip.Snack, 200},
	} {
		if have := made.CookHeight(c.day, c.meal); have != c.want {
			t.Errorf("day %d %s: %v m, want %v", c.day, c.meal, have, c.want)
		}
	}
}

func TestEaters(t *testing.T) {
	made := trip.Trip{Crew: []trip.Member{
		{ID: 9, Group: 1}, {ID: 2, Group: 1, FirstDay: 3}, {ID: 5, Group: 2}, {ID: 4, Group: 1, LastDay: 2},
	}}
	for _, c := range []struct {
		day   int
		group trip.GroupID
		want  []trip.MemberID
	}{{1, 1, []trip.MemberID{4, 9}}, {3, 1, []trip.MemberID{2, 9}}, {1, 2, []trip.MemberID{5}}, {1, 3, nil}} {
		if have := made.Eaters(c.day, c.group); !slices.Equal(have, c.want) {
			t.Errorf("day %d, group %d: %v, want %v", c.day, c.group, have, c.want)
		}
	}
}

func TestDateOf(t *testing.T) {
	start, err := units.NewDate(2028, 2, 27)
	if err != nil {
		t.Fatal(err)
	}
	made := trip.Trip{Start: start}
	if have := made.DateOf(4).String(); have != "2028-03-01" { // a leap year
		t.Errorf("day 4 is %s", have)
	}
}

func TestLookUp(t *testing.T) {
	made := triptest.Large(6, 3, 1)
	cell := &made.Menu[2]
	for name, found := range map[string]bool{
		"member": made.Member(made.Crew[3].ID) == &made.Crew[3],
		"group":  made.Group(made.Groups[0].ID) == &made.Groups[0],
		"food":   made.Food(made.Foods[7].ID) == &made.Foods[7],
		"recipe": made.Recipe(made.Recipes[5].ID) == &made.Recipes[5],
		"gear":   made.GearItem(made.Gear[1].ID) == &made.Gear[1],
		"cell":   made.Cell(cell.Day, cell.Meal, cell.Group) == cell,
		"nobody": made.Member(0) == nil && made.Group(0) == nil && made.Food(0) == nil && made.Recipe(0) == nil &&
			made.GearItem(0) == nil && made.Point(0) == nil && made.Cell(99, trip.Lunch, 1) == nil,
	} {
		if !found {
			t.Errorf("%s: not found", name)
		}
	}
}

func TestKcalIsOfWhatIsEaten(t *testing.T) {
	food := trip.Food{Per100g: trip.Nutrients{Kcal: 600}, RefuseShare: 0.6} // nuts in the shell
	if have := food.EatenGrams(250 * units.Gram); have != 100 {
		t.Errorf("%v g are eaten, want 100", have)
	}
	if have := food.Kcal(250 * units.Gram); have != 600 {
		t.Errorf("%v kcal, want 600", have)
	}
}

func TestNeedsFlame(t *testing.T) {
	for _, c := range []struct {
		recipe trip.Recipe
		want   bool
	}{
		{trip.Recipe{}, false},
		{trip.Recipe{Water: units.Litre}, true},
		{trip.Recipe{PourOff: units.Litre}, true},
		{trip.Recipe{Simmer: 3}, true},
		{trip.Recipe{Water: units.Litre, ColdOK: true}, false},
		{trip.Recipe{Soak: 30}, false},
	} {
		if have := c.recipe.NeedsFlame(); have != c.want {
			t.Errorf("%+v: %v, want %v", c.recipe, have, c.want)
		}
	}
}

func TestMealOrder(t *testing.T) {
	for i, meal := range trip.Meals() {
		if trip.MealOrder(meal) != i {
			t.Errorf("%s is number %d", meal, trip.MealOrder(meal))
		}
	}
	if trip.MealOrder("brunch") <= trip.MealOrder(trip.Snack) {
		t.Error("an unknown meal must come last")
	}
}
