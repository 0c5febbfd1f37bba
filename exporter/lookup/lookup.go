// Package lookup finds the things of a plan by their keys, for papers that name
// thousands of them. What is missing from a broken plan is found as nil, so
// that a paper can still be made.
package lookup

import (
	"strconv"

	"sumpter/domain/bags"
	"sumpter/domain/carry"
	"sumpter/domain/cooking"
	"sumpter/domain/plan"
	"sumpter/domain/resupply"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
	"sumpter/domain/units"
)

// Lookup is the things of one plan by their keys. It only reads.
type Lookup struct {
	Plan *plan.Plan
	Trip *trip.Trip // never nil

	members  map[trip.MemberID]*trip.Member
	groups   map[trip.GroupID]*trip.CookGroup
	foods    map[trip.FoodID]*trip.Food
	recipes  map[trip.RecipeID]*trip.Recipe
	points   map[trip.PointID]*trip.ResupplyPoint
	gear     map[string]*trip.Gear
	bags     map[string]*bags.Bag
	fuel     map[string]*cooking.Container
	meals    map[mealKey]*cooking.Meal
	boxes    map[string]*resupply.Box
	carriers map[itemKey][]Carrier
	fates    map[fateKey]*spoilage.Fate
	pots     map[potKey][]*bags.Bag
	slots    map[mealKey][]*bags.Bag
	bought   map[boughtKey]*resupply.Box
}

// Carrier is who carries a thing from a day on.
type Carrier struct {
	FromDay int
	Member  trip.MemberID
}

type itemKey struct {
	kind carry.ItemKind
	key  string
}

type mealKey struct {
	day   int
	meal  trip.Meal
	group trip.GroupID
}

// potKey is one of the pots in which a dish is made, from 1.
type potKey struct {
	mealKey
	recipe trip.RecipeID
	run    int
}

// boughtKey is a food that comes into a bag only at a resupply point.
type boughtKey struct {
	bag  string
	food trip.FoodID
}

type fateKey struct {
	mealKey
	food trip.FoodID
}

// New reads a plan; one without a trip is looked up as an empty trip.
func New(p *plan.Plan) *Lookup {
	t := p.Trip
	if t == nil {
		t = &trip.Trip{Units: units.Metric}
	}
	l := &Lookup{
		Plan: p, Trip: t,
		members: map[trip.MemberID]*trip.Member{}, groups: map[trip.GroupID]*trip.CookGroup{}, foods: map[trip.FoodID]*trip.Food{},
		recipes: map[trip.RecipeID]*trip.Recipe{}, points: map[trip.PointID]*trip.ResupplyPoint{}, gear: map[string]*trip.Gear{},
		bags: map[string]*bags.Bag{}, fuel: map[string]*cooking.Container{}, meals: map[mealKey]*cooking.Meal{},
		boxes: map[string]*resupply.Box{}, carriers: map[itemKey][]Carrier{}, fates: map[fateKey]*spoilage.Fate{},
		pots: map[potKey][]*bags.Bag{}, slots: map[mealKey][]*bags.Bag{}, bought: map[boughtKey]*resupply.Box{},
	}
	l.readTrip()
	l.readPlan()
	return l
}

func (l *Lookup) readTrip() {
	t := l.Trip
	for i := range t.Crew {
		l.members[t.Crew[i].ID] = &t.Crew[i]
	}
	for i := range t.Groups {
		l.groups[t.Groups[i].ID] = &t.Groups[i]
	}
	for i := range t.Foods {
		l.foods[t.Foods[i].ID] = &t.Foods[i]
	}
	for i := range t.Recipes {
		l.recipes[t.Recipes[i].ID] = &t.Recipes[i]
	}
	for i := range t.Points {
		l.points[t.Points[i].ID] = &t.Points[i]
	}
	for i := range t.Gear {
		l.gear[strconv.FormatInt(int64(t.Gear[i].ID), 10)] = &t.Gear[i]
	}
}

func (l *Lookup) readPlan() {
	p := l.Plan
	for i := range p.Bags.Bags {
		bag := &p.Bags.Bags[i]
		l.bags[bag.Key] = bag
		for j := range bag.Uses {
			pot := potOf(bag, &bag.Uses[j])
			l.pots[pot] = withBag(l.pots[pot], bag)
			l.slots[pot.mealKey] = withBag(l.slots[pot.mealKey], bag)
		}
	}
	for i := range p.Cooking.Meals {
		meal := &p.Cooking.Meals[i]
		l.meals[mealKey{meal.Day, meal.Meal, meal.Group}] = meal
	}
	for i := range p.Cooking.Fuel {
		for j := range p.Cooking.Fuel[i].Containers {
			container := &p.Cooking.Fuel[i].Containers[j]
			l.fuel[container.Key] = container
		}
	}
	for i := range p.Resupply.Boxes {
		for _, key := range p.Resupply.Boxes[i].Bags {
			l.boxes[key] = &p.Resupply.Boxes[i]
		}
		for _, bought := range p.Resupply.Boxes[i].BoughtThere {
			l.bought[boughtKey{bought.Bag, bought.Food}] = &p.Resupply.Boxes[i]
		}
	}
	for i := range p.Spoilage.Fates {
		fate := &p.Spoilage.Fates[i]
		l.fates[fateKey{mealKey{fate.Day, fate.Meal, fate.Group}, fate.Food}] = fate
	}
	for i := range p.Carry.Stages {
		for _, item := range p.Carry.Stages[i].Items {
			l.carry(item, p.Carry.Stages[i].FirstDay)
		}
	}
}

func (l *Lookup) carry(item carry.Item, day int) {
	key := itemKey{item.Kind, item.Key}
	list := l.carriers[key]
	if len(list) == 0 || list[len(list)-1].Member != item.Carrier {
		l.carriers[key] = append(list, Carrier{day, item.Carrier})
	}
}

// Member finds a member, or nil.
func (l *Lookup) Member(id trip.MemberID) *trip.Member { return l.members[id] }

// Group finds a cook group, or nil.
func (l *Lookup) Group(id trip.GroupID) *trip.CookGroup { return l.groups[id] }

// Food finds a food, or nil.
func (l *Lookup) Food(id trip.FoodID) *trip.Food { return l.foods[id] }

// Recipe finds a recipe, or nil.
func (l *Lookup) Recipe(id trip.RecipeID) *trip.Recipe { return l.recipes[id] }

// Point finds a resupply point, or nil.
func (l *Lookup) Point(id trip.PointID) *trip.ResupplyPoint { return l.points[id] }

// Gear finds a piece of gear by its key among what is carried, or nil.
func (l *Lookup) Gear(key string) *trip.Gear { return l.gear[key] }

// Bag finds a bag by its key, or nil.
func (l *Lookup) Bag(key string) *bags.Bag { return l.bags[key] }

// Pot lists the bags that are made together with a bag, itself included, in
// the order of the plan; none for a bag that several dishes take from.
func (l *Lookup) Pot(bag *bags.Bag) []*bags.Bag {
	if len(bag.Uses) != 1 {
		return nil
	}
	return l.pots[potOf(bag, &bag.Uses[0])]
}

// Batch lists the bags that one pot of a dish, from 1, takes from.
func (l *Lookup) Batch(day int, meal trip.Meal, group trip.GroupID, recipe trip.RecipeID, run int) []*bags.Bag {
	return l.pots[potKey{mealKey{day, meal, group}, recipe, run}]
}

// Slot lists the bags of a meal of a cook group.
func (l *Lookup) Slot(day int, meal trip.Meal, group trip.GroupID) []*bags.Bag {
	return l.slots[mealKey{day, meal, group}]
}

// withBag adds a bag, of which several dishes may take, once.
func withBag(list []*bags.Bag, bag *bags.Bag) []*bags.Bag {
	if len(list) > 0 && list[len(list)-1] == bag {
		return list
	}
	return append(list, bag)
}

func potOf(bag *bags.Bag, use *bags.Use) potKey {
	return potKey{mealKey{use.Day, use.Meal, bag.Group}, use.Recipe, use.Batch}
}

// Fuel finds a canister or bottle by its key, or nil.
func (l *Lookup) Fuel(key string) *cooking.Container { return l.fuel[key] }

// Meal finds the cooking of a slot, or nil where nothing is cooked.
func (l *Lookup) Meal(day int, meal trip.Meal, group trip.GroupID) *cooking.Meal {
	return l.meals[mealKey{day, meal, group}]
}

// Box finds the box a bag waits in, or nil if it is carried from the start.
func (l *Lookup) Box(bag string) *resupply.Box { return l.boxes[bag] }

// BoughtAt finds the box at whose point a food is bought and put into a bag, or
// nil where the bag has it from the start.
func (l *Lookup) BoughtAt(bag string, food trip.FoodID) *resupply.Box {
	return l.bought[boughtKey{bag, food}]
}

// Carriers lists who carries a bag, a line for each change of hands; none if
// nobody does yet.
func (l *Lookup) Carriers(bag string) []Carrier { return l.CarriersOf(carry.BagItem, bag) }

// CarriersOf lists who carries a thing of any kind.
func (l *Lookup) CarriersOf(kind carry.ItemKind, key string) []Carrier {
	return l.carriers[itemKey{kind, key}]
}

// Fate finds how a food has kept when it is eaten in a slot, or nil.
func (l *Lookup) Fate(day int, meal trip.Meal, group trip.GroupID, food trip.FoodID) *spoilage.Fate {
	return l.fates[fateKey{mealKey{day, meal, group}, food}]
}
