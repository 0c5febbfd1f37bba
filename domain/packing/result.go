// Package packing plans the packing night: stations, the order of bags that
// keeps allergens apart and changes foods least, and how long it takes.
//
// Start with Compute; it wants a canonical trip.
package packing

import (
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Result is the packing night.
type Result struct {
	Rounds   []Round            `json:"rounds"`  // in order; surfaces and hands are cleaned between two
	Bulk     []Bulk             `json:"bulk"`    // one food at a time into many bags, in the order of the rounds
	Minutes  units.Minutes      `json:"minutes"` // with the helpers there are
	Findings []findings.Finding `json:"-"`
}

// Round is a run of bags that may be packed on the same surface.
type Round struct {
	Name       prose.Text      `json:"name"`    // "without peanuts, nuts, gluten", ...
	Table      int             `json:"table"`   // from 1; on another table, with tools of its own, what no order keeps apart
	FreeOf     []trip.Allergen `json:"free_of"` // allergies of the crew that no bag of the round touches
	CleanFirst bool            `json:"clean_first"`
	SetAside   []Aside         `json:"set_aside,omitempty"` // of foods that an earlier round soils, taken out clean before that
	Steps      []Step          `json:"steps"`
	Minutes    units.Minutes   `json:"minutes"` // with the helpers there are, cleaning included
}

// Aside is a food that is put by, closed, for a cleaner round than that which
// opens it.
type Aside struct {
	Food   trip.FoodID `json:"food"`
	Mass   units.Mass  `json:"mass_g"`
	Before int         `json:"before"` // place in Rounds of the round that soils it
}

// Step is one bag at one station.
type Step struct {
	Station Station `json:"station"`
	Bag     string  `json:"bag"` // key
}

// Bulk is one food weighed into many bags in one go.
type Bulk struct {
	Round int         `json:"round"` // place in Rounds
	Food  trip.FoodID `json:"food"`
	Total units.Mass  `json:"total_g"`
	Into  []Weighing  `json:"into"`
}

// Weighing is one portion of a bulk food.
type Weighing struct {
	Bag  string     `json:"bag"` // key
	Mass units.Mass `json:"mass_g"`
}
