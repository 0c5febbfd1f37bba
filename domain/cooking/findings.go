package cooking

import (
	"fmt"
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/portions"
	"sumpter/domain/prose"
	"sumpter/domain/science/water"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Limits beyond which a meal is worth a second look (design choice).
const (
	longMealMinutes = 75.0
	slowHeight      = 1.5  // times the minutes at sea level,
	slowMinutes     = 10.0 // and more minutes than at sea level
)

func (c *cook) lookAtKitchen(g int) {
	k, group := &c.kitchens[g], &c.trip.Groups[g]
	for _, stove := range k.guessed {
		c.tell(findings.Note, "stove-figures", findings.Place{Group: group.ID, Gear: stove.ID},
			prose.Say("%s has no power or efficiency; %.0f W and %.0f %% were taken.", stove.Name,
				orUsual(stove.PowerWatts, usualWatts), 100*orUsual(stove.Efficiency, usualEfficiency(k.fuel))),
			prose.Say("Common practice, no source."), prose.Say("Weigh the fuel before and after boiling one litre and enter the efficiency."))
	}
	for _, stove := range k.spares {
		c.tell(findings.Note, "stove-other-fuel", findings.Place{Group: group.ID, Gear: stove.ID},
			prose.Say("%s burns %s; %s is planned with %s alone.", stove.Name, stove.Fuel, group.Name, k.fuel),
			prose.Say("A meal is planned on one fuel."), prose.Say("Leave the stove at home, or take it as a spare and add its fuel by hand."))
	}
	if len(k.stoves) > 0 && !slices.Contains(trip.FuelKinds(), k.fuel) {
		c.tell(findings.MustFix, "fuel-unknown", findings.Place{Group: group.ID, Gear: k.stoves[0].ID},
			prose.Say("What %s burns is not known; its fuel was reckoned as canister gas.", k.stoves[0].Name),
			prose.Say("Heating values differ by more than two times."), prose.Say("Choose the fuel of the stove."))
	}
}

// lookAtFlameless names what cannot be cooked on a day without fires.
func (c *cook) lookAtFlameless(s *slot) {
	for _, batch := range s.batches {
		recipe := c.recipes[batch.Recipe]
		if recipe == nil || !recipe.NeedsFlame() {
			continue
		}
		place := s.place(c)
		place.Recipe = recipe.ID
		if c.once(fmt.Sprintf("flame %d %s %d %d", s.day, s.meal, s.group, recipe.ID)) {
			c.tell(findings.MustFix, "needs-flame", place,
				prose.Say("%s cannot be cooked at %s on day %d: no flame is allowed.", recipe.Name, s.meal, s.day),
				prose.Say("The day is marked as one without stoves. Follow the fire rules of the place."),
				prose.Say("Choose a recipe that can be made cold, or move this one to another day."))
		}
	}
	if c.trip.Days[s.day-1].SnowWater && c.once(fmt.Sprintf("snow %d", s.day)) {
		c.tell(findings.MustFix, "snow-without-flame", findings.Place{Day: s.day},
			prose.Say("Water comes from snow on day %d, but no flame is allowed to melt it.", s.day),
			prose.Say("Eating snow cools the body and does not replace drinking."), prose.Say("Find running water, or carry it in."))
	}
}

func (c *cook) lookAtNoKitchen(s *slot, hot []*portions.Batch) {
	k, group := &c.kitchens[s.group], &c.trip.Groups[s.group]
	hot = slices.DeleteFunc(hot, func(batch *portions.Batch) bool { return !c.recipes[batch.Recipe].NeedsFlame() })
	if len(hot) == 0 || !c.once(fmt.Sprintf("kitchen %d", s.group)) {
		return
	}
	place, why := s.place(c), prose.Say("Water must be boiled for this meal.")
	place.Recipe = hot[0].Recipe
	if len(k.stoves) > 0 {
		c.tell(findings.MustFix, "no-pot", place, prose.Say("%s has no pot but cooks from day %d on.", group.Name, s.day), why,
			prose.Say("Add a pot to the gear of the group, or choose meals that are eaten cold."))
		return
	}
	c.tell(findings.MustFix, "no-stove", place, prose.Say("%s has no stove but cooks from day %d on.", group.Name, s.day), why,
		prose.Say("Add a stove to the gear of the group, or choose meals that are eaten cold."))
}

// lookAtPot tells once for each recipe and group what is too large for a pot.
func (c *cook) lookAtPot(s *slot, batch *portions.Batch, recipe *trip.Recipe, pot *trip.Gear, rounds int) {
	if rounds < 2 || recipe.Simmer == 0 || !c.once(fmt.Sprintf("pot %d %d", s.group, recipe.ID)) {
		return
	}
	volume := batch.Water + batch.PourOff + inPot(batch)
	place := s.place(c)
	place.Recipe, place.Gear = recipe.ID, pot.ID
	c.tell(findings.LookAt, "pot-too-small", place,
		prose.Say("%s for %d eaters is %s, and %s holds %s: it takes %d rounds.", recipe.Name, len(batch.Portions),
			volume, pot.Name, usable(pot), rounds),
		prose.Say("A pot is filled to 85 %% of the brim (design choice)."),
		prose.Say("Bring a pot of %s or more, or split the group.", volume.Scale(1/potFill)))
}

func (c *cook) lookAtHeight(s *slot, recipe *trip.Recipe, simmer units.Minutes) {
	more := float64(simmer - recipe.Simmer)
	if more < slowMinutes || float64(simmer) < slowHeight*float64(recipe.Simmer) || !c.once(fmt.Sprintf("height %d", recipe.ID)) {
		return
	}
	place := s.place(c)
	place.Recipe = recipe.ID
	c.tell(findings.LookAt, "slow-at-height", place,
		prose.Say("%s simmers %.0f minutes on day %d instead of %.0f.", recipe.Name, float64(simmer), s.day, float64(recipe.Simmer)),
		prose.Say("Water boils cooler higher up (design choice on the boiling point)."), prose.Say("Soak it beforehand, cook it on a lower day, or choose something that only needs hot water."))
}

func (c *cook) lookAtMinutes(s *slot, minutes units.Minutes) {
	if minutes <= longMealMinutes || !c.once(fmt.Sprintf("minutes %d %s", s.group, s.meal)) {
		return
	}
	k := &c.kitchens[s.group]
	c.tell(findings.LookAt, "slow-meal", s.place(c),
		prose.Say("It takes %.0f minutes until the last eater of %s has %s on day %d.", float64(minutes), c.trip.Groups[s.group].Name, s.meal, s.day),
		prose.Plural(k.burners(), prose.Say("%d burner of %.0f W at %.0f %%.", k.burners(), k.watts, 100*k.efficiency),
			prose.Say("%d burners of %.0f W at %.0f %%.", k.burners(), k.watts, 100*k.efficiency)),
		prose.Say("Bring another stove and pot, a larger pot, or choose a quicker meal."))
}

func (c *cook) lookAtMelting(s *slot, litres, heatKJ float64) {
	k := &c.kitchens[s.group]
	minutes := heatKJ * 1000 / (k.watts * k.efficiency) / 60
	c.tell(findings.LookAt, "melting-snow", s.place(c),
		prose.Say("Melting %s of drinking water on day %d takes %s of fuel and %.0f minutes of a burner.", units.FromLitres(litres),
			s.day, fuelFor(heatKJ, k, 1), minutes),
		prose.Say("Ice takes 333.55 kJ/kg to melt."), prose.Say("Start early, keep a little water in the pot, and never melt snow with the stove inside a tent: carbon monoxide kills."))
}

func (c *cook) lookAtSnacks(p portions.Result) {
	for i := range p.Batches {
		b := &p.Batches[i]
		recipe := c.recipes[b.Recipe]
		if b.Meal != trip.Snack || recipe == nil || !recipe.NeedsFlame() || !c.once(fmt.Sprintf("snack %d", recipe.ID)) {
			continue
		}
		c.tell(findings.LookAt, "snack-needs-flame", findings.Place{Day: b.Day, Meal: b.Meal, Group: b.Group, Recipe: recipe.ID},
			prose.Say("%s is planned as a snack but has to be cooked; no fuel is reckoned for it.", recipe.Name),
			prose.Say("Snacks are eaten on the move."), prose.Say("Serve it at a meal, or choose a snack that is ready to eat."))
	}
}

func (c *cook) lookAtNoContainer(leg, group int, needed units.Mass) {
	k, g := &c.kitchens[group], &c.trip.Groups[group]
	c.tell(findings.MustFix, "no-fuel-container", findings.Place{Day: c.legs[leg].FirstDay, Group: g.ID},
		prose.Say("%s needs %s of %s from day %d to %d, and no size of container is known for it.", g.Name, needed, k.fuel,
			c.legs[leg].FirstDay, c.legs[leg].LastDay),
		prose.Say("Fuel is carried in whole containers."), prose.Say("Add the canisters or bottles you can buy to the trip's fuels."))
}

func (c *cook) lookAtCold(leg, group int) {
	k := &c.kitchens[group]
	if k.fuel != trip.Butane {
		return
	}
	for day := c.legs[leg].FirstDay; day <= c.legs[leg].LastDay; day++ {
		if low := c.trip.Days[day-1].Low; low < 0 {
			c.tell(findings.LookAt, "butane-in-frost", findings.Place{Day: day, Group: c.trip.Groups[group].ID},
				prose.Say("It may be %s on day %d; butane does not boil below 0 °C and the stove will not burn.", low, day),
				prose.Say("Butane boils at -0.5 °C."), prose.Say("Take canisters with propane in them, or liquid fuel."))
			return
		}
	}
}

func (c *cook) lookAtCarriedAhead(from int, entry LegFuel) {
	point := c.trip.Point(c.legs[entry.Leg].From)
	if point == nil {
		return
	}
	c.tell(findings.LookAt, "fuel-carried-ahead", findings.Place{Day: c.legs[from].FirstDay, Group: entry.Group, Point: point.ID},
		prose.Say("%s has no fuel: the %s of %s for days %d to %d are carried from day %d on.", point.Name, entry.Needed, entry.Fuel,
			c.legs[entry.Leg].FirstDay, c.legs[entry.Leg].LastDay, c.legs[from].FirstDay),
		prose.Say("The point neither sells fuel nor takes it. Fuel is not allowed in ordinary post."), prose.Say("Find out whether fuel can be bought near the point."))
}

func (c *cook) lookAtCeiling(d, capped int) {
	if capped == 0 {
		return
	}
	most := units.FromLitres(water.MostPerDay)
	c.tell(findings.LookAt, "water-ceiling", findings.Place{Day: d + 1},
		prose.Plural(capped,
			prose.Say("%d member would need more water on day %d than is good for anybody; it is held at %s a day.", capped, d+1, most),
			prose.Say("%d members would need more water on day %d than is good for anybody; it is held at %s a day.", capped, d+1, most)),
		prose.Say("US Army TB MED 507: more than 1.4 L an hour or 11.4 L a day can lower the blood's sodium dangerously."),
		prose.Say("Shorten the day, start before sunrise, rest in the shade at noon, and eat something salty."))
}

// lookAtHeat reminds once of all hot days, at the first of them.
func (c *cook) lookAtHeat() {
	first, hot, hottest := 0, 0, units.Celsius(0)
	for d := range c.trip.Days {
		if high := c.trip.Days[d].High; high >= hotDayFrom && c.movingHours(d) > 0 {
			hot++
			hottest = max(hottest, high)
			if first == 0 {
				first = d + 1
			}
		}
	}
	if hot > 0 {
		drink, spread := units.FromLitres(water.DrinkPerHour(float64(hottest), water.Moderate)), units.FromLitres(water.SpreadPerHour)
		c.tell(findings.Note, "hot-days", findings.Place{Day: first},
			prose.Plural(hot,
				prose.Say("One day is hot, up to %s: about %s an hour on the move, give or take %s.", hottest, drink, spread),
				prose.Say("%d days are hot, up to %s: about %s an hour on the move, give or take %s.", hot, hottest, drink, spread)),
			prose.Say("US Army TB MED 507. Only the air temperature is known; it was taken as a day in the shade."),
			prose.Say("Plan rests in the shade and know where water is; heat illness is an emergency."))
	}
}
