package trip

import (
	"slices"

	"sumpter/domain/units"
)

// Recipe is a meal for one standard eater.
type Recipe struct {
	ID          RecipeID      `json:"id"`
	Name        string        `json:"name"`
	Meals       []Meal        `json:"meals"` // where it may be served
	Ingredients []Ingredient  `json:"ingredients"`
	Water       units.Volume  `json:"water_ml"`       // into the pot or bowl per standard eater, stays in the food
	PourOff     units.Volume  `json:"pour_off_ml"`    // boiled as well and poured away
	Simmer      units.Minutes `json:"simmer_minutes"` // on the flame after the boil, at sea level
	Soak        units.Minutes `json:"soak_minutes"`   // off the flame
	Pulses      bool          `json:"pulses"`         // dry beans and lentils: height slows them more
	ColdOK      bool          `json:"cold_ok"`        // can be made with cold water, without flame
	Method      []string      `json:"method"`
	Staple      string        `json:"staple,omitempty"`  // rice, pasta, oats: so that they alternate
	Texture     string        `json:"texture,omitempty"` // soup, mash, crunchy
	MinScale    float64       `json:"min_scale"`         // smallest portion people eat, as a part of the standard
	MaxScale    float64       `json:"max_scale"`         // largest
	Notes       string        `json:"notes,omitempty"`
}

// NeedsFlame tells whether the recipe cannot be made without a stove.
func (r *Recipe) NeedsFlame() bool {
	return !r.ColdOK && (r.Water > 0 || r.PourOff > 0 || r.Simmer > 0)
}

// Role is how an ingredient follows the size of a portion.
type Role string

// Roles of an ingredient.
const (
	Base    Role = "base"     // grows with the eater's appetite
	ToTaste Role = "to taste" // the same for each eater
)

// Place is where an ingredient meets the others.
type Place string

// Where an ingredient goes: into the shared pot, or into each eater's bowl.
const (
	InPot  Place = "pot"
	AtBowl Place = "bowl"
)

// Ingredient is a food in a recipe.
type Ingredient struct {
	Food   FoodID     `json:"food"`
	Amount units.Mass `json:"amount_g"` // per standard eater, as carried
	Role   Role       `json:"role"`
	Place  Place      `json:"place"`
	Swaps  []Swap     `json:"swaps,omitempty"` // tried in order for who cannot eat the food
}

// Swap replaces an ingredient for those who cannot eat it.
type Swap struct {
	Food   FoodID     `json:"food"`     // 0: leave it out
	Amount units.Mass `json:"amount_g"` // per standard eater
	ForAll bool       `json:"for_all"`  // one pot: if one eater needs it, everybody in the slot gets it
}

// SwapsForAll tells whether one eater's need may change the pot of all.
func (r *Recipe) SwapsForAll() bool {
	return slices.ContainsFunc(r.Ingredients, func(part Ingredient) bool {
		return slices.ContainsFunc(part.Swaps, func(swap Swap) bool { return swap.ForAll })
	})
}
