package trip_test

import (
	"math/rand/v2"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// However the lists stand, the canonical trip is the same: a plan made from it
// cannot depend on their order.
func TestCanonicalForgetsTheOrderOfLists(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip")
		want := made.Canonical()
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(rt, "seed"), 0))
		other := *made
		other.Groups = shuffled(random, made.Groups)
		other.Crew = shuffled(random, made.Crew)
		other.Foods = shuffled(random, made.Foods)
		other.Recipes = shuffled(random, made.Recipes)
		other.Menu = shuffled(random, made.Menu)
		other.Gear = shuffled(random, made.Gear)
		other.Points = shuffled(random, made.Points)
		other.Fuels = shuffled(random, made.Fuels)
		other.Bags = shuffled(random, made.Bags)
		other.Pins = shuffled(random, made.Pins)
		other.Progress.Packed = shuffled(random, made.Progress.Packed)
		other.Progress.Ends = shuffled(random, made.Progress.Ends)
		other.Progress.CrewChanges = shuffled(random, made.Progress.CrewChanges)
		other.Progress.PartsGone = shuffled(random, made.Progress.PartsGone)
		other.Progress.FuelNotes = shuffled(random, made.Progress.FuelNotes)
		other.Progress.Replans = shuffled(random, made.Progress.Replans)
		for i := range other.Progress.Replans {
			r := &other.Progress.Replans[i]
			r.Moves, r.HandOvers, r.Given = shuffled(random, r.Moves), shuffled(random, r.HandOvers), shuffled(random, r.Given)
		}
		other.Progress.MissingBoxes = shuffled(random, made.Progress.MissingBoxes)
		if have := other.Canonical(); !reflect.DeepEqual(have, want) {
			rt.Fatalf("have %+v\nwant %+v", have, want)
		}
		if !reflect.DeepEqual(want.Canonical(), want) {
			rt.Fatal("the canonical trip is not its own canonical trip")
		}
	})
}

func shuffled[T any](random *rand.Rand, list []T) []T {
	if list == nil {
		return nil
	}
	mixed := append([]T{}, list...)
	random.Shuffle(len(mixed), func(i, j int) { mixed[i], mixed[j] = mixed[j], mixed[i] })
	return mixed
}

func TestCanonicalLeavesTheTripAlone(t *testing.T) {
	made, same := triptest.Large(9, 4, 1), triptest.Large(9, 4, 1)
	made.Crew[0], made.Crew[8] = made.Crew[8], made.Crew[0]
	same.Crew[0], same.Crew[8] = same.Crew[8], same.Crew[0]
	canonical := made.Canonical()
	canonical.Crew[0].Name = "Changed"
	canonical.Menu = append(canonical.Menu, trip.Cell{})
	if !reflect.DeepEqual(made, same) {
		t.Error("making the canonical copy changed the trip")
	}
}
