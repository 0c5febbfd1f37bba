// Package menu decides what each eater is served in each slot: the leader's
// cells, and what is proposed for slots left open, with the swaps each diet and
// allergy takes. Nobody is served what their allergy or diet forbids, unless
// the leader accepted it by hand in that very cell.
//
// Start with Resolve; it wants a canonical trip. Taster tries recipes without a
// slot.
package menu

import (
	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// Result is the menu of the whole trip.
type Result struct {
	Slots    []Slot             `json:"slots"` // by day, meal, group; only where somebody eats from the packs
	Findings []findings.Finding `json:"-"`
}

// Slot is one meal of one cook group on one day.
type Slot struct {
	Day      int             `json:"day"`
	Meal     trip.Meal       `json:"meal"`
	Group    trip.GroupID    `json:"group"`
	Eaters   []trip.MemberID `json:"eaters"`
	Proposed bool            `json:"proposed"` // filled by the program, not by the leader
	Dishes   []Dish          `json:"dishes"`
}

// Dish is one recipe in a slot, cooked in one or more batches.
type Dish struct {
	Recipe  trip.RecipeID `json:"recipe"`
	Batches []Batch       `json:"batches"` // eaters with the same pot share a batch; largest first
}

// Batch is what is cooked together: the pot holds the same foods for all.
type Batch struct {
	Servings []Serving `json:"servings"` // by member
}

// Serving is what one eater gets of a dish, before it is sized.
type Serving struct {
	Member trip.MemberID `json:"member"`
	Parts  []Part        `json:"parts"` // in the order of the recipe
}

// Part is one food in a serving.
type Part struct {
	Ingredient int         `json:"ingredient"` // place in the recipe
	Food       trip.FoodID `json:"food"`       // after swaps
	Swapped    bool        `json:"swapped"`
	Accepted   bool        `json:"accepted"` // only because the leader took it on by hand
}
