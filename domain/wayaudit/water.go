package wayaudit

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/science/water"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// checkWater: to a dry camp that is ahead each cook group carries what it cooks
// with there, and nobody carries cooking water elsewhere.
func checkWater(a *auditor) {
	for day := a.From; day <= len(a.trip.Days); day++ {
		for _, group := range a.trip.Groups {
			carried, there := units.Mass(0), false
			for i := range a.Now.Carry.Members {
				m := &a.Now.Carry.Members[i]
				if member := a.trip.Member(m.Member); member != nil && member.Group == group.ID {
					carried += m.Days[day-1].ToCook
					there = there || m.Days[day-1].Present
				}
			}
			want := units.Mass(0)
			if d := &a.trip.Days[day-1]; d.DryCamp && !d.SnowWater && there {
				want = units.FromGrams(a.cookedWith(day, group.ID).Scale(1 + water.CookingLoss).Millilitres())
			}
			if carried != want {
				a.fault(findings.Place{Day: day, Group: group.ID}, prose.Say("the water of a dry camp is carried there"),
					prose.Say("%s of cooking water are carried on day %d, the group cooks with %s", carried, day, want))
			}
		}
	}
}

// cookedWith is the water of a camp's dinner and breakfast.
func (a *auditor) cookedWith(day int, group trip.GroupID) units.Volume {
	sum := units.Volume(0)
	for _, meal := range a.Now.Cooking.Meals {
		if meal.Group == group && (meal.Day == day && meal.Meal == trip.Dinner || meal.Day == day+1 && meal.Meal == trip.Breakfast) {
			sum += meal.FoodWater + meal.OtherWater
		}
	}
	return sum
}
