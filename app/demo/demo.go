// Package demo makes the demo trip: an invented club, eleven people, nine days
// on foot from hot low country to cold high camps, two resupply points. People,
// places, prices and labels are invented; what the food is made of comes from
// the library.
package demo

import (
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Trip gives a new copy of the demo trip, always the same.
func Trip() trip.Trip {
	t := trip.Trip{
		Title:    "Saltmarsh to the High Tarns",
		Notes:    "The Wandering Heron walking club, late summer. Everything here is invented: people, places, prices and what the labels say. Read your own labels.",
		Start:    date(2027, 8, 25),
		Units:    units.Metric,
		Currency: "EUR",
		Identity: "demo of the wandering heron", // the same in every copy
		Groups:   []trip.CookGroup{{ID: larch, Name: "Larch"}, {ID: rowan, Name: "Rowan"}},
		Crew:     crew(),
		Days:     route(),
		Foods:    foods(),
		Recipes:  recipes(),
		Gear:     gear(),
		Fuels:    fuels(),
		Bags:     bagTypes(),
		Points:   points(),
		Shops:    shops(),
		Posting:  posting(),
	}
	t.Menu = menu(t.Recipes)
	t.Settings = settings(t.Recipes)
	return t
}

func settings(list []trip.Recipe) trip.Settings {
	s := trip.DefaultSettings()
	s.FillOpenSlots = false
	s.RepeatGap = 4
	s.ShoppingDay, s.PackingNight = date(2027, 8, 19), date(2027, 8, 20)
	s.Budget = optional.Of(units.Money(95000))
	s.Helpers = 4
	s.ColdShare = 0.05
	s.ReserveDays, s.ReserveRecipe = 0.5, named(list, "Salted cashew and raisin mix")
	return s
}

func date(year, month, day int) units.Date {
	d, err := units.NewDate(year, month, day)
	if err != nil {
		panic("demo: " + err.Error())
	}
	return d
}

func recipes() []trip.Recipe {
	var list []trip.Recipe
	add := func(dishes []dish, low, high float64, meals ...trip.Meal) {
		for _, d := range dishes {
			list = append(list, d.recipe(trip.RecipeID(len(list)+1), low, high, meals...))
		}
	}
	add(breakfasts(), 0.6, 1.7, trip.Breakfast)
	add(lunches(), 0.6, 1.7, trip.Lunch)
	add(dinners(), 0.6, 1.7, trip.Dinner)
	add(treats(), 0.8, 1.4, trip.Dinner, trip.Breakfast)
	add(snacks(), 0.4, 2.0, trip.Snack)
	return list
}

// named finds a recipe; a name that is not there is a mistake in this package.
func named(list []trip.Recipe, name string) trip.RecipeID {
	for i := range list {
		if list[i].Name == name {
			return list[i].ID
		}
	}
	panic("demo: no recipe is called " + name)
}
