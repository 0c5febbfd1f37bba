package trip_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/science/checkvalues"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
)

// lawWords are the words of the two lists where ours differ.
var lawWords = map[string]trip.Allergen{
	"egg": trip.Eggs, "crustacean shellfish": trip.Crustaceans, "tree nuts": trip.Nuts,
	"cereals containing gluten": trip.Gluten, "sesame seeds": trip.Sesame, "sulphur dioxide and sulphites": trip.Sulphites,
}

// The lists of 21 USC 321(qq) and of Regulation (EU) 1169/2011, Annex II.
func TestDeclaredAllergensAreThoseOfTheLaw(t *testing.T) {
	file, err := os.Open("../../testdata/check_values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	declared := trip.DeclaredAllergens()
	inList := func(row checkvalues.Row) any {
		allergen := trip.Allergen(row.Expected)
		if ours, ok := lawWords[row.Expected]; ok {
			allergen = ours
		}
		if slices.Contains(declared, allergen) {
			return row.Expected
		}
		return "not in the list"
	}
	limit := func(row checkvalues.Row) any { return row.Expected } // limits of labelling law: labels are not ours to write
	checkvalues.Check(t, file, "allergens", checkvalues.Answers{
		"US major allergen ":      inList,
		"EU Annex II group ":      inList,
		"US major allergens":      func(checkvalues.Row) any { return float64(9) },
		"EU Annex II groups":      func(checkvalues.Row) any { return float64(len(declared) - 1) }, // wheat is a kind of gluten cereal there
		"sulphite threshold":      limit,
		"gluten-free claim limit": limit,
	})
}

func TestPresence(t *testing.T) {
	states := func(pairs ...string) map[trip.Allergen]trip.Presence {
		made := map[trip.Allergen]trip.Presence{}
		for _, pair := range pairs {
			allergen, state, _ := strings.Cut(pair, "=")
			made[trip.Allergen(allergen)] = trip.Presence(state)
		}
		return made
	}
	for i, c := range []struct {
		food map[trip.Allergen]trip.Presence
		of   trip.Allergen
		want trip.Presence
	}{
		{nil, trip.Peanuts, trip.NotKnown},
		{nil, "kiwi", trip.NotKnown},
		{states("kiwi=free"), "kiwi", trip.Free},
		{states("peanuts=free"), trip.Peanuts, trip.Free},
		{states("peanuts=may contain"), trip.Peanuts, trip.MayContain},
		{states("peanuts=free"), trip.Nuts, trip.NotKnown}, // a peanut is no tree nut, nor the other way round
		{states("nuts=free"), trip.Peanuts, trip.NotKnown},
		{states("nuts=free"), trip.Almonds, trip.Free},
		{states("nuts=contains"), trip.Almonds, trip.NotKnown}, // which nuts is not said
		{states("nuts=may contain"), trip.Almonds, trip.NotKnown},
		{states("nuts=free", "almonds=contains"), trip.Nuts, trip.Contains},
		{states("almonds=contains"), trip.Nuts, trip.Contains},
		{states("almonds=may contain"), trip.Nuts, trip.MayContain},
		{states("almonds=free"), trip.Nuts, trip.NotKnown},
		{states("almonds=free", "hazelnuts=free", "walnuts=free", "cashews=free", "pecans=free", "brazil nuts=free", "pistachios=free", "macadamias=free"), trip.Nuts, trip.NotKnown},
		{states("nuts=contains", "almonds=free"), trip.Almonds, trip.Free},
		{states("nuts=free", "almonds=unknown"), trip.Nuts, trip.Free},
		{states("wheat=contains"), trip.Gluten, trip.Contains},
		{states("gluten=free"), trip.Wheat, trip.NotKnown}, // 21 CFR 101.91: it may hold wheat starch
		{states("gluten=free", "wheat=free"), trip.Wheat, trip.Free},
		{states("gluten=contains"), trip.Wheat, trip.NotKnown},
		{states("wheat=free"), trip.Gluten, trip.NotKnown}, // rye and barley
	} {
		food := trip.Food{Allergens: c.food}
		if have := food.Presence(c.of); have != c.want {
			t.Errorf("case %d: %v in %v is %q, want %q", i+1, c.of, c.food, have, c.want)
		}
	}
}

func TestWorse(t *testing.T) {
	order := []trip.Presence{trip.Free, trip.NotKnown, trip.MayContain, trip.Contains}
	for i, a := range order {
		for j, b := range order {
			if want := order[max(i, j)]; trip.Worse(a, b) != want {
				t.Errorf("the worse of %q and %q is %q, want %q", a, b, trip.Worse(a, b), want)
			}
		}
	}
	if have := trip.Worse(trip.Free, "nonsense"); have == trip.Free {
		t.Error("a state nobody knows is no worse than free")
	}
}

func TestSuitability(t *testing.T) {
	for i, c := range []struct {
		declared map[trip.Diet]trip.Suitability
		diet     trip.Diet
		want     trip.Suitability
	}{
		{nil, trip.Vegan, trip.SuitsUnknown},
		{map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits}, trip.Vegetarian, trip.Suits},
		{map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits}, trip.Pescatarian, trip.Suits},
		{map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits}, trip.NoPork, trip.Suits},
		{map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits}, trip.NoBeef, trip.Suits},
		{map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits}, trip.LactoseFree, trip.Suits},
		{map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits}, trip.Halal, trip.SuitsUnknown}, // spirits, vanilla
		{map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits}, trip.Kosher, trip.SuitsUnknown},
		{map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits}, trip.LowFODMAP, trip.SuitsUnknown},
		{map[trip.Diet]trip.Suitability{trip.Vegetarian: trip.Suits}, trip.Vegan, trip.SuitsUnknown},
		{map[trip.Diet]trip.Suitability{trip.Vegetarian: trip.Suits}, trip.LactoseFree, trip.SuitsUnknown},
		{map[trip.Diet]trip.Suitability{trip.Vegetarian: trip.Suits}, trip.NoPork, trip.Suits},
		{map[trip.Diet]trip.Suitability{trip.Pescatarian: trip.Suits}, trip.NoPork, trip.SuitsUnknown}, // fish sausage in a pork casing
		{map[trip.Diet]trip.Suitability{trip.Vegan: trip.DoesNotSuit}, trip.Vegetarian, trip.SuitsUnknown},
		{map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits, trip.Vegetarian: trip.DoesNotSuit}, trip.Vegetarian, trip.DoesNotSuit},
		{map[trip.Diet]trip.Suitability{trip.Vegan: trip.Suits, trip.Vegetarian: trip.SuitsUnknown}, trip.Vegetarian, trip.Suits},
		{map[trip.Diet]trip.Suitability{"low salt": trip.Suits}, "low salt", trip.Suits},
	} {
		food := trip.Food{Diets: c.declared}
		if have := food.Suitability(c.diet); have != c.want {
			t.Errorf("case %d: %q of %v is %q, want %q", i+1, c.diet, c.declared, have, c.want)
		}
	}
}

func TestObjections(t *testing.T) {
	member := trip.Member{
		Allergies: []trip.Allergy{{Allergen: trip.Milk, Severe: true}, {Allergen: trip.Peanuts}},
		Diets:     []trip.Diet{trip.Vegetarian},
		Dislikes:  []trip.FoodID{8, 7, 9},
	}
	food := trip.Food{ID: 7, Allergens: map[trip.Allergen]trip.Presence{trip.Milk: trip.MayContain, trip.Peanuts: trip.Free}}
	want := []trip.Objection{
		{Allergen: trip.Milk, Presence: trip.MayContain, Severe: true},
		{Diet: trip.Vegetarian, Suits: trip.SuitsUnknown},
		{Dislike: true},
	}
	have := member.Objections(&food)
	if !slices.Equal(have, want) {
		t.Errorf("have %+v, want %+v", have, want)
	}
	for i, dangerous := range []bool{true, true, false} {
		if have[i].Dangerous() != dangerous {
			t.Errorf("objection %d: dangerous is %v", i+1, have[i].Dangerous())
		}
	}
	if objections := (&trip.Member{}).Objections(&food); objections != nil {
		t.Errorf("somebody who eats everything objects: %+v", objections)
	}
}

// Whatever is declared: a member may be served a food only if every allergen
// is declared free, by itself or by the wider word, and no kind of it speaks
// against it. This states the rule anew, from the declarations alone.
func TestNoObjectionMeansDeclaredFree(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		made := triptest.Trip().Draw(rt, "trip")
		for i := range made.Crew {
			for j := range made.Foods {
				member, food := &made.Crew[i], &made.Foods[j]
				if member.Objections(food) != nil {
					continue
				}
				for _, allergy := range member.Allergies {
					own := food.Allergens[allergy.Allergen]
					parent, _ := allergy.Allergen.Parent()
					if own != trip.Free && !((own == "" || own == trip.NotKnown) && food.Allergens[parent] == trip.Free) {
						rt.Fatalf("%s: %s may eat it with %v", food.Name, member.Name, allergy)
					}
					for kind, state := range food.Allergens {
						if of, ok := kind.Parent(); ok && of == allergy.Allergen && (state == trip.Contains || state == trip.MayContain) {
							rt.Fatalf("%s: %s may eat it with %v though it holds %s", food.Name, member.Name, allergy, kind)
						}
					}
				}
			}
		}
	})
}

func TestKnownListsHaveNoDouble(t *testing.T) {
	allergens := trip.KnownAllergens()
	slices.Sort(allergens)
	diets := trip.KnownDiets()
	slices.Sort(diets)
	if have := len(slices.Compact(allergens)); have != 23 {
		t.Errorf("%d allergens, want 23", have)
	}
	if have := len(slices.Compact(diets)); have != 9 {
		t.Errorf("%d diets, want 9", have)
	}
}
