package tables

import (
	"slices"
	"testing"

	"sumpter/domain/trip"
	"sumpter/domain/units"
	"sumpter/exporter/plantest"
)

func TestWhatWasDecidedOnTheWay(t *testing.T) {
	p := plantest.Small()
	bag := p.Bags.Bags[0]
	dish := "d1 dinner g1 r1 b1"
	p.Bags.Bags[0].Key = dish + " pot 1"
	p.Trip.Progress.Replans = []trip.Replan{{
		Day:       2,
		Moves:     []trip.DishMove{{Dish: dish, Day: 2, Meal: trip.Lunch, Group: 1}, {Dish: "d9 lunch g1 r1 b1"}},
		HandOvers: []trip.HandOver{{Bag: dish + " pot 1", From: 1, To: 2}, {Gear: 1, To: 2}},
		Given:     []trip.GivenBag{{Bag: p.Bags.Bags[1].Key, To: 2}},
	}}
	p.Trip.Progress.PartsGone = []trip.PartGone{{Bag: bag.Key, Day: 1, End: trip.Lost, Mass: units.Gram}, {Bag: dish + " pot 1", Day: 1, End: trip.Lost, Mass: 5 * units.Gram}}
	p.Bags.Bags[1].Member = 1
	all := From(p)
	overs, moves := &all.HandOvers, &all.MovedDishes
	if len(overs.Rows) != 2 || len(moves.Rows) != 3 {
		t.Fatalf("%d hand-overs, %d moves", len(overs.Rows), len(moves.Rows))
	}
	wantText(t, overs, 0, "item", bag.Code)
	wantText(t, overs, 0, "from", plantest.FormulaName)
	wantText(t, overs, 0, "to", plantest.WideName)
	wantText(t, overs, 1, "from", "out of the box")
	wantText(t, moves, 0, "bags", bag.Code)
	wantText(t, moves, 0, "meal", "lunch")
	wantText(t, moves, 1, "bags", "d9 lunch g1 r1 b1")
	wantText(t, moves, 1, "day", "carried on, for no meal yet")
	wantText(t, moves, 2, "bags", p.Bags.Bags[1].Code)
	wantText(t, moves, 2, "for", plantest.WideName+", packed for "+plantest.FormulaName)
	wantText(t, moves, 2, "group", p.Trip.Group(p.Trip.Crew[1].Group).Name)
	var told []string
	for _, fact := range all.Happened.Rows {
		told = append(told, fact[2].Text)
	}
	for _, want := range []string{"Bag " + bag.Code + ": 5 g are gone, lost.", "Bag " + p.Bags.Bags[1].Code + ", packed for " + plantest.FormulaName + ", is for " + plantest.WideName + " from day 2 on."} {
		if !slices.Contains(told, want) {
			t.Errorf("it does not tell %q but %q", want, told)
		}
	}
}
