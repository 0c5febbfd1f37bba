package trial_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/fill"
	"sumpter/domain/menu"
	"sumpter/domain/plan"
	"sumpter/domain/trial"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func planned(t interface{ Fatal(...any) }, on *trip.Trip) *plan.Plan {
	p, err := plan.Make(context.Background(), on, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestADayAsItIsIsTheDayOfThePlan: the trial of what stands there gives what
// the plan has for the same slot, for every slot of random trips.
func TestADayAsItIsIsTheDayOfThePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		on := triptest.Trip().Draw(t, "trip")
		on.Settings.FillOpenSlots = false
		p := planned(t, on)
		for _, slot := range p.Menu.Slots {
			got := trial.NewDay(p.Trip, p.Needs, slot.Day, slot.Group).AsItIs(slot.Meal)
			compare(t, got, p, slot)
		}
	})
}

func compare(t *rapid.T, got trial.Outcome, p *plan.Plan, slot menu.Slot) {
	var kcal units.Kcal
	var food units.Mass
	for _, batch := range p.Portions.Batches {
		if batch.Day != slot.Day || batch.Meal != slot.Meal || batch.Group != slot.Group {
			continue
		}
		for _, portion := range batch.Portions {
			kcal += portion.Kcal
			for _, amount := range portion.Amounts {
				food += amount.Mass
			}
		}
	}
	n := float64(len(slot.Eaters))
	if got.Eaters != len(slot.Eaters) || math.Abs(float64(kcal)/n-float64(got.MealKcal)) > 1e-6 || math.Abs(food.Grams()/n-got.MealFood.Grams()) > 0.01 {
		t.Fatalf("%s of day %d: %+v, the plan has %v kcal and %v for %d", slot.Meal, slot.Day, got, kcal, food, len(slot.Eaters))
	}
	for _, meal := range p.Cooking.Meals {
		if meal.Day == slot.Day && meal.Meal == slot.Meal && meal.Group == slot.Group && (meal.Minutes != got.Minutes || meal.FuelMass != got.Fuel) {
			t.Fatalf("%s of day %d takes %v min and %v, the plan says %v and %v", slot.Meal, slot.Day, got.Minutes, got.Fuel, meal.Minutes, meal.FuelMass)
		}
	}
}

// TestAnotherDishGivesWhatThePlanThenHas: take a choice, plan again on the
// same needs, and the day is as it was promised.
func TestAnotherDishGivesWhatThePlanThenHas(t *testing.T) {
	p := planned(t, triptest.Large(8, 4, 2))
	group, day := p.Trip.Groups[0].ID, 3
	ranked := fill.Rank(p.Trip, p.Needs, day, trip.Dinner, group)
	tried := trial.NewDay(p.Trip, p.Needs, day, group)
	before := tried.AsItIs(trip.Dinner)
	changed := 0
	for _, choice := range ranked[:5] {
		dishes := []trip.Dish{{Recipe: choice.Recipe}}
		promised := tried.With(trip.Dinner, dishes)
		if promised.DayFood != before.DayFood || promised.Minutes != before.Minutes {
			changed++
		}
		other := p.Trip.Clone()
		for i := range other.Menu {
			if c := &other.Menu[i]; c.Day == day && c.Meal == trip.Dinner && c.Group == group {
				c.Dishes = dishes
			}
		}
		if got := trial.NewDay(other.Canonical(), p.Needs, day, group).AsItIs(trip.Dinner); !same(got, promised) {
			t.Errorf("recipe %d: promised %+v, got %+v", choice.Recipe, promised, got)
		}
		if !slices.Equal(promised.Without, choice.Without) {
			t.Errorf("recipe %d: %v go without, the ranking says %v", choice.Recipe, promised.Without, choice.Without)
		}
	}
	if changed == 0 {
		t.Error("five other dinners change neither the load nor the minutes")
	}
}

func same(a, b trial.Outcome) bool {
	without := slices.Equal(a.Without, b.Without)
	a.Without, b.Without = nil, nil
	return without && a.Eaters == b.Eaters && a.MealKcal == b.MealKcal && a.DayFood == b.DayFood && a.Minutes == b.Minutes && a.Fuel == b.Fuel
}

func TestNothingServedFeedsNobody(t *testing.T) {
	p := planned(t, triptest.Large(5, 3, 4))
	got := trial.NewDay(p.Trip, p.Needs, 1, p.Trip.Groups[0].ID).With(trip.Dinner, nil)
	if got.MealKcal != 0 || len(got.Without) != got.Eaters || got.Eaters != 5 {
		t.Errorf("an empty slot: %+v", got)
	}
}

func BenchmarkTenChoices(b *testing.B) {
	on := triptest.Large(60, 21, 11)
	on.Days[8].NoFlame = false
	p := planned(b, on)
	group := p.Trip.Groups[0].ID
	for b.Loop() {
		ranked := fill.Rank(p.Trip, p.Needs, 9, trip.Dinner, group)
		day := trial.NewDay(p.Trip, p.Needs, 9, group)
		for _, choice := range ranked[:10] {
			day.With(trip.Dinner, []trip.Dish{{Recipe: choice.Recipe}})
		}
	}
}
