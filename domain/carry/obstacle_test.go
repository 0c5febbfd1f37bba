package carry

import (
	"context"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/bags"
	"sumpter/domain/bags/bagstest"
	"sumpter/domain/cooking"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

func TestBagObstacle(t *testing.T) {
	on := walkers(4, 60, 60, 60)
	on.Foods = []trip.Food{{ID: 1, Name: "Nut mix", Allergens: map[trip.Allergen]trip.Presence{trip.Peanuts: trip.Contains}}, {ID: 2, Name: "Oats"}}
	on.Crew[1].Allergies = []trip.Allergy{{Allergen: trip.Peanuts}}
	on.Crew[2].Allergies = []trip.Allergy{{Allergen: trip.Peanuts, Severe: true}}
	on.Crew[0].LastDay = 2
	nuts, oats, own := bagOf("nuts", 4, 1), bagOf("oats", 4, 1), bagOf("own", 4, 1)
	nuts.Contents, oats.Contents = []bags.Content{{Food: 1}}, []bags.Content{{Food: 2}}
	own.Member = 1
	for _, c := range []struct {
		name   string
		bag    *bags.Bag
		member int
		day    int
		want   Obstacle
	}{
		{"nothing in the way", &nuts, 1, 1, Obstacle{}},
		{"gone home", &nuts, 1, 3, Obstacle{Kind: NotThere}},
		{"contains it", &nuts, 2, 1, Obstacle{Kind: Harmful, Allergen: trip.Peanuts, Food: 1, State: trip.Contains}},
		{"unknown, mild", &oats, 2, 1, Obstacle{}},
		{"unknown, traces harm", &oats, 3, 1, Obstacle{Kind: Harmful, Allergen: trip.Peanuts, Food: 2, State: trip.NotKnown}},
		{"own share of another, by hand", &own, 2, 1, Obstacle{}},
		{"own share, own pack", &own, 1, 1, Obstacle{}},
		{"own share of who went home", &own, 2, 3, Obstacle{}},
	} {
		if got := BagObstacle(on, c.bag, &on.Crew[c.member-1], c.day); got != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}

func TestGearObstacle(t *testing.T) {
	on := walkers(2, 60, 60)
	on.Crew[1].Group, on.Crew[0].LastDay = 2, 1
	for _, c := range []struct {
		group trip.GroupID
		day   int
		want  ObstacleKind
	}{{0, 1, ""}, {2, 1, ""}, {1, 1, OtherGroup}, {1, 2, ""}} { // on day 2 nobody of group 1 is there
		if got := GearObstacle(on, c.group, &on.Crew[1], c.day); got.Kind != c.want {
			t.Errorf("gear of group %d on day %d: %+v, want %q", c.group, c.day, got, c.want)
		}
	}
}

// Where the split finds no reason to complain, nobody carries what an
// obstacle keeps from them.
func TestTheSplitPassesNoObstacle(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		on := triptest.Large(rapid.IntRange(2, 5).Draw(rt, "people"), rapid.IntRange(1, 2).Draw(rt, "days"), rapid.Uint64().Draw(rt, "seed")).Canonical()
		on.Pins = nil
		legs := on.Legs()
		packed := bags.Compute(on, bagstest.Batches(on), cooking.Result{}, legs)
		r, err := Compute(context.Background(), Work{Trip: on, Legs: legs, Bags: packed}, nil)
		if err != nil || hasFindingCode(r, "no-carrier") {
			return
		}
		byKey := map[string]*bags.Bag{}
		for i := range packed.Bags {
			byKey[packed.Bags[i].Key] = &packed.Bags[i]
		}
		for _, stage := range r.Stages {
			for _, item := range stage.Items {
				got := Obstacle{}
				switch item.Kind {
				case BagItem:
					got = BagObstacle(on, byKey[item.Key], on.Member(item.Carrier), stage.FirstDay)
				case GearItem:
					id, _ := strconv.ParseInt(item.Key, 10, 64)
					got = GearObstacle(on, on.GearItem(trip.GearID(id)).Group, on.Member(item.Carrier), stage.FirstDay)
				}
				if got.Kind != "" {
					rt.Fatalf("day %d: %s %s is carried by %d though %+v", stage.FirstDay, item.Kind, item.Key, item.Carrier, got)
				}
			}
		}
	})
}

func hasFindingCode(r Result, code string) bool {
	for _, finding := range r.Findings {
		if finding.Code == code {
			return true
		}
	}
	return false
}
