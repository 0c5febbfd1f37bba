package spoilage_test

import (
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/portions/portionstest"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

// The order of the lists, the names and the units a reader likes change no
// fate.
func TestFatesDependOnFactsAlone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip")
		before := compute(made)
		other := *made
		other.Foods, other.Crew = slices.Clone(made.Foods), slices.Clone(made.Crew)
		slices.Reverse(other.Foods)
		slices.Reverse(other.Crew)
		for i := range other.Foods {
			other.Foods[i].Name += " by another name"
		}
		other.Units = units.US
		if after := compute(&other); !reflect.DeepEqual(before.Fates, after.Fates) {
			rt.Error("the fates differ")
		}
	})
}

// What is eaten later is never safer, and its account never smaller.
func TestLaterIsNeverBetter(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip").Canonical()
		type line struct {
			food  trip.FoodID
			meal  trip.Meal
			group trip.GroupID
			leg   int
		}
		legs := made.Legs()
		before := map[line]spoilage.Fate{}
		for _, fate := range spoilage.Compute(made, portionstest.Serve(made)).Fates {
			if food := made.Food(fate.Food); food.Storage.TCSWhenOpen && food.PackedAsBought {
				continue // a fresh package may be opened in between
			}
			k := line{fate.Food, fate.Meal, fate.Group, trip.LegOf(legs, fate.Day)}
			if earlier, ok := before[k]; ok && (fate.QualityUsed < earlier.QualityUsed-1e-9 || earlier.Melts && !fate.Melts || earlier.LatestDay != fate.LatestDay) {
				rt.Errorf("%+v and then %+v", earlier, fate)
			}
			before[k] = fate
		}
	})
}

func TestEatFirstIsSortedAndCompleteForWhatPresses(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip").Canonical()
		result := spoilage.Compute(made, portionstest.Serve(made))
		list := spoilage.EatFirst(made, result)
		there := map[trip.FoodID]bool{}
		for i, fate := range list {
			if there[fate.Food] {
				rt.Errorf("food %d stands twice", fate.Food)
			}
			there[fate.Food] = true
			if i > 0 && fate.LatestDay < list[i-1].LatestDay {
				rt.Error("what can be eaten for the shortest time comes first")
			}
		}
		for _, fate := range result.Fates {
			if fate.LatestDay < len(made.Days) && !there[fate.Food] {
				rt.Errorf("food %d presses and is left out: %+v", fate.Food, fate)
			}
		}
	})
}
