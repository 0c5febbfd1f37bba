package tables

import (
	"fmt"
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/units"
	"sumpter/exporter/lookup"
)

// index is what the tables read, with the words for what is missing.
type index struct {
	measure
	*lookup.Lookup
	plan *plan.Plan
	trip *trip.Trip
}

func newIndex(p *plan.Plan) *index {
	l := lookup.New(p)
	return &index{measure{system: l.Trip.Units, currency: l.Trip.Currency}, l, p, l.Trip}
}

// amount writes how much of a food is weighed or counted out.
func (x *index) amount(food trip.FoodID, mass units.Mass) string {
	if f := x.trip.Food(food); f != nil {
		return x.text(f.Amount(mass, x.weighed(mass)))
	}
	return x.weighed(mass)
}

func (x *index) member(id trip.MemberID) string {
	if member := x.Member(id); member != nil {
		return member.Name
	}
	return "nobody yet"
}

func (x *index) memberNames(ids []trip.MemberID) string {
	names := make([]string, len(ids))
	for i, id := range ids {
		names[i] = x.member(id)
	}
	return strings.Join(names, ", ")
}

func (x *index) group(id trip.GroupID) string {
	if group := x.Group(id); group != nil {
		return group.Name
	}
	return Unknown
}

func (x *index) foodName(id trip.FoodID) string {
	if food := x.Food(id); food != nil {
		return food.Name
	}
	return Unknown
}

func (x *index) recipe(id trip.RecipeID) string {
	if recipe := x.Recipe(id); recipe != nil {
		return recipe.Name
	}
	return Unknown
}

func (x *index) point(id trip.PointID) string {
	if point := x.Point(id); point != nil {
		return point.Name
	}
	return Unknown
}

// bag gives a bag that may be missing from a broken plan as an empty one, so
// that a paper is still printed.
func (x *index) bag(key string) *bags.Bag {
	if bag := x.Bag(key); bag != nil {
		return bag
	}
	return &bags.Bag{Key: key, Code: key}
}

// carrierOf writes "Ann", or "Ann, from day 4 Bo" where a bag changes hands.
func (x *index) carrierOf(key string) string {
	carriers := x.Carriers(key)
	if len(carriers) == 0 {
		return "nobody yet"
	}
	text := x.member(carriers[0].Member)
	for _, next := range carriers[1:] {
		text += fmt.Sprintf(", from day %d %s", next.FromDay, x.member(next.Member))
	}
	return text
}

func (x *index) boxOf(key string) string {
	if box := x.Box(key); box != nil {
		return x.point(box.Point)
	}
	return "from the start"
}

// day gives a day of the trip, or an empty one outside it.
func (x *index) day(day int) *trip.Day {
	if day >= 1 && day <= len(x.trip.Days) {
		return &x.trip.Days[day-1]
	}
	return &trip.Day{}
}

func (x *index) date(day int) Value { return dated(x.trip.DateOf(day)) }

func dayRange(first, last int) string {
	if first == last {
		return fmt.Sprintf("day %d", first)
	}
	return fmt.Sprintf("days %d to %d", first, last)
}

func (x *index) leg(place int) string {
	if place < 0 || place >= len(x.plan.Legs) {
		return Unknown
	}
	return dayRange(x.plan.Legs[place].FirstDay, x.plan.Legs[place].LastDay)
}
