package resupply

import (
	"sumpter/domain/bags"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// sent is a bag of a leg as far as it is sent: without what a shop at the
// point sells.
type sent struct {
	bag     *bags.Bag
	mass    units.Mass
	bought  []Bought
	nothing bool // all of it is bought there
}

func (s sent) piece() piece { return piece{s.mass, s.bag.Volume} }

// sentOf parts what is sent to a point from what is bought there.
func sentOf(t *trip.Trip, point *trip.ResupplyPoint, held []*bags.Bag) []sent {
	sold := t.FoodsSoldAt(point.ID)
	list := make([]sent, len(held))
	for i, bag := range held {
		s := sent{bag: bag, mass: bag.Mass()}
		for _, content := range bag.Contents {
			if sold[content.Food] {
				s.bought = append(s.bought, Bought{bag.Key, content.Food, content.Mass})
				s.mass -= content.Mass
			}
		}
		s.nothing = len(s.bought) > 0 && len(s.bought) == len(bag.Contents)
		list[i] = s
	}
	return list
}

// PackedAtHome gives the bags of packing night: without what is bought on the
// way, and without bags that hold nothing else.
func (r *Result) PackedAtHome(all []bags.Bag) []bags.Bag {
	type bagFood struct {
		bag  string
		food trip.FoodID
	}
	bought := map[bagFood]bool{}
	for _, box := range r.Boxes {
		for _, b := range box.BoughtThere {
			bought[bagFood{b.Bag, b.Food}] = true
		}
	}
	if len(bought) == 0 {
		return all
	}
	var list []bags.Bag
	for _, bag := range all {
		var kept []bags.Content
		for _, content := range bag.Contents {
			if bought[bagFood{bag.Key, content.Food}] {
				bag.Food -= content.Mass
			} else {
				kept = append(kept, content)
			}
		}
		if bag.Contents = kept; len(kept) > 0 {
			list = append(list, bag)
		}
	}
	return list
}
