package trip_test

import (
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/units"
)

func TestNewThingsHaveAMeaning(t *testing.T) {
	start, err := units.NewDate(2026, 7, 1)
	if err != nil {
		t.Fatal(err)
	}
	fresh := trip.New("Summer walk", start)
	fresh.Days = append(fresh.Days, trip.NewDay())
	fresh.Points = append(fresh.Points, trip.NewPoint(1, "Hut", 1))
	for i, kind := range trip.GearKinds() {
		fresh.Gear = append(fresh.Gear, trip.NewGear(trip.GearID(i+1), string(kind), kind, 1))
	}
	if problems := trip.Validate(fresh); len(problems) > 0 {
		t.Errorf("new things have problems: %v", problems)
	}
	if fresh.Points[0].HoldDays.Known() {
		t.Error("how long a box is kept is known before anybody asked")
	}
}

// Whatever a piece of gear becomes, one after another, it keeps its mass once
// it has one and the trip stays one that can be planned.
func TestGearMayBecomeAnything(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		start, _ := units.NewDate(2026, 7, 1)
		fresh := trip.New("Walk", start)
		item := trip.NewGear(1, "Thing", trip.OtherGear, 0)
		item.Mass = 700 * units.Gram
		for _, kind := range rapid.SliceOf(rapid.SampledFrom(trip.GearKinds())).Draw(rt, "kinds") {
			item.Become(kind)
			if item.Mass != 700*units.Gram {
				rt.Fatalf("as a %s it weighs %v", kind, item.Mass)
			}
			fresh.Gear = []trip.Gear{item}
			if problems := trip.Validate(fresh); len(problems) > 0 {
				rt.Fatalf("as a %s: %v", kind, problems)
			}
			if kind != trip.Stove && item.Fuel != "" || kind != trip.Pot && item.HeatCapacity != 0 {
				rt.Fatalf("a %s burns %q and has a heat capacity of %v", kind, item.Fuel, item.HeatCapacity)
			}
		}
	})
}

func TestAPotHoldsTheMealsOfItsGroup(t *testing.T) {
	for eaters, want := range map[int]units.Volume{0: 3 * units.Litre, 3: 3 * units.Litre, 4: 3500 * units.Millilitre, 7: 6 * units.Litre} {
		pot := trip.NewGear(1, "Pot", trip.Pot, 1)
		light := pot.Mass
		pot.HoldMealsFor(eaters)
		if pot.Capacity != want || want > 3*units.Litre && pot.Mass <= light {
			t.Errorf("for %d it holds %v and weighs %v", eaters, pot.Capacity, pot.Mass)
		}
	}
}
