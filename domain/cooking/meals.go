package cooking

import (
	"sumpter/domain/portions"
	"sumpter/domain/prose"
	"sumpter/domain/science/stovefuel"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// cookSlot works out one meal.
func (c *cook) cookSlot(s slot) {
	day, k := &c.trip.Days[s.day-1], &c.kitchens[s.group]
	height := c.trip.CookHeight(s.day, s.meal)
	where := placeOf(day, &c.trip.Settings, height)
	m := Meal{
		Day: s.day, Meal: s.meal, Group: c.trip.Groups[s.group].ID, Height: height, BoilsAt: units.Celsius(where.boilsAtC),
	}
	var hot []*portions.Batch
	for _, batch := range s.batches {
		m.FoodWater += batch.Water + batch.PourOff
		if recipe := c.recipes[batch.Recipe]; recipe != nil {
			m.Minutes = max(m.Minutes, recipe.Soak)
			if Heated(recipe, s.meal) {
				hot = append(hot, batch)
			}
		}
	}
	switch {
	case day.NoFlame:
		c.lookAtFlameless(&s)
		m.Cold = true
	case !k.canCook():
		c.lookAtNoKitchen(&s, hot)
		m.Cold = true
	default:
		c.heatMeal(&m, &s, hot, where)
	}
	c.result.Meals = append(c.result.Meals, m)
}

// heatMeal puts the hot batches, hot drinks, washing up and melted snow of a
// meal on the flame.
func (c *cook) heatMeal(m *Meal, s *slot, hot []*portions.Batch, where place) {
	k := &c.kitchens[s.group]
	m.Fuel = k.fuel
	var rounds []round
	used := map[trip.GearID]bool{}
	for _, batch := range hot {
		recipe := c.recipes[batch.Recipe]
		simmer := SimmerAt(recipe, m.Height)
		m.SimmerMinutes = max(m.SimmerMinutes, simmer)
		cooked, pot := k.roundsOf(where, batch.Water+batch.PourOff, inPot(batch), float64(simmer), float64(recipe.Soak))
		rounds = append(rounds, cooked...)
		used[pot.ID] = true
		c.notePot(recipe, batch, pot, cooked, where, k)
		c.lookAtPot(s, batch, recipe, pot, len(cooked))
		c.lookAtHeight(s, recipe, simmer)
	}
	heat := 0.0
	for _, r := range rounds {
		heat += r.totalKJ()
	}
	m.Boils = len(rounds)
	if len(rounds) > 0 {
		m.Minutes = max(m.Minutes, units.Minutes(k.servedAfter(rounds)))
		c.lookAtMinutes(s, m.Minutes)
	}
	if drinks := c.hotDrinks(s); drinks > 0 {
		boiled, pot := k.roundsOf(where, drinks, 0, 0, 0)
		drinkHeat := 0.0
		for _, r := range boiled {
			drinkHeat += r.totalKJ()
		}
		heat += drinkHeat
		c.noteWater(prose.Say("Hot drinks: %s", drinks), drinkHeat, where, k)
		m.Boils += len(boiled)
		m.OtherWater += drinks
		used[pot.ID] = true
	}
	if len(used) > 0 {
		washUp := c.trip.Settings.WashUp * units.Volume(len(used))
		m.OtherWater += washUp
		washHeat := where.heat(washUp.Litres(), 0, washUpC)
		heat += washHeat
		c.noteWater(prose.Say("Washing up: %s, to %s", washUp, units.Celsius(washUpC)), washHeat, where, k)
	}
	if melt := c.meltHeat(s, where); melt > 0 {
		heat += melt
		c.noteWater(prose.Say("Melting snow to drink"), melt, where, k)
	}
	if heat == 0 {
		m.Cold, m.Fuel = true, ""
	}
	m.FuelMass = fuelFor(heat, k, 1)
	m.FuelLow, m.FuelHigh = fuelFor(heat, k, calmGain), fuelFor(heat, k, exposedLoss)
	c.noteMeal(m, k)
}

func fuelFor(heatKJ float64, k *kitchen, factor float64) units.Mass {
	return units.FromGrams(stovefuel.Grams(heatKJ, min(1, k.efficiency*factor), heatingValue(k.fuel)))
}

// hotDrinks gives the water of the drinks that go with breakfast and dinner.
func (c *cook) hotDrinks(s *slot) units.Volume {
	if s.meal == trip.Lunch {
		return 0
	}
	return max(0, c.trip.Settings.HotDrink) * units.Volume(s.eaters())
}

// meltHeat is what melting the group's drinking water of a snowy day takes;
// it is done at dinner.
func (c *cook) meltHeat(s *slot, where place) float64 {
	if s.meal != trip.Dinner || !c.melts(s.day, s.group) {
		return 0
	}
	litres := 0.0
	for _, w := range c.result.Water {
		if w.Day == s.day && c.trip.Crew[c.member[w.Member]].Group == c.trip.Groups[s.group].ID {
			litres += w.Drinking.Litres()
		}
	}
	heat := where.heat(litres, 0, meltedC)
	c.lookAtMelting(s, litres, heat)
	return heat
}
