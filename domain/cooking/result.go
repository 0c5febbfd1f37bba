// Package cooking works out water, fuel and minutes for each slot at its
// height, the fuel to carry on each leg, and the water each member needs.
//
// Start with Compute; it wants a canonical trip.
package cooking

import (
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Result is the cooking of the whole trip.
type Result struct {
	Meals    []Meal             `json:"meals"`               // by day, meal, group; snacks need no cooking
	Fuel     []LegFuel          `json:"fuel"`                // by leg, group, fuel
	Water    []Water            `json:"water"`               // by day and member
	DryCamps []DryCamp          `json:"dry_camps,omitempty"` // by day and group
	Findings []findings.Finding `json:"-"`
}

// Meal is the cooking of one slot.
type Meal struct {
	Day           int           `json:"day"`
	Meal          trip.Meal     `json:"meal"`
	Group         trip.GroupID  `json:"group"`
	Height        units.Metres  `json:"height_m"`
	BoilsAt       units.Celsius `json:"boils_at_c"`
	FoodWater     units.Volume  `json:"food_water_ml"`  // into pot and bowls, poured-off water included
	OtherWater    units.Volume  `json:"other_water_ml"` // hot drinks and washing up
	Boils         int           `json:"boils"`          // how often a pot is brought to the boil
	Minutes       units.Minutes `json:"minutes"`        // until the last eater eats, with the stoves there are
	SimmerMinutes units.Minutes `json:"simmer_minutes"` // at this height
	Fuel          trip.FuelKind `json:"fuel"`
	FuelMass      units.Mass    `json:"fuel_g"`      // no reserve
	FuelLow       units.Mass    `json:"fuel_low_g"`  // calm, lid
	FuelHigh      units.Mass    `json:"fuel_high_g"` // exposed
	Cold          bool          `json:"cold"`        // made without flame
}

// LegFuel is what a cook group carries of one fuel on one leg.
type LegFuel struct {
	Leg        int           `json:"leg"` // place in the legs
	Group      trip.GroupID  `json:"group"`
	Fuel       trip.FuelKind `json:"fuel"`
	Needed     units.Mass    `json:"needed_g"` // reserve included
	Containers []Container   `json:"containers"`
}

// Container is one canister or bottle to carry, and the morning from which it
// is empty.
type Container struct {
	Key       string       `json:"key"` // stable: "leg1 group2 gas mix 1"
	Name      string       `json:"name"`
	Fuel      units.Mass   `json:"fuel_g"` // in it at the start of the leg
	Empty     units.Mass   `json:"empty_g"`
	Volume    units.Volume `json:"volume_ml"`
	EmptyFrom int          `json:"empty_from"` // day on whose morning it is empty; 0: not within the leg

	// Ahead marks a full container on its way to a later leg whose point has no
	// fuel. Its own mass is then counted in Fuel and Empty is 0, since nothing of
	// it is waste yet; the later leg holds it again, as Brought.
	Ahead   bool `json:"ahead,omitempty"`
	Brought bool `json:"brought,omitempty"` // not bought or sent for this leg: it came along from an earlier one
}

// Water is what one member drinks on one day.
type Water struct {
	Day          int           `json:"day"`
	Member       trip.MemberID `json:"member"`
	Drinking     units.Volume  `json:"drinking_ml"`
	AtCeiling    bool          `json:"at_ceiling"`       // held at the published ceiling
	CarriedDrink units.Volume  `json:"carried_drink_ml"` // to a dry camp: what they drink there until there is water again
}

// DryCamp is what a cook group cooks with at a camp without water, beside what
// each drinks. How much of it each carries there is part of the loads.
type DryCamp struct {
	Day     int          `json:"day"`
	Group   trip.GroupID `json:"group"`
	Cooking units.Volume `json:"cooking_ml"` // of the evening and the next morning, with what is lost
}
