// Package bags decides what is packed together, in which size of bag, how
// allergens are kept apart, and what each bag is called.
//
// Start with Compute; it wants a canonical trip.
package bags

import (
	"fmt"

	"sumpter/domain/findings"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Result is every bag of the trip.
type Result struct {
	Bags     []Bag              `json:"bags"` // by the day they are first eaten from, stores first
	Findings []findings.Finding `json:"-"`
}

// Kind is what a bag is for.
type Kind string

// Kinds of bag.
const (
	MealBag  Kind = "meal"  // one dish of one meal of a cook group, for the pot or handed round
	StoreBag Kind = "store" // one food of a cook group, taken by the spoon at several meals of a leg
	SnackBag Kind = "snack" // one eater's snacks of a day or of several
	OwnBag   Kind = "own"   // one eater's part, sealed apart from what the others share
	// ReserveBag is one member's emergency reserve on top of all meals, carried
	// on all their days: its day is the last of them, and no dish uses it.
	ReserveBag Kind = "reserve"
)

// Bag is one packed, labelled, sealed unit.
type Bag struct {
	Key         string        `json:"key"`  // stable over re-planning: "d3 dinner g1 r7 b1 pot 1", "d4 store g1 f25 1"
	Code        string        `json:"code"` // what people read aloud
	Kind        Kind          `json:"kind"`
	Day         int           `json:"day"`      // first eaten from
	LastDay     int           `json:"last_day"` // eaten up
	Meal        trip.Meal     `json:"meal"`     // of its first use
	Group       trip.GroupID  `json:"group"`
	Member      trip.MemberID `json:"member,omitempty"` // for one eater only, who carries it
	Recipe      trip.RecipeID `json:"recipe,omitempty"` // of all its uses; 0: for different ones
	Place       trip.Place    `json:"place"`            // into the pot or onto the bowls, at its first use
	Eaters      int           `json:"eaters"`           // who eat from it at any use
	Reserve     bool          `json:"reserve"`          // not touched before unless there is need: a reserve, or snacks that are eaten last
	Leg         int           `json:"leg"`              // place in the legs on which it is first carried
	Part        int           `json:"part"`             // 1 of Parts, where one bag was too small
	Parts       int           `json:"parts"`
	Type        string        `json:"type"`     // bag type, trip.AsBought, or empty where the trip has none for it
	Uses        []Use         `json:"uses"`     // in the order of eating
	Contents    []Content     `json:"contents"` // by food: the sum of its uses
	Food        units.Mass    `json:"food_g"`   // sum of the contents
	Tare        units.Mass    `json:"tare_g"`   // stays as waste
	Volume      units.Volume  `json:"volume_ml"`
	VolumeKnown bool          `json:"volume_known"` // false: a bulk density was missing and a cautious one taken
	Kcal        units.Kcal    `json:"kcal"`
	Water       units.Volume  `json:"water_ml"`    // to add, what is poured off with it; 0 for a store, see its uses
	PourOff     units.Volume  `json:"pour_off_ml"` // of the water, poured off when done
	Minutes     units.Minutes `json:"minutes"`     // on the flame at that height
	Soak        units.Minutes `json:"soak_minutes"`
	Allergens   []Allergen    `json:"allergens"` // contains, may contain or unknown; worst of the contents, declared list order
	Crushable   bool          `json:"crushable"`
	Melts       bool          `json:"melts"`
	Double      bool          `json:"double"` // double-bagged
}

// Use is what one dish takes from a bag.
type Use struct {
	Day      int             `json:"day"`
	Meal     trip.Meal       `json:"meal"`
	Recipe   trip.RecipeID   `json:"recipe"`
	Batch    int             `json:"batch"` // which of the batches of the recipe in the slot, from 1
	Place    trip.Place      `json:"place"`
	Contents []Content       `json:"contents"`          // by food
	Shares   []Share         `json:"shares,omitempty"`  // at the bowl, by member; what goes into a pot is not shared out
	PotFor   []trip.MemberID `json:"pot_for,omitempty"` // who eats from the pot, by member
	Kcal     units.Kcal      `json:"kcal"`
	Water    units.Volume    `json:"water_ml"` // to add, what is poured off with it
	PourOff  units.Volume    `json:"pour_off_ml"`
}

// Share is one eater's part of what a dish takes from a bag.
type Share struct {
	Member trip.MemberID `json:"member"`
	Mass   units.Mass    `json:"mass_g"`
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

// Mass gives what the bag weighs when it is packed.
func (b *Bag) Mass() units.Mass { return b.Food + b.Tare }

// Left gives the food that is still in the bag on the morning of a day.
func (b *Bag) Left(day int) units.Mass {
	if day <= b.Day {
		return b.Food
	}
	var left units.Mass
	for i := range b.Uses {
		if b.Uses[i].Day >= day {
			left += b.Uses[i].Mass()
		}
	}
	return left
}

// On gives what the bag weighs on the back on the morning of a day.
func (b *Bag) On(day int) units.Mass { return b.Left(day) + b.Tare }

// EatenOn tells whether something in the bag is eaten on a day.
func (b *Bag) EatenOn(day int) bool { return len(b.UsesOn(day)) > 0 }

// UsesOn gives what is taken from the bag on a day.
func (b *Bag) UsesOn(day int) []Use {
	first := 0
	for first < len(b.Uses) && b.Uses[first].Day < day {
		first++
	}
	last := first
	for last < len(b.Uses) && b.Uses[last].Day == day {
		last++
	}
	return b.Uses[first:last]
}

// ByDish gives the bag as if what each dish takes from it were a bag of its
// own, with the key of the bag: what a bag of several dishes is to each of
// them. What the bag itself weighs stays with the first.
func (b *Bag) ByDish() []Bag {
	list := make([]Bag, len(b.Uses))
	for i, use := range b.Uses {
		part := *b
		part.Day, part.LastDay, part.Meal, part.Recipe, part.Place = use.Day, use.Day, use.Meal, use.Recipe, use.Place
		part.Uses, part.Contents, part.Food = b.Uses[i:i+1:i+1], use.Contents, use.Mass()
		part.Water, part.PourOff = use.Water, use.PourOff
		part.Kcal = use.Kcal
		if i > 0 {
			part.Tare = 0
		}
		list[i] = part
	}
	return list
}

// OnlyEater gives the one who eats from the bag, 0 if several do. A bag of the
// group may have only one eater too.
func (b *Bag) OnlyEater() trip.MemberID {
	if b.Member != 0 || b.Eaters != 1 || len(b.Uses) == 0 {
		return b.Member
	}
	if u := &b.Uses[0]; len(u.Shares) > 0 {
		return u.Shares[0].Member
	} else if len(u.PotFor) > 0 {
		return u.PotFor[0]
	}
	return 0
}

// Dish names the pot a use is for, as the keys of the bags of that pot begin:
// "d3 dinner g1 r7 b1".
func (u *Use) Dish(group trip.GroupID) string {
	return fmt.Sprintf("d%d %s g%d r%d b%d", u.Day, u.Meal, group, u.Recipe, u.Batch)
}

// Mass is what the dish takes from the bag.
func (u *Use) Mass() units.Mass {
	var sum units.Mass
	for _, c := range u.Contents {
		sum += c.Mass
	}
	return sum
}
