package tables

import (
	"fmt"
	"strings"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/plan"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// index finds names, carriers and boxes without searching the plan again for
// each of thousands of rows.
type index struct {
	measure
	plan    *plan.Plan
	trip    *trip.Trip
	members map[trip.MemberID]string
	groups  map[trip.GroupID]string
	foods   map[trip.FoodID]*trip.Food
	recipes map[trip.RecipeID]*trip.Recipe
	bags    map[string]*bags.Bag
	fuel    map[string]*cooking.Container
	meals   map[mealKey]*cooking.Meal
	carrier map[string]string // bag key to who carries it, in words
	box     map[string]string // bag key to the box it waits in
}

func newIndex(p *plan.Plan) *index {
	t := p.Trip
	if t == nil {
		t = &trip.Trip{Units: units.Metric}
	}
	x := &index{
		measure: measure{system: t.Units, currency: t.Currency},
		plan:    p, trip: t,
		members: map[trip.MemberID]string{},
		groups:  map[trip.GroupID]string{},
		foods:   map[trip.FoodID]*trip.Food{},
		recipes: map[trip.RecipeID]*trip.Recipe{},
		bags:    map[string]*bags.Bag{},
		fuel:    map[string]*cooking.Container{},
		meals:   map[mealKey]*cooking.Meal{},
		carrier: map[string]string{},
		box:     map[string]string{},
	}
	x.nameThings()
	x.findBags()
	return x
}

func (x *index) nameThings() {
	for i := range x.trip.Crew {
		x.members[x.trip.Crew[i].ID] = x.trip.Crew[i].Name
	}
	for _, group := range x.trip.Groups {
		x.groups[group.ID] = group.Name
	}
	for i := range x.trip.Foods {
		x.foods[x.trip.Foods[i].ID] = &x.trip.Foods[i]
	}
	for i := range x.trip.Recipes {
		x.recipes[x.trip.Recipes[i].ID] = &x.trip.Recipes[i]
	}
}

// mealKey is one meal of one cook group.
type mealKey struct {
	day   int
	meal  trip.Meal
	group trip.GroupID
}

func (x *index) findBags() {
	for i := range x.plan.Cooking.Meals {
		meal := &x.plan.Cooking.Meals[i]
		x.meals[mealKey{meal.Day, meal.Meal, meal.Group}] = meal
	}
	for i := range x.plan.Bags.Bags {
		x.bags[x.plan.Bags.Bags[i].Key] = &x.plan.Bags.Bags[i]
	}
	for i := range x.plan.Cooking.Fuel {
		for j := range x.plan.Cooking.Fuel[i].Containers {
			container := &x.plan.Cooking.Fuel[i].Containers[j]
			x.fuel[container.Key] = container
		}
	}
	for i := range x.plan.Resupply.Boxes {
		box := &x.plan.Resupply.Boxes[i]
		for _, key := range box.Bags {
			x.box[key] = x.point(box.Point)
		}
	}
	last := map[string]trip.MemberID{}
	for i := range x.plan.Carry.Stages {
		x.followCarriers(&x.plan.Carry.Stages[i], last)
	}
}

// followCarriers writes "Ann", or "Ann, from day 4 Bo" where a bag changes hands.
func (x *index) followCarriers(stage *carry.Stage, last map[string]trip.MemberID) {
	for _, item := range stage.Items {
		if item.Kind != carry.BagItem {
			continue
		}
		before, seen := last[item.Key]
		switch {
		case !seen:
			x.carrier[item.Key] = x.member(item.Carrier)
		case before != item.Carrier:
			x.carrier[item.Key] += fmt.Sprintf(", from day %d %s", stage.FirstDay, x.member(item.Carrier))
		}
		last[item.Key] = item.Carrier
	}
}

func (x *index) member(id trip.MemberID) string {
	if name, ok := x.members[id]; ok {
		return name
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
	if name, ok := x.groups[id]; ok {
		return name
	}
	return Unknown
}

func (x *index) foodName(id trip.FoodID) string {
	if food, ok := x.foods[id]; ok {
		return food.Name
	}
	return Unknown
}

func (x *index) recipe(id trip.RecipeID) string {
	if recipe, ok := x.recipes[id]; ok {
		return recipe.Name
	}
	return Unknown
}

func (x *index) point(id trip.PointID) string {
	if point := x.trip.Point(id); point != nil {
		return point.Name
	}
	return Unknown
}

// bag gives a bag that may be missing from a broken plan as an empty one, so
// that a paper is still printed.
func (x *index) bag(key string) *bags.Bag {
	if bag, ok := x.bags[key]; ok {
		return bag
	}
	return &bags.Bag{Key: key, Code: key}
}

func (x *index) carrierOf(key string) string {
	if carrier, ok := x.carrier[key]; ok {
		return carrier
	}
	return "nobody yet"
}

func (x *index) boxOf(key string) string {
	if box, ok := x.box[key]; ok {
		return box
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
