package cooking

import (
	"sumpter/domain/needs"
	"sumpter/domain/portions"
	"sumpter/domain/prose"
	"sumpter/domain/science/water"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Line is one line of the answer to "why these litres, this fuel, these
// minutes?".
type Line struct {
	What   prose.Text
	Figure prose.Text
	Basis  prose.Text // how it was reckoned, and by whose figures
	Total  bool       // what the lines above come to
}

// Accounts answers for the figures of a plan.
type Accounts struct {
	trip   *trip.Trip
	needs  needs.Result
	eaten  portions.Result
	legs   []trip.Leg
	result Result
}

// AccountsOf answers for what Compute made of the same arguments.
func AccountsOf(t *trip.Trip, n needs.Result, p portions.Result, legs []trip.Leg, made Result) *Accounts {
	return &Accounts{trip: t, needs: n, eaten: p, legs: legs, result: made}
}

// Meal tells how water, fuel and minutes of a meal came about; nothing where
// the group eats nothing then.
func (a *Accounts) Meal(day int, meal trip.Meal, group trip.GroupID) []Line {
	c := newCook(a.trip, a.needs, a.legs)
	c.result.Water = a.result.Water
	var told []Line
	for _, slot := range c.slots(a.eaten) {
		if slot.day == day && slot.meal == meal && c.trip.Groups[slot.group].ID == group {
			c.lines = &told
			c.cookSlot(slot)
		}
	}
	return told
}

// Water tells what each member drinks on a day and carries to a dry camp, and
// why; cooking is how much of the group's cooking water each has by the loads.
func (a *Accounts) Water(day int, cooking map[trip.MemberID]units.Volume) []Line {
	c := newCook(a.trip, a.needs, a.legs)
	var told []Line
	drunk, carried := units.Volume(0), units.Volume(0)
	for i := range a.result.Water {
		w := &a.result.Water[i]
		m := a.trip.Member(w.Member)
		if w.Day != day || m == nil {
			continue
		}
		drunk, carried = drunk+w.Drinking, carried+w.CarriedDrink
		told = append(told, Line{What: prose.Say("%s", m.Name), Figure: prose.Say("%s", w.Drinking), Basis: c.whyDrink(w, m, cooking[m.ID])})
	}
	if len(told) == 0 {
		return nil
	}
	told = append(told, Line{What: prose.Say("Drunk by all"), Figure: prose.Say("%s", drunk), Total: true, Basis: prose.Say(
		"US Army TB MED 507 for hours on the move, by the day's highest air temperature as if it were the wet-bulb globe temperature of a day in the shade; in sun or damp air it is more. Below %s common practice, no source. Single people lie %s an hour to either side. Beside the water in food: Institute of Medicine 2005. Never more than %s an hour or %s a day.",
		units.Celsius(water.TableFromC), units.FromLitres(water.SpreadPerHour), units.FromLitres(water.MostPerHour), units.FromLitres(water.MostPerDay))})
	for _, camp := range a.result.DryCamps {
		if camp.Day == day {
			carried += camp.Cooking
		}
	}
	if carried > 0 {
		told = append(told, Line{What: prose.Say("Carried to the dry camp by all"), Figure: prose.Say("%s", carried), Total: true,
			Basis: prose.Say("Cooking of the evening and the next morning with 10 %% lost, half a day's drink and two hours of the next day (design choice).")})
	}
	return told
}

// whyDrink says how a member's drink of a day was reckoned.
func (c *cook) whyDrink(w *Water, m *trip.Member, cooking units.Volume) prose.Text {
	d, at := w.Day-1, c.member[m.ID]
	base := units.FromLitres(baseDrink(m))
	why := prose.Say("%s for the day", base)
	if hours := c.movingHours(d); hours > 0 {
		why = prose.Say("%s for the day and %.1f h on the move at %s an hour (%s)", base, hours, units.FromLitres(c.ratePerHour(d, at)), c.effortWord(d, at))
	}
	if w.AtCeiling {
		why = prose.Say("%s, held at the ceiling", why)
	}
	if w.CarriedDrink == 0 {
		return prose.Say("%s.", why)
	}
	return prose.Say("%s. Carries %s to the dry camp: %s to drink until there is water again and %s of the cooking, by how loaded each is that day.", why, w.CarriedDrink+cooking, w.CarriedDrink, cooking)
}

func (c *cook) effortWord(d, member int) prose.Text {
	switch c.effort(d, member) {
	case water.Easy:
		return prose.Say("easy work")
	case water.Hard:
		return prose.Say("hard work")
	default:
		return prose.Say("moderate work")
	}
}

// Fuel tells what a group burns on a leg, and in what it is carried.
func (a *Accounts) Fuel(leg int, group trip.GroupID) []Line {
	var entry *LegFuel
	for i := range a.result.Fuel {
		if f := &a.result.Fuel[i]; f.Leg == leg && f.Group == group && f.Needed > 0 {
			entry = f
		}
	}
	if entry == nil {
		return nil
	}
	first, last := a.legs[leg].FirstDay, a.legs[leg].LastDay
	burnt, meals := units.Mass(0), 0
	for _, meal := range a.result.Meals {
		if meal.Group == group && meal.Day >= first && meal.Day <= last && meal.FuelMass > 0 {
			burnt += meal.FuelMass
			meals++
		}
	}
	told := []Line{
		{What: prose.Plural(meals, prose.Say("%d hot meal of days %d to %d", meals, first, last), prose.Say("%d hot meals of days %d to %d", meals, first, last)),
			Figure: prose.Say("%s", burnt), Basis: prose.Say("what the meals burn, one by one")},
		{What: prose.Say("with %.0f %% in reserve", 100*a.trip.Settings.FuelReserve), Figure: prose.Say("%s", entry.Needed), Total: true,
			Basis: prose.Say("%s; 15 to 20 %% is common practice. Weigh the fuel before and after boiling one litre to know your stove.", entry.Fuel)},
	}
	for _, container := range entry.Containers {
		what := prose.Say("%s", container.Name)
		if container.Ahead {
			what = prose.Say("%s, for a later stretch", container.Name)
		}
		basis := prose.Say("%s empty; lightest containers that hold it", container.Empty)
		if container.EmptyFrom > 0 {
			basis = prose.Say("%s empty, from the morning of day %d; lightest containers that hold it", container.Empty, container.EmptyFrom)
		}
		told = append(told, Line{What: what, Figure: prose.Say("%s", container.Fuel), Basis: basis})
	}
	return told
}

// note keeps a line while somebody asks for the account of a meal.
func (c *cook) note(what, figure, basis prose.Text) {
	if c.lines != nil {
		*c.lines = append(*c.lines, Line{What: what, Figure: figure, Basis: basis})
	}
}

// notePot tells what one dish takes.
func (c *cook) notePot(recipe *trip.Recipe, batch *portions.Batch, pot *trip.Gear, rounds []round, where place, k *kitchen) {
	if c.lines == nil {
		return
	}
	heat, flame := 0.0, 0.0
	for _, r := range rounds {
		heat += r.totalKJ()
		flame += r.flameMinutes(k)
	}
	basis := where.words(heat)
	if one := rounds[0]; one.simmer > 0 {
		basis = prose.Say("%s; simmers %.0f min here, %.0f at sea level, at %.0f W", basis, one.simmer, float64(recipe.Simmer), one.simmerW)
	}
	basis = prose.Say("%s; a burner is busy %.0f min", basis, flame)
	c.note(prose.Plural(len(rounds), prose.Say("%s: %s of water in %s", recipe.Name, batch.Water+batch.PourOff, pot.Name),
		prose.Say("%s: %s of water in %s, %d rounds", recipe.Name, batch.Water+batch.PourOff, pot.Name, len(rounds))),
		prose.Say("%s", fuelFor(heat, k, 1)), basis)
}

// noteWater tells of water that is heated beside the food.
func (c *cook) noteWater(what prose.Text, heat float64, where place, k *kitchen) {
	c.note(what, prose.Say("%s", fuelFor(heat, k, 1)), where.words(heat))
}

// words say from where to where water is heated.
func (p place) words(heatKJ float64) prose.Text {
	if p.snow {
		return prose.Say("%.0f kJ from snow of %s; water boils at %.1f °C here", heatKJ, units.Celsius(p.snowC), p.boilsAtC)
	}
	return prose.Say("%.0f kJ from water of %s; it boils at %.1f °C here", heatKJ, units.Celsius(p.startC), p.boilsAtC)
}

// noteMeal closes the account of a meal.
func (c *cook) noteMeal(m *Meal, k *kitchen) {
	if c.lines == nil || len(*c.lines) == 0 {
		return
	}
	total := func(what, figure, basis prose.Text) {
		*c.lines = append(*c.lines, Line{What: what, Figure: figure, Basis: basis, Total: true})
	}
	total(prose.Say("Fuel of the meal"), prose.Say("%s", m.FuelMass), prose.Say("%s gives %.1f kJ a gram, of which %.0f %% reach the pot; %s in calm air under a lid, %s in the open",
		k.fuel, heatingValue(k.fuel), 100*k.efficiency, m.FuelLow, m.FuelHigh))
	total(prose.Say("Water of the meal"), prose.Say("%s", m.FoodWater+m.OtherWater), prose.Say("%s into the food, %s for drinks and washing up", m.FoodWater, m.OtherWater))
	if m.Minutes > 0 {
		total(prose.Say("Until the last eater eats"), prose.Say("%.0f min", float64(m.Minutes)), prose.Plural(k.burners(),
			prose.Say("%d burner of %.0f W, the longest pot first, soaking off the flame in it; hot drinks and washing up come after", k.burners(), k.watts),
			prose.Say("%d burners of %.0f W, the longest pot first, soaking off the flame in it; hot drinks and washing up come after", k.burners(), k.watts)))
	}
}
