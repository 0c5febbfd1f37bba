package reserve_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/plan"
	"sumpter/domain/portions"
	"sumpter/domain/trip"
	"sumpter/domain/trip/triptest"
	"sumpter/domain/units"
)

func planned(t *testing.T, on *trip.Trip) *plan.Plan {
	t.Helper()
	p, err := plan.Make(context.Background(), on, plan.Options{})
	if err != nil || p.Refused() {
		t.Fatal(err, p.Findings)
	}
	for _, f := range p.Findings {
		if f.Stage == findings.Check {
			t.Fatalf("%s (%s)", f.What, f.Why)
		}
	}
	return p
}

// walk is six people for some days, whose snacks are nuts: 600 kcal, 100 g.
func walk(days int, end trip.ReserveEnd) *trip.Trip {
	t := triptest.Large(6, days, 3)
	nuts := &t.Foods[0]
	nuts.Name, nuts.Form, nuts.PackedAsBought, nuts.PieceMass, nuts.RefuseShare = "Nuts", trip.Dry, false, 0, 0
	nuts.Per100g.Kcal = 600
	nuts.Storage = trip.Storage{TCS: trip.TCSNo, ShelfDays: optional.Of(365.0), Q10: 2}
	nuts.Diets = map[trip.Diet]trip.Suitability{}
	for _, d := range []trip.Diet{trip.Vegan, trip.Vegetarian, trip.Pescatarian, trip.NoPork} {
		nuts.Diets[d] = trip.Suits
	}
	for _, a := range trip.DeclaredAllergens() {
		nuts.Allergens[a] = trip.Free
	}
	mix := trip.Recipe{ID: 9001, Name: "Handful", Meals: []trip.Meal{trip.Snack}, MinScale: 0.5, MaxScale: 2, Ingredients: []trip.Ingredient{
		{Food: nuts.ID, Amount: 100 * units.Gram, Role: trip.Base, Place: trip.AtBowl}}}
	t.Recipes = append(t.Recipes, mix)
	for i := range t.Menu {
		if t.Menu[i].Meal == trip.Snack {
			t.Menu[i].Dishes = []trip.Dish{{Recipe: mix.ID}}
		}
	}
	for i := range t.Crew {
		t.Crew[i].Dislikes = nil
	}
	t.Settings.ReserveDays, t.Settings.ReserveEnd, t.Settings.ReserveRecipe, t.Settings.ScaleStep = 1, end, mix.ID, units.Gram
	return t
}

// A reserve that is taken home lies in each member's own pack on every day, brings what was asked, is bought and labelled.
func TestTakenHome(t *testing.T) {
	on := walk(5, trip.ReserveTakenHome)
	p := planned(t, on)
	bare := on.Clone()
	bare.Settings.ReserveDays = 0
	without := planned(t, bare)
	if len(p.Portions.Reserve) != 6 || len(without.Portions.Reserve) != 0 {
		t.Fatalf("%d reserves, %d where none is asked for", len(p.Portions.Reserve), len(without.Portions.Reserve))
	}
	for i, r := range p.Portions.Reserve {
		need, days := units.Kcal(0), 0
		for _, day := range p.Needs.Members[i].Days {
			if day.Present {
				need, days = need+day.Kcal, days+1
			}
		}
		if mean := need / units.Kcal(days); r.PackedKcal < mean*0.99 || r.PackedKcal > mean*1.01 {
			t.Errorf("member %d has %.0f kcal in reserve, a day takes %.0f", r.Member, float64(r.PackedKcal), float64(mean))
		}
		keys, held := map[string]bool{}, units.Mass(0)
		for _, bag := range p.Bags.Bags {
			if bag.Kind == bags.ReserveBag && bag.Member == r.Member {
				keys[bag.Key] = true
				held += bag.Food
			}
		}
		if held != r.Mass() {
			t.Fatalf("bags hold %v of the reserve of %v of member %d", held, r.Mass(), r.Member)
		}
		for day := range p.Carry.Members[i].Days {
			with, bareDay := p.Carry.Members[i].Days[day], without.Carry.Members[i].Days[day]
			if !with.Present {
				continue
			}
			carried := 0
			for _, stage := range p.Carry.Stages {
				for _, item := range stage.Items {
					if stage.FirstDay <= day+1 && day+1 <= stage.LastDay && keys[item.Key] && item.Carrier == r.Member {
						carried++
					}
				}
			}
			if carried != len(keys) || with.Load < bareDay.Load-2*units.Kilogram {
				t.Errorf("member %d does not carry the reserve on day %d", r.Member, day+1)
			}
		}
	}
	if s := p.Summary(); s.Reserve < 3*units.Kilogram || s.Cost <= without.Summary().Cost {
		t.Errorf("reserve %v for %v, without it %v", s.Reserve, s.Cost, without.Summary().Cost)
	}
}

// A reserve that is eaten at last is the snacks of the last days of each leg, sealed apart, and only what these lack is packed on top.
func TestEatenAtLast(t *testing.T) {
	on := walk(8, trip.ReserveEatenLast)
	p := planned(t, on)
	home := on.Clone()
	home.Settings.ReserveEnd = trip.ReserveTakenHome
	if a, b := p.Summary(), planned(t, home).Summary(); a.Reserve >= b.Reserve {
		t.Errorf("%v on top where it is eaten at last, %v where it is taken home", a.Reserve, b.Reserve)
	}
	for _, r := range p.Portions.Reserve {
		least := r.Kcal
		for n, leg := range p.Legs {
			at := slices.IndexFunc(r.Kept, func(k portions.KeptSnacks) bool { return k.Leg == n })
			if leg.LastDay < r.FirstDay || leg.FirstDay > r.LastDay {
				continue
			}
			if at < 0 {
				least = 0
				continue
			}
			least = min(least, r.Kept[at].Kcal)
		}
		if brought := least + r.PackedKcal; brought < r.Kcal-50 {
			t.Errorf("member %d has %.0f of %.0f kcal", r.Member, float64(brought), float64(r.Kcal))
		}
		for _, kept := range r.Kept {
			for _, bag := range p.Bags.Bags {
				if bag.Kind == bags.SnackBag && bag.Member == r.Member && bag.Leg == kept.Leg && bag.LastDay >= kept.FromDay != bag.Reserve {
					t.Errorf("bag %s of days %d to %d: reserve %v, kept from day %d", bag.Code, bag.Day, bag.LastDay, bag.Reserve, kept.FromDay)
				}
			}
		}
	}
}

// Who may not eat what the settings ask for gets something else; nobody is left out in silence.
func TestWhoMayNotEatIt(t *testing.T) {
	on := walk(4, trip.ReserveTakenHome)
	on.Foods[0].Allergens[trip.Nuts] = trip.Contains
	on.Crew[0].Allergies = []trip.Allergy{{Allergen: trip.Nuts, Severe: true}}
	p := planned(t, on)
	who := p.Portions.Reserve[slices.IndexFunc(p.Portions.Reserve, func(r portions.Reserve) bool { return r.Member == on.Crew[0].ID })]
	told := slices.ContainsFunc(p.Findings, func(f findings.Finding) bool { return f.Code == "reserve-none" && f.Place.Member == on.Crew[0].ID })
	if who.Recipe == on.Settings.ReserveRecipe || (len(who.Packed) == 0) != told {
		t.Errorf("the reserve of somebody with an allergy: %+v, told %v", who, told)
	}
}

// Nothing else is left: then there is none, and it is said.
func TestNoRecipeDoes(t *testing.T) {
	on := walk(3, trip.ReserveTakenHome)
	on.Foods[0].Allergens[trip.Nuts] = trip.NotKnown
	for i := range on.Crew {
		on.Crew[i].Allergies = []trip.Allergy{{Allergen: trip.Nuts, Severe: true}}
	}
	for i := range on.Recipes {
		if on.Recipes[i].ID != on.Settings.ReserveRecipe {
			on.Recipes[i].Meals = []trip.Meal{trip.Dinner}
		}
	}
	p := planned(t, on)
	var told []findings.Finding
	for _, f := range p.Findings {
		if f.Code == "reserve-none" {
			told = append(told, f)
		}
	}
	if len(told) != 1 {
		t.Fatalf("told %d times, once is enough: %+v", len(told), told)
	}
	var places []trip.MemberID
	for one := range told[0].Each() {
		places = append(places, one.Place.Member)
	}
	for i := range on.Crew {
		if !slices.Contains(places, on.Crew[i].ID) || !strings.Contains(told[0].What.String(), on.Crew[i].Name) {
			t.Errorf("nobody says that %s has no reserve: %s, places %v", on.Crew[i].Name, told[0].What, places)
		}
	}
}

// What needs cold, or nobody knows, is a finding where the settings ask for it, and never the program's own choice.
func TestWhatDoesNotKeep(t *testing.T) {
	for _, state := range []trip.TCS{trip.TCSYes, trip.TCSUnknown} {
		on := walk(3, trip.ReserveTakenHome)
		on.Foods[0].Storage.TCS = state
		chosen := on.Settings.ReserveRecipe
		p := planned(t, on)
		if !slices.ContainsFunc(p.Findings, func(f findings.Finding) bool {
			return f.Code == "reserve-does-not-keep" && f.Place.Food == on.Foods[0].ID
		}) {
			t.Errorf("%s: no finding", state)
		}
		on.Settings.ReserveRecipe = 0
		for _, r := range planned(t, on).Portions.Reserve {
			if r.Recipe == chosen {
				t.Errorf("%s: the program chose it", state)
			}
		}
	}
}
