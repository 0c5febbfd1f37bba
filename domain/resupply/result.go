// Package resupply works out what waits where: the boxes at the points the
// leader uses, when each must be posted, in how many parcels, at what cost.
//
// Entry point (to be kept): Compute(t *trip.Trip, b bags.Result, c cooking.Result, legs []trip.Leg) Result,
// with t canonical.
package resupply

import (
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Result is every box of the trip.
type Result struct {
	Boxes    []Box              `json:"boxes"` // by leg; the first leg's food is carried from the start and has none
	Findings []findings.Finding `json:"-"`
}

// Box is what waits at a resupply point.
type Box struct {
	Point           trip.PointID `json:"point"`
	Leg             int          `json:"leg"`
	Bags            []string     `json:"bags"` // keys
	Fuel            []string     `json:"fuel"` // container keys bought or sent there
	FuelBoughtThere bool         `json:"fuel_bought_there"`
	Mass            units.Mass   `json:"mass_g"` // bags with tare
	Volume          units.Volume `json:"volume_ml"`
	Parcels         []Parcel     `json:"parcels"`
	Fees            units.Money  `json:"fees"`
	PickUp          units.Date   `json:"pick_up"`
	PostFrom        units.Date   `json:"post_from"` // earliest posting; unset: no limit known
	PostBy          units.Date   `json:"post_by"`   // latest
	Posted          bool         `json:"posted"`    // false: carried there by somebody
}

// Parcel is one package to post.
type Parcel struct {
	Bags   []string     `json:"bags"`
	Mass   units.Mass   `json:"mass_g"`
	Volume units.Volume `json:"volume_ml"`
}
