// Package bags decides what is packed together, in which size of bag, how
// allergens are kept apart, and what each bag is called.
//
// Entry point (to be kept): Compute(t *trip.Trip, p portions.Result, c cooking.Result, legs []trip.Leg) Result,
// with t canonical.
package bags

import (
	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Result is every bag of the trip.
type Result struct {
	Bags     []Bag              `json:"bags"` // in the order they are eaten
	Findings []findings.Finding `json:"-"`
}

// Bag is one packed, labelled, sealed unit.
type Bag struct {
	Key         string        `json:"key"`  // stable over re-planning: "d3 dinner g1 r7 b1 pot 1"
	Code        string        `json:"code"` // what people read aloud
	Day         int           `json:"day"`  // eaten on
	Meal        trip.Meal     `json:"meal"`
	Group       trip.GroupID  `json:"group"`
	Member      trip.MemberID `json:"member,omitempty"` // for one eater only
	Recipe      trip.RecipeID `json:"recipe"`
	Place       trip.Place    `json:"place"` // into the pot or onto the bowls
	Eaters      int           `json:"eaters"`
	Leg         int           `json:"leg"`  // place in the legs
	Part        int           `json:"part"` // 1 of Parts, where one bag was too small
	Parts       int           `json:"parts"`
	Type        string        `json:"type"` // bag type, or "as bought"
	Contents    []Content     `json:"contents"`
	Food        units.Mass    `json:"food_g"` // sum of the contents
	Tare        units.Mass    `json:"tare_g"` // stays as waste
	Volume      units.Volume  `json:"volume_ml"`
	VolumeKnown bool          `json:"volume_known"` // false: a bulk density was missing and a cautious one taken
	Kcal        units.Kcal    `json:"kcal"`
	Water       units.Volume  `json:"water_ml"` // to add
	Minutes     units.Minutes `json:"minutes"`  // on the flame at that height
	Soak        units.Minutes `json:"soak_minutes"`
	Allergens   []Allergen    `json:"allergens"` // contains, may contain or unknown; worst of the contents, declared list order
	Crushable   bool          `json:"crushable"`
	Melts       bool          `json:"melts"`
	Double      bool          `json:"double"` // double-bagged
}

// Content is one food in a bag.
type Content struct {
	Food trip.FoodID `json:"food"`
	Mass units.Mass  `json:"mass_g"`
}

// Allergen is the state of one allergen in a bag.
type Allergen struct {
	Allergen trip.Allergen `json:"allergen"`
	Presence trip.Presence `json:"presence"`
}

// Mass gives what the bag weighs on the back.
func (b *Bag) Mass() units.Mass { return b.Food + b.Tare }
