// Package portions sizes every serving so that each member's day meets the
// need within the bounds of the trip, in amounts a kitchen scale can weigh,
// with sums that agree exactly.
//
// Start with Compute; it wants a canonical trip.
package portions

import (
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Result is the sized menu of the whole trip.
type Result struct {
	Batches  []Batch            `json:"batches"`           // by day, meal, group, dish, batch
	Intakes  []Intake           `json:"intakes"`           // members in the order of the canonical crew
	Reserve  []Reserve          `json:"reserve,omitempty"` // of each member, where the trip asks for one; package reserve makes it
	Findings []findings.Finding `json:"-"`
}

// Batch is portions added up: what is cooked together, or for snacks what is
// handed out together.
type Batch struct {
	Day      int           `json:"day"`
	Meal     trip.Meal     `json:"meal"`
	Group    trip.GroupID  `json:"group"`
	Dish     int           `json:"dish"`  // place in the slot
	Batch    int           `json:"batch"` // place in the dish
	Recipe   trip.RecipeID `json:"recipe"`
	Portions []Portion     `json:"portions"`          // by member
	Seconds  []Amount      `json:"seconds,omitempty"` // in the pot above the portions, for second helpings: nobody's intake counts it
	Totals   []Amount      `json:"totals"`            // exact sums of portions and seconds, by place and food
	Water    units.Volume  `json:"water_ml"`          // recipe water for these portions and seconds
	PourOff  units.Volume  `json:"pour_off_ml"`
}

// Portion is the grams one eater gets of a batch.
type Portion struct {
	Member  trip.MemberID `json:"member"`
	Scale   float64       `json:"scale"` // against the standard eater
	Amounts []Amount      `json:"amounts"`
	Kcal    units.Kcal    `json:"kcal"`
}

// Amount is a carried mass of one food, for the pot or for the bowl.
type Amount struct {
	Food  trip.FoodID `json:"food"`
	Place trip.Place  `json:"place"`
	Mass  units.Mass  `json:"mass_g"`
}

// Intake is what one member eats from the packs, day by day.
type Intake struct {
	Member trip.MemberID `json:"member"`
	Days   []DayIntake   `json:"days"` // one per day of the trip
}

// DayIntake is one member's day against its target. Unknown counts foods
// whose figure for a nutrient is not known: the sum is then a lower bound.
type DayIntake struct {
	Food                                                                 units.Mass `json:"food_g"`
	Kcal                                                                 units.Kcal `json:"kcal"`
	ProteinGrams                                                         float64    `json:"protein_g"`
	FatGrams                                                             float64    `json:"fat_g"`
	CarbGrams                                                            float64    `json:"available_carb_g"` // fibre not included
	FibreGrams                                                           float64    `json:"fibre_g"`
	SodiumMilligrams                                                     float64    `json:"sodium_mg"`
	UnknownProtein, UnknownFat, UnknownCarb, UnknownFibre, UnknownSodium int
}

// Reserve is the emergency reserve of one member, who carries it.
type Reserve struct {
	Member     trip.MemberID `json:"member"`
	Kcal       units.Kcal    `json:"kcal"` // asked for
	FirstDay   int           `json:"first_day"`
	LastDay    int           `json:"last_day"`
	Kept       []KeptSnacks  `json:"kept,omitempty"`   // snacks of the plan that are eaten last
	Recipe     trip.RecipeID `json:"recipe,omitempty"` // of what is packed on top of all meals
	Packed     []Amount      `json:"packed,omitempty"` // by ingredient
	PackedKcal units.Kcal    `json:"packed_kcal"`
}

// KeptSnacks are the snacks of the last days of a leg, which are not touched
// before unless they are needed.
type KeptSnacks struct {
	Leg     int        `json:"leg"` // place in the legs
	FromDay int        `json:"from_day"`
	LastDay int        `json:"last_day"`
	Kcal    units.Kcal `json:"kcal"`
}

// Mass is what is packed on top.
func (r *Reserve) Mass() units.Mass {
	var sum units.Mass
	for _, a := range r.Packed {
		sum += a.Mass
	}
	return sum
}
