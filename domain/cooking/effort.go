package cooking

import (
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Kitchen is what a cook group heats with, asked before there is a plan: how long a recipe would keep its burners, and what it would burn.
type Kitchen struct {
	trip *trip.Trip
	own  kitchen
}

// KitchenOf gathers a group's stoves and pots as Compute does.
func KitchenOf(t *trip.Trip, group trip.GroupID) *Kitchen {
	return &Kitchen{trip: t, own: kitchenOf(t, group)}
}

// Pot is a batch as far as the stove cares.
type Pot struct {
	Scale float64    // of all its portions together
	Dry   units.Mass // what is put into the pot, water apart
}

// Effort is what the batches of a recipe ask of a kitchen; washing up, drinks and melted snow come on top.
type Effort struct {
	Minutes units.Minutes // of flame, shared by the burners there are
	Fuel    units.Mass    // without reserve
	Rounds  int           // how often a pot is put on
}

// Effort tells what cooking a recipe at a meal would take. Cold dishes, days without flame and groups that cannot cook take nothing.
func (k *Kitchen) Effort(day int, meal trip.Meal, recipe *trip.Recipe, pots []Pot) Effort {
	if meal == trip.Snack || k.trip.Days[day-1].NoFlame || !k.own.canCook() || !Heated(recipe, meal) {
		return Effort{}
	}
	height := k.trip.CookHeight(day, meal)
	where, simmer := placeOf(&k.trip.Days[day-1], &k.trip.Settings, height), float64(SimmerAt(recipe, height))
	var e Effort
	minutes, heat := 0.0, 0.0
	for _, p := range pots {
		water := (recipe.Water + recipe.PourOff).Scale(p.Scale)
		rounds, _ := k.own.roundsOf(where, water, units.FromMillilitres(p.Dry.Grams()*gramsPerPotMil), simmer, 0)
		e.Rounds += len(rounds)
		for _, r := range rounds {
			minutes += r.flameMinutes(&k.own)
			heat += r.totalKJ()
		}
	}
	e.Minutes, e.Fuel = units.Minutes(minutes/float64(k.own.burners())), fuelFor(heat, &k.own, 1)
	return e
}
