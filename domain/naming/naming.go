// Package naming calls members, foods and what is carried by the names the
// leader gave them, for the checks, which find them by number; what is not in
// the trip is told as such.
package naming

import (
	"strconv"

	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Member is a member's name.
func Member(t *trip.Trip, id trip.MemberID) prose.Text {
	if m := t.Member(id); m != nil {
		return prose.Verbatim(m.Name)
	}
	return prose.Say("somebody who is not in the crew")
}

// Food is a food's name.
func Food(t *trip.Trip, id trip.FoodID) prose.Text {
	if food := t.Food(id); food != nil {
		return prose.Verbatim(food.Name)
	}
	return prose.Say("a food that is not in the trip")
}

// Thing is the name of what is carried; bag names a bag by its key.
func Thing(t *trip.Trip, fuels []cooking.LegFuel, item carry.Item, bag func(key string) prose.Text) prose.Text {
	switch item.Kind {
	case carry.BagItem:
		return bag(item.Key)
	case carry.GearItem:
		id, err := strconv.ParseInt(item.Key, 10, 64)
		if gear := t.GearItem(trip.GearID(id)); err == nil && gear != nil {
			return prose.Verbatim(gear.Name)
		}
	case carry.FuelItem:
		for _, fuel := range fuels {
			for i := range fuel.Containers {
				if fuel.Containers[i].Key == item.Key {
					return prose.Verbatim(fuel.Containers[i].Name)
				}
			}
		}
	case carry.WasteItem:
		return prose.Say("rubbish")
	}
	return prose.Verbatim(item.Key)
}
