package audit

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/science/water"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// checkWater makes sure that to each dry camp all of the water is carried that
// is cooked with and drunk there, each one's drink by who drinks it, and no
// water elsewhere.
func checkWater(a *auditor) {
	type campKey struct {
		day   int
		group trip.GroupID
	}
	cooked := map[campKey]units.Volume{}
	for _, meal := range a.Cooking.Meals {
		switch meal.Meal {
		case trip.Dinner:
			cooked[campKey{meal.Day, meal.Group}] += meal.FoodWater + meal.OtherWater
		case trip.Breakfast:
			cooked[campKey{meal.Day - 1, meal.Group}] += meal.FoodWater + meal.OtherWater
		}
	}
	drunk := map[trip.MemberID]map[int]units.Volume{}
	for _, w := range a.Cooking.Water {
		if drunk[w.Member] == nil {
			drunk[w.Member] = map[int]units.Volume{}
		}
		drunk[w.Member][w.Day] = w.CarriedDrink
	}
	carried, there := map[campKey]units.Mass{}, map[campKey]bool{}
	for i := range a.Carry.Members {
		member := a.index.member[a.Carry.Members[i].Member]
		if member == nil {
			continue
		}
		for d, day := range a.Carry.Members[i].Days {
			key := campKey{d + 1, member.Group}
			carried[key] += day.ToCook
			there[key] = there[key] || day.Present
			if drink := grams(drunk[member.ID][d+1]); day.Water != day.ToCook+drink || day.ToCook < 0 {
				a.fault(findings.Place{Day: d + 1, Member: member.ID}, prose.Say("everybody carries their own drink to a dry camp"),
					prose.Say("%s carries %v of water on day %d, %v of it to cook with and %v to drink", member.Name, day.Water, d+1, day.ToCook, drink))
			}
		}
	}
	for key, mass := range carried {
		want := units.Mass(0)
		if day := &a.Trip.Days[key.day-1]; day.DryCamp && !day.SnowWater && there[key] && key.group != 0 {
			want = grams(cooked[key].Scale(1 + water.CookingLoss))
		}
		if mass != want {
			a.fault(findings.Place{Day: key.day, Group: key.group}, prose.Say("the water of a dry camp is carried there"),
				prose.Say("%v of cooking water are carried on day %d, the group cooks with %v", mass, key.day, want))
		}
	}
}

// grams is what water weighs, a gram a millilitre.
func grams(v units.Volume) units.Mass { return units.FromGrams(v.Millilitres()) }

// checkWaterLimits looks for loads that pass a hard limit with water on top and
// nobody is told.
func checkWaterLimits(a *auditor) {
	for i := range a.Trip.Crew {
		member := &a.Trip.Crew[i]
		limit, limited := member.LoadLimit.Get()
		if !limited || i >= len(a.Carry.Members) {
			continue
		}
		for d, day := range a.Carry.Members[i].Days {
			if day.Water == 0 || day.Load > limit || day.Load+day.Water <= limit {
				continue
			}
			if !a.said(findings.Carry, func(f findings.Finding) bool {
				return f.Code == "water-over-limit" && f.Place.Day == d+1 && f.Place.Member == member.ID
			}) {
				a.fault(findings.Place{Day: d + 1, Member: member.ID}, prose.Say("no load passes a hard limit in silence"),
					prose.Say("%s carries %v and %v of water on day %d, over the limit", member.Name, day.Load, day.Water, d+1))
			}
		}
	}
}
