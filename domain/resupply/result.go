// Package resupply works out what waits where: the boxes at the points the
// leader uses, when each must be posted, in how many parcels, at what cost.
//
// Start with Compute; it wants a canonical trip.
package resupply

import (
	"sumpter/domain/bags"
	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Result is every box of the trip.
type Result struct {
	Boxes    []Box              `json:"boxes"`   // by leg; the first leg's food is carried from the start and has none
	Choices  []Choice           `json:"choices"` // sets of points that no other set beats, cheapest first
	Findings []findings.Finding `json:"-"`
}

// Box is what waits at a resupply point.
type Box struct {
	Point           trip.PointID `json:"point"`
	Leg             int          `json:"leg"`
	Bags            []string     `json:"bags"`         // keys
	BoughtThere     []Bought     `json:"bought_there"` // what goes into the bags only there
	Fuel            []string     `json:"fuel"`         // container keys bought or sent there
	FuelBoughtThere bool         `json:"fuel_bought_there"`
	Mass            units.Mass   `json:"mass_g"` // bags with tare, less what is bought there
	Volume          units.Volume `json:"volume_ml"`
	Parcels         []Parcel     `json:"parcels"`
	Fees            units.Money  `json:"fees"`
	PickUp          units.Date   `json:"pick_up"`
	PostFrom        units.Date   `json:"post_from"`       // earliest posting; unset: no limit known
	PostBy          units.Date   `json:"post_by"`         // latest
	SendOn          units.Date   `json:"send_on"`         // the day it leaves home: the leader's, or the latest in time
	SendChosen      bool         `json:"send_chosen"`     // it is the leader's
	LiesThere       int          `json:"lies_there_days"` // from its arrival, if the post is slow, to pick-up
	Posted          bool         `json:"posted"`          // false: carried there by somebody
	Label           Label        `json:"label"`
	TurnBackBy      int          `json:"turn_back_by"` // last evening from which the food in the packs still reaches back to where it came from, at the same pace; 0: none
}

// Bought is food of a bag that is bought at the point and put in there.
type Bought struct {
	Bag  string      `json:"bag"` // key
	Food trip.FoodID `json:"food"`
	Mass units.Mass  `json:"mass_g"`
}

// Sent gives what a bag weighs in the box: with its tare, without what is
// bought at the point.
func (b *Box) Sent(bag *bags.Bag) units.Mass {
	mass := bag.Mass()
	for _, bought := range b.BoughtThere {
		if bought.Bag == bag.Key {
			mass -= bought.Mass
		}
	}
	return mass
}

// Parcel is one package to post.
type Parcel struct {
	Bags   []string     `json:"bags"`
	Mass   units.Mass   `json:"mass_g"` // of what is in it, the carton aside
	Volume units.Volume `json:"volume_ml"`
	Carton units.Volume `json:"carton_ml"`          // least volume of a carton that takes the bags
	Girth  units.Metres `json:"length_and_girth_m"` // of a cube of that volume; a carton twice as long as wide has 5 % less, flat ones have more
}

// Label is what is written on each parcel of a box, beside the day on which it
// is fetched. What nobody entered is empty.
type Label struct {
	To   []string `json:"to"`   // name, in whose care, address: a line each
	From []string `json:"from"` // where it goes back to
}

// Choice is a set of points to use. No other set is as good by all of money,
// heaviest food, food carried and detour, and better by one.
type Choice struct {
	Points       []trip.PointID `json:"points"`          // in the order of the days; none: all food is carried from the start
	Money        units.Money    `json:"money"`           // fees of visits and parcels
	HeaviestFood units.Mass     `json:"heaviest_food_g"` // for the meals of the whole group, on the morning it is most; a reserve is carried whichever points are used
	CarriedKgDay float64        `json:"carried_kg_days"` // food of all mornings added up
	DetourHours  units.Hours    `json:"detour_hours"`
	Current      bool           `json:"current"` // the points the leader uses now
	Beaten       bool           `json:"beaten"`  // listed only because it is the current one
	Recommended  bool           `json:"recommended"`
	Why          prose.Text     `json:"why,omitzero"` // of the recommended one
}
