package wayaudit

import (
	"strconv"

	"sumpter/domain/carry"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Things are named as the leader calls them; what is not in the trip, by what
// the plan calls it.

func (a *auditor) member(id trip.MemberID) prose.Text {
	if m := a.trip.Member(id); m != nil {
		return prose.Verbatim(m.Name)
	}
	return prose.Say("somebody who is not in the crew")
}

func (a *auditor) food(id trip.FoodID) prose.Text {
	if food := a.trip.Food(id); food != nil {
		return prose.Verbatim(food.Name)
	}
	return prose.Say("a food that is not in the trip")
}

func (a *auditor) group(id trip.GroupID) prose.Text {
	if group := a.trip.Group(id); group != nil {
		return prose.Verbatim(group.Name)
	}
	return prose.Say("a cook group that is not in the trip")
}

func (a *auditor) bag(key string) prose.Text {
	if bag := a.planned[key]; bag != nil {
		return prose.Say("bag %s", bag.Code)
	}
	return prose.Say("a bag that was never packed (%s)", key)
}

// thing names what is carried.
func (a *auditor) thing(item carry.Item) prose.Text {
	switch item.Kind {
	case carry.BagItem:
		return a.bag(item.Key)
	case carry.GearItem:
		id, err := strconv.ParseInt(item.Key, 10, 64)
		if gear := a.trip.GearItem(trip.GearID(id)); err == nil && gear != nil {
			return prose.Verbatim(gear.Name)
		}
	case carry.FuelItem:
		for _, fuel := range a.Now.Cooking.Fuel {
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
