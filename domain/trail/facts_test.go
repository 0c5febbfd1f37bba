package trail_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/plan"
	"sumpter/domain/trail"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// Every kind of thing that is noted or decided on the way is told, named as on
// the labels; what went as planned is not.
func TestFactsTellWhatIsOtherThanPacked(t *testing.T) {
	p, err := plan.Make(context.Background(), triptest.Large(6, 9, 4), plan.Options{})
	if err != nil || p.Refused() {
		t.Fatal(err, p.Refused())
	}
	bag := func(fits func(*bags.Bag) bool) *bags.Bag {
		i := slices.IndexFunc(p.Bags.Bags, func(b bags.Bag) bool { return fits(&b) })
		if i < 0 {
			t.Fatal("no such bag")
		}
		return &p.Bags.Bags[i]
	}
	dinner := bag(func(b *bags.Bag) bool { return b.Meal == trip.Dinner && len(b.Uses) == 1 })
	own := bag(func(b *bags.Bag) bool { return b.Member != 0 && len(b.Uses) > 0 })
	crew := p.Trip.Crew
	container := p.Cooking.Fuel[0].Containers[0]
	dish := dinner.Uses[0].Dish(dinner.Group)
	point := p.Trip.Points[0]
	name := p.Trip.Recipe(dinner.Recipe).Name
	group := p.Trip.Group(dinner.Group).Name
	for _, c := range []struct {
		done trip.Progress
		want string // "" for nothing
		day  int
	}{
		{trip.Progress{CrewChanges: []trip.CrewChange{{Member: crew[1].ID, Day: 3}}}, crew[1].Name + " is not there from day 3 on.", 3},
		{trip.Progress{CrewChanges: []trip.CrewChange{{Member: crew[1].ID, Day: 5, There: true}}}, crew[1].Name + " is there from day 5 on.", 5},
		{trip.Progress{MissingBoxes: []trip.PointID{point.ID}}, "The box at " + point.Name + " did not come.", point.AfterDay + 1},
		{trip.Progress{Ends: []trip.BagEnd{{Bag: dinner.Key, End: trip.Eaten, Day: dinner.LastDay}}}, "", 0},
		{trip.Progress{Ends: []trip.BagEnd{{Bag: dinner.Key, End: trip.ThrownAway, Day: 1}}}, "Bag " + dinner.Code + ": thrown away.", 1},
		{trip.Progress{Ends: []trip.BagEnd{{Bag: dinner.Key, End: trip.Eaten, Day: dinner.LastDay + 1}}}, "Bag " + dinner.Code + ", packed to day", dinner.LastDay + 1},
		{trip.Progress{PartsGone: []trip.PartGone{{Bag: dinner.Key, Day: 1, End: trip.Lost, Mass: 90 * units.Gram}}}, "Bag " + dinner.Code + ": 90 g are gone, lost.", 1},
		{trip.Progress{FuelNotes: []trip.FuelNote{{Container: container.Key, Day: 2, Left: 120 * units.Gram}}}, container.Name + " held 120 g on the morning of day 2.", 2},
		{trip.Progress{FuelNotes: []trip.FuelNote{{Container: container.Key, Day: 2}}}, container.Name + " was empty or gone on the morning of day 2.", 2},
		{trip.Progress{Replans: []trip.Replan{{Day: 2, Moves: []trip.DishMove{{Dish: dish, Day: 4, Meal: trip.Lunch, Group: dinner.Group}}}}}, "is eaten on day 4, lunch, by " + group + ".", 2},
		{trip.Progress{Replans: []trip.Replan{{Day: 2, Moves: []trip.DishMove{{Dish: dish}}}}}, "is carried on, for no meal yet.", 2},
		{trip.Progress{Replans: []trip.Replan{{Day: 2, Given: []trip.GivenBag{{Bag: own.Key, To: crew[0].ID}}}}}, "is for " + crew[0].Name + " from day 2 on.", 2},
		{trip.Progress{Ends: []trip.BagEnd{{Bag: "dream", End: trip.Lost, Day: 1}}}, "", 0},
	} {
		list := trail.Facts(p, &c.done)
		switch {
		case c.want == "" && len(list) == 0:
		case c.want == "" || len(list) != 1:
			t.Errorf("%d facts of %+v, want %q", len(list), c.done, c.want)
		case !strings.Contains(list[0].What.String(), c.want) || list[0].Day != c.day || list[0].Until < min(c.day, dinner.LastDay):
			t.Errorf("day %d to %d: %q, want %q of day %d", list[0].Day, list[0].Until, list[0].What, c.want, c.day)
		case strings.Contains(c.want, "eaten on") && !strings.HasPrefix(list[0].What.String(), name+" ("):
			t.Errorf("%q does not name %s", list[0].What, name)
		}
	}
}
