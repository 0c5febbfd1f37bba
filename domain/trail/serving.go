package trail

import (
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Serving is what one member eats of one food out of one bag at one meal.
type Serving struct {
	Day    int
	Meal   trip.Meal
	Group  trip.GroupID
	Recipe trip.RecipeID
	Dish   string // key, as planned
	Bag    string // key
	Place  trip.Place
	Member trip.MemberID
	Food   trip.FoodID
	Mass   units.Mass
}
