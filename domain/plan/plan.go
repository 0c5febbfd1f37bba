// Package plan runs the stages from needs to packing on a trip, repeats those
// that depend on each other until the heaviest change is small, and gathers
// what the leader must know. A trip goes in, a plan comes out; the same trip
// always gives the same plan.
//
// Start with Make; the only error it returns is that of its context.
package plan

import (
	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	"sumpter/domain/menu"
	"sumpter/domain/needs"
	"sumpter/domain/packing"
	"sumpter/domain/portions"
	"sumpter/domain/resupply"
	"sumpter/domain/shopping"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
)

// Plan is everything the program worked out from one trip.
type Plan struct {
	// Trip is the canonical copy the plan was made from: lists by ID.
	Trip *trip.Trip `json:"-"`

	Legs     []trip.Leg      `json:"legs"`
	Needs    needs.Result    `json:"needs"`
	Menu     menu.Result     `json:"menu"`
	Portions portions.Result `json:"portions"`
	Spoilage spoilage.Result `json:"spoilage"`
	Cooking  cooking.Result  `json:"cooking"`
	Bags     bags.Result     `json:"bags"`
	Resupply resupply.Result `json:"resupply"`
	Carry    carry.Result    `json:"carry"`
	Shopping shopping.Result `json:"shopping"`
	Packing  packing.Result  `json:"packing"`

	Rounds   int                `json:"rounds"`  // how often needs to carry were worked out
	Settled  bool               `json:"settled"` // the last round changed no load by 1 % or more
	Change   float64            `json:"change"`  // largest change of a load in the last round, as a share
	Findings []findings.Finding `json:"findings"`
}
