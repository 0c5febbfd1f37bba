package audit

import (
	"strconv"

	"sumpter/domain/carry"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Things are named as the leader calls them; what is not in the trip, by what
// the plan calls it.

func (a *auditor) memberName(id trip.MemberID) prose.Text {
	if m := a.Trip.Member(id); m != nil {
		return prose.Verbatim(m.Name)
	}
	return prose.Say("somebody who is not in the crew")
}

func (a *auditor) foodName(id trip.FoodID) prose.Text {
	if food := a.Trip.Food(id); food != nil {
		return prose.Verbatim(food.Name)
	}
	return prose.Say("a food that is not in the trip")
}

func (a *auditor) recipeName(id trip.RecipeID) prose.Text {
	if recipe := a.Trip.Recipe(id); recipe != nil {
		return prose.Verbatim(recipe.Name)
	}
	return prose.Say("a recipe that is not in the trip")
}

func (a *auditor) bagName(key string) prose.Text {
	for i := range a.Bags.Bags {
		if a.Bags.Bags[i].Key == key {
			return prose.Say("bag %s", a.Bags.Bags[i].Code)
		}
	}
	return prose.Say("a bag that is not in the plan (%s)", key)
}

// thingName names what is carried.
func (a *auditor) thingName(item carry.Item) prose.Text {
	switch item.Kind {
	case carry.BagItem:
		return a.bagName(item.Key)
	case carry.GearItem:
		id, err := strconv.ParseInt(item.Key, 10, 64)
		if gear := a.Trip.GearItem(trip.GearID(id)); err == nil && gear != nil {
			return prose.Verbatim(gear.Name)
		}
	case carry.FuelItem:
		for _, fuel := range a.Cooking.Fuel {
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
