// Package trip holds the nouns of one trip document, everything a leader
// enters and nothing that is computed. Validate says what stops a trip from
// being planned, where, and what to do about it.
//
// Every thing has an ID that stays when it is renamed or moved in a list; the
// plan depends on IDs, never on names or on the order of a list. The zero ID
// means "none".
package trip

import (
	"slices"

	"sumpter/domain/optional"
	"sumpter/domain/units"
)

// The IDs of the things in a trip are positive and unique within their kind.
type (
	// MemberID is a member of the crew.
	MemberID int64
	// GroupID is a cook group.
	GroupID int64
	// FoodID is a food.
	FoodID int64
	// RecipeID is a recipe.
	RecipeID int64
	// GearID is a piece of shared gear.
	GearID int64
	// PointID is a resupply point.
	PointID int64
)

// Trip is one document.
type Trip struct {
	Title    string       `json:"title"`
	Notes    string       `json:"notes,omitempty"`
	Start    units.Date   `json:"start"`    // the date of day 1
	Units    units.System `json:"units"`    // what the leader reads; never what is planned
	Currency string       `json:"currency"` // ISO 4217 code of every price
	Settings Settings     `json:"settings"`
	Posting  Posting      `json:"posting,omitzero"`
	Identity string       `json:"identity,omitempty"` // tells the trip from all others, whatever it is called; made with its file

	Groups  []CookGroup     `json:"groups"`
	Crew    []Member        `json:"crew"`
	Days    []Day           `json:"days"` // day 1 first; a day's number is its place
	Foods   []Food          `json:"foods"`
	Recipes []Recipe        `json:"recipes"`
	Menu    []Cell          `json:"menu"`
	Gear    []Gear          `json:"gear"`
	Fuels   []FuelContainer `json:"fuels"`
	Bags    []BagType       `json:"bag_types"`
	Points  []ResupplyPoint `json:"points"`
	Shops   []Shop          `json:"shops,omitempty"`
	Pins    []Pin           `json:"pins"`
	Kept    []KeptPacks     `json:"kept_packs,omitempty"`

	Progress Progress `json:"progress,omitzero"` // what has been done so far
}

// CookGroup is the members who share a stove and a pot.
type CookGroup struct {
	ID   GroupID `json:"id"`
	Name string  `json:"name"`
}

// Sex selects the equation for resting energy.
type Sex string

// What is known of a member's sex; not given uses the mean of both equations.
const (
	Female      Sex = "female"
	Male        Sex = "male"
	SexNotGiven Sex = "not given"
)

// Member is one person of the crew.
type Member struct {
	ID         MemberID                   `json:"id"`
	Name       string                     `json:"name"`
	Group      GroupID                    `json:"group"`
	Sex        Sex                        `json:"sex"`
	Age        int                        `json:"age_years"` // at the start of the trip
	BodyMass   units.Mass                 `json:"body_mass_g"`
	Height     units.Metres               `json:"height_m"` // 0: not given, Schofield is used
	GivenNeed  optional.Value[units.Kcal] `json:"given_need_kcal,omitzero"`
	Appetite   float64                    `json:"appetite"` // factor on the computed need, usually 1
	Strength   float64                    `json:"strength"` // factor on body mass as carrying capability, usually 1
	OwnKit     units.Mass                 `json:"own_kit_g"`
	PackRoom   units.Volume               `json:"pack_room_ml"`          // left for shared bags and gear beside own kit
	LoadLimit  optional.Value[units.Mass] `json:"load_limit_g,omitzero"` // hard limit, own kit included
	FirstDay   int                        `json:"first_day"`             // 1-based, both included; 0: the trip's first
	LastDay    int                        `json:"last_day"`              // 0: the trip's last
	Standby    bool                       `json:"standby,omitempty"`     // planned for no day: somebody who may join on the way
	Diets      []Diet                     `json:"diets,omitempty"`
	Allergies  []Allergy                  `json:"allergies,omitempty"`
	Dislikes   []FoodID                   `json:"dislikes,omitempty"`
	ProteinPer optional.Value[float64]    `json:"protein_g_per_kg,omitzero"` // own target instead of the trip's
	Medicine   string                     `json:"medicine,omitempty"`        // emergency medicine and where it is kept
	Notes      string                     `json:"notes,omitempty"`
}

// Allergy is an allergen a member must not be served.
type Allergy struct {
	Allergen Allergen `json:"allergen"`
	Severe   bool     `json:"severe"` // traces harm: shared pots and packs matter
}

// Terrain is the kind of ground underfoot; package walking of the science
// gives each its factor.
type Terrain string

// The kinds of ground of Soule and Goldman (1972) that matter to a hiker, and
// the trade's habits for the rest.
const (
	Road       Terrain = "road"
	DirtRoad   Terrain = "dirt road"
	Trail      Terrain = "trail"
	RoughTrail Terrain = "rough trail"
	LightBrush Terrain = "light brush"
	HeavyBrush Terrain = "heavy brush"
	Scree      Terrain = "scree"
	Bog        Terrain = "bog"
	Sand       Terrain = "sand"
	SoftSnow   Terrain = "soft snow"
)

// Day is one calendar day of the trip.
type Day struct {
	Name         string                      `json:"name,omitempty"` // where to where
	Distance     units.Metres                `json:"distance_m"`
	Ascent       units.Metres                `json:"ascent_m"`
	Descent      units.Metres                `json:"descent_m"`
	SteepDescent units.Metres                `json:"steep_descent_m"` // the part of Descent on slopes above 12 degrees
	Terrain      Terrain                     `json:"terrain"`
	MovingHours  optional.Value[units.Hours] `json:"moving_hours,omitzero"` // instead of the computed time
	CampHeight   units.Metres                `json:"camp_height_m"`         // where breakfast of the next day and dinner are cooked
	LunchHeight  units.Metres                `json:"lunch_height_m"`        // where lunch is cooked
	Low          units.Celsius               `json:"low_c"`                 // lowest air temperature of the day
	High         units.Celsius               `json:"high_c"`                // highest
	DryCamp      bool                        `json:"dry_camp"`              // no water at the camp: it is carried in
	SnowWater    bool                        `json:"snow_water"`            // water is melted from snow
	NoFlame      bool                        `json:"no_flame"`              // stoves are forbidden this day
	Meals        []Meal                      `json:"meals"`                 // eaten from the packs this day
	Notes        string                      `json:"notes,omitempty"`
}

// Meal is a kind of eating in the day; a slot is one meal of one cook group on
// one day. Snack is what each member carries and eats for themself.
type Meal string

// The meals in the order they are eaten. Snack comes along all day.
const (
	Breakfast Meal = "breakfast"
	Lunch     Meal = "lunch"
	Dinner    Meal = "dinner"
	Snack     Meal = "snack"
)

// Meals lists every meal in the order of the day.
func Meals() []Meal { return []Meal{Breakfast, Lunch, Dinner, Snack} }

// Cell is what the leader decided for one slot.
type Cell struct {
	Day    int     `json:"day"` // 1-based
	Meal   Meal    `json:"meal"`
	Group  GroupID `json:"group"`
	Dishes []Dish  `json:"dishes"` // none: an open slot
	Locked bool    `json:"locked"` // filling leaves it alone, even when empty
}

// Dish is one recipe served in a slot.
type Dish struct {
	Recipe   RecipeID     `json:"recipe"`
	For      []MemberID   `json:"for,omitempty"`      // none: everybody who eats in the slot
	Accepted []Acceptance `json:"accepted,omitempty"` // dangers the leader took on by hand in this very cell
}

// MeantFor picks those of a slot's eaters, in their order, whom the dish is
// for.
func (d *Dish) MeantFor(eaters []MemberID) []MemberID {
	if len(d.For) == 0 {
		return eaters
	}
	var list []MemberID
	for _, eater := range eaters {
		if slices.Contains(d.For, eater) {
			list = append(list, eater)
		}
	}
	return list
}

// Acceptance is the leader's decision, by hand, that a member may be served a
// food in one dish though its state for an allergy or diet speaks against it
// (the label was read, say). It stays a finding.
type Acceptance struct {
	Member MemberID `json:"member"`
	Food   FoodID   `json:"food"`
	Reason string   `json:"reason"`
}

// Pin ties a bag, a piece of gear or a fuel container to a member, or keeps it
// from one.
type Pin struct {
	Bag    string   `json:"bag,omitempty"`            // bag key of the plan; or
	Gear   GearID   `json:"gear,omitempty"`           // this gear; or
	Fuel   string   `json:"fuel_container,omitempty"` // container key of the plan
	Member MemberID `json:"member"`
	Forbid bool     `json:"forbid"` // not this member, instead of only this one
}
