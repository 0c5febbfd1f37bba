package menu

import (
	"slices"

	"sumpter/domain/findings"
	"sumpter/domain/trip"
)

// Resolve decides what each eater is served in each slot. The trip is
// canonical. Cells of the leader stand as decided; slots left open are served
// what is proposed for them.
func Resolve(t *trip.Trip, proposed []trip.Cell) Result {
	r := resolve(t, proposed)
	r.lookAtTrip()
	return Result{Slots: r.slots, Findings: r.together(r.gathered())}
}

// Servings is Resolve without the findings, for those who only compare.
func Servings(t *trip.Trip, proposed []trip.Cell) Result {
	return Result{Slots: resolve(t, proposed).slots}
}

func resolve(t *trip.Trip, proposed []trip.Cell) *resolver {
	r := &resolver{table: newTable(t), cells: map[slotKey]*trip.Cell{}, proposed: map[slotKey]*trip.Cell{}}
	for i := range t.Menu {
		r.cells[keyOf(&t.Menu[i])] = &t.Menu[i]
	}
	for i := range proposed {
		r.proposed[keyOf(&proposed[i])] = &proposed[i]
	}
	for day := range t.Days {
		r.day(day + 1)
	}
	return r
}

// resolver makes the slots one by one and notes what the leader must know.
type resolver struct {
	*table
	cells    map[slotKey]*trip.Cell // of the leader
	proposed map[slotKey]*trip.Cell // of the program
	slots    []Slot
	seen     []findings.Finding
	dislikes []dislike
}

type slotKey struct {
	day   int
	meal  trip.Meal
	group trip.GroupID
}

func keyOf(c *trip.Cell) slotKey { return slotKey{c.Day, c.Meal, c.Group} }

func (r *resolver) day(day int) {
	for _, meal := range trip.Meals() {
		if !r.trip.Days[day-1].Eats(meal) {
			continue
		}
		for i := range r.trip.Groups {
			key := slotKey{day, meal, r.trip.Groups[i].ID}
			if eaters := r.trip.Eaters(day, key.group); len(eaters) > 0 {
				r.slot(key, eaters)
			}
		}
	}
}

func (r *resolver) slot(key slotKey, eaters []trip.MemberID) {
	slot := Slot{Day: key.day, Meal: key.meal, Group: key.group, Eaters: eaters}
	cell := r.cells[key]
	if cell == nil || len(cell.Dishes) == 0 && !cell.Locked {
		if proposal := r.proposed[key]; proposal != nil {
			cell, slot.Proposed = proposal, true
		}
	}
	if cell == nil || len(cell.Dishes) == 0 {
		r.lookAtOpen(key, cell)
		r.slots = append(r.slots, slot)
		return
	}
	var refused []refusedDish
	for i := range cell.Dishes {
		dish := &cell.Dishes[i]
		recipe := r.recipes[dish.Recipe]
		if recipe == nil {
			continue // validation names it
		}
		r.lookForAbsent(key, dish, eaters)
		out := r.serve(recipe, dish.MeantFor(eaters), dish.Accepted)
		r.lookAtMeal(key, recipe)
		r.lookAtAccepted(key, recipe, out.dish, dish.Accepted)
		r.noteDislikes(key, out.disliked)
		for _, no := range out.refused {
			refused = append(refused, refusedDish{no, recipe})
		}
		if len(out.dish.Batches) > 0 {
			slot.Dishes = append(slot.Dishes, out.dish)
		}
	}
	r.lookAtRefused(key, &slot, refused)
	r.slots = append(r.slots, slot)
}

// lookForAbsent tells once of each member whom the dish names and who does not
// eat in the slot.
func (r *resolver) lookForAbsent(key slotKey, dish *trip.Dish, eaters []trip.MemberID) {
	for i, member := range dish.For {
		if !slices.Contains(eaters, member) && !slices.Contains(dish.For[:i], member) {
			r.lookAtAbsent(key, dish, member)
		}
	}
}

// served tells whether the member gets anything in the slot.
func (s *Slot) served(member trip.MemberID) bool {
	for _, dish := range s.Dishes {
		for _, batch := range dish.Batches {
			for _, serving := range batch.Servings {
				if serving.Member == member {
					return true
				}
			}
		}
	}
	return false
}
