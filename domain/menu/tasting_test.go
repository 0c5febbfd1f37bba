package menu_test

import (
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/menu"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

func tastingTrip() *trip.Trip {
	free := map[trip.Allergen]trip.Presence{trip.Peanuts: trip.Free}
	return &trip.Trip{
		Crew: []trip.Member{
			{ID: 3, Name: "Kit", Diets: []trip.Diet{trip.Vegan}},
			{ID: 1, Name: "Ann"},
			{ID: 2, Name: "Bo", Allergies: []trip.Allergy{{Allergen: trip.Peanuts}}, Dislikes: []trip.FoodID{12}},
		},
		Foods: []trip.Food{
			{ID: 10, Name: "Noodles", Allergens: free, Diets: map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits}},
			{ID: 11, Name: "Peanut butter", Allergens: map[trip.Allergen]trip.Presence{trip.Peanuts: trip.Contains}, Diets: map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits}},
			{ID: 12, Name: "Almond butter", Allergens: free},
		},
	}
}

func TestTasteTellsSwapsPotsAndWhatStandsInTheWay(t *testing.T) {
	recipe := &trip.Recipe{ID: 5, Ingredients: []trip.Ingredient{
		{Food: 10, Amount: 80_000, Role: trip.Base, Place: trip.InPot},
		{Food: 11, Amount: 30_000, Role: trip.Base, Place: trip.InPot, Swaps: []trip.Swap{{Food: 12, Amount: 30_000}}},
	}}
	got := menu.NewTaster(tastingTrip()).Taste(recipe)
	want := []menu.Tasting{
		{Member: 1, Served: true, Parts: []menu.Part{{Ingredient: 0, Food: 10}, {Ingredient: 1, Food: 11}}},
		{Member: 2, Served: true, Pot: 1, Parts: []menu.Part{{Ingredient: 0, Food: 10}, {Ingredient: 1, Food: 12, Swapped: true}}, Dislike: []trip.FoodID{12}},
		{Member: 3, Served: true, Parts: []menu.Part{{Ingredient: 0, Food: 10}, {Ingredient: 1, Food: 11}}},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("have %+v\nwant %+v", got, want)
	}
	recipe.Ingredients[1].Swaps[0].ForAll = true // almond butter is not known to suit vegans: Kit keeps the peanuts
	got = menu.NewTaster(tastingTrip()).Taste(recipe)
	if got[0].Parts[1].Food != 12 || got[2].Parts[1].Food != 11 || !got[2].Served {
		t.Errorf("a swap for all: %+v", got)
	}
	recipe.Ingredients[1].Swaps = nil
	if got = menu.NewTaster(tastingTrip()).Taste(recipe); got[1].Served || got[1].Refused != 11 || !got[0].Served {
		t.Errorf("without a swap: %+v", got)
	}
}

// Whatever the recipe: nobody is served what speaks against them, and who is
// not served has a reason.
func TestNobodyTastesWhatHarmsThem(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip")
		taster := menu.NewTaster(made)
		for i := range made.Recipes {
			all := true
			for _, one := range taster.Taste(&made.Recipes[i]) {
				all = all && one.Served
				if one.Served != (len(one.Parts) > 0) || one.Served && one.Refused != 0 {
					rt.Fatalf("%+v", one)
				}
				for _, part := range one.Parts {
					for _, objection := range made.Member(one.Member).Objections(made.Food(part.Food)) {
						if objection.Dangerous() {
							rt.Fatalf("member %d is served food %d: %+v", one.Member, part.Food, objection)
						}
					}
				}
			}
			if have := taster.ServesAll(&made.Recipes[i]); have != all {
				rt.Fatalf("recipe %d: serves all %v, tasting says %v", made.Recipes[i].ID, have, all)
			}
		}
	})
}
