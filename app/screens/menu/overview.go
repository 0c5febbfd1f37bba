package menu

import (
	"slices"
	"strings"

	"sumpter/domain/cooking"
	"sumpter/domain/findings"
	menus "sumpter/domain/menu"
	"sumpter/domain/plan"
	"sumpter/domain/portions"
	"sumpter/domain/spoilage"
	"sumpter/domain/trip"
)

// overview finds at once what trip and plan say of a slot. It is made anew
// whenever one of them changes.
type overview struct {
	trip    *trip.Trip
	plan    *plan.Plan // nil: none yet
	current bool       // the plan is of this very trip

	recipes  map[trip.RecipeID]*trip.Recipe
	foods    map[trip.FoodID]*trip.Food
	cells    map[slot]*trip.Cell
	planned  map[slot]*trip.Cell // the leader's cells the plan was made from
	slots    map[slot]*menus.Slot
	batches  map[slot][]*portions.Batch
	cooked   map[slot]*cooking.Meal
	fates    map[slot][]*spoilage.Fate
	troubles map[slot][]*findings.Finding
	known    map[slot]facts
}

func newOverview(t *trip.Trip, p *plan.Plan, current bool) *overview {
	o := &overview{
		trip: t, plan: p, current: current,
		recipes: map[trip.RecipeID]*trip.Recipe{}, foods: map[trip.FoodID]*trip.Food{},
		cells: cellsOf(t), planned: map[slot]*trip.Cell{}, slots: map[slot]*menus.Slot{},
		batches: map[slot][]*portions.Batch{}, cooked: map[slot]*cooking.Meal{}, fates: map[slot][]*spoilage.Fate{},
		troubles: map[slot][]*findings.Finding{}, known: map[slot]facts{},
	}
	for i := range t.Recipes {
		o.recipes[t.Recipes[i].ID] = &t.Recipes[i]
	}
	for i := range t.Foods {
		o.foods[t.Foods[i].ID] = &t.Foods[i]
	}
	if p != nil {
		o.read(p)
	}
	return o
}

func cellsOf(t *trip.Trip) map[slot]*trip.Cell {
	cells := make(map[slot]*trip.Cell, len(t.Menu))
	for i := range t.Menu {
		cells[slotOfCell(&t.Menu[i])] = &t.Menu[i]
	}
	return cells
}

func (o *overview) read(p *plan.Plan) {
	o.planned = cellsOf(p.Trip)
	for i := range p.Menu.Slots {
		o.slots[slotOfMenu(&p.Menu.Slots[i])] = &p.Menu.Slots[i]
	}
	for i := range p.Portions.Batches {
		b := &p.Portions.Batches[i]
		k := slot{b.Day, b.Meal, b.Group}
		o.batches[k] = append(o.batches[k], b)
	}
	for i := range p.Cooking.Meals {
		m := &p.Cooking.Meals[i]
		o.cooked[slot{m.Day, m.Meal, m.Group}] = m
	}
	for i := range p.Spoilage.Fates {
		f := &p.Spoilage.Fates[i]
		k := slot{f.Day, f.Meal, f.Group}
		o.fates[k] = append(o.fates[k], f)
	}
	for i := range p.Findings {
		for f := range p.Findings[i].Each() {
			if f.Place.Day > 0 && f.Place.Meal != "" {
				k := slotOfPlace(f.Place)
				o.troubles[k] = append(o.troubles[k], &f)
			}
		}
	}
}

// fresh tells whether the plan speaks of the slot as it is now.
func (o *overview) fresh(k slot) bool {
	if o.plan == nil {
		return false
	}
	return o.current || sameServed(o.cells[k], o.planned[k])
}

// sameServed compares what two cells serve, and to whom.
func sameServed(a, b *trip.Cell) bool {
	if a == nil || b == nil {
		return (a == nil || len(a.Dishes) == 0) && (b == nil || len(b.Dishes) == 0)
	}
	return slices.EqualFunc(a.Dishes, b.Dishes, func(x, y trip.Dish) bool {
		return x.Recipe == y.Recipe && slices.Equal(x.For, y.For) && slices.Equal(x.Accepted, y.Accepted)
	})
}

// foodNames lists foods by name.
func (o *overview) foodNames(foods []trip.FoodID) string {
	var names []string
	for _, id := range foods {
		if food := o.foods[id]; food != nil {
			names = append(names, food.Name)
		}
	}
	return strings.Join(names, ", ")
}

// eaten tells whether somebody of the group eats the meal from the packs.
func (o *overview) eaten(k slot) bool {
	return k.day >= 1 && k.day <= len(o.trip.Days) && o.trip.Days[k.day-1].Eats(k.meal) && len(o.trip.Eaters(k.day, k.group)) > 0
}

func (o *overview) locked(k slot) bool {
	cell := o.cells[k]
	return cell != nil && cell.Locked
}

// proposal gives what the program serves where the leader left the slot open.
func (o *overview) proposal(k slot) *menus.Slot {
	if cell := o.cells[k]; cell != nil && (cell.Locked || len(cell.Dishes) > 0) || !o.fresh(k) {
		return nil
	}
	if s := o.slots[k]; s != nil && s.Proposed && len(s.Dishes) > 0 {
		return s
	}
	return nil
}

// dishes gives what is served: the leader's dishes, else the proposal as if
// the leader had decided it.
func (o *overview) dishes(k slot) []trip.Dish {
	if cell := o.cells[k]; cell != nil && len(cell.Dishes) > 0 {
		return cell.Dishes
	}
	s := o.proposal(k)
	if s == nil {
		return nil
	}
	var dishes []trip.Dish
	for i := range s.Dishes {
		dish := trip.Dish{Recipe: s.Dishes[i].Recipe}
		if members := membersOf(&s.Dishes[i]); len(members) < len(s.Eaters) {
			dish.For = members
		}
		dishes = append(dishes, dish)
	}
	return dishes
}

// membersOf lists who is served a dish, by ID.
func membersOf(d *menus.Dish) []trip.MemberID {
	var members []trip.MemberID
	for _, batch := range d.Batches {
		for _, serving := range batch.Servings {
			members = append(members, serving.Member)
		}
	}
	slices.Sort(members)
	return members
}

// wholeMenu is the menu as the plan serves it: cells of the leader with the
// proposals among them, for a canonical copy of the planned trip.
func (o *overview) wholeMenu() *trip.Trip {
	whole := *o.plan.Trip
	whole.Menu = nil
	for i := range o.trip.Menu {
		if cell := o.trip.Menu[i]; len(cell.Dishes) > 0 && cell.Day <= len(whole.Days) {
			whole.Menu = append(whole.Menu, cell)
		}
	}
	for i := range o.plan.Menu.Slots {
		k := slotOfMenu(&o.plan.Menu.Slots[i])
		if o.proposal(k) != nil {
			whole.Menu = append(whole.Menu, trip.Cell{Day: k.day, Meal: k.meal, Group: k.group, Dishes: o.dishes(k)})
		}
	}
	return whole.Canonical()
}
