package menu

import (
	"context"

	"sumpter/domain/needs"
	"sumpter/domain/trip"
)

// Fill proposes dishes for every slot that the leader left open and did not
// lock, whether or not the settings let the plan use them. The trip is
// canonical. The only error is ctx's.
func Fill(ctx context.Context, t *trip.Trip, n needs.Result) ([]trip.Cell, error) {
	f := newFiller(t, n)
	var cells []trip.Cell
	for day := range t.Days {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		for _, meal := range trip.Meals() {
			if !t.Days[day].Eats(meal) {
				continue
			}
			for i := range t.Groups {
				key := slotKey{day + 1, meal, t.Groups[i].ID}
				if cell, ok := f.propose(key); ok {
					cells = append(cells, cell)
				}
			}
		}
	}
	return cells, nil
}

// filler chooses for one slot after another, day by day.
type filler struct {
	*table
	needs needs.Result
	fixed map[slotKey]*trip.Cell
	uses  map[useOf][]int // days on which the group has the recipe, the leader's cells included
	known map[trip.GroupID]*groupOutcomes
}

type useOf struct {
	recipe trip.RecipeID
	group  trip.GroupID
}

// groupOutcomes keeps how recipes turn out while the same people eat.
type groupOutcomes struct {
	eaters   []trip.MemberID
	outcomes map[trip.RecipeID]outcome
}

// mostDishes is how many dishes a slot is given so that everybody eats.
const mostDishes = 3

func newFiller(t *trip.Trip, n needs.Result) *filler {
	f := &filler{table: newTable(t), needs: n, fixed: map[slotKey]*trip.Cell{}, uses: map[useOf][]int{}, known: map[trip.GroupID]*groupOutcomes{}}
	for i := range t.Menu {
		cell := &t.Menu[i]
		f.fixed[keyOf(cell)] = cell
		for _, dish := range cell.Dishes {
			use := useOf{dish.Recipe, cell.Group}
			f.uses[use] = append(f.uses[use], cell.Day)
		}
	}
	return f
}

// propose fills one slot; false if it is not open, nobody eats, or nothing will do.
func (f *filler) propose(key slotKey) (trip.Cell, bool) {
	if cell := f.fixed[key]; cell != nil && (cell.Locked || len(cell.Dishes) > 0) {
		return trip.Cell{}, false
	}
	eaters := f.trip.Eaters(key.day, key.group)
	cell := trip.Cell{Day: key.day, Meal: key.meal, Group: key.group}
	for hungry := eaters; len(hungry) > 0 && len(cell.Dishes) < mostDishes; {
		recipe, left := f.best(key, hungry)
		if recipe == nil {
			break
		}
		dish := trip.Dish{Recipe: recipe.ID}
		if len(hungry) < len(eaters) || len(left) > 0 {
			dish.For = without(hungry, left)
		}
		cell.Dishes = append(cell.Dishes, dish)
		use := useOf{recipe.ID, key.group}
		f.uses[use] = append(f.uses[use], key.day)
		hungry = left
	}
	return cell, len(cell.Dishes) > 0
}

func without(list, left []trip.MemberID) []trip.MemberID {
	gone := map[trip.MemberID]bool{}
	for _, id := range left {
		gone[id] = true
	}
	var kept []trip.MemberID
	for _, id := range list {
		if !gone[id] {
			kept = append(kept, id)
		}
	}
	return kept
}

// best gives the recipe with the least penalty for those hungry, and who goes without it. It never proposes a recipe that nobody
// can eat.
func (f *filler) best(key slotKey, hungry []trip.MemberID) (*trip.Recipe, []trip.MemberID) {
	var best *trip.Recipe
	var left []trip.MemberID
	least, around := 0.0, f.around(key)
	for i := range f.trip.Recipes {
		recipe := &f.trip.Recipes[i]
		if !f.suits(key, recipe) {
			continue
		}
		out := f.outcome(key.group, recipe, hungry)
		if len(out.refused) == len(hungry) {
			continue
		}
		if penalty := f.penalty(key, recipe, hungry, &out) + f.sameness(key, recipe, around); best == nil || penalty < least {
			best, least, left = recipe, penalty, nil
			for _, no := range out.refused {
				left = append(left, no.member)
			}
		}
	}
	return best, left
}

// suits tells whether the recipe may be served in the slot at all.
func (f *filler) suits(key slotKey, recipe *trip.Recipe) bool {
	if f.trip.Days[key.day-1].NoFlame && recipe.NeedsFlame() {
		return false
	}
	for _, meal := range recipe.Meals {
		if meal == key.meal {
			return true
		}
	}
	return false
}

// outcome serves the recipe to the eaters, remembered while they stay the same.
func (f *filler) outcome(group trip.GroupID, recipe *trip.Recipe, eaters []trip.MemberID) outcome {
	known := f.known[group]
	if known == nil || !sameIDs(known.eaters, eaters) {
		known = &groupOutcomes{eaters: eaters, outcomes: map[trip.RecipeID]outcome{}}
		f.known[group] = known
	}
	out, ok := known.outcomes[recipe.ID]
	if !ok {
		out = f.serve(recipe, eaters, nil)
		known.outcomes[recipe.ID] = out
	}
	return out
}

func sameIDs(a, b []trip.MemberID) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
