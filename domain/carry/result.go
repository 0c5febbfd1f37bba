// Package carry splits bags, gear and fuel over the crew so that nobody
// carries more than a fair share on any day, and says how far the split is
// from the best possible.
//
// Start with Compute; its only error is that of its context.
package carry

import (
	"cmp"

	"sumpter/domain/findings"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Result is who carries what, and what that weighs.
type Result struct {
	Stages   []Stage            `json:"stages"`  // stretches of days with one assignment
	Members  []Member           `json:"members"` // in the order of the canonical crew
	Findings []findings.Finding `json:"-"`
}

// Stage is a run of days on which the same people are there and no food comes
// in: within it every item has one carrier.
type Stage struct {
	Leg        int       `json:"leg"`
	FirstDay   int       `json:"first_day"`
	LastDay    int       `json:"last_day"`
	Items      []Item    `json:"items"`             // by kind and key
	Worst      float64   `json:"worst_share"`       // heaviest share of the first morning, load / capability
	WorstBound float64   `json:"worst_share_bound"` // no split can be below this
	Mean       float64   `json:"mean_share"`        // heaviest share of each day, weighted by its hours
	MeanBound  float64   `json:"mean_share_bound"`
	Proven     bool      `json:"proven"`
	HandOvers  int       `json:"hand_overs"`        // items that change carrier at its start
	DishPacks  float64   `json:"dish_packs"`        // in how many packs the bags of a dish lie in the mean, of dishes in several bags; 0: none is
	Fair       []float64 `json:"fair"`              // fair level of each day, load / capability: what each would carry if all could be cut up, beside those who hold more in any case
	Over       []Excess  `json:"over,omitempty"`    // who is over the fair level by more than 2 %, each on their worst morning
	Choices    []Choice  `json:"choices,omitempty"` // hand-overs against fairness, from the fewest on; none where nothing could stay

	// Aside are those who hold more than a fair load in any case, where the
	// shares of the choices leave them out.
	Aside []trip.MemberID `json:"aside,omitempty"`
}

// Choice is a split of a stage that none with as few hand-overs beats in
// fairness.
type Choice struct {
	HandOvers int                     `json:"hand_overs"` // things that were with another who is there and may carry them
	Must      int                     `json:"must"`       // things that have to change packs: their carrier is gone, or may no longer carry them
	Worst     float64                 `json:"worst_share"`
	Mean      float64                 `json:"mean_share"`
	Carriers  map[Thing]trip.MemberID `json:"-"`
	Taken     bool                    `json:"taken"` // the one of the stage
	Passed
}

// Passed is how far a split passes limits of packs. Where no split was found that
// keeps all, passing them by less counts before fairness.
type Passed struct {
	OverLimit units.Mass   `json:"over_limit_g"` // above load limits on the first morning, all packs together
	OverRoom  units.Volume `json:"over_room_ml"` // above the room of packs, all together
	OverPart  int          `json:"over_part"`    // packs with more of a group's dinners or fuel than one should hold
	together  int64        // in grams and what counts like them
}

// Any tells whether a limit is passed at all.
func (p Passed) Any() bool { return p.OverLimit > 0 || p.OverRoom > 0 || p.OverPart > 0 }

// NearlyAsLittleAs tells whether limits are passed by no more than another split
// passes them and a little that nobody feels, see NearlyFair.
func (p Passed) NearlyAsLittleAs(other Passed) bool {
	return nearlyAsLittle(p.together, other.together)
}

func nearlyAsLittle(over, least int64) bool { return float64(over) <= float64(least)*NearlyFair }

// Compare orders by how far limits are passed, the least first.
func (p Passed) Compare(other Passed) int { return cmp.Compare(p.together, other.together) }

// Text says how far limits are passed; it is empty where none is.
func (p Passed) Text() prose.Text {
	var parts []prose.Text
	if p.OverLimit > 0 {
		parts = append(parts, prose.Say("%s", p.OverLimit))
	}
	if p.OverRoom > 0 {
		parts = append(parts, prose.Say("%s", p.OverRoom))
	}
	if p.OverPart > 0 {
		parts = append(parts, prose.Plural(p.OverPart, prose.Say("one pack with too much of the dinners or fuel"), prose.Say("%d packs with too much of the dinners or fuel", p.OverPart)))
	}
	return prose.List(", ", parts)
}

// ItemKind is what kind of thing is carried.
type ItemKind string

// Kinds of things carried.
const (
	BagItem   ItemKind = "bag"
	GearItem  ItemKind = "gear"
	FuelItem  ItemKind = "fuel"
	WasteItem ItemKind = "waste" // wrappings of what was eaten on an earlier stage, carried until rubbish can be left
)

// Item is one thing and its carrier on a stage.
type Item struct {
	Kind    ItemKind      `json:"kind"`
	Key     string        `json:"key"`    // bag key, gear ID as text, container key, or waste key
	Mass    units.Mass    `json:"mass_g"` // on the first morning of the stage
	Carrier trip.MemberID `json:"carrier"`
	From    trip.MemberID `json:"from,omitempty"` // who carried it on the stage before; 0 for what comes new into the packs
	Why     prose.Text    `json:"why"`            // the constraint or reason that put it there
}

// HandedOver lists what somebody else carried on the stage before: the
// hand-overs of its first morning, those of who has gone of the evening before.
// Rubbish is left out: it stays where it is, and who leaves takes theirs along.
func (s *Stage) HandedOver() []Item {
	var list []Item
	for _, item := range s.Items {
		if item.Kind != WasteItem && item.From != 0 && item.From != item.Carrier {
			list = append(list, item)
		}
	}
	return list
}

// Member is one member's load over the days of the trip.
type Member struct {
	Member     trip.MemberID `json:"member"`
	Capability units.Mass    `json:"capability_g"` // carrying capability the shares are measured by
	Days       []Day         `json:"days"`         // one per day of the trip
}

// Day is one member's load on one morning.
type Day struct {
	Present   bool         `json:"present"`
	OwnKit    units.Mass   `json:"own_kit_g"`
	Food      units.Mass   `json:"food_g"` // bags not yet eaten, tare included
	Gear      units.Mass   `json:"gear_g"`
	Fuel      units.Mass   `json:"fuel_g"`
	Waste     units.Mass   `json:"waste_g"`   // tare of what was eaten
	Water     units.Mass   `json:"water_g"`   // to a dry camp, shown apart: not part of the share
	ToCook    units.Mass   `json:"to_cook_g"` // of that water, what the cook group cooks with; the rest the member drinks
	Load      units.Mass   `json:"load_g"`    // all but water
	Volume    units.Volume `json:"volume_ml"` // of shared things
	WasteRoom units.Volume `json:"waste_ml"`  // room of what was eaten's wrappings, pressed by hand, and of empty containers; not counted in Volume
	Share     float64      `json:"share"`     // Load / Capability
}
