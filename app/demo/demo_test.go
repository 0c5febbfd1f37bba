package demo

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"sumpter/app/library"
	"sumpter/domain/trip"
)

func TestDemoIsAValidTrip(t *testing.T) {
	demo := Trip()
	for _, problem := range trip.Validate(&demo) {
		t.Error(problem)
	}
}

func TestDemoIsAlwaysTheSameAndShared(t *testing.T) {
	a, b := Trip(), Trip()
	if !reflect.DeepEqual(a, b) {
		t.Fatal("two demo trips differ")
	}
	// What somebody does to their copy is nobody else's.
	a.Foods[0].Allergens[trip.Gluten] = trip.Contains
	a.Crew[0].Diets[0] = trip.Halal
	a.Recipes[0].Ingredients[0].Amount = 0
	a.Menu[0].Dishes[0].Recipe = 0
	a.Days[0].Meals[0] = trip.Snack
	if !reflect.DeepEqual(b, Trip()) {
		t.Fatal("a change of one copy reaches the next")
	}
}

func TestCompositionIsThatOfTheLibrary(t *testing.T) {
	demo := Trip()
	if len(demo.Foods) < 60 {
		t.Errorf("only %d foods", len(demo.Foods))
	}
	for i := range demo.Foods {
		food := &demo.Foods[i]
		known, ok := library.Food(strings.TrimPrefix(food.Source, "USDA SR28 "))
		if !ok || known.Per100g != food.Per100g || known.RefuseShare != food.RefuseShare {
			t.Errorf("%s (%s) is not what the library has", food.Name, food.Source)
		}
		if !strings.Contains(food.Notes, "Label read by the leader") || !strings.Contains(food.Notes, "Nutrients: USDA") {
			t.Errorf("%s does not tell its basis: %q", food.Name, food.Notes)
		}
		if !food.Density.Known() {
			t.Errorf("%s has no bulk density", food.Name)
		}
	}
}

// What the library knows to be in a food, the demo's label must not deny. Only
// gluten of oats may be gone: there are certified ones.
func TestLabelsNeverDenyWhatTheLibraryKnows(t *testing.T) {
	demo := Trip()
	for i := range demo.Foods {
		food := &demo.Foods[i]
		known, _ := library.Food(strings.TrimPrefix(food.Source, "USDA SR28 "))
		for _, allergen := range trip.DeclaredAllergens() {
			if known.Presence(allergen) != trip.Contains || food.Presence(allergen) == trip.Contains {
				continue
			}
			if food.ID == oats && allergen == trip.Gluten {
				continue
			}
			t.Errorf("%s: the label says %s is %s, the library that it is contained", food.Name, allergen, food.Presence(allergen))
		}
		for _, diet := range trip.KnownDiets() {
			was, is := known.Suitability(diet), food.Suitability(diet)
			if was == trip.DoesNotSuit && is == trip.Suits {
				t.Errorf("%s is said to suit %s", food.Name, diet)
			}
		}
	}
}

func TestTheCast(t *testing.T) {
	demo := Trip()
	if len(demo.Crew) != 11 || len(demo.Days) != 9 || len(demo.Points) != 2 || len(demo.Groups) != 2 {
		t.Fatalf("%d people, %d days, %d points, %d groups", len(demo.Crew), len(demo.Days), len(demo.Points), len(demo.Groups))
	}
	var vegan, coeliac, peanut, noPork, light, strong, limited, joins, leaves int
	for _, m := range demo.Crew {
		count := func(n *int, is bool) {
			if is {
				*n++
			}
		}
		count(&vegan, slices.Contains(m.Diets, trip.Vegan))
		count(&noPork, slices.Contains(m.Diets, trip.NoPork))
		count(&coeliac, slices.Contains(m.Allergies, trip.Allergy{Allergen: trip.Gluten, Severe: true}))
		count(&peanut, slices.Contains(m.Allergies, trip.Allergy{Allergen: trip.Peanuts, Severe: true}) && m.Medicine != "")
		count(&light, m.Age < 18 && m.BodyMass < kilograms(55))
		count(&strong, m.BodyMass > kilograms(95) && m.Strength > 1)
		count(&limited, m.Age > 65 && m.LoadLimit.Known())
		count(&joins, m.FirstDay > 1)
		count(&leaves, m.LastDay != 0)
	}
	for what, n := range map[string]int{
		"vegan": vegan, "coeliac": coeliac, "peanut": peanut, "no pork": noPork, "light": light,
		"strong": strong, "limited": limited, "joins": joins, "leaves": leaves,
	} {
		if n != 1 {
			t.Errorf("%d members are the one called %q", n, what)
		}
	}
	if legs := demo.Legs(); len(legs) != 3 || legs[1].FirstDay != joining || legs[2].FirstDay != leaving+1 {
		t.Errorf("legs %+v", legs)
	}
}

// served resolves what a member gets of an ingredient, apart from the
// planner: the food itself, or the first swap the member may eat; a swap for
// all that one eater needs is for everybody.
func served(demo *trip.Trip, part trip.Ingredient, member *trip.Member, eaters []trip.MemberID) (*trip.Food, float64, error) {
	fits := func(m *trip.Member, food trip.FoodID) bool {
		return food == 0 || len(m.Objections(demo.Food(food))) == 0
	}
	first := func(m *trip.Member) *trip.Swap {
		if fits(m, part.Food) {
			return nil
		}
		for i := range part.Swaps {
			if fits(m, part.Swaps[i].Food) {
				return &part.Swaps[i]
			}
		}
		return &trip.Swap{Food: -1}
	}
	swap := first(member)
	for _, id := range eaters {
		if other := first(demo.Member(id)); swap == nil && other != nil && other.ForAll {
			swap = other
		}
	}
	switch {
	case swap == nil:
		return demo.Food(part.Food), part.Amount.Grams(), nil
	case swap.Food == -1 || !fits(member, swap.Food):
		return nil, 0, fmt.Errorf("%s cannot eat %s and there is no swap", member.Name, demo.Food(part.Food).Name)
	case swap.Food == 0:
		return nil, 0, nil
	default:
		return demo.Food(swap.Food), swap.Amount.Grams(), nil
	}
}

func TestEverybodyIsServedSafely(t *testing.T) {
	demo := Trip()
	swaps := 0
	for _, cell := range demo.Menu {
		eaters := demo.Eaters(cell.Day, cell.Group)
		for _, dish := range cell.Dishes {
			if len(dish.Accepted) > 0 {
				t.Errorf("day %d %s: a danger was accepted by hand", cell.Day, cell.Meal)
			}
			recipe := demo.Recipe(dish.Recipe)
			for _, part := range recipe.Ingredients {
				for _, id := range eaters {
					food, _, err := served(&demo, part, demo.Member(id), eaters)
					if err != nil {
						t.Errorf("day %d %s, %s: %v", cell.Day, cell.Meal, recipe.Name, err)
						continue
					}
					if food != nil && food.ID != part.Food {
						swaps++
					}
					if food != nil && len(demo.Member(id).Objections(food)) > 0 {
						t.Errorf("day %d %s: %s gets %s", cell.Day, cell.Meal, demo.Member(id).Name, food.Name)
					}
				}
			}
		}
	}
	if swaps < 40 {
		t.Errorf("only %d swaps: the crew's diets hardly show", swaps)
	}
}

// A pot is shared: whatever is in it must be safe for every severe allergy of
// the group, and no peanut is near the one who is allergic to them.
func TestPotsAreFreeOfSevereAllergens(t *testing.T) {
	demo := Trip()
	for _, cell := range demo.Menu {
		eaters := demo.Eaters(cell.Day, cell.Group)
		for _, dish := range cell.Dishes {
			for _, part := range demo.Recipe(dish.Recipe).Ingredients {
				for _, id := range eaters {
					food, _, err := served(&demo, part, demo.Member(id), eaters)
					if err != nil || food == nil {
						continue
					}
					for _, other := range eaters {
						for _, allergy := range demo.Member(other).Allergies {
							state := food.Presence(allergy.Allergen)
							if part.Place == trip.InPot && state != trip.Free {
								t.Errorf("day %d %s: %s in the pot of %s", cell.Day, cell.Meal, food.Name, demo.Member(other).Name)
							}
							if allergy.Allergen == trip.Peanuts && state == trip.Contains {
								t.Errorf("day %d %s: %s is eaten beside %s", cell.Day, cell.Meal, food.Name, demo.Member(other).Name)
							}
						}
					}
				}
			}
		}
	}
}

// The weekdays of the demo: a post office that is shut on Sunday is reached on
// a Friday.
func TestDemoFallsOnWeekdaysThatWork(t *testing.T) {
	demo := Trip()
	for day, want := range map[int]string{1: "Wed", 3: "Fri", 6: "Mon", 9: "Thu"} {
		if have := demo.DateOf(day).Weekday().Short(); have != want {
			t.Errorf("day %d is a %s, want %s", day, have, want)
		}
	}
}
