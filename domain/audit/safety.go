package audit

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// fridgeLimit is the lower end of the danger zone, 40 °F (USDA FSIS).
const fridgeLimit = 4.45

// checkSpoilage makes sure that nothing past its safe time, and nothing of
// unknown safety, goes without a finding; and that perishable food is not
// called safe after a day in a warm pack.
func checkSpoilage(a *auditor) {
	type fateKey struct {
		day   int
		meal  trip.Meal
		group trip.GroupID
		food  trip.FoodID
	}
	fates := map[fateKey]bool{}
	for _, fate := range a.Spoilage.Fates {
		fates[fateKey{fate.Day, fate.Meal, fate.Group, fate.Food}] = true
		food := a.index.food[fate.Food]
		if food == nil {
			continue
		}
		place := findings.Place{Day: fate.Day, Meal: fate.Meal, Group: fate.Group, Food: fate.Food}
		if fate.Verdict != spoilage.Safe && !a.said(findings.Spoilage, func(f findings.Finding) bool { return f.Place.Food == fate.Food }) {
			a.fault(place, prose.Say("food that is not safe is never without a finding"), prose.Say("%s is %s on day %d and no finding says so", food.Name, fate.Verdict, fate.Day))
		}
		if fate.Verdict == spoilage.Safe && a.warmPerishable(food, fate.Day) {
			a.fault(place, prose.Say("perishable food does not last a day in a warm pack"), prose.Say("%s is called safe on day %d", food.Name, fate.Day))
		}
	}
	for i := range a.Bags.Bags {
		bag := &a.Bags.Bags[i]
		for _, use := range bag.Uses {
			for _, content := range use.Contents {
				if !fates[fateKey{use.Day, use.Meal, bag.Group, content.Food}] {
					a.fault(findings.Place{Day: use.Day, Meal: use.Meal, Food: content.Food, Bag: bag.Key}, prose.Say("every ingredient has a fate"), prose.Say("nothing is said of %s in bag %s", a.foodName(content.Food), bag.Code))
				}
			}
		}
	}
}

// warmPerishable tells whether food that needs control, or of which that is
// not known, has spent a whole earlier day of its leg in a pack too warm for it.
func (a *auditor) warmPerishable(food *trip.Food, day int) bool {
	if food.Storage.Control() == trip.TCSNo {
		return false
	}
	leg := a.Legs[trip.LegOf(a.Legs, day)]
	for d := leg.FirstDay; d < day; d++ {
		if float64(a.Trip.Days[d-1].Low) > fridgeLimit {
			return true
		}
	}
	return false
}

// checkFuel makes sure that the containers of a leg hold what it needs.
func checkFuel(a *auditor) {
	type supply struct {
		leg   int
		group trip.GroupID
		fuel  trip.FuelKind
	}
	held := map[supply]units.Mass{}
	for _, fuel := range a.Cooking.Fuel {
		key := supply{fuel.Leg, fuel.Group, fuel.Fuel}
		for _, container := range fuel.Containers {
			held[key] += container.Fuel
		}
		if held[key] < fuel.Needed && !a.said(findings.Cooking, func(f findings.Finding) bool { return f.Place.Group == fuel.Group }) {
			a.fault(findings.Place{Group: fuel.Group, Day: a.Legs[fuel.Leg].FirstDay}, prose.Say("the fuel carried is the fuel needed"), prose.Say("%v carried of %v needed", held[key], fuel.Needed))
		}
	}
	burnt := map[supply]units.Mass{}
	for _, meal := range a.Cooking.Meals {
		if !meal.Cold {
			burnt[supply{trip.LegOf(a.Legs, meal.Day), meal.Group, meal.Fuel}] += meal.FuelMass
		}
	}
	for key, mass := range burnt {
		if mass > held[key] && !a.said(findings.Cooking, func(f findings.Finding) bool { return f.Place.Group == key.group }) {
			a.fault(findings.Place{Group: key.group}, prose.Say("the fuel carried is the fuel needed"), prose.Say("meals burn %v, the group carries %v", mass, held[key]))
		}
	}
}
