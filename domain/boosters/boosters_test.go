package boosters_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sumpter/domain/boosters"
	"sumpter/domain/menu"
	"sumpter/domain/optional"
	"sumpter/domain/plan"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func planned(t interface{ Fatal(...any) }, on *trip.Trip) *plan.Plan {
	p, err := plan.Make(context.Background(), on, plan.Options{})
	if err != nil || p.Refused() {
		t.Fatal(err, p)
	}
	return p
}

// hungry is one member of one day whose only meal is too small.
func hungry() *trip.Trip {
	t := triptest.Large(1, 1, 3)
	m := &t.Crew[0]
	m.Allergies, m.Diets, m.Dislikes = nil, nil, nil
	m.GivenNeed, m.ProteinPer = optional.Of(units.Kcal(4000)), optional.Of(0.3)
	t.Settings.EarlyAppetite = 1
	t.Days[0].Meals = []trip.Meal{trip.Dinner}
	rice, oil := &t.Foods[0], &t.Foods[1]
	for i, f := range []*trip.Food{rice, oil} {
		f.Per100g.Kcal = []units.Kcal{360, 880}[i]
		f.RefuseShare, f.PieceMass, f.PackedAsBought = 0, 0, false
		f.Storage = trip.Storage{TCS: trip.TCSNo, ShelfDays: optional.Of(365.0), Q10: 2}
	}
	rice.Form, oil.Form, oil.Name = trip.Dry, trip.Liquid, "Oil of the test"
	t.Foods = t.Foods[:2]
	t.Recipes = []trip.Recipe{{ID: 1, Name: "Rice", Meals: []trip.Meal{trip.Dinner}, ColdOK: true, MinScale: 1, MaxScale: 1, Ingredients: []trip.Ingredient{
		{Food: rice.ID, Amount: 100 * units.Gram, Role: trip.Base, Place: trip.InPot}}}}
	t.Menu = []trip.Cell{{Day: 1, Meal: trip.Dinner, Group: m.Group, Dishes: []trip.Dish{{Recipe: 1}}}}
	t.Settings.ReserveRecipe, t.Pins = 0, nil
	return t
}

// Who is short is offered oil, as much as anybody stirs in, and taking it brings what was promised.
func TestOilForWhoIsShort(t *testing.T) {
	on := hungry()
	before := planned(t, on)
	list := boosters.Propose(before.Trip, before.Needs, before.Portions, 1, trip.Dinner, on.Crew[0].Group)
	if len(list) != 1 || list[0].Food != on.Foods[1].ID || list[0].Reason != boosters.Energy || list[0].Mass != 40*units.Gram {
		t.Fatalf("proposed %+v", list)
	}
	if c := list[0].Change; c.Food != 40*units.Gram || c.Kcal != 352 || !c.Priced {
		t.Errorf("it would change the day by %+v", c)
	}
	extra := list[0].Dish("Oil on top", "Stir in.")
	extra.ID = 2
	on.Recipes = append(on.Recipes, extra)
	on.Menu[0].Dishes = append(on.Menu[0].Dishes, trip.Dish{Recipe: 2, For: list[0].For})
	if got := planned(t, on).Portions.Intakes[0].Days[0].Kcal - before.Portions.Intakes[0].Days[0].Kcal; got != list[0].Kcal || got != 352 {
		t.Errorf("40 g of oil bring %.0f kcal, promised %.0f", float64(got), float64(list[0].Kcal))
	}
}

// What is promised comes true: with the addition taken, and the needs as they were, the day of those who get it has changed by so much,
// and a heavy day has become lighter. What stands in the slot already is not proposed again.
func TestChangeIsThatOfThePlan(t *testing.T) {
	tried := map[boosters.Reason]int{}
	for _, protein := range []float64{0.3, 1.6} {
		on := triptest.Large(6, 3, 4)
		on.Settings.FillOpenSlots = false
		for i := range on.Crew {
			on.Crew[i].ProteinPer = optional.Of(protein)
		}
		holdToThePlan(t, planned(t, on), tried)
	}
	if tried[boosters.Energy]+tried[boosters.Protein] == 0 || tried[boosters.Weight] == 0 {
		t.Errorf("tried only %v", tried)
	}
}

func holdToThePlan(t *testing.T, p *plan.Plan, tried map[boosters.Reason]int) {
	for _, slot := range p.Menu.Slots {
		for _, one := range boosters.Propose(p.Trip, p.Needs, p.Portions, slot.Day, slot.Meal, slot.Group) {
			with := p.Trip.Clone()
			extra := one.Dish("More", "Stir in.")
			extra.ID = trip.NextID(with.Recipes, func(r *trip.Recipe) trip.RecipeID { return r.ID })
			with.Recipes = append(with.Recipes, extra)
			cell := with.Cell(slot.Day, slot.Meal, slot.Group)
			cell.Dishes = append(cell.Dishes, trip.Dish{Recipe: extra.ID, For: one.For})
			sized := portions.Figures(with, p.Needs, menu.Servings(with, nil))
			var kcal units.Kcal
			var food units.Mass
			for i := range with.Crew {
				if slices.Contains(one.For, with.Crew[i].ID) {
					was, is := p.Portions.Intakes[i].Days[slot.Day-1], sized.Intakes[i].Days[slot.Day-1]
					kcal, food = kcal+is.Kcal-was.Kcal, food+is.Food-was.Food
				}
			}
			n := float64(len(one.For))
			if math.Abs(float64(kcal)/n-float64(one.Change.Kcal)) > 1e-6 || math.Abs(food.Grams()/n-one.Change.Food.Grams()) > 0.01 {
				t.Errorf("%+v at %s of day %d: the day changes by %.0f kcal and %v for each", one, slot.Meal, slot.Day, float64(kcal)/n, food.Scale(1/n))
			}
			if one.Reason == boosters.Weight && one.Change.Food >= 0 {
				t.Errorf("%+v makes nothing lighter", one)
			}
			for _, again := range boosters.Propose(with, p.Needs, p.Portions, slot.Day, slot.Meal, slot.Group) {
				if again.Food == one.Food {
					t.Errorf("food %d stands there already", one.Food)
				}
			}
			tried[one.Reason]++
		}
	}
}

// An allergy, a diet, a dislike, or food that needs cold: not proposed.
func TestNotToThoseItHarms(t *testing.T) {
	for name, change := range map[string]func(t *trip.Trip){
		"allergy": func(t *trip.Trip) {
			t.Foods[1].Allergens[trip.Nuts] = trip.MayContain
			t.Crew[0].Allergies = []trip.Allergy{{Allergen: trip.Nuts, Severe: true}}
		},
		"diet":         func(t *trip.Trip) { delete(t.Foods[1].Diets, trip.Vegan); t.Crew[0].Diets = []trip.Diet{trip.Vegan} },
		"dislike":      func(t *trip.Trip) { t.Crew[0].Dislikes = []trip.FoodID{t.Foods[1].ID} },
		"needs cold":   func(t *trip.Trip) { t.Foods[1].Storage.TCS = trip.TCSYes },
		"not known":    func(t *trip.Trip) { t.Foods[1].Storage = trip.Storage{TCS: trip.TCSUnknown, Q10: 2} },
		"not dense":    func(t *trip.Trip) { t.Foods[1].Per100g.Kcal = 300 },
		"nobody short": func(t *trip.Trip) { t.Crew[0].GivenNeed = optional.Of(units.Kcal(1000)) },
	} {
		on := hungry()
		change(on)
		p := planned(t, on)
		if list := boosters.Propose(p.Trip, p.Needs, p.Portions, 1, trip.Dinner, on.Crew[0].Group); len(list) > 0 {
			t.Errorf("%s: proposed %+v", name, list)
		}
	}
}

// On random trips everybody named may eat what is proposed and is there.
func TestOnRandomTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := planned(t, triptest.Trip().Draw(t, "trip"))
		for _, slot := range p.Menu.Slots {
			for _, one := range boosters.Propose(p.Trip, p.Needs, p.Portions, slot.Day, slot.Meal, slot.Group) {
				for _, id := range one.For {
					if !slices.Contains(slot.Eaters, id) || len(p.Trip.Member(id).Objections(p.Trip.Food(one.Food))) > 0 || one.Mass <= 0 {
						t.Errorf("%+v at %s of day %d", one, slot.Meal, slot.Day)
					}
				}
			}
		}
	})
}
