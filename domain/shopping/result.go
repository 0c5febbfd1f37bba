// Package shopping turns what the bags hold into whole packages to buy, by
// deadline, at least cost.
//
// Start with Compute; it wants a canonical trip.
package shopping

import (
	"sumpter/domain/findings"
	"sumpter/domain/optional"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Result is the whole shopping list.
type Result struct {
	Lines        []Line             `json:"lines"` // by food, place and deadline
	Fuel         []FuelLine         `json:"fuel"`
	Visits       []Visit            `json:"visits"`    // near home, then on the way
	Errands      []Errand           `json:"errands"`   // choices of shops near home, cheapest first; none where there is one shop
	Leftovers    []Leftover         `json:"leftovers"` // most energy first
	Cost         units.Money        `json:"cost"`      // food and fuel whose price is known
	Fees         units.Money        `json:"fees"`      // parcels and visits, to resupply points and shops
	Unpriced     int                `json:"unpriced"`  // lines whose price nobody gave
	PerPersonDay units.Money        `json:"per_person_day"`
	Findings     []findings.Finding `json:"-"`
}

// Line is one food: what is needed and what to buy for it.
type Line struct {
	Food       trip.FoodID  `json:"food"`
	Point      trip.PointID `json:"point,omitempty"` // bought there on the way; 0: near home
	Deadline   units.Date   `json:"deadline"`        // to be at home by; on the way: the day it is bought
	Needed     units.Mass   `json:"needed_g"`        // in bags
	FromHome   units.Mass   `json:"from_home_g"`
	Had        units.Mass   `json:"had_g,omitempty"` // bought already; never in a plan, only in the rest of a list
	Bought     units.Mass   `json:"bought_g"`        // to be bought
	Leftover   units.Mass   `json:"leftover_g"`      // FromHome + Had + Bought - Needed
	Buys       []Buy        `json:"buys"`
	Cost       units.Money  `json:"cost"`
	CostKnown  bool         `json:"cost_known"`
	BestProven bool         `json:"best_proven"` // no cheaper way of whole packages exists
}

// missing is what must still be bought.
func (l *Line) missing() units.Mass { return max(0, l.Needed-l.FromHome-l.Had) }

// Buy is a number of one package.
type Buy struct {
	Package int                         `json:"package"` // place in the food's packages; -1: no package known, loose mass
	Count   int                         `json:"count"`
	Net     units.Mass                  `json:"net_g"` // of one
	Shop    string                      `json:"shop,omitempty"`
	Each    optional.Value[units.Money] `json:"each,omitzero"` // what one costs; unknown: nobody gave a price
}

// Visit is one shop in which something is bought.
type Visit struct {
	Shop  string       `json:"shop"`            // as the list of shops has it; empty: any
	Point trip.PointID `json:"point,omitempty"` // stands there; 0: near home
	On    units.Date   `json:"on"`              // near home: shopping day, or the last day before on which the shop is open
	Lines int          `json:"lines"`           // packages of different kind
	Spent units.Money  `json:"spent"`           // as far as prices are known
	Fee   units.Money  `json:"fee"`
}

// FuelLine is canisters of one kind to buy at one place.
type FuelLine struct {
	Name      string        `json:"name"`
	Fuel      trip.FuelKind `json:"fuel"`
	Count     int           `json:"count"`
	Point     trip.PointID  `json:"point"` // bought there; 0: before the start
	Cost      units.Money   `json:"cost"`
	CostKnown bool          `json:"cost_known"`
}
