package press

import (
	"strconv"

	"sumpter/domain/carry"
	"sumpter/domain/prose"
	"sumpter/domain/trip"
)

// Names of what is in a trip, alike on all papers.

// TripTitle is the name of the trip.
func (p *Press) TripTitle() string {
	if p.Trip.Title == "" {
		return p.Tell(prose.Say("Trip without a name"))
	}
	return p.Trip.Title
}

// MemberName names a member, or says that it is nobody.
func (p *Press) MemberName(id trip.MemberID) string {
	if member := p.Member(id); member != nil {
		return member.Name
	}
	return p.Tell(prose.Say("nobody yet"))
}

// GroupName names a cook group; nothing where the trip has only one.
func (p *Press) GroupName(id trip.GroupID) string {
	if group := p.Group(id); group != nil && len(p.Trip.Groups) > 1 {
		return group.Name
	}
	return ""
}

// PlaceName names a resupply point.
func (p *Press) PlaceName(id trip.PointID) string {
	if point := p.Point(id); point != nil {
		return point.Name
	}
	return p.Tell(prose.Say("a point that is not in the trip"))
}

// FoodName names a food.
func (p *Press) FoodName(id trip.FoodID) string {
	if food := p.Food(id); food != nil {
		return food.Name
	}
	return p.Tell(prose.Say("unknown food"))
}

// CountBags says how many bags.
func CountBags(count int) prose.Text {
	return prose.Plural(count, prose.Say("1 bag"), prose.Say("%d bags", count))
}

// MealName names a meal.
func (p *Press) MealName(meal trip.Meal) string { return p.Tell(prose.Say("%s", meal)) }

// GearKey is the key of a piece of gear among what is carried.
func (p *Press) GearKey(gear *trip.Gear) string { return strconv.FormatInt(int64(gear.ID), 10) }

// Thing names what is carried, other than bags.
func (p *Press) Thing(item carry.Item) string {
	switch item.Kind {
	case carry.GearItem:
		if gear := p.Gear(item.Key); gear != nil {
			return gear.Name
		}
	case carry.FuelItem:
		if container := p.Fuel(item.Key); container != nil {
			return container.Name
		}
	case carry.WasteItem:
		return p.Tell(prose.Say("rubbish"))
	}
	return item.Key
}
