package cooking

import (
	"sumpter/domain/findings"
	"sumpter/domain/needs"
	"sumpter/domain/prose"
	"sumpter/domain/science/water"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Gross walking power in watts from which effort counts as moderate and hard:
// halfway between the 250, 425 and 600 W of the three kinds of work.
//
// Source: US Army TB MED 507, from memory.
const (
	moderateFromW = 340.0
	hardFromW     = 510.0
)

// Drinking water carried to a dry camp (design choice): the evening's and
// morning's half of the base drink, and the first hours of the next day until
// water is found.
const (
	nightShare   = 0.5
	hoursToWater = 2.0
)

// childDrink is litres a day under childUnder years, beside the water in food.
//
// Source: Institute of Medicine 2005; from memory.
const (
	childDrink = 1.7
	childUnder = 14
)

// hotDayFrom is the temperature from which a finding reminds of heat (design
// choice).
const hotDayFrom = 30

// drinking works out what each member drinks on each day. Only the air
// temperature is known, so its highest value is taken as a day in the shade.
func (c *cook) drinking() {
	for d := range c.trip.Days {
		capped := 0
		for i := range c.trip.Crew {
			m := &c.trip.Crew[i]
			if !c.needs.There(c.trip, i, d+1) {
				continue
			}
			litres, atCeiling := water.DrinkInDay(baseDrink(m), c.ratePerHour(d, i), c.movingHours(d))
			if atCeiling {
				capped++
			}
			c.result.Water = append(c.result.Water, Water{
				Day: d + 1, Member: m.ID, Drinking: units.FromLitres(litres), AtCeiling: atCeiling,
			})
		}
		c.lookAtCeiling(d, capped)
	}
	c.lookAtHeat()
}

func baseDrink(m *trip.Member) float64 {
	switch {
	case m.Age < childUnder:
		return childDrink
	case m.Sex == trip.Male:
		return water.BaseMan
	case m.Sex == trip.Female:
		return water.BaseWoman
	default:
		return (water.BaseMan + water.BaseWoman) / 2
	}
}

func (c *cook) movingHours(d int) float64 {
	if d < len(c.needs.Walks) {
		return float64(c.needs.Walks[d].Hours)
	}
	return 0
}

func (c *cook) ratePerHour(d, member int) float64 {
	return water.DrinkPerHour(float64(c.trip.Days[d].High), c.effort(d, member))
}

// effort is how hard a member walks that day.
func (c *cook) effort(d, member int) water.Effort {
	if day := c.needDay(d, member); day != nil {
		switch {
		case day.MovingWatts >= hardFromW:
			return water.Hard
		case day.MovingWatts < moderateFromW:
			return water.Easy
		}
	}
	return water.Moderate
}

func (c *cook) needDay(d, member int) *needs.Day {
	if member >= len(c.needs.Members) || d >= len(c.needs.Members[member].Days) {
		return nil
	}
	return &c.needs.Members[member].Days[d]
}

// dryCamps tells what has to be carried to camps without water: the cooking of
// the evening and the next morning for the group, and for each what they drink
// until water is found. Snow at the camp is water.
func (c *cook) dryCamps() {
	for d := range c.trip.Days {
		day := &c.trip.Days[d]
		if !day.DryCamp || day.SnowWater {
			continue
		}
		for g := range c.trip.Groups {
			c.dryCamp(d, g)
		}
	}
}

func (c *cook) dryCamp(d, group int) {
	id := c.trip.Groups[group].ID
	carriers, drink := 0, units.Volume(0)
	for i := range c.result.Water {
		w := &c.result.Water[i]
		if m := &c.trip.Crew[c.member[w.Member]]; w.Day == d+1 && m.Group == id {
			w.CarriedDrink = units.FromLitres(c.untilWater(d, m))
			carriers++
			drink += w.CarriedDrink
		}
	}
	if carriers == 0 {
		return
	}
	camp := DryCamp{Day: d + 1, Group: id}
	for _, meal := range c.result.Meals {
		if meal.Group == id && (meal.Day == d+1 && meal.Meal == trip.Dinner || meal.Day == d+2 && meal.Meal == trip.Breakfast) {
			camp.Cooking += meal.FoodWater + meal.OtherWater
		}
	}
	camp.Cooking = camp.Cooking.Scale(1 + water.CookingLoss)
	c.result.DryCamps = append(c.result.DryCamps, camp)
	c.tell(findings.LookAt, "dry-camp", findings.Place{Day: d + 1, Group: id},
		prose.Say("There is no water at the camp of day %d: %s carries %s there, %s of it to cook with and the rest to drink.", d+1, c.trip.Groups[group].Name,
			camp.Cooking+drink, camp.Cooking),
		prose.Say("Cooking of the evening and the next morning with 10 %% lost, half a day's drink and two hours of the next day (design choice). Each carries their own drink; the loads tell how much of the rest, so that with it they are as even as can be."),
		prose.Say("Mark the last sure water on the map and carry enough bottles. The water comes on top of the loads that are split."))
}

// untilWater is what a member drinks from the last water before a dry camp's
// dinner to the first water of the next day.
func (c *cook) untilWater(d int, m *trip.Member) float64 {
	litres := nightShare * baseDrink(m)
	if d+1 < len(c.trip.Days) && c.needs.There(c.trip, c.member[m.ID], d+2) {
		rate := min(water.MostPerHour, c.ratePerHour(d+1, c.member[m.ID]))
		litres += min(hoursToWater, c.movingHours(d+1)) * rate
	}
	return litres
}
