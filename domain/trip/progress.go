package trip

import (
	"slices"

	"sumpter/domain/optional"
	"sumpter/domain/units"
)

// Progress is what has been done of the plan so far. It never changes what was
// planned: bags are named by their key, so that what was noted stays with its
// bag when the trip is planned anew.
type Progress struct {
	Purchases    []Purchase   `json:"purchases,omitempty"`
	Packed       []PackedBag  `json:"packed,omitempty"`
	Ends         []BagEnd     `json:"ends,omitempty"`
	PartsGone    []PartGone   `json:"parts_gone,omitempty"`    // out of bags that are still there
	FuelNotes    []FuelNote   `json:"fuel_notes,omitempty"`    // what containers of fuel were found to hold
	MissingBoxes []PointID    `json:"missing_boxes,omitempty"` // where the box did not come
	CrewChanges  []CrewChange `json:"crew_changes,omitempty"`  // who left or joined on the way, other than planned
	Replans      []Replan     `json:"replans,omitempty"`       // what was decided on the way
}

// Purchase is something bought for the trip: packages of a food, fuel
// containers, or anything else the crew shares.
type Purchase struct {
	Food  FoodID                      `json:"food,omitempty"`           // this food; or
	Fuel  string                      `json:"fuel_container,omitempty"` // containers of this name; or
	Other string                      `json:"other,omitempty"`          // what it is, in words
	Net   units.Mass                  `json:"net_g"`                    // of one package of food, else 0
	Shop  string                      `json:"shop,omitempty"`
	Count int                         `json:"count"`
	Paid  optional.Value[units.Money] `json:"paid,omitzero"`     // for all of them together
	By    MemberID                    `json:"paid_by,omitempty"` // who paid; 0: not noted
}

// PackedBag is what packing night did to one bag.
type PackedBag struct {
	Bag     string     `json:"bag"`               // bag key of the plan
	Weighed []Weighing `json:"weighed,omitempty"` // foods that are in, as the scale showed them
	Done    bool       `json:"done"`              // filled, closed and labelled; what was not weighed is in as planned
	InBox   PointID    `json:"in_box,omitempty"`  // checked into the box for this point; or
	InPack  MemberID   `json:"in_pack,omitempty"` // into this member's pack; neither: not checked yet
}

// Weighing is what the scale showed of one food in a bag.
type Weighing struct {
	Food FoodID     `json:"food"`
	Mass units.Mass `json:"mass_g"`
}

// End is what became of a bag.
type End string

// What may become of a bag on the trail.
const (
	Eaten      End = "eaten"
	ThrownAway End = "thrown away"
	Lost       End = "lost"
	TakenAlong End = "taken along" // by a member who left
	NotPacked  End = "not packed"  // left at home: it never was in a pack or box
)

// BagEnd says what became of a bag, and when.
type BagEnd struct {
	Bag string `json:"bag"` // bag key of the plan
	End End    `json:"end"`
	Day int    `json:"day"` // 1-based
}

// PartGone is food that is gone out of a bag whose rest is still there.
type PartGone struct {
	Bag  string     `json:"bag"`    // bag key of the plan
	Day  int        `json:"day"`    // 1-based; taken from what is eaten on this day and later
	End  End        `json:"end"`    // what became of it
	Mass units.Mass `json:"mass_g"` // of food, wrapping aside
}

// FuelNote is what a container of fuel was found to hold on a morning. Nothing
// in it: empty, broken or lost.
type FuelNote struct {
	Container string     `json:"fuel_container"` // container key of the plan
	Day       int        `json:"day"`            // 1-based, before the day's first meal
	Left      units.Mass `json:"left_g"`
}

// PackedBag finds what packing night did to a bag, or nil.
func (p *Progress) PackedBag(key string) *PackedBag {
	for i := range p.Packed {
		if p.Packed[i].Bag == key {
			return &p.Packed[i]
		}
	}
	return nil
}

// BagEnd finds what became of a bag, or nil if it is still there.
func (p *Progress) BagEnd(key string) *BagEnd {
	for i := range p.Ends {
		if p.Ends[i].Bag == key {
			return &p.Ends[i]
		}
	}
	return nil
}

// WeighedMass gives what the scale showed of a food, if that was noted.
func (b *PackedBag) WeighedMass(food FoodID) (units.Mass, bool) {
	for _, w := range b.Weighed {
		if w.Food == food {
			return w.Mass, true
		}
	}
	return 0, false
}

// Tidy takes references to what is no longer in the trip out of its progress,
// its boxes and its shops. The money stays: what was bought of a food that is
// gone becomes something else that was bought, under the name the food had. A
// shop whose resupply point is gone is no longer used.
func (t *Trip) Tidy(before *Trip) {
	t.tidyProgress(before)
	t.tidyKept()
	for i := range t.Points {
		s := &t.Points[i].Sending
		if s.Collector != 0 && t.Member(s.Collector) == nil {
			s.Collector = 0
		}
		if s.Sender != 0 && t.Member(s.Sender) == nil {
			s.Sender = 0
		}
	}
	for i := range t.Shops {
		if s := &t.Shops[i]; s.Point != 0 && t.Point(s.Point) == nil {
			s.Point, s.Use = 0, false
		}
	}
}

func (t *Trip) tidyProgress(before *Trip) {
	p := &t.Progress
	for i := range p.Purchases {
		bought := &p.Purchases[i]
		if bought.By != 0 && t.Member(bought.By) == nil {
			bought.By = 0
		}
		if bought.Food == 0 || t.Food(bought.Food) != nil {
			continue
		}
		bought.Other = "food"
		if food := before.Food(bought.Food); food != nil {
			bought.Other = food.Name
		}
		bought.Food, bought.Net = 0, 0
	}
	for i := range p.Packed {
		bag := &p.Packed[i]
		bag.Weighed = orNil(slices.DeleteFunc(bag.Weighed, func(w Weighing) bool { return t.Food(w.Food) == nil }))
		if bag.InBox != 0 && t.Point(bag.InBox) == nil {
			bag.InBox = 0
		}
		if bag.InPack != 0 && t.Member(bag.InPack) == nil {
			bag.InPack = 0
		}
	}
	p.MissingBoxes = orNil(slices.DeleteFunc(p.MissingBoxes, func(id PointID) bool { return t.Point(id) == nil }))
	p.Ends = orNil(slices.DeleteFunc(p.Ends, func(e BagEnd) bool { return e.Day > len(t.Days) }))
	p.PartsGone = orNil(slices.DeleteFunc(p.PartsGone, func(g PartGone) bool { return g.Day > len(t.Days) }))
	p.FuelNotes = orNil(slices.DeleteFunc(p.FuelNotes, func(f FuelNote) bool { return f.Day > len(t.Days) }))
	t.tidyTheWay()
}

// orNil makes an empty list absent, as files give it back.
func orNil[T any](list []T) []T {
	if len(list) == 0 {
		return nil
	}
	return list
}
