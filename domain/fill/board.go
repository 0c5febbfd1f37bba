package fill

import (
	"fmt"
	"slices"
	"strings"

	"sumpter/domain/cooking"
	"sumpter/domain/solve/menufill"
	"sumpter/domain/trip"
)

// board is the meals of one cook group over some days, laid out for the solver.
type board struct {
	*larder
	group   trip.GroupID
	first   int // day of the trip that is day 1 of the problem
	days    int
	cells   map[slotKey]*trip.Cell // that are decided
	kitchen *cooking.Kitchen
	weights weights
	more    map[groupDay]askedMore

	entries []entry
	at      map[entryKey]int
	parties map[string]*party
	classes [][]trip.MemberID
	problem menufill.Problem
	slots   []place // of the problem
}

type slotKey struct {
	day   int
	meal  trip.Meal
	group trip.GroupID
}

// entry is a recipe as it may stand at a meal.
type entry struct {
	recipe *trip.Recipe // nil: nothing at the side
	meal   trip.Meal
	side   bool
	open   bool // may be chosen; else it only stands in cells that are decided
}

type entryKey struct {
	recipe trip.RecipeID
	meal   trip.Meal
}

// place is a slot of the problem.
type place struct {
	slotKey
	side bool
	open bool
}

// party is members who eat together.
type party struct {
	members []trip.MemberID
	served  map[trip.RecipeID]*served
}

func newBoard(l *larder, group trip.GroupID, first, last int, cells map[slotKey]*trip.Cell, w weights) *board {
	b := &board{
		larder: l, group: group, first: first, days: last - first + 1, cells: cells, kitchen: cooking.KitchenOf(l.trip, group), weights: w,
		at: map[entryKey]int{}, parties: map[string]*party{},
	}
	b.problem = menufill.Problem{Days: b.days, Weights: menufill.Weights{Mass: w.mass, Cost: w.cost}}
	for _, want := range wants {
		b.problem.Wants = append(b.problem.Wants, menufill.Want{Name: want.name, Burden: grams(want.worth * w.wants)})
	}
	return b
}

// partyOn gives the members who eat on a day; nil if nobody does.
func (b *board) partyOn(day int) *party {
	members := b.trip.Eaters(day, b.group)
	if len(members) == 0 {
		return nil
	}
	return b.partyOf(members)
}

func (b *board) partyOf(members []trip.MemberID) *party {
	key := fmt.Sprint(members)
	p := b.parties[key]
	if p == nil {
		p = &party{members: members, served: map[trip.RecipeID]*served{}}
		b.parties[key] = p
	}
	return p
}

// serve tells how a recipe turns out for a party.
func (b *board) serve(p *party, recipe *trip.Recipe) *served {
	s := p.served[recipe.ID]
	if s == nil {
		s = b.larder.serve(recipe, p.members, nil)
		p.served[recipe.ID] = s
	}
	return s
}

// isOpen tells whether a slot is to be filled.
func (b *board) isOpen(k slotKey) bool {
	cell := b.cells[k]
	return cell == nil || !cell.Locked && len(cell.Dishes) == 0
}

// eachSlot calls f for the slots in which somebody eats from the packs, by day and meal.
func (b *board) eachSlot(f func(k slotKey, p *party)) {
	for day := b.first; day < b.first+b.days; day++ {
		p := b.partyOn(day)
		if p == nil {
			continue
		}
		for _, meal := range trip.Meals() {
			if b.trip.Days[day-1].Eats(meal) {
				f(slotKey{day, meal, b.group}, p)
			}
		}
	}
}

// listEntries lists what may be served at the meals that have an open slot, and what stands in decided cells.
func (b *board) listEntries() {
	open := map[trip.Meal]bool{}
	b.eachSlot(func(k slotKey, _ *party) { open[k.meal] = open[k.meal] || b.isOpen(k) })
	for _, meal := range trip.Meals() {
		if open[meal] {
			b.listMeal(meal, hasSides(meal))
		}
	}
	b.listDecided()
}

// listDecided lists what stands in decided cells.
func (b *board) listDecided() {
	b.eachSlot(func(k slotKey, _ *party) {
		if cell := b.cells[k]; cell != nil {
			for _, dish := range cell.Dishes {
				b.enter(entry{recipe: b.recipes[dish.Recipe], meal: k.meal})
			}
		}
	})
}

func (b *board) enter(e entry) {
	key := entryKey{meal: e.meal}
	if e.recipe != nil {
		key.recipe = e.recipe.ID
	}
	if _, ok := b.at[key]; !ok {
		b.at[key] = len(b.entries)
		b.entries = append(b.entries, e)
	}
}

func (b *board) listMeal(meal trip.Meal, sides bool) {
	var list []entry
	mains := 0
	for i := range b.trip.Recipes {
		recipe := &b.trip.Recipes[i]
		if !slices.Contains(recipe.Meals, meal) {
			continue
		}
		e := entry{recipe: recipe, meal: meal, open: true, side: sides && b.isSide(recipe, meal)}
		if !e.side {
			mains++
		}
		list = append(list, e)
	}
	if mains < len(list) && mains > 0 {
		list = append(list, entry{meal: meal, open: true, side: true})
	}
	for _, e := range list {
		e.side = e.side && mains > 0
		b.enter(e)
	}
}

// isSide tells whether a recipe can be no meal of its own.
func (b *board) isSide(recipe *trip.Recipe, meal trip.Meal) bool {
	most, asked := 0.0, 0.0
	b.eachSlot(func(k slotKey, p *party) {
		if k.meal != meal {
			return
		}
		for _, member := range p.members {
			if plate := b.serve(p, recipe).plates[member]; plate != nil {
				largest := plate.at(plate.most)
				most += largest.kcal
				asked += b.mealKcal(member, k.day, meal)
			}
		}
	})
	return most < sideBelow*asked
}

// sortClasses puts members who can be served the same into one class.
func (b *board) sortClasses() {
	words := map[trip.MemberID]*strings.Builder{}
	note := func(p *party, can func(trip.MemberID) bool) {
		for _, member := range p.members {
			if words[member] == nil {
				words[member] = &strings.Builder{}
			}
			if can(member) {
				words[member].WriteByte('1')
			} else {
				words[member].WriteByte('0')
			}
		}
	}
	for _, p := range b.partiesInOrder() {
		for i := range b.entries {
			if e := &b.entries[i]; e.open && e.recipe != nil {
				s := b.serve(p, e.recipe)
				note(p, func(m trip.MemberID) bool { return s.plates[m] != nil })
			}
		}
	}
	at := map[string]int{}
	for i := range b.trip.Crew {
		m := &b.trip.Crew[i]
		if m.Group != b.group || words[m.ID] == nil {
			continue
		}
		word := words[m.ID].String()
		k, ok := at[word]
		if !ok {
			k = len(b.classes)
			at[word] = k
			b.classes = append(b.classes, nil)
		}
		b.classes[k] = append(b.classes[k], m.ID)
	}
}

// classOf gives the class of a member.
func (b *board) classOf(member trip.MemberID) int {
	for g, members := range b.classes {
		if slices.Contains(members, member) {
			return g
		}
	}
	return -1
}

// partiesInOrder lists the parties of the days, in the order in which they first eat.
func (b *board) partiesInOrder() []*party {
	var list []*party
	b.eachSlot(func(_ slotKey, p *party) {
		if !slices.Contains(list, p) {
			list = append(list, p)
		}
	})
	return list
}
